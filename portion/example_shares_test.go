package portion_test

import (
	"fmt"

	"example.org/honestplate/portion"
)

// 62 g of cheese over three zones, the front favoured for the camera: the grams
// move, their sum does not.
func ExampleDeclaration_Share() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	s, err := cheese.Share([]portion.Zone{
		{Name: "front", Weight: 3},
		{Name: "middle", Weight: 2, MaxGrams: 15},
		{Name: "back", Weight: 1, MinGrams: 8},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	total := 0.0
	for _, p := range s {
		fmt.Printf("%-6s %4.1f g\n", p.Name, p.Grams)
		total += p.Grams
	}
	fmt.Printf("total  %4.1f g\n", total)
	// Output:
	// front  35.5 g
	// middle 15.0 g
	// back   11.5 g
	// total  62.0 g
}

// Four slices, three rings; the slices facing the camera get more of the outer
// ring. Slices and rings keep their totals to the half gram.
func ExampleTable_Share() {
	t := portion.Table{
		Declaration: portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true},
		Rows:        []portion.Zone{{Name: "slice 1", Weight: 1}, {Name: "slice 2", Weight: 1}, {Name: "slice 3", Weight: 1}, {Name: "slice 4", Weight: 1}},
		Columns:     []portion.Zone{{Name: "centre", Weight: 1}, {Name: "middle", Weight: 3}, {Name: "rim", Weight: 2}},
		Weights:     [][]float64{{1, 3, 4}, {1, 3, 4}, {2, 3, 1}, {2, 3, 0}}, // no cheese on the rim of slice 4
	}
	g, err := t.Share()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("         centre middle   rim   total")
	for i, row := range g.Rows {
		fmt.Printf("%s  ", row.Name)
		for j := range g.Columns {
			fmt.Printf(" %5.1f ", g.Grams[i][j])
		}
		fmt.Printf("%6.1f g\n", row.Grams)
	}
	fmt.Printf("total    %5.1f  %5.1f  %5.1f %6.1f g\n", g.Columns[0].Grams, g.Columns[1].Grams, g.Columns[2].Grams, t.Declaration.Grams)
	// Output:
	//          centre middle   rim   total
	// slice 1     1.5    5.5    8.5   15.5 g
	// slice 2     1.0    6.0    8.5   15.5 g
	// slice 3     3.5    8.5    3.5   15.5 g
	// slice 4     4.5   11.0    0.0   15.5 g
	// total     10.5   31.0   20.5   62.0 g
}

// What is promised twice over is told from a mistyped number: the error says what to
// take off.
func ExampleDeclaration_Share_overshared() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.1}
	_, err := cheese.Share([]portion.Zone{{Name: "front", Weight: 1, MinGrams: 40}, {Name: "back", Weight: 1, MinGrams: 22.1}})
	fmt.Println(err)
	// Output:
	// honestplate: Zones: the minima sum to 62.1 g, and there is 62 g; take 0.1 g off them
}
