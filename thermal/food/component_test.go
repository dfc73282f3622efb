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
		{"water conductivity", conductivityFits[waterPart].at, 20, 0.60, 0.01},
		{"ice conductivity", conductivityFits[icePart].at, -20, 2.4, 0.03},
		{"water heat", heatFits[waterPart].at, 20, 4180, 0.003},
		{"fat heat", heatFits[fatPart].at, 60, 2055, 0.003},
	} {
		got := c.of(c.at)
		if math.Abs(got/c.want-1) > c.tolerance {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// The fits are those of the handbook, in its own units: ASHRAE Handbook Refrigeration
// 2006, ch. 9, tables 1 and 2, after Choi and Okos 1986 (from memory): conductivity in
// W/(m K), density in kg/m3, specific heat in kJ/(kg K), by powers of the temperature.
func TestComponentsAreThoseOfTheHandbook(t *testing.T) {
	names := [componentCount]string{"water", "protein", "fat", "carbohydrate", "ash", "ice"}
	for c, want := range [componentCount]struct{ conductivity, density, heat [3]float64 }{
		waterPart:        {[3]float64{5.7109e-1, 1.7625e-3, -6.7036e-6}, [3]float64{9.9718e2, 3.1439e-3, -3.7574e-3}, [3]float64{4.1762, -9.0864e-5, 5.4731e-6}},
		proteinPart:      {[3]float64{1.7881e-1, 1.1958e-3, -2.7178e-6}, [3]float64{1.3299e3, -5.1840e-1, 0}, [3]float64{2.0082, 1.2089e-3, -1.3129e-6}},
		fatPart:          {[3]float64{1.8071e-1, -2.7604e-4, -1.7749e-7}, [3]float64{9.2559e2, -4.1757e-1, 0}, [3]float64{1.9842, 1.4733e-3, -4.8008e-6}},
		carbohydratePart: {[3]float64{2.0141e-1, 1.3874e-3, -4.3312e-6}, [3]float64{1.5991e3, -3.1046e-1, 0}, [3]float64{1.5488, 1.9625e-3, -5.9399e-6}},
		ashPart:          {[3]float64{3.2962e-1, 1.4011e-3, -2.9069e-6}, [3]float64{2.4238e3, -2.8063e-1, 0}, [3]float64{1.0926, 1.8896e-3, -3.6817e-6}},
		icePart:          {[3]float64{2.2196, -6.2489e-3, 1.0154e-4}, [3]float64{9.1689e2, -1.3071e-1, 0}, [3]float64{2.0623, 6.0769e-3, 0}},
	} {
		c := component(c)
		for _, t1 := range []float64{-40, 5, 60} {
			for name, q := range map[string]struct {
				got  float64
				want [3]float64
				unit float64
			}{
				"conductivity":  {conductivityFits[c].at(t1), want.conductivity, 1},
				"density":       {densityFits[c].at(t1), want.density, 1},
				"specific heat": {heatFits[c].at(t1), want.heat, 1000},
			} {
				if c == waterPart && t1 < 0 && name == "specific heat" {
					continue // its second line in the table, of supercooled water
				}
				if want := q.unit * (q.want[0] + t1*(q.want[1]+t1*q.want[2])); math.Abs(q.got/want-1) > 1e-12 {
					t.Errorf("%s of %s at %g degC: %g, handbook %g", name, names[c], t1, q.got, want)
				}
			}
		}
	}
}

// What the handbook worked out with them: density, kg/m3, and conductivity, W/(m K), at -40
// degC, of its lean pork shoulder (ASHRAE Handbook Refrigeration 2006, ch. 9, example, from
// memory), and the specific heat above freezing, J/(kg K), of dairy foods by their water,
// protein, fat, carbohydrate and ash (the same, table 3, from memory).
func TestComponentsGiveTheHandbooksExamples(t *testing.T) {
	for c, want := range map[component][2]float64{waterPart: {991.04, 0.4898}, icePart: {922.12, 2.632}, proteinPart: {1350.6, 0.1266},
		fatPart: {942.29, 0.1914}, ashPart: {2435.0, 0.2689}} {
		if rho, k := densityFits[c].at(-40), conductivityFits[c].at(-40); math.Abs(rho/want[0]-1) > 6e-4 || math.Abs(k/want[1]-1) > 6e-4 {
			t.Errorf("component %d: %g kg/m3 and %g W/(m K), handbook %v", c, rho, k, want)
		}
	}
	for name, v := range map[string][6]float64{
		"ice cream": {61.0, 3.5, 11.0, 23.6, 0.9, 3220}, "whole milk": {87.69, 3.28, 3.66, 4.65, 0.72, 3890}, "skim milk": {90.8, 3.41, 0.18, 4.85, 0.76, 3950},
		"half and half": {80.57, 2.96, 11.5, 4.3, 0.67, 3730}, "table cream": {73.75, 2.7, 19.31, 3.66, 0.58, 3590}, "whipping cream": {57.71, 2.05, 37.0, 2.79, 0.45, 3250},
	} {
		got, whole := 0.0, 0.0
		for i, c := range []component{waterPart, proteinPart, fatPart, carbohydratePart, ashPart} {
			got += v[i] * heatFits[c].at(5)
			whole += v[i]
		}
		if got /= whole; math.Abs(got/v[5]-1) > 0.015 {
			t.Errorf("%s: %.0f J/(kg K), handbook %g", name, got, v[5])
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
