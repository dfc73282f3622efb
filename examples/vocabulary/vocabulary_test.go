package vocabulary_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	hp "example.org/honestplate"
)

func TestNeverHasNoDate(t *testing.T) {
	now := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
	for _, m := range []hp.Moment{hp.Never(), {After: time.Hour, Never: true}} {
		if at, ok := m.At(now); ok || !at.IsZero() {
			t.Errorf("At of never is %v, %v", at, ok)
		}
		if at, ok := m.BackFrom(now); ok || !at.IsZero() {
			t.Errorf("BackFrom of never is %v, %v", at, ok)
		}
		if m.String() != "never" {
			t.Errorf("never prints as %q", m)
		}
	}
	if at, ok := hp.After(time.Hour).BackFrom(now); !ok || at.Hour() != 9 {
		t.Errorf("an hour back from ten is %v, %v", at, ok)
	}
}

func TestNeverComesLast(t *testing.T) {
	late, early := hp.After(math.MaxInt64), hp.After(-1)
	for _, p := range [][2]hp.Moment{{early, late}, {late, hp.Never()}, {early, hp.Never()}} {
		if !p[0].Before(p[1]) || p[1].Before(p[0]) {
			t.Errorf("%v and %v are in the wrong order", p[0], p[1])
		}
	}
	if hp.Never().Before(hp.Never()) {
		t.Error("never comes before never")
	}
}

func TestMomentsComeBackFromJSON(t *testing.T) {
	for _, d := range []time.Duration{0, 1, -1, 90 * time.Second, 1500 * time.Millisecond, -time.Hour, math.MaxInt64, math.MinInt64 + 1, 123456789012345678} {
		same(t, hp.After(d))
	}
	same(t, hp.Never())
	if b, _ := json.Marshal(hp.After(90 * time.Second)); string(b) != "90" {
		t.Errorf("90 s marshals to %s", b)
	}
	same(t, hp.Window{Earliest: hp.After(time.Second), Likely: hp.After(3 * time.Second), Latest: hp.Never()})
	same(t, hp.Within(9, 0.3))
	same(t, hp.Some(0))
	same(t, hp.Optional{})
}

// same marshals, reads back and compares.
func same[T comparable](t *testing.T, v T) {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	back := v
	if err := json.Unmarshal(b, &back); err != nil {
		t.Fatalf("%s: %v", b, err)
	}
	if back != v {
		t.Errorf("%+v came back from %s as %+v", v, b, back)
	}
}

func TestBrokenWireIsRefused(t *testing.T) {
	for _, c := range []struct {
		into any
		text string
	}{
		{new(hp.Moment), `"5"`}, {new(hp.Moment), `1e12`}, {new(hp.Moment), `true`}, {new(hp.Moment), `[]`},
		{new(hp.Window), `{}`}, {new(hp.Window), `null`}, {new(hp.Window), `{"earliest_s":1,"likely_s":2}`},
		{new(hp.Window), `{"earliest_s":3,"likely_s":2,"latest_s":4}`}, {new(hp.Window), `{"earliest_s":null,"likely_s":2,"latest_s":4}`},
		{new(hp.Window), `{"earliest_s":1,"likely_s":2,"latest_s":3,"x":1}`},
		{new(hp.Estimate), `{"low":1,"likely":null,"high":3}`}, {new(hp.Estimate), `{"low":2,"likely":1,"high":3}`},
		{new(hp.Estimate), `7`}, {new(hp.Optional), `"0"`},
	} {
		if err := json.Unmarshal([]byte(c.text), c.into); err == nil {
			t.Errorf("%T took %s as %v", c.into, c.text, c.into)
		}
	}
}

func TestBandsStayInOrder(t *testing.T) {
	for _, e := range []hp.Estimate{
		hp.Within(10, -0.1), hp.Within(-10, 0.1), hp.Factor(10, 0.5), hp.Factor(-10, 2), hp.Within(10, 0.2).Times(-3), hp.Exactly(4),
	} {
		if err := e.Check("x"); err != nil {
			t.Error(err)
		}
	}
	for _, e := range []hp.Estimate{{Low: 2, Likely: 1, High: 3}, {Low: math.NaN()}, {High: math.Inf(1)}} {
		if err := e.Check("x"); !errors.Is(err, hp.ErrInput) {
			t.Errorf("%v is taken", e)
		}
	}
}

