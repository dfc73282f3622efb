package rheology_test

import (
	"fmt"
	"log"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// Milk and cream at fridge temperature. From fat alone the band is wide; with
// both measured it is that of the departure from log-mixing.
func ExampleBlend() {
	milk, cream := rheology.Dairy{FatPercent: 3.5}, rheology.Dairy{FatPercent: 36}
	show := func(what string, parts ...rheology.Part) {
		m, err := rheology.Blend(parts...)
		if err != nil {
			log.Fatal(err)
		}
		v, err := m.Viscosity(6)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%s: %.1f mPa s (%.1f to %.1f)\n", what, 1e3*v.Likely, 1e3*v.Low, 1e3*v.High)
	}
	show("by fat", rheology.Part{Liquid: milk, Grams: 300}, rheology.Part{Liquid: cream, Grams: 200})
	show("measured",
		rheology.Part{Liquid: rheology.Measured{Liquid: milk, TempC: 6, PaS: honestplate.Within(0.0029, 0.05)}, Grams: 300},
		rheology.Part{Liquid: rheology.Measured{Liquid: cream, TempC: 6, PaS: honestplate.Within(0.021, 0.05)}, Grams: 200})
	// Output:
	// by fat: 5.8 mPa s (4.2 to 12.7)
	// measured: 5.3 mPa s (4.4 to 6.4)
}
