package pour_test

import (
	"testing"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// Common practice, no source: adding cream slows the pour of milk.
func TestAddingCreamSlowsThePourOfMilk(t *testing.T) {
	for _, spout := range []pour.Spout{
		{Diameter: 0.004, Length: 0.03, Head: 0.05},
		{Diameter: 0.008, Length: 0.03, Head: 0.06, SurfaceArea: 0.008},
	} {
		for _, tempC := range []float64{4, 20, 45} {
			var last pour.Pour
			for cream := 0.0; cream <= 500; cream += 50 {
				m, err := rheology.Blend(rheology.Part{Liquid: rheology.Dairy{FatPercent: 3.5}, Grams: 500 - cream}, rheology.Part{Liquid: rheology.Dairy{FatPercent: 36}, Grams: cream})
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
