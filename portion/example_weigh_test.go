package portion_test

import (
	"fmt"

	"example.org/honestplate/portion"
)

// What a kitchen scale in 0.5 g steps can say about 62 g of cheese, and what that
// means for the picture.
func ExampleDeclaration_JudgePicture() {
	scale := portion.Scale{StepGrams: 0.5, MaxGrams: 3000, InService: true}
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	for _, reading := range []float64{62, 62.5, 64} {
		w, err := scale.Weigh(reading)
		if err != nil {
			fmt.Println(err)
			return
		}
		v, err := cheese.JudgePicture(w)
		fmt.Println(v.Reason)
		if err != nil {
			fmt.Println(err)
		}
	}
	// Output:
	// as declared: 62 g weighed, +- 0.71 g, against 62 g declared
	// as declared: 62.5 g weighed, +- 0.71 g, against 62 g declared
	// over: 64 g weighed, +- 0.71 g, against 62 g declared
	// honestplate: Weighing: smoked cheese is the advertised product and must not be exceeded; show the real product in its declared amount
}

// Weighing pieces one by one adds up errors.
func ExampleScale_Sum() {
	scale := portion.Scale{StepGrams: 0.1}
	pieces := make([]float64, 9)
	for i := range pieces {
		pieces[i] = 13.3
	}
	oneByOne, err := scale.Sum(pieces...)
	fmt.Println(oneByOne, err)
	together, err := scale.Weigh(119.7)
	fmt.Println(together, err)
	// Output:
	// 119.70 +- 0.57 g <nil>
	// 119.70 +- 0.14 g <nil>
}

// How short a package may be: a rule for prepackages, no right to show less.
func ExampleTolerableNegativeError() {
	grams, err := portion.TolerableNegativeError(330)
	fmt.Println(grams, err)
	// Output:
	// 9.9 <nil>
}
