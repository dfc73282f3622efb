package rheology_test

import (
	"math"
	"reflect"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

// sane fails unless every value is finite, and each Estimate in order. NaN on
// success is what these targets look for, besides panics.
func sane(t *testing.T, err error, values ...any) {
	t.Helper()
	if err != nil {
		if err.Error() == "" {
			t.Error("an error without words")
		}
		return
	}
	for i, v := range values {
		switch v := v.(type) {
		case float64:
			if math.IsNaN(v) || math.IsInf(v, 0) {
				t.Errorf("value %d is %v", i, v)
			}
		case honestplate.Estimate:
			if !(v.Low <= v.Likely && v.Likely <= v.High) || math.IsInf(v.High, 0) || math.IsInf(v.Low, 0) {
				t.Errorf("value %d is %+v", i, v)
			}
		}
	}
}

// any of the liquids that blends are made of, by two numbers.
func anyLiquid(kind uint8, x, tempC float64) Liquid {
	switch kind % 6 {
	case 0:
		return Dairy{FatPercent: x}
	case 1:
		return Water{}
	case 2:
		return Sucrose{Brix: x}
	case 3:
		return Honey{MoisturePercent: x}
	case 4:
		return Measured{Liquid: Dairy{FatPercent: 20}, TempC: tempC, PaS: honestplate.Exactly(x)}
	}
	m, _ := Blend(Part{Dairy{FatPercent: x}, 1}, Part{Dairy{FatPercent: 5}, x})
	return m
}

func anyRule(kind uint8, d float64) Rule {
	switch kind % 5 {
	case 1:
		return Rule{}
	case 3:
		return Rule{NoDeparture: true}
	}
	return Rule{D: d}
}

func FuzzBlend(f *testing.F) {
	f.Add(uint8(3), uint8(1), uint8(1), 17.0, 0.0, 100.0, 50.0, 20.0, 10.0)
	f.Add(uint8(5), uint8(0), uint8(1), -1.0, 3.5, 100.0, 50.0, 20.0, 10.0)
	f.Add(uint8(0), uint8(0), uint8(1), 3.5, 36.0, 300.0, 200.0, 6.0, -0.5)
	f.Add(uint8(4), uint8(4), uint8(3), 0.002, 0.03, 1.0, 1e300, 6.0, 0.0)
	f.Add(uint8(2), uint8(1), uint8(4), 65.0, 0.0, 1e-300, 1.0, 20.0, math.Inf(1))
	f.Fuzz(func(t *testing.T, a, b, rule uint8, x, y, ga, gb, tempC, d float64) {
		r := anyRule(rule, d)
		la, lb := anyLiquid(a, x, tempC), anyLiquid(b, y, tempC)
		m, err := r.Blend(Part{la, ga}, Part{lb, gb}, Part{la, gb})
		if err != nil {
			return
		}
		v, err := m.Viscosity(tempC)
		sane(t, err, v)
		at, err := m.ViscosityAtRate(tempC, math.Abs(d))
		sane(t, err, at)
		rho, err := m.Density(tempC)
		sane(t, err, rho)
		sigma, err := m.SurfaceTension(tempC)
		sane(t, err, sigma)
		if m.Describe().Name == "" {
			t.Error("a mix without a name")
		}
		if c, ok := CompositionOf(m); ok {
			if sum := c.WaterPercent + c.FatPercent + c.MilkSolidsPercent + c.SugarPercent + c.GlycerolPercent; math.Abs(sum-100) > 1e-6 {
				t.Errorf("the parts are %v %% of the mix", sum)
			}
		}
	})
}

func FuzzRecipe(f *testing.F) {
	f.Add(uint8(0), uint8(0), uint8(0), 3.5, 36.0, 500.0, 1.0, 6.0, 0.012, 0.010, 33.0)
	f.Add(uint8(4), uint8(4), uint8(4), 0.003, 0.03, 100.0, 0.1, 5.0, 0.01, 0.5, 40.0)
	f.Add(uint8(1), uint8(2), uint8(2), 0.0, 60.0, 1000.0, 0.1, 20.0, 0.02, 1e-9, 99.0)
	f.Fuzz(func(t *testing.T, a, b, rule uint8, x, y, batch, step, tempC, pas, measured, seconds float64) {
		r := Recipe{Thin: anyLiquid(a, x, tempC), Thick: anyLiquid(b, y, tempC), BatchGrams: batch, StepGrams: step, TempC: tempC, Rule: anyRule(rule, -0.1*x)}
		low, high, err := r.Reach()
		sane(t, err, low, high)
		fat, err := r.ForFat(pas)
		sane(t, err, fat.ThinGrams, fat.ThickGrams, fat.Predicted)
		made, err := r.For(pas)
		ready, err2 := r.Prepare()
		if err2 == nil {
			same, err2 := ready.For(pas)
			if !reflect.DeepEqual(same, made) || (err == nil) != (err2 == nil) {
				t.Errorf("%+v, %v; prepared %+v, %v", made, err, same, err2)
			}
		}
		if err != nil {
			return
		}
		sane(t, err, made.ThinGrams, made.ThickGrams, made.Predicted)
		if math.Abs(made.ThinGrams+made.ThickGrams-batch) > 1e-9*batch {
			t.Errorf("%v + %v g of %v", made.ThinGrams, made.ThickGrams, batch)
		}
		c, err := Correct(made, measured)
		sane(t, err, c.AddThinGrams, c.AddThickGrams, c.TotalGrams, c.Predicted)
		if err == nil {
			if c.AddThinGrams < 0 || c.AddThickGrams < 0 || c.AddThinGrams > 0 && c.AddThickGrams > 0 {
				t.Errorf("%+v", c)
			}
			// Measured as predicted, the corrected batch needs next to nothing.
			again, err := Correct(c.Batch, c.Predicted.Likely)
			sane(t, err, again.Predicted)
		}
		at, err := made.Chill(measured, min(x, y), max(x, y))
		sane(t, err, at)
		terms, err := made.Departure()
		sane(t, err, terms.LogMixedPaS, terms.E, terms.Low, terms.High)
		m, err := made.Mix()
		sane(t, err)
		if err == nil {
			yield, err := m.YieldStress(tempC)
			sane(t, err, yield)
		}
		within, err := made.Correct(honestplate.Factor(measured, 1+x), math.Abs(y)/100)
		sane(t, err, within.Predicted, within.OK)
		s, err := made.Sensitivity()
		sane(t, err, s.OneGram, s.Warmer, s.OneFatPercent, s.GramsADegree)
	})
}

func FuzzServeAt(f *testing.F) {
	f.Add(uint8(0), 20.0, 0.01, 2.0, 12.0)
	f.Add(uint8(3), 17.0, 10.0, 15.0, 40.0)
	f.Fuzz(func(t *testing.T, kind uint8, x, pas, low, high float64) {
		l := anyLiquid(kind, x, 10)
		at, err := ServeAt(l, pas, low, high)
		sane(t, err, at)
		if err == nil {
			if at < low || at > high {
				t.Errorf("%v outside %v..%v", at, low, high)
			}
			v, err := l.Viscosity(at)
			sane(t, err, v)
			if math.Abs(v.Likely/pas-1) > 1e-3 {
				t.Errorf("%v at %v, wanted %v", v.Likely, at, pas)
			}
		}
	})
}

func FuzzFitRule(f *testing.F) {
	f.Add(5.0, 3.5, 0.003, 36.0, 0.03, 0.4, 0.01, -0.5)
	f.Add(79.0, 16.5, 43.003, 26.0, 0.0033, 0.3, 95.01, -2976.0)
	f.Add(36.0, 0.0, 20.0, 1.0, 0.05, 0.001, 5e-324, 0.0)
	f.Fuzz(func(t *testing.T, tempC, f1, v1, f2, v2, w, v, d float64) {
		cup := func(fat, pas float64) Liquid {
			return Measured{Liquid: Dairy{FatPercent: fat}, TempC: tempC, PaS: honestplate.Exactly(pas)}
		}
		r := Recipe{Thin: cup(f1, v1), Thick: cup(f2, v2), TempC: tempC}
		fit, err := r.FitRule(MixPoint{w, v}, MixPoint{0.5, v})
		sane(t, err, fit.D)
		for _, rule := range []Rule{{}, {NoDeparture: true}, {D: d}, {D: d, NoDeparture: true}, fit} {
			m, err := rule.Blend(Part{r.Thin, 1 - w}, Part{r.Thick, w})
			sane(t, err)
			e, err := m.Viscosity(tempC)
			sane(t, err, e.Low, e.Likely, e.High)
			gone, err := m.Departure(tempC)
			sane(t, err, gone.LogMixedPaS, gone.E, gone.Low, gone.High)
		}
	})
}
