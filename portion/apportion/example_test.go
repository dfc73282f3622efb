package apportion_test

import (
	"fmt"

	"example.org/honestplate/portion/apportion"
)

// One example, every method: five lists sharing 26 seats (Balinski and Young 1975).
func ExampleMethod_Apportion() {
	claims := []apportion.Claim{{Weight: 9061}, {Weight: 7179}, {Weight: 5259}, {Weight: 3319}, {Weight: 1182}}
	for m := apportion.LargestRemainder; m <= apportion.QuotaMethod; m++ {
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

// Margins that cannot both hold are named.
func ExampleBiproportional_contradiction() {
	_, err := apportion.Biproportional([][]float64{{1, 0}, {1, 0}, {1, 1}}, []int64{5, 4, 3}, []int64{6, 6})
	fmt.Println(err)
	// Output:
	// honestplate: Rows: rows 1, 2 must hold 9, but may use only column 1 with 6; move 3 to other rows, or let these use more columns
}

// Canton Uri 2020, official: parties by communes, 37 seats, both totals exact.
func ExampleBiproportional() {
	seats, err := apportion.Biproportional([][]float64{
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
	rounded, err := apportion.ControlledRounding([][]float64{
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
	claims := []apportion.Claim{{Weight: 3}, {Weight: 2, Max: 15}, {Weight: 1, Min: 8}}
	ideal, err := apportion.Ideal(62, claims)
	if err != nil {
		fmt.Println(err)
		return
	}
	whole, err := apportion.LargestRemainder.Apportion(62, claims)
	fmt.Printf("%.2f -> %d, %v\n", ideal, whole, err)
	// Output:
	// [35.25 15.00 11.75] -> [35 15 12], <nil>
}
