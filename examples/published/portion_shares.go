package published

import (
	"fmt"

	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

// Checks of shares, tolerances, weighing and heroes.
var portionShares = []Check{
	{
		Table: "apportionment_us_1790", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: func(r testdata.Row) ([]Point, error) {
			hamilton, err := seatOf("apportionment_us_1790", r, portion.LargestRemainder, 120, "population", 0, nil)
			if err != nil {
				return nil, err
			}
			want, err := r.Float("hamilton_120_seats")
			if err != nil {
				return nil, err
			}
			return []Point{Same(r.Text("state")+", Hamilton 120", want, hamilton)}, nil
		},
	},
}

// seatOf shares seats over all rows of the named table that keep accepts (nil: all), by
// the weights in a column, with a minimum for each, and returns what r gets.
func seatOf(name string, r testdata.Row, m portion.Method, seats int64, column string, least int64, keep func(testdata.Row) bool) (float64, error) {
	table, err := testdata.Load(name)
	if err != nil {
		return 0, err
	}
	var claims []portion.Claim
	place := -1
	for _, row := range table.Rows {
		if keep != nil && !keep(row) {
			continue
		}
		w, err := row.Float(column)
		if err != nil {
			return 0, err
		}
		if row.Line == r.Line {
			place = len(claims)
		}
		claims = append(claims, portion.Claim{Weight: w, Min: least})
	}
	got, err := m.Apportion(seats, claims)
	if err != nil {
		return 0, err
	}
	if place < 0 {
		return 0, fmt.Errorf("line %d is not among the claims", r.Line)
	}
	return float64(got[place]), nil
}
