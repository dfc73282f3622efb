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

// Blends of what shares no composition are measured, and the rule fitted.
func ExampleRecipe_FitRule() {
	recipe := rheology.Recipe{
		Thin: rheology.Dairy{FatPercent: 3.5}, Thick: rheology.Honey{},
		BatchGrams: 300, StepGrams: 1, TempC: 20,
	}
	rule, err := recipe.FitRule(rheology.MixPoint{ThickFraction: 0.5, PaS: 0.040}, rheology.MixPoint{ThickFraction: 0.8, PaS: 0.9})
	if err != nil {
		log.Fatal(err)
	}
	recipe.Rule = rule
	batch, err := recipe.For(0.100)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("D %.1f: milk %g g, honey %g g for 100 mPa s\n", rule.D, batch.ThinGrams, batch.ThickGrams)
	// Output:
	// D -5.7: milk 120 g, honey 180 g for 100 mPa s
}
