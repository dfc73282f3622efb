package portion

import "math"

// Fit scales a table of weights in proportion until its rows and columns have the
// given totals: cell (i, j) becomes weights[i][j] times a row factor times a
// column factor (iterative proportional fitting, raking). These are the ideal
// amounts, before rounding; cells of weight 0 stay 0 and cross ratios are kept.
// Margins are met to 1e-12 of the total.
//
// Errors: InputError for a bad shape, weight or margin, and where 10 000 rounds
// (fewer for more than 20 000 cells) do not meet the margins: then they contradict each other, or can be met only with 0
// where a weight is above 0 (Biproportional tells the two apart).
//
// Source: Deming and Stephan, On a least squares adjustment of a sampled frequency
// table, Annals of Mathematical Statistics 11 (1940) 427-444 (from memory).
func Fit(weights [][]float64, rows, columns []float64) ([][]float64, error) {
	if err := checkShape(weights, len(rows), len(columns)); err != nil {
		return nil, err
	}
	total, other := 0.0, 0.0
	for _, r := range rows {
		if err := notNegative("row total", r, ""); err != nil {
			return nil, err
		}
		total += r
	}
	for _, c := range columns {
		if err := notNegative("column total", c, ""); err != nil {
			return nil, err
		}
		other += c
	}
	if err := finite("sum of the row totals", total, ""); err != nil {
		return nil, err
	}
	if !(math.Abs(total-other) <= 1e-9*total) {
		return nil, &InputError{"sum of the column totals", other, "", "the sum of the row totals, " + plain(total)}
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
	return nil, &InputError{"margin still missed after fitting", miss, "", "0: the margins contradict each other, or force a cell of weight above 0 to 0"}
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
