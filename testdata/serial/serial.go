// Package serial tests that a package may be used from many goroutines: a table of
// calls, each made alone and then among all others, must give the same answers. Only
// tests read it; like its parent folder it stands where every package's tests may
// import it and ./... passes it by, so its own tests are run by name.
//
//	func TestConcurrentUse(t *testing.T) {
//		milk := rheology.Dairy{FatPercent: 3.5} // shared by all goroutines
//		calls := serial.Calls{
//			"Dairy.Viscosity": func() any { return serial.All(milk.Viscosity(20)) },
//			"Dairy.Density":   func() any { return serial.All(milk.Density(20)) },
//		}
//		calls.Compare(t)
//		calls.Complete(t, "concurrent_test.go")
//	}
//
// Run it with the race detector, which sees what equal answers hide.
package serial

import (
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"sync"
	"testing"
)

// Calls is a table of calls by name: Func, or Type.Method, perhaps followed by a
// space and what is special about this call. The calls share the values they start
// from, so that one that writes to its receiver or arguments shows.
type Calls map[string]func() any

// All takes what a call returned as one value.
func All(results ...any) any { return results }

// crowd is the number of goroutines; the race detector needs no more than a few.
const (
	crowd      = 64
	shortCrowd = 8 // with -short
)

// Compare makes every call alone and twice, then from many goroutines at once, each
// in an order of its own, and reports every answer that differs from the one given
// alone. A NaN equals nothing and is reported as a difference; an error is compared
// like any other answer, but a table that is to prove something holds few.
func (c Calls) Compare(t testing.TB) {
	t.Helper()
	names := slices.Sorted(maps.Keys(c))
	want := make([]any, len(names))
	for i, name := range names {
		want[i] = c[name]()
		if again := c[name](); !reflect.DeepEqual(again, want[i]) {
			t.Errorf("%s: a second call gives %v, the first gave %v", name, again, want[i])
			return
		}
	}
	n := crowd
	if testing.Short() {
		n = shortCrowd
	}
	var wait sync.WaitGroup
	for g := range n {
		wait.Go(func() {
			for _, i := range rand.New(rand.NewPCG(uint64(g), 1)).Perm(len(names)) {
				if got := c[names[i]](); !reflect.DeepEqual(got, want[i]) {
					t.Errorf("%s: %v among others, alone %v", names[i], got, want[i])
				}
			}
		})
	}
	wait.Wait()
}

// Failed lists the calls that return an error, by name. Of those Compare sees only
// that they are refused alike: a table says which of its calls are meant to be.
func (c Calls) Failed() []string {
	var out []string
	for _, name := range slices.Sorted(maps.Keys(c)) {
		answer := c[name]()
		results, ok := answer.([]any)
		if !ok {
			results = []any{answer}
		}
		if slices.ContainsFunc(results, func(v any) bool { _, is := v.(error); return is }) {
			out = append(out, name)
		}
	}
	return out
}
