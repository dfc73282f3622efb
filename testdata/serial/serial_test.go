package serial_test

import (
	"errors"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"testing"

	"example.org/honestplate/testdata/serial"
)

// A recorder keeps what a check reports instead of failing the test.
type recorder struct {
	testing.TB
	mu      sync.Mutex
	reports []string
}

func (r *recorder) Helper() {}

func (r *recorder) Error(args ...any) { r.Errorf("%s", fmt.Sprint(args...)) }

func (r *recorder) Errorf(format string, args ...any) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.reports = append(r.reports, fmt.Sprintf(format, args...))
}

func reports(t *testing.T, check func(testing.TB)) []string {
	t.Helper()
	r := &recorder{TB: t}
	check(r)
	return r.reports
}

func TestCompareAcceptsPureCalls(t *testing.T) {
	shared := []float64{3, 1, 2}
	calls := serial.Calls{
		"Sum":    func() any { return shared[0] + shared[1] + shared[2] },
		"Divide": func() any { return serial.All(shared[0]/shared[1], error(nil)) },
		"Refuse": func() any { return serial.All(0.0, errors.New("refused")) },
	}
	if got := reports(t, calls.Compare); len(got) > 0 {
		t.Error(got)
	}
	if got := calls.Failed(); !slices.Equal(got, []string{"Refuse"}) {
		t.Errorf("calls that return an error: %v, want Refuse", got)
	}
}

func TestCompareReportsWhatChanges(t *testing.T) {
	var calls, crowded atomic.Int64
	for name, call := range map[string]func() any{
		"Counter": func() any { return calls.Add(1) },
		"Nan":     func() any { return math.NaN() },
		// Right twice alone, wrong from then on.
		"Crowded": func() any { return crowded.Add(1) <= 2 },
	} {
		got := reports(t, serial.Calls{name: call}.Compare)
		if len(got) == 0 || !strings.HasPrefix(got[0], name+": ") {
			t.Errorf("%s: reported %v", name, got)
		}
		if among := strings.Contains(strings.Join(got, "\n"), "among others"); among != (name == "Crowded") {
			t.Errorf("%s: reported %v", name, got)
		}
	}
}

func TestCompleteNamesWhatIsMissing(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range map[string]string{
		"jug.go": `package jug
type Jug struct{}
func (j Jug) Pour() int { return 1 }
func (j *Jug) Fill() {}
func (j Jug) hidden() {}
type Box[T any] struct{}
func (b Box[T]) Open() {}
type spout struct{}
func (s spout) Drip() {}
func New() Jug { return Jug{} }
func Max() int { return 1 }
`,
		"concurrent_test.go": `package jug_test
func calls() { jug.New(); j.Pour(); b.Open(); Max() }
`,
		"other_test.go": "package jug\nfunc TestX() {}\n",
	} {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	none := func() any { return nil }
	calls := serial.Calls{"New": none, "Jug.Pour": none, "Jug.Pour twice": none, "Box.Open": none, "Max": none, "Jug.Fill": none, "Jug.Empty": none}
	got := reports(t, func(tb testing.TB) { calls.Complete(tb, "concurrent_test.go") })
	want := []string{"Jug.Empty: the package exports no function or method Jug.Empty", "Jug.Fill is named and not called"}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("reported %q, want %q", got, want)
	}
	delete(calls, "Max")
	delete(calls, "Jug.Fill")
	delete(calls, "Jug.Empty")
	got = reports(t, func(tb testing.TB) { calls.Complete(tb, "concurrent_test.go") })
	slices.Sort(got)
	if want := []string{"Jug.Fill is in no entry", "Max is in no entry"}; !slices.Equal(got, want) {
		t.Errorf("reported %q, want %q", got, want)
	}
	if got := reports(t, func(tb testing.TB) { calls.Complete(tb, "there-is-none.go") }); len(got) != 1 {
		t.Errorf("a table that cannot be read: reported %q", got)
	}
}
