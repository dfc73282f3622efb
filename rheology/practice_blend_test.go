package rheology_test

import (
	"math"
	"testing"

	. "example.org/honestplate/rheology"
)

// Common practice, no source: chilling thickens more than warming thins, at the
// same step.
func TestChillingABlendThickensMoreThanWarmingThins(t *testing.T) {
	// From 20 degC on the fat of the cream melts, and warming thins more.
	for tempC := 4.0; tempC <= 16; tempC += 4 {
		for _, r := range []Recipe{
			{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 36}, BatchGrams: 500, StepGrams: 1, TempC: tempC},
			{Thin: Water{}, Thick: Sucrose{Brix: 60}, BatchGrams: 500, StepGrams: 1, TempC: tempC + 5},
		} {
			low, high, err := r.Reach()
			if err != nil {
				t.Fatal(err)
			}
			b, err := r.For((low.Likely + high.Likely) / 2)
			if err != nil {
				t.Fatal(err)
			}
			s, err := b.Sensitivity()
			if colder := math.Expm1(s.GramsADegree * math.Log1p(s.OneGram)); err != nil || colder <= -s.Warmer {
				t.Errorf("%v degC: %+v, %v", tempC, s, err)
			}
		}
	}
}

// Common practice, no source: a splash of cream thickens milk less than the last
// of the milk thins the cream.
func TestCreamIsThinnedMoreByALittleMilkThanMilkThickenedByALittleCream(t *testing.T) {
	at := func(cream float64) float64 {
		m, err := Blend(Part{Dairy{FatPercent: 3.5}, 100 - cream}, Part{Dairy{FatPercent: 36}, cream})
		if err != nil {
			t.Fatal(err)
		}
		v, err := m.Viscosity(6)
		if err != nil {
			t.Fatal(err)
		}
		return v.Likely
	}
	if at(10)-at(0) >= at(100)-at(90) {
		t.Errorf("milk +%v, cream -%v", at(10)-at(0), at(100)-at(90))
	}
}
