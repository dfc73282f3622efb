package rheology_test

import (
	"testing"

	. "example.org/honestplate/rheology"
)

// Common practice, no source: adding cream slows the pour of milk.
func TestAddingCreamSlowsThePourOfMilk(t *testing.T) {
	for _, spout := range []Spout{
		{Diameter: 0.004, Length: 0.03, Head: 0.05},
		{Diameter: 0.008, Length: 0.03, Head: 0.06, SurfaceArea: 0.008},
	} {
		for _, tempC := range []float64{4, 20, 45} {
			var last Pour
			for cream := 0.0; cream <= 500; cream += 50 {
				m, err := Blend(Part{Dairy{FatPercent: 3.5}, 500 - cream}, Part{Dairy{FatPercent: 36}, cream})
				if err != nil {
					t.Fatal(err)
				}
				p, err := spout.Pour(m, tempC, 200)
				if err != nil {
					t.Fatal(err)
				}
				if cream > 0 && p.Duration.Likely.After <= last.Duration.Likely.After {
					t.Errorf("%v degC, %v g of cream: %v, with 50 g less %v", tempC, cream, p.Duration.Likely.After, last.Duration.Likely.After)
				}
				last = p
			}
		}
	}
}

// Common practice, no source: chilling thickens more than warming thins, at the
// same step.
func TestChillingABlendThickensMoreThanWarmingThins(t *testing.T) {
	for tempC := 5.0; tempC <= 25; tempC += 5 {
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
			if err != nil || s.Colder <= -s.Warmer {
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
