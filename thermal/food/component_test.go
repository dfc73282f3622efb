package food

import (
	"math"
	"math/rand/v2"
	"testing"
)

// The constants found wrong in public code, held by a property each: textbook values
// of water at 20 degC and ice at -20 degC, and of fat's heat at 60 degC.
func TestConstantsThatPublicCodeGetsWrong(t *testing.T) {
	for _, c := range []struct {
		name      string
		of        func(float64) float64
		at, want  float64
		tolerance float64
	}{
		{"water conductivity", waterPart.conductivityFit().at, 20, 0.60, 0.01},
		{"ice conductivity", icePart.conductivityFit().at, -20, 2.4, 0.03},
		{"water heat", waterPart.heatFit(20).at, 20, 4180, 0.003},
		{"fat heat", fatPart.heatFit(60).at, 60, 2055, 0.003},
	} {
		got := c.of(c.at)
		if math.Abs(got/c.want-1) > c.tolerance {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// Levy's rule does not mind which phase is called the dispersed one, and both rules
// stay between the bounds of series and parallel.
func TestMixingRulesForConductivity(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 1000 {
		a, b, v := 0.02+3*r.Float64(), 0.02+3*r.Float64(), r.Float64()
		if x, y := levy(a, b, v), levy(b, a, 1-v); math.Abs(x-y) > 1e-9*x {
			t.Fatalf("levy(%g, %g, %g): %g, the other way %g", a, b, v, x, y)
		}
		if x, y := effectiveMedium(a, b, v), effectiveMedium(b, a, 1-v); math.Abs(x-y) > 1e-9*x {
			t.Fatalf("effective medium of %g, %g, %g: %g, the other way %g", a, b, v, x, y)
		}
		series, parallel := 1/(v/a+(1-v)/b), v*a+(1-v)*b
		for _, k := range []float64{levy(a, b, v), effectiveMedium(b, a, v)} {
			if k < series*(1-1e-9) || k > parallel*(1+1e-9) {
				t.Fatalf("%g and %g, %g of the first: %g outside %g..%g", a, b, v, k, series, parallel)
			}
		}
	}
	for _, air := range []float64{0, 0.2, 0.47, 0.6} {
		k, open := foam(0.9, 0.024, air), effectiveMedium(0.9, 0.024, air)
		if k < open-1e-12 || k > 0.9*(1-air)+0.024*air+1e-12 || (air <= 0.5 && k > 1.21*open) {
			t.Errorf("foam with %g of air: %g, open pores %g", air, k, open)
		}
	}
	if k := levy(2, 2*(1+1e-9), 0.3); math.Abs(k-2) > 1e-8 {
		t.Errorf("alike phases: %g", k)
	}
}
