package rheology_test

import (
	"reflect"
	"sync"
	"testing"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/rheology/pour"
	"example.org/honestplate/rheology/viscometer"
)

// Many goroutines that share their values get what one gets: whatever keeps state between
// calls would show here and under the race detector.
func TestConcurrentUseGivesWhatSerialUseGives(t *testing.T) {
	recipe := rheology.Recipe{Thin: rheology.Dairy{FatPercent: 3.5}, Thick: rheology.Dairy{FatPercent: 36}, BatchGrams: 500, StepGrams: 1, TempC: 6}
	batch, err := recipe.For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	mix, err := batch.Mix()
	if err != nil {
		t.Fatal(err)
	}
	ready, err := recipe.Prepare()
	if err != nil {
		t.Fatal(err)
	}
	cup, points := viscometer.Cups()[0], []flow.Point{{ShearRate: 1, Stress: 40}, {ShearRate: 10, Stress: 51}, {ShearRate: 30, Stress: 62}, {ShearRate: 300, Stress: 118}}
	spout := pour.Spout{Diameter: 0.01, Length: 0.02, Head: 0.1, SurfaceArea: 0.01}
	all := func() []any {
		var out []any
		keep := func(v any, err error) { out = append(out, v, err) }
		for _, l := range append(rheology.Catalogue(), mix) {
			d := l.Describe()
			keep(l.Viscosity(d.LowC))
			p, err := spout.Pour(l, d.HighC, 50)
			keep(p.Duration, err)
		}
		keep(recipe.For(0.009))
		keep(ready.For(0.011))
		keep(cup.Timed(40 * time.Second).Correct(batch))
		keep(batch.Sensitivity())
		keep(cup.TimeOf(mix, 6))
		keep(flow.FitAll(points))
		return out
	}
	want := all()
	var wait sync.WaitGroup
	for range 8 {
		wait.Go(func() {
			if got := all(); !reflect.DeepEqual(got, want) {
				t.Error("another answer beside others")
			}
		})
	}
	wait.Wait()
}
