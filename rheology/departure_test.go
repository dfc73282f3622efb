package rheology_test

import (
	"math"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

func likely(t *testing.T, l Liquid, tempC float64) float64 {
	t.Helper()
	e, err := l.Viscosity(tempC)
	if err != nil {
		t.Fatal(err)
	}
	return e.Likely
}

// A blend of what shares a composition is what it has become, to 1e-9: the solution's own
// law at the mean strength, milk or cream of the mean fat.
func TestABlendOfOneCompositionIsThatComposition(t *testing.T) {
	for _, c := range []struct {
		parts []Part
		is    Liquid
		tempC float64
	}{
		{[]Part{{Sucrose{Brix: 65}, 1}, {Water{}, 1}}, Sucrose{Brix: 32.5}, 20},
		{[]Part{{Sucrose{Brix: 65}, 4}, {Water{}, 1}}, Sucrose{Brix: 52}, 5},
		{[]Part{{Sucrose{Brix: 70}, 1}, {Sucrose{Brix: 40}, 1}}, Sucrose{Brix: 55}, 20},
		{[]Part{{Sucrose{Brix: 70}, 1}, {Sucrose{Brix: 40}, 1}, {Water{}, 2}}, Sucrose{Brix: 27.5}, 40},
		{[]Part{{Syrup{Of: "maple", SolidsPercent: 66}, 9}, {Water{}, 1}}, Sucrose{Brix: 59.4}, 20},
		{[]Part{{Honey{MoisturePercent: 16}, 84}, {Water{}, 4}}, Honey{MoisturePercent: 100 - 84*84.0/88}, 20},
		{[]Part{{Honey{MoisturePercent: 15}, 1}, {Syrup{Of: "invert", SolidsPercent: 75}, 1}}, Honey{MoisturePercent: 20}, 20},
		{[]Part{{Glycerol{Percent: 85}, 1}, {Glycerol{}, 1}}, Glycerol{Percent: 42.5}, 20},
		{[]Part{{Dairy{FatPercent: 3.5}, 3}, {Dairy{FatPercent: 36}, 2}}, Dairy{FatPercent: 16.5}, 5},
		{[]Part{{Dairy{FatPercent: 3.5}, 1}, {Dairy{FatPercent: 12}, 1}, {Dairy{FatPercent: 45}, 2}}, Dairy{FatPercent: 26.375}, 30},
		{[]Part{{Dairy{FatPercent: 2, Treatment: Homogenised}, 1}, {Dairy{FatPercent: 30, Treatment: Homogenised}, 1}},
			Dairy{FatPercent: 16, Treatment: Homogenised}, 60},
	} {
		m := mustBlend(t, Rule{}, c.parts...)
		got, want := likely(t, m, c.tempC), likely(t, c.is, c.tempC)
		if math.Abs(got/want-1) > 1e-9 {
			t.Errorf("%v at %g degC: %.12g, %v has %.12g", m.Describe().Name, c.tempC, got, c.is.Describe().Name, want)
		}
		slow, err1 := m.ViscosityAtRate(c.tempC, 3)
		is, err2 := ViscosityAtRate(c.is, c.tempC, 3)
		if err1 != nil || err2 != nil || math.Abs(slow.Likely/is.Likely-1) > 1e-9 {
			t.Errorf("%v at 3 1/s: %v, %v has %v", m.Describe().Name, slow, c.is.Describe().Name, is)
		}
		d, err := m.Departure(c.tempC)
		if err != nil || math.Abs(d.LogMixedPaS*math.Exp(d.E)/got-1) > 1e-12 || d.E > 0 || d.Low > d.E || d.High < d.E {
			t.Errorf("%v: terms %+v, %v", m.Describe().Name, d, err)
		}
	}
	// Water by its own table in glycerol by Cheng's formula: they differ by 0.5 %.
	m := mustBlend(t, Rule{}, Part{Glycerol{Percent: 85}, 1}, Part{Water{}, 1})
	if got, want := likely(t, m, 20), likely(t, Glycerol{Percent: 42.5}, 20); math.Abs(got/want-1) > 0.005 {
		t.Errorf("glycerol and water: %g, want %g", got, want)
	}
}

// The band of a sugar solution made of two is near that of the solution, not a factor.
func TestABlendOfSolutionsIsKnownToPerCents(t *testing.T) {
	e, err := mustBlend(t, Rule{}, Part{Sucrose{Brix: 65}, 1}, Part{Water{}, 1}).Viscosity(20)
	if err != nil || e.High/e.Low > 1.1 || !e.Contains(3.787e-3) {
		t.Errorf("%v, %v: the table's 32.5 Brix is 3.787 mPa s", e, err)
	}
}

// A recipe goes by the same law as the blend it makes.
func TestARecipeOfWaterAndSyrupGivesWhatWasAsked(t *testing.T) {
	r := Recipe{Thin: Water{}, Thick: Sucrose{Brix: 65}, BatchGrams: 1000, StepGrams: 0.01, TempC: 20}
	b, err := r.For(0.010)
	if err != nil {
		t.Fatal(err)
	}
	made := Sucrose{Brix: 65 * b.ThickGrams / 1000}
	if v := likely(t, made, 20); math.Abs(v/0.010-1) > 1e-4 {
		t.Errorf("%g g of syrup: %g Brix is %g Pa s, wanted 0.010", b.ThickGrams, made.Brix, v)
	}
	// Measured a tenth too thin, the correction goes by the law as well.
	c, err := Correct(b, 0.009)
	if err != nil || c.AddThickGrams == 0 || c.Predicted.High/c.Predicted.Low > 1.05 {
		t.Errorf("%+v, %v", c, err)
	}
	if d, err := b.Departure(); err != nil || d.E > -1 {
		t.Errorf("%+v, %v", d, err)
	}
}

// What shares nothing is log-mixed, E 0; a trace of something else leaves the rest as it is.
func TestBetweenLiquidsThatShareNothingTheDepartureIsZero(t *testing.T) {
	m := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 1}, Part{Syrup{Of: "maple"}, 1})
	if d, err := m.Departure(10); err != nil || d.E != 0 || d.Low >= 0 || d.High <= 0 {
		t.Errorf("milk and maple: %+v, %v", d, err)
	}
	pure := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 1}, Part{Dairy{FatPercent: 36}, 1})
	trace := mustBlend(t, Rule{}, Part{Dairy{FatPercent: 3.5}, 1}, Part{Dairy{FatPercent: 36}, 1}, Part{Sucrose{Brix: 60}, 1e-9})
	if a, b := likely(t, pure, 5), likely(t, trace, 5); math.Abs(a/b-1) > 1e-6 {
		t.Errorf("a trace of sugar moves %g to %g", a, b)
	}
	sugar := mustBlend(t, Rule{}, Part{Sucrose{Brix: 60}, 1}, Part{Water{}, 1})
	honey := mustBlend(t, Rule{}, Part{Sucrose{Brix: 60}, 1}, Part{Water{}, 1}, Part{Honey{}, 1e-9})
	if a, b := likely(t, sugar, 20), likely(t, honey, 20); math.Abs(a/b-1) > 1e-6 {
		t.Errorf("a trace of honey moves %g to %g", a, b)
	}
}

// A law's departure falls between the ends whatever was measured of them.
func TestMeasuredEndsKeepABlendBetweenThem(t *testing.T) {
	for _, factor := range []float64{0.3, 0.7, 1, 1.5, 4} {
		thick := likely(t, Sucrose{Brix: 65}, 20) * factor
		last := 0.0
		for w := 0.0; w <= 1.0001; w += 0.05 {
			m := mustBlend(t, Rule{}, Part{Water{}, 1.0001 - w},
				Part{Measured{Liquid: Sucrose{Brix: 65}, TempC: 20, PaS: honestplate.Exactly(thick)}, w + 1e-6})
			v := likely(t, m, 20)
			if v < last || v > thick*(1+1e-9) {
				t.Errorf("%g of the table, %.2f: %g after %g, the syrup has %g", factor, w, v, last, thick)
			}
			last = v
		}
	}
}
