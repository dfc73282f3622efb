package portion_test

import (
	"errors"
	"fmt"

	"example.org/honestplate/portion"
)

// A mass must be whole steps of the scale; the error names the neighbours.
func ExampleDeclaration_Steps() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	n, err := cheese.Steps()
	fmt.Println(n, err)

	cheese.Grams = 62.3
	_, err = cheese.Steps()
	fmt.Println(err)
	// Output:
	// 124 <nil>
	// portion: Grams is 62.3 g, not a whole number of 0.5 g steps; the nearest are 62 g and 62.5 g
}

// The advertised product stays what it is; the herbs beside it may be stand-ins.
func ExampleDeclaration_Allows() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, Advertised: true}
	herbs := portion.Declaration{Item: "herbs", Grams: 5}
	err := cheese.Allows(portion.Replace)
	fmt.Println(err)
	fmt.Println(errors.Is(err, portion.ErrAdvertised), herbs.Allows(portion.Replace))
	// Output:
	// portion: smoked cheese is the advertised product and must not be replaced
	// true <nil>
}

// From an ingredient list to whole percentages that sum to 100, and from
// percentages to grams on the scale.
func ExampleDeclaration_ShareContents() {
	parts := []portion.Ingredient{{Name: "bread", Grams: 80}, {Name: "spread", Grams: 15}, {Name: "cheese", Grams: 35}}
	percents, err := portion.WholePercents(parts)
	if err != nil {
		fmt.Println(err)
		return
	}
	contents := make([]portion.Content, len(parts))
	for i, p := range percents {
		contents[i] = portion.Content{Name: parts[i].Name, Percent: float64(p)}
	}
	s, err := portion.Declaration{Item: "sandwich", Grams: 195, StepGrams: 0.5}.ShareContents(contents)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, p := range s.Portions {
		fmt.Printf("%-6s %2d %%  %5.1f g\n", p.Name, percents[i], p.Grams)
	}
	// Output:
	// bread  62 %  121.0 g
	// spread 11 %   21.5 g
	// cheese 27 %   52.5 g
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
	// pepper: 0.6 %
}

// Ratios the maker's technician signed off allow only certain batches.
func ExampleFormula_For() {
	dressing := portion.Formula{
		Parts:     []portion.Ingredient{{Name: "oil", Grams: 3}, {Name: "vinegar", Grams: 1}},
		StepGrams: 0.5, Locked: true,
	}
	_, err := dressing.For(25)
	fmt.Println(err)
	s, err := dressing.For(26)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range s.Portions {
		fmt.Printf("%s %.1f g\n", p.Name, p.Grams)
	}
	// Output:
	// portion: batch mass is 25 g, not a whole number of 2 g steps; the nearest are 24 g and 26 g
	// oil 19.5 g
	// vinegar 6.5 g
}

// "About 2.5 servings", "about 4".
func ExampleAboutServings() {
	for _, n := range []float64{2.35, 3.76, 7.4} {
		about, err := portion.AboutServings(n)
		fmt.Println(n, "about", about, err)
	}
	// Output:
	// 2.35 about 2.5 <nil>
	// 3.76 about 4 <nil>
	// 7.4 about 7 <nil>
}
