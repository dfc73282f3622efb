package rheology_test

import (
	"fmt"
	"log"

	"example.org/honestplate/rheology"
)

// A blend in its two terms: syrup and water are what the table says of their Brix.
func ExampleMix_Departure() {
	mix, err := rheology.Blend(
		rheology.Part{Liquid: rheology.Sucrose{Brix: 65}, Grams: 100},
		rheology.Part{Liquid: rheology.Water{}, Grams: 100})
	if err != nil {
		log.Fatal(err)
	}
	d, err := mix.Departure(20)
	if err != nil {
		log.Fatal(err)
	}
	v, err := mix.Viscosity(20)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("log-mixed %.2f mPa s, E %.3f: %.3f mPa s (%.2f to %.2f)\n", 1e3*d.LogMixedPaS, d.E, 1e3*v.Likely, 1e3*v.Low, 1e3*v.High)
	// Output:
	// log-mixed 12.07 mPa s, E -1.177: 3.718 mPa s (3.57 to 3.87)
}
