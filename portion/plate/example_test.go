package plate_test

import (
	"fmt"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
)

// Cheese over the cuts of a flatbread, before baking: eight strips for eight slices,
// a quarter more towards the camera, and still 62 g.
func ExampleStrips_Lay() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	bread := plate.Round{Diameter: 0.30, Edge: 0.02, Slices: 8}
	layout, err := plate.Strips{Hub: 0.015, Favour: 0.25}.Lay(bread, cheese)
	if err != nil {
		fmt.Println(err)
		return
	}
	strips, slices := 0.0, 0.0
	for _, s := range layout.Strips {
		fmt.Printf("strip %d: %.0f mm, %v g\n", s.Number, s.Length*1000, s.Grams)
		strips += s.Grams
	}
	for _, s := range layout.Slices {
		slices += s.Grams
	}
	fmt.Println("in strips", strips, "g, on slices", slices, "g")
	// Output:
	// strip 1: 115 mm, 7 g
	// strip 2: 115 mm, 7 g
	// strip 3: 115 mm, 7 g
	// strip 4: 115 mm, 7 g
	// strip 5: 115 mm, 8 g
	// strip 6: 115 mm, 8 g
	// strip 7: 115 mm, 9 g
	// strip 8: 115 mm, 9 g
	// in strips 62 g, on slices 62 g
}

// Nine olives on a plate of three slices, three on each, clear of cuts and rim.
func ExampleScatter_Place() {
	placing, err := plate.Scatter{Count: 9, Diameter: 0.018, Gap: 0.004, CutGap: 0.002}.Place(plate.Round{Diameter: 0.2, Edge: 0.015, Slices: 3})
	if err != nil {
		fmt.Println(err)
		return
	}
	counts := make([]int, len(placing.Slices))
	for _, s := range placing.Spots {
		counts[s.Slice-1]++
	}
	fmt.Println(counts, "pieces")
	// Output:
	// [3 3 3] pieces
}

// Grated cheese on a tray of six pieces, the near row favoured.
func ExampleSpread_Lay() {
	layout, err := plate.Spread{Favour: 0.2}.Lay(
		plate.Rectangle{Width: 0.3, Depth: 0.2, Edge: 0.01, Columns: 3, Rows: 2},
		portion.Declaration{Item: "grated cheese", Grams: 90, StepGrams: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range layout.Slices {
		fmt.Print(s.Grams, " ")
	}
	// Output:
	// 16 17 16 13 15 13
}
