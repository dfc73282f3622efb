package rheology_test

import (
	"fmt"
	"log"

	"example.org/honestplate/rheology"
)

// Four liquids in the fridge, prices invented: the cheapest way to 8 mPa s, then
// the way with the least cream.
func ExampleProgram() {
	p := rheology.Program{
		Stock: []rheology.Stock{
			{Liquid: rheology.Dairy{FatPercent: 0.1}, CostPerKg: 0.9, MaxGrams: 200},
			{Liquid: rheology.Dairy{FatPercent: 3.5}, CostPerKg: 1.2},
			{Liquid: rheology.Dairy{FatPercent: 12}, CostPerKg: 2.6, MaxGrams: 250},
			{Liquid: rheology.Dairy{FatPercent: 36}, CostPerKg: 7},
		},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}
	cheapest, err := p.For(0.008)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%g g, %.2f in all, %.2f mPa s\n", cheapest.Grams, cheapest.Cost, 1e3*cheapest.Predicted.Likely)
	leanest, err := p.LeastOf(3, 0.008)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%g g, %.2f in all\n", leanest.Grams, leanest.Cost)
	_, err = p.For(0.08)
	fmt.Println(err)
	// Output:
	// [111 0 250 139] g, 1.72 in all, 7.99 mPa s
	// [0 116 250 134] g, 1.73 in all
	// rheology: viscosity wanted is 0.08 Pa s, outside 0.00291998..0.0342242 Pa s (reach of the 4 liquids at hand at 6 degC within their limits)
}
