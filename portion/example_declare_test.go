package portion_test

import (
	"errors"
	"fmt"

	"example.org/honestplate/portion"

	"example.org/honestplate"
)

// The advertised product stays what it is; the herbs beside it may be stand-ins.
func ExampleDeclaration_Allows() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, Advertised: true}
	herbs := portion.Declaration{Item: "herbs", Grams: 5}
	err := cheese.Allows(portion.Replace)
	fmt.Println(err)
	fmt.Println(errors.Is(err, honestplate.ErrAdvertised), herbs.Allows(portion.Replace))
	// Output:
	// honestplate: Advertised: smoked cheese is the advertised product and must not be replaced; show the real product in its declared amount
	// true <nil>
}

// Meat that lost water in drying: more went in than 100 g for 100 g.
func ExampleQuid() {
	lines, err := portion.Quid([]portion.Ingredient{{Name: "pork", Grams: 115}, {Name: "pepper", Grams: 0.6}}, 100)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range lines {
		fmt.Printf("%s: %s\n", l.Name, l.Text)
	}
	// Output:
	// pork: 115 g per 100 g
	// pepper: 0.6 g per 100 g
}

// A batch in whole steps sums to its mass; the ratio is as near as the steps allow.
func ExampleFormula_For() {
	dressing := portion.Formula{
		Parts:     []portion.Ingredient{{Name: "oil", Grams: 3}, {Name: "vinegar", Grams: 1}},
		StepGrams: 0.5,
	}
	s, err := dressing.For(25)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range s {
		fmt.Printf("%s %.1f g\n", p.Name, p.Grams)
	}
	// Output:
	// oil 19.0 g
	// vinegar 6.0 g
}

// A mass must be whole steps of the scale; the error names the neighbours.
func ExampleDeclaration_Validate() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62.3, StepGrams: 0.5, Advertised: true}
	fmt.Println(cheese.Validate())
	cheese.Grams = 62
	fmt.Println(cheese.Grams, cheese.Validate())
	// Output:
	// honestplate: Grams is 62.3 g, want a whole number of 0.5 g steps, such as 62 g or 62.5 g
	// 62 <nil>
}
