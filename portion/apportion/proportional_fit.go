package apportion

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// Fit scales a table of weights in proportion until its rows and columns have the
// given totals: cell (i, j) becomes weights[i][j] times a row factor times a
// column factor (iterative proportional fitting, raking). These are the ideal
// amounts, before rounding; cells of weight 0 stay 0 and cross ratios are kept.
// Margins are met to 1e-12 of the total.
//
// Errors: [honestplate.InputError] for a bad shape, weight or margin;
// [honestplate.RefusedError] where 10 000 rounds (fewer for more than 20 000 cells) do
// not meet the margins: then they contradict each other, or can be met only with 0
// where a weight is above 0 ([Biproportional] tells the two apart).
//
// Source: Deming and Stephan, On a least squares adjustment of a sampled frequency
// table, Annals of Mathematical Statistics 11 (1940) 427-444 (from memory).
func Fit(weights [][]float64, rows, columns []float64) ([][]float64, error) {
	if err := checkShape(weights, len(rows), len(columns)); err != nil {
		return nil, err
	}
	var sums [2]float64
	for side, margin := range [2][]float64{rows, columns} {
		name := [2]string{"Rows", "Columns"}[side]
		for i, v := range margin {
			if err := honestplate.NotNegative(fmt.Sprintf("%s[%d]", name, i), v, ""); err != nil {
				return nil, err
			}
			sums[side] += v
		}
		if err := honestplate.Finite(name, sums[side], "in all"); err != nil {
			return nil, err
		}
	}
	total := sums[0]
	if !(math.Abs(total-sums[1]) <= 1e-9*total) {
		return nil, check.Input("Columns", sums[1], "in all", "the sum of the rows, "+decimal.Plain(total))
	}
	out := make([][]float64, len(rows))
	for i, row := range weights {
		out[i] = append([]float64(nil), row...)
	}
	miss := math.Inf(1)
	for range min(10_000, max(100, 200_000_000/(len(rows)*len(columns)))) {
		for i, row := range out {
			scale(row, rows[i])
		}
		miss = 0
		for j, c := range columns {
			column := 0.0
			for i := range out {
				column += out[i][j]
			}
			miss = max(miss, math.Abs(column-c))
			if column > 0 {
				for i := range out {
					out[i][j] *= c / column
				}
			}
		}
		// The columns are right now; the rows are as far out as the columns
		// were, so one pass that finds both right ends it.
		if miss <= 1e-13*total {
			return out, nil
		}
	}
	return nil, &honestplate.RefusedError{
		Field: "Rows", Kind: honestplate.ErrInfeasible,
		Reason: fmt.Sprintf("after fitting a column is still %.3g out: the margins contradict each other, or force a cell of weight above 0 to 0", miss),
		Advice: "ask Biproportional, which names margins that contradict each other",
	}
}

// scale multiplies the values so that they sum to total.
func scale(values []float64, total float64) {
	largest := 0.0
	for _, v := range values {
		largest = max(largest, v)
	}
	if largest == 0 {
		return
	}
	sum := 0.0
	for _, v := range values {
		sum += v / largest // the sum of huge weights stays finite
	}
	for k, v := range values {
		values[k] = v / largest / sum * total
	}
}
