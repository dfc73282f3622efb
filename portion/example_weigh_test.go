package portion_test

import (
	"fmt"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

// What a kitchen scale in 0.5 g steps can say about 62 g of cheese, and what that
// means for the picture.
func ExampleDeclaration_JudgePicture() {
	scale := portion.Scale{StepGrams: 0.5, MaxGrams: 3000}
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, MinusGrams: 1, PlusGrams: 1, Advertised: true}
	for _, reading := range []float64{62, 63, 64} {
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
	// as declared: 62 g weighed, +- 0.71 g, against 62 g (-1 +1 g) declared
	// cannot tell, nearer to a limit than the weighing is good to, +- 0.71 g: 63 g weighed, +- 0.71 g, against 62 g (-1 +1 g) declared
	// over: 64 g weighed, +- 0.71 g, against 62 g (-1 +1 g) declared
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
	// 119.7 +- 1.1 g <nil>
	// 119.70 +- 0.24 g <nil>
}

// How short a package may be: a rule for prepackages, no right to show less.
func ExampleTolerableNegativeError() {
	grams, err := portion.TolerableNegativeError(330)
	fmt.Println(grams, err)
	// Output:
	// 9.9 <nil>
}

// A build as its maker's technician specified it, weighed layer upon layer with one
// zero, on a scale that was checked with a known weight.
func ExampleSpecification_Check() {
	specified := record.Specification{Product: "grilled cheese (invented)", Version: "2", Layers: []record.Layer{
		{Name: "bread", Declared: portion.Amount{Grams: 60, MinusGrams: 3, PlusGrams: 3}},
		{Name: "cheese", Declared: portion.Amount{Grams: 40, MinusGrams: 2, PlusGrams: 2}},
	}, Ratios: []record.Ratio{{Layer: "cheese", To: "bread", Least: 0.6, Most: 0.7}}}
	found, err := specified.Check(record.Build{
		Scale:  portion.Scale{StepGrams: 0.5, Check: portion.CheckWeight{Grams: 100, Reading: 100}},
		Layers: []record.Placed{{Reading: 60.5}, {Reading: 105}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range append(append(found.Layers, found.Total), found.Ratios...) {
		fmt.Println(f)
	}
	fmt.Printf("take off %.1f g of cheese\n", -found.Layers[1].AddGrams)
	// Output:
	// bread: agrees: 60.50 +- 0.48 against 57 to 63
	// cheese: differs: 44.50 +- 0.45 against 38 to 42; over
	// total: cannot tell: 105.00 +- 0.59 against 95 to 105; nearer to a limit than the weighing is good to, +- 0.59 g
	// cheese / bread: differs: 0.736 +- 0.010 against 0.6 to 0.7; outside the ratio that is signed off
	// take off 4.5 g of cheese
}
