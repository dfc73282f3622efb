package published

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/testdata"
)

// Checks of shares with minima and maxima.
var portionBounds = []Check{
	{
		Table: "clamped_shares", Package: "portion", Quantity: "ideal share within bounds", Unit: "units", Claim: "half the last printed digit",
		Points: clampedShares,
	},
	{
		Table: "clamped_shares_whole_units", Package: "portion", Quantity: "whole share within bounds", Unit: "units", Claim: "equal",
		Points: clampedWholeUnits,
	},
	{
		Table: "apportionment_eu_parliament", Package: "portion", Quantity: "seats", Unit: "seats", Claim: "equal",
		Points: baseAndCap,
	},
}

// claims reads weights with minima and maxima, "none" for no maximum.
func claims(r testdata.Row) ([]apportion.Claim, error) {
	weights, err := r.Floats("weights")
	if err != nil {
		return nil, err
	}
	minima, err := r.Floats("minima")
	if err != nil {
		return nil, err
	}
	maxima := strings.Fields(r.Text("maxima"))
	out := make([]apportion.Claim, len(weights))
	if len(minima) != len(out) || len(maxima) != len(out) {
		return nil, fmt.Errorf("line %d: %d weights, %d minima, %d maxima", r.Line, len(out), len(minima), len(maxima))
	}
	for i, w := range weights {
		out[i] = apportion.Claim{Weight: w, Min: int64(minima[i])}
		if maxima[i] != "none" {
			if out[i].Max, err = strconv.ParseInt(maxima[i], 10, 64); err != nil {
				return nil, err
			}
		}
	}
	return out, nil
}

// clampedShares compares with the printed shares, or with the recomputed ones where
// only the inputs are printed.
func clampedShares(r testdata.Row) ([]Point, error) {
	c, err := claims(r)
	if err != nil {
		return nil, err
	}
	total, err := r.Float("total")
	if err != nil {
		return nil, err
	}
	column := "published"
	if r.Text(column) == "" {
		column = "ideal"
	}
	printed := strings.Fields(r.Text(column))
	got, err := apportion.Ideal(int64(total), c)
	if err != nil {
		return nil, err
	}
	if len(printed) != len(got) {
		return nil, fmt.Errorf("line %d: %d printed for %d", r.Line, len(printed), len(got))
	}
	var points []Point
	for i, text := range printed {
		want, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return nil, err
		}
		half := 0.5
		if _, decimals, ok := strings.Cut(text, "."); ok {
			for range decimals {
				half /= 10
			}
		} else {
			half = 5e-7 // whole numbers are printed as such only where they are
		}
		points = append(points, Near(fmt.Sprintf("%s, %d", r.Text("case"), i+1), want, got[i], half))
	}
	return points, nil
}

func clampedWholeUnits(r testdata.Row) ([]Point, error) {
	c, err := claims(r)
	if err != nil {
		return nil, err
	}
	total, err := r.Float("total")
	if err != nil {
		return nil, err
	}
	want, err := r.Floats("whole")
	if err != nil {
		return nil, err
	}
	got, err := apportion.LargestRemainder.Apportion(int64(total), c)
	if err != nil {
		return nil, err
	}
	var points []Point
	for i, n := range got {
		points = append(points, Same(fmt.Sprintf("case %s, %d", r.Text("case"), i+1), want[i], float64(n)))
	}
	return points, nil
}

// baseAndCap shares the 751 seats by Adams: a base of 5 each, the rest in proportion
// rounded up, at most 96 in all.
func baseAndCap(r testdata.Row) ([]Point, error) {
	table, err := testdata.Load("apportionment_eu_parliament")
	if err != nil {
		return nil, err
	}
	const seats, base, most = 751, 5, 96
	all, at := make([]apportion.Claim, len(table.Rows)), 0
	for i, row := range table.Rows {
		if all[i].Weight, err = row.Float("population"); err != nil {
			return nil, err
		}
		all[i].Max = most - base
		if row.Line == r.Line {
			at = i
		}
	}
	got, err := apportion.Adams.Apportion(seats-base*int64(len(all)), all)
	if err != nil {
		return nil, err
	}
	want, err := r.Float("seats")
	if err != nil {
		return nil, err
	}
	return []Point{Same(r.Text("state"), want, base+float64(got[at]))}, nil
}
