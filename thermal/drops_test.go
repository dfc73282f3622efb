package thermal

import (
	"math"
	"testing"
)

func TestHalfSphereHoldsTwoThirds(t *testing.T) {
	if got := capShape(math.Pi / 2); math.Abs(got-2.0/3) > 1e-12 {
		t.Errorf("%g", got)
	}
	// a flat cap tends to theta/4
	if got := capShape(0.01); math.Abs(got-0.0025) > 1e-6 {
		t.Errorf("%g", got)
	}
}

func TestDropsGrowWithTheWater(t *testing.T) {
	last := 0.0
	for _, grams := range []float64{0.4, 4, 20, 175} {
		d, err := DropDiameter(grams, 90, 0.55)
		if err != nil {
			t.Fatal(err)
		}
		if d <= last || math.Abs(d-5.4545e-6*grams) > 1e-8*grams {
			t.Errorf("%g g/m2: %g m", grams, d)
		}
		flat, err := DropDiameter(grams, 40, 0.7)
		if err != nil || flat < d {
			t.Errorf("%g g/m2: flat drops %g m, round ones %g, %v", grams, flat, d, err)
		}
		last = d
	}
}

// The force balance by hand for 40 and 15 degrees: 4.9 mm; 20 and 5: 3.9 mm.
func TestRunningDropByHand(t *testing.T) {
	for _, c := range []struct{ advancing, receding, want float64 }{{40, 15, 4.89e-3}, {20, 5, 3.91e-3}, {55, 25, 5.11e-3}} {
		got, err := RunningDrop(c.advancing, c.receding)
		if err != nil || math.Abs(got-c.want) > 0.02e-3 {
			t.Errorf("%g/%g: %g m, want %g, %v", c.advancing, c.receding, got, c.want, err)
		}
	}
	sticky, err := RunningDrop(90, 10)
	if err != nil {
		t.Fatal(err)
	}
	slippery, err := RunningDrop(90, 85)
	if err != nil {
		t.Fatal(err)
	}
	if slippery >= sticky {
		t.Errorf("slippery %g, sticky %g", slippery, sticky)
	}
}

func TestDropsRefuseNonsense(t *testing.T) {
	for name, f := range map[string]func() (float64, error){
		"water":     func() (float64, error) { return DropDiameter(math.NaN(), 90, 0.5) },
		"angle":     func() (float64, error) { return DropDiameter(1, 180, 0.5) },
		"coverage":  func() (float64, error) { return DropDiameter(1, 90, 0) },
		"advancing": func() (float64, error) { return RunningDrop(0, 0) },
		"receding":  func() (float64, error) { return RunningDrop(40, math.Inf(1)) },
		"order":     func() (float64, error) { return RunningDrop(40, 40) },
	} {
		if v, err := f(); err == nil {
			t.Errorf("%s: got %g", name, v)
		} else {
			typed(t, err)
		}
	}
}

func FuzzDrops(f *testing.F) {
	f.Add(20.0, 90.0, 0.55)
	f.Fuzz(func(t *testing.T, a, b, c float64) {
		for _, g := range []func() (float64, error){
			func() (float64, error) { return DropDiameter(a, b, c) },
			func() (float64, error) { return RunningDrop(a, b) },
		} {
			if v, err := g(); err != nil {
				typed(t, err)
			} else {
				finiteAll(t, v)
			}
		}
	})
}
