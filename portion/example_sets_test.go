package portion_test

import (
	"fmt"

	"example.org/honestplate/portion"
)

// Two plates of three from one tray. Beside the best three nothing of 120 g is left;
// sought at once, two plates exist.
func ExamplePick_Sets() {
	tray := portion.Pick{
		Pieces: []portion.Piece{
			{Name: "A", Grams: 41, Score: 8}, {Name: "B", Grams: 43, Score: 6}, {Name: "C", Grams: 43, Score: 9}, {Name: "D", Grams: 38, Score: 8},
			{Name: "E", Grams: 36, Score: 4}, {Name: "F", Grams: 41, Score: 8}, {Name: "G", Grams: 39, Score: 7}, {Name: "H", Grams: 36, Score: 4},
		},
		Count: 3, Grams: 120, StepGrams: 1,
	}
	best, err := tray.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the best three: %s, %v points\n", names(best.Pieces), best.Score)
	plates, err := tray.Sets(2)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range plates.Sets {
		fmt.Printf("%s: %v g, %v points\n", names(s.Pieces), s.Grams, s.Score)
	}
	fmt.Printf("%d sets, %v points, none better: %v\n", len(plates.Sets), plates.Score, plates.Optimal)
	// Output:
	// the best three: ADF, 24 points
	// ABE: 120 g, 18 points
	// CDG: 120 g, 24 points
	// 2 sets, 42 points, none better: true
}

func names(pieces []portion.Piece) (out string) {
	for _, p := range pieces {
		out += p.Name
	}
	return out
}

// Three plates of nine plums, 162.4 g each to a fifth of a gram; the plums weigh 18 g,
// give or take 1.2 g. How many must be weighed for nine chances in ten?
func ExamplePick_ToWeigh() {
	plates := portion.Pick{Count: 9, Grams: 162.4, StepGrams: 0.1, Tolerance: 0.2}
	n, err := plates.ToWeigh(3, 0.9, portion.PieceMass{MeanGrams: 18, SDGrams: 1.2})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("weigh %.0f (%.0f..%.0f) plums: the three plates exist on %.0f %% of %d trays\n",
		n.Pieces.Likely, n.Pieces.Low, n.Pieces.High, 100*n.Chance.Likely, n.Trays)
	// Output:
	// weigh 33 (32..34) plums: the three plates exist on 92 % of 512 trays
}
