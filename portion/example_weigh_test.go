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
	// portion: smoked cheese is the advertised product and must not be exceeded
}

// Weighing pieces one by one adds up errors: how many can a sum bear before 2 g of
// doubt?
func ExampleScale_MostWeighings() {
	scale := portion.Scale{StepGrams: 0.1}
	n, err := scale.MostWeighings(13, 2)
	fmt.Println(n, err)
	pieces := make([]float64, 9)
	for i := range pieces {
		pieces[i] = 13.3
	}
	oneByOne, err := scale.Sum(pieces...)
	fmt.Println(oneByOne, err)
	together, err := scale.Weigh(119.7)
	fmt.Println(together, err)
	// Output:
	// 33 <nil>
	// 119.70 +- 0.57 g <nil>
	// 119.70 +- 0.14 g <nil>
}

// The end gauge of the GUM, example H.1, in nm. The GUM cuts the degrees of freedom
// to 16, rounds u to 32 and so prints 93.
func ExampleCombine() {
	c, err := portion.Combine(
		portion.Component{Name: "standard", Standard: 25, Freedom: 18},
		portion.Component{Name: "difference", Standard: 9.7, Freedom: 25.6},
		portion.Component{Name: "expansion", Standard: 0.58e-6, Sensitivity: 5.0000623e6, Freedom: 50},
		portion.Component{Name: "temperature", Standard: 0.029, Sensitivity: 575.007, Freedom: 2},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	u, err := c.Expanded(0.99)
	fmt.Printf("u = %.2f nm, %.1f degrees of freedom, U99 = %.0f nm, %v\n", c.Standard, c.Freedom, u, err)
	// Output:
	// u = 31.71 nm, 16.7 degrees of freedom, U99 = 92 nm, <nil>
}

// A package of 500 g may be a little short; a picture should not be.
func ExampleSystem_JudgePackage() {
	for _, contents := range []float64{501, 490, 480, 469} {
		v, err := portion.AverageEU.JudgePackage(500, contents, 0.5)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%g g: %s\n", contents, v.Standing)
	}
	// Output:
	// 501 g: at or above the declared amount
	// 490 g: short, within the tolerance
	// 480 g: short by more than the tolerance
	// 469 g: short by more than twice the tolerance: not to be sold
}

// Thirty packages from a batch of 300, one of them 20 g short.
func ExampleLot_Judge() {
	sample := make([]float64, 30)
	for i := range sample {
		sample[i] = 502
	}
	sample[7] = 480
	v, err := portion.Lot{Nominal: 500, Size: 300}.Judge(sample)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %s (limit %.1f g)\n", v.LotDecision, v.Reason, v.Limit)
	// Output:
	// accept: 1 defective, mean 501.267 g (limit 498.0 g)
}

// Only the row that was read decides; the others say so.
func ExampleMaximumAllowableVariation() {
	for _, grams := range []float64{113, 454} {
		v, err := portion.MaximumAllowableVariation(grams)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%g g: %.1f g, read in the source: %v\n", grams, v.Grams, v.Read)
	}
	// Output:
	// 113 g: 7.2 g, read in the source: true
	// 454 g: 19.9 g, read in the source: false
}

// How short a package may be, whether a scale is fine enough to tell, and how evenly
// a filling machine has to share pieces of 8 g.
func ExampleTolerableNegativeError() {
	tolerance, err := portion.TolerableNegativeError(330)
	if err != nil {
		fmt.Println(err)
		return
	}
	eu, us, err := portion.CheckScale(tolerance, 1, 0.5)
	fmt.Printf("%.1f g; a scale good to 1 g in 0.5 g steps will do: EU %v, US %v, %v\n", tolerance, eu, us, err)
	deviation, err := portion.FillDeviation(330, 8)
	fmt.Printf("fill: +- %.1f g, %v\n", deviation, err)
	k, err := portion.SampleFactor(30, 0.995)
	fmt.Printf("mean of 30: at most %.3f s below 330 g, %v\n", k, err)
	// Output:
	// 9.9 g; a scale good to 1 g in 0.5 g steps will do: EU true, US true, <nil>
	// fill: +- 21.9 g, <nil>
	// mean of 30: at most 0.503 s below 330 g, <nil>
}

// Five readings, a step of 0.1 g and a reference weight known to 0.05 g.
func ExampleRepeated() {
	mean, s, u, err := portion.Repeated(62.1, 62.0, 62.2, 62.1, 62.1)
	if err != nil {
		fmt.Println(err)
		return
	}
	step, _ := portion.Resolution(0.1)
	weight, _ := portion.Rectangular(0.05)
	c, err := portion.Combine(
		portion.Component{Name: "readings", Standard: u, Freedom: 4},
		portion.Component{Name: "step", Standard: step},
		portion.Component{Name: "weight", Standard: weight},
	)
	fmt.Printf("mean %.2f g, s %.3f g, combined u %.3f g, %v\n", mean, s, c.Standard, err)
	// Output:
	// mean 62.10 g, s 0.071 g, combined u 0.052 g, <nil>
}