func TestErrorsNameNoNaN(t *testing.T) {
	err := hp.Finite("FatPercent", math.NaN(), "%")
	if err == nil || strings.Contains(err.Error(), "NaN") || !errors.Is(err, hp.ErrInput) {
		t.Errorf("got %v", err)
	}
}

func TestErrorsKeepTheirPlaceAndStayOnOneLine(t *testing.T) {
	err := hp.In("Recipe", hp.In("Thin", hp.InRange("FatPercent", 90, 0, 60, "%", "Phipps 1969")))
	var outside *hp.RangeError
	if !errors.As(err, &outside) || outside.Field != "Recipe.Thin.FatPercent" || !errors.Is(err, hp.ErrRange) {
		t.Errorf("got %v", err)
	}
	if got := hp.In("Lamps", &hp.InputError{Field: "[2].Source", Got: "9", Want: "one"}).(*hp.InputError).Field; got != "Lamps[2].Source" {
		t.Errorf("field is %s", got)
	}
	for _, err := range []error{
		&hp.InputError{Field: "a\nb", Got: "x\u202ey", Want: "z\u0085"},
		&hp.RangeError{Field: "a\u2028b", Source: "s\u001b"},
		&hp.RefusedError{Field: "a\rb", Kind: hp.ErrNoFlow, Reason: "r\t"},
		hp.In("a\nb", errors.New("other")),
	} {
		if s := err.Error(); strings.ContainsAny(s, "\n\r\t\u001b\u0085\u2028\u202e") {
			t.Errorf("%q is more than a line", s)
		}
	}
	if hp.In("x", nil) != nil || hp.Cause(nil) != nil {
		t.Error("nothing became an error")
	}
}

func TestChecksHoldAtTheirLimits(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct {
		err  error
		want error
	}{
		{hp.Positive("x", 0, ""), hp.ErrInput}, {hp.Positive("x", inf, ""), hp.ErrInput}, {hp.Positive("x", 1e-300, ""), nil},
		{hp.NotNegative("x", 0, ""), nil}, {hp.NotNegative("x", -1e-300, ""), hp.ErrInput}, {hp.NotNegative("x", math.NaN(), ""), hp.ErrInput},
		{hp.InRange("x", 1, 1, 2, "", "s"), nil}, {hp.InRange("x", 2, 1, 2, "", "s"), nil},
		{hp.InRange("x", 2.1, 1, 2, "", "s"), hp.ErrRange}, {hp.InRange("x", inf, 1, 2, "", "s"), hp.ErrInput},
		{hp.InRange("x", math.Nextafter(1, 0), 1, 2, "", "s"), hp.ErrRange},
	} {
		if !errors.Is(c.err, c.want) {
			t.Errorf("got %v, want %v", c.err, c.want)
		}
	}
}

func FuzzMomentJSON(f *testing.F) {
	f.Add([]byte("null"))
	f.Add([]byte("-12.000000001"))
	f.Add([]byte("1e3"))
	f.Fuzz(func(t *testing.T, b []byte) {
		var m, again hp.Moment
		if json.Unmarshal(b, &m) != nil {
			return
		}
		text, err := json.Marshal(m)
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &again); err != nil || again != m {
			t.Errorf("%s: %v came back as %v, %v", b, m, again, err)
		}
	})
}

func FuzzBandJSON(f *testing.F) {
	f.Add([]byte(`{"low":1,"likely":2,"high":3}`))
	f.Add([]byte(`{"earliest_s":1,"likely_s":2,"latest_s":null}`))
	f.Fuzz(func(t *testing.T, b []byte) {
		var e hp.Estimate
		if json.Unmarshal(b, &e) == nil && e.Check("band") != nil {
			t.Errorf("%s became %v", b, e)
		}
		var w hp.Window
		if json.Unmarshal(b, &w) == nil && w.Check("window") != nil {
			t.Errorf("%s became %v", b, w)
		}
		if s := fmt.Sprint(e, w); strings.Contains(s, "\n") {
			t.Errorf("%q", s)
		}
	})
}
