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
	for _, p := range s.Portions {
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

// One example, every method: five lists sharing 26 seats (Balinski and Young 1975).
func ExampleMethod_Apportion() {
	claims := []portion.Claim{{Weight: 9061}, {Weight: 7179}, {Weight: 5259}, {Weight: 3319}, {Weight: 1182}}
	for m := portion.LargestRemainder; m <= portion.QuotaMethod; m++ {
		seats, err := m.Apportion(26, claims)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-17v %2d\n", m, seats)
	}
	// Output:
	// largest remainder [ 9  7  5  4  1]
	// Jefferson         [10  7  5  3  1]
	// Webster           [ 9  8  5  3  1]
	// Adams             [ 9  7  5  3  2]
	// Huntington-Hill   [ 9  7  6  3  1]
	// Dean              [ 9  7  5  4  1]
	// quota method      [10  7  5  3  1]
}

// Wishes in grams that sum to a gram and a half too much: everyone gives way alike,
// except the hero slice, which is held four times as firmly. Of the last tenth, a
// tie, the larger wish has it.
func ExampleDeclaration_ShareNear() {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.1}
	s, err := cheese.ShareNear([]portion.Wish{
		{Name: "hero slice", Grams: 30, Firmness: 4},
		{Name: "middle", Grams: 20},
		{Name: "back", Grams: 13.5},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range s.Portions {
		fmt.Printf("%-10s %4.1f g\n", p.Name, p.Grams)
	}
	// Output:
	// hero slice 29.8 g
	// middle     19.4 g
	// back       12.8 g
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
			fmt.Printf(" %5.1f ", g.Grams(i, j))
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

// Margins that cannot both hold are named.
func ExampleBiproportional_contradiction() {
	_, err := portion.Biproportional([][]float64{{1, 0}, {1, 0}, {1, 1}}, []int64{5, 4, 3}, []int64{6, 6})
	fmt.Println(err)
	// Output:
	// portion: rows 1, 2 must hold 9, but may use only column 1 with 6
}

// Canton Uri 2020, official: parties by communes, 37 seats, both totals exact.
func ExampleBiproportional() {
	seats, err := portion.Biproportional([][]float64{
		{11471, 2822, 2309, 4794},
		{11908, 1606, 1705, 2600},
		{9213, 1567, 946, 2961},
		{7756, 2945, 1573, 3498},
	}, []int64{12, 9, 7, 9}, []int64{15, 7, 6, 9})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range seats {
		fmt.Println(row)
	}
	// Output:
	// [5 2 2 3]
	// [4 1 2 2]
	// [3 1 1 2]
	// [3 3 1 2]
}

// Every entry, every total and the grand total go to the whole number below or
// above.
func ExampleControlledRounding() {
	rounded, err := portion.ControlledRounding([][]float64{
		{11.998, 9.083, 2.919},
		{12.983, 10.872, 3.145},
		{1.019, 2.045, 0.936},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range rounded {
		fmt.Println(row)
	}
	// Output:
	// [12 9 3]
	// [13 11 3]
	// [1 2 1]
}

// What largest remainder rounds, within bounds.
func ExampleIdeal() {
	claims := []portion.Claim{{Weight: 3}, {Weight: 2, Max: 15}, {Weight: 1, Min: 8}}
	ideal, err := portion.Ideal(62, claims)
	if err != nil {
		fmt.Println(err)
		return
	}
	whole, err := portion.LargestRemainder.Apportion(62, claims)
	fmt.Printf("%.2f -> %d, %v\n", ideal, whole, err)
	// Output:
	// [35.25 15.00 11.75] -> [35 15 12], <nil>
}

// The ideal table before rounding: proportions kept, margins met.
func ExampleFit() {
	ideal, err := portion.Fit([][]float64{{1, 1}, {1, 3}}, []float64{10, 10}, []float64{8, 12})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, row := range ideal {
		fmt.Printf("%.2f\n", row)
	}
	// Output:
	// [5.28 4.72]
	// [2.72 7.28]
}
