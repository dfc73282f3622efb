package apportion

import (
	"fmt"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// Biproportional shares whole units over a table so that every row and every
// column has its total: cell (i, j) is weights[i][j] times a row factor times a
// column factor, rounded to the nearest whole number (Webster, Sainte-Lague). A
// cell of weight 0 stays 0. Margins and weights determine the result, except where
// a cell lies exactly between two whole numbers: then the order of rows and
// columns decides.
//
// Method: alternating scaling, then cheapest paths for the units it leaves, since
// alternating scaling alone can stall at ties. Rounding points are compared to
// about 1 part in 1e12.
//
// Errors: [honestplate.InputError] for a bad shape, weight or margin;
// [honestplate.RangeError] for more than 10 000 cells or 1e9 units; [MarginError] where the
// margins contradict each other, naming those that do.
//
// Source: Balinski and Demange, Algorithms for proportional matrices in reals and
// integers, Mathematical Programming 45 (1989) 193-210 (from memory); results
// checked against published matrices.
func Biproportional(weights [][]float64, rows, columns []int64) ([][]int64, error) {
	t, err := newTwoWay(weights, rows, columns)
	if err != nil {
		return nil, err
	}
	if err := t.solve(); err != nil {
		return nil, err
	}
	out := make([][]int64, len(rows))
	for i := range out {
		out[i] = t.cells[i*len(columns) : (i+1)*len(columns) : (i+1)*len(columns)]
	}
	return out, nil
}

// A twoWay is a two-way sharing under way.
type twoWay struct {
	rows, columns []int64   // totals
	weight        []float64 // by row
	cells         []int64   // by row
	rowFactor     []float64
	columnFactor  []float64
}

// newTwoWay checks the shape, the weights and the margins.
func newTwoWay(weights [][]float64, rows, columns []int64) (*twoWay, error) {
	if err := checkShape(weights, len(rows), len(columns)); err != nil {
		return nil, err
	}
	var sum [2]float64
	for side, margin := range [2][]int64{rows, columns} {
		for i, total := range margin {
			if total < 0 {
				return nil, check.Input(fmt.Sprintf("%s[%d]", [2]string{"Rows", "Columns"}[side], i), total, "units", "0 or more")
			}
			sum[side] += float64(total)
		}
	}
	if sum[0] > mostTableUnits {
		return nil, check.Beyond("Rows", sum[0], mostTableUnits, "units in all", tableUnitsReason)
	}
	if sum[0] != sum[1] {
		return nil, check.Input("Columns", sum[1], "units in all", "the sum of the rows, "+decimal.Plain(sum[0]))
	}
	n := len(columns)
	t := &twoWay{
		rows: rows, columns: columns,
		weight: make([]float64, len(rows)*n), cells: make([]int64, len(rows)*n),
		rowFactor: make([]float64, len(rows)), columnFactor: make([]float64, n),
	}
	// Weights are scaled to their mean, so that factors start near the totals.
	largest := 0.0
	for _, row := range weights {
		for _, w := range row {
			largest = max(largest, w)
		}
	}
	for i, row := range weights {
		for j, w := range row {
			if w == 0 {
				continue
			}
			t.weight[i*n+j] = w / largest
			if ratio := largest / w; !(ratio <= mostRatio) {
				return nil, tooUneven("Weights", ratio)
			}
		}
	}
	return t, nil
}

// solve fills the cells.
func (t *twoWay) solve() error {
	left := t.scaleInTurn()
	if left == 0 {
		return nil
	}
	// A few units a line left: cheapest paths finish from here. More: the margins
	// contradict each other or nearly do, so start again with coarse units.
	few := left <= int64(8*(len(t.rows)+len(t.columns)))
	return t.finishByPaths(!few)
}
