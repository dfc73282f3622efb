package apportion

import (
	"iter"
	"math"
)

// scaleInTurn rounds rows and columns in turn until both have their totals, and
// returns how many units are still out of place when it stops getting better. The
// rows are exact then, and the cells are the rounded weights times the factors,
// with a cell that lies exactly between two numbers at either.
func (t *twoWay) scaleInTurn() (left int64) {
	m, n := len(t.rows), len(t.columns)
	for j := range n {
		t.columnFactor[j] = 1
	}
	scaled, inverse, cells := make([]float64, max(m, n)), make([]float64, max(m, n)), make([]float64, max(m, n))
	// The last few units take alternation most of its time; paths are quicker.
	few := int64(m+n) / 24
	best, stalled := int64(math.MaxInt64), 0
	turn := 0        // where the next line starts to look among equals
	for range 1000 { // stalls long before
		for i := range m {
			for j := range n {
				scaled[j] = t.weight[i*n+j] * t.columnFactor[j]
			}
			t.rowFactor[i] = roundTo(t.rows[i], scaled[:n], inverse[:n], cells[:n], &turn)
			if outOfHand(t.rowFactor[i]) {
				return math.MaxInt64
			}
			for j, x := range cells[:n] {
				t.cells[i*n+j] = int64(x)
			}
		}
		left = 0
		for j := range n {
			var sum int64
			for i := range m {
				sum += t.cells[i*n+j]
			}
			left += max(0, t.columns[j]-sum)
		}
		if left <= few {
			return left
		}
		if left >= best-best/5 { // hardly better, or no better
			if stalled++; stalled == 3 {
				return left
			}
		}
		best = min(best, left)
		for j := range n {
			for i := range m {
				scaled[i] = t.weight[i*n+j] * t.rowFactor[i]
			}
			t.columnFactor[j] = roundTo(t.columns[j], scaled[:m], inverse[:m], cells[:m], &turn)
			if outOfHand(t.columnFactor[j]) {
				return math.MaxInt64
			}
		}
	}
	return math.MaxInt64
}

// outOfHand reports a factor that products with weights might lose: contradictory
// margins drive factors apart without end.
func outOfHand(factor float64) bool { return !(factor > 1e-200 && factor < 1e200) }

// roundTo sets cells to the values times a factor, rounded to the nearest, so
// that they sum to total, and returns the factor in the middle of those that do
// it. inverse is room to work in. If every value is 0 the cells are 0 and the
// factor 1. Among equal cells (to 1e-12) the first from turn on, round the end,
// is chosen: so that rows of equal weights do not all favour the same columns.
func roundTo(total int64, values, inverse, cells []float64, turn *int) float64 {
	sum, largest := 0.0, 0.0
	for _, v := range values {
		sum += v
		largest = max(largest, v)
	}
	clear(cells)
	if sum == 0 {
		return 1
	}
	if total == 0 {
		return 0.25 / largest
	}
	factor, excess := float64(total)/sum, -float64(total)
	// (x -+ 1/2) x 1/value are the factors at which a cell changes. A value of 0
	// has them at infinity, an empty cell its lower one below 0: neither is chosen.
	for k, v := range values {
		cells[k] = math.Floor(v*factor + 0.5)
		excess += cells[k]
		inverse[k] = 1 / v
	}
	// Unit by unit: at most half a unit a cell is out, usually far less.
	const tie = 1e-12
	for ; excess > 0; excess-- {
		last, most := -1, 0.0
		for k := range from(*turn, len(cells)) {
			if r := (cells[k] - 0.5) * inverse[k]; r > most*(1+tie) {
				last, most = k, r
			}
		}
		cells[last]--
		*turn = last + 1
	}
	for ; excess < 0; excess++ {
		next, least := -1, math.Inf(1)
		for k := range from(*turn, len(cells)) {
			if r := (cells[k] + 0.5) * inverse[k]; r < least*(1-tie) {
				next, least = k, r
			}
		}
		cells[next]++
		*turn = next + 1
	}
	low, high := 0.0, math.Inf(1)
	for k, x := range cells {
		low, high = max(low, (x-0.5)*inverse[k]), min(high, (x+0.5)*inverse[k])
	}
	return math.Sqrt(low) * math.Sqrt(high)
}

// from runs through the places 0..n-1 from start on, round the end.
func from(start, n int) iter.Seq[int] {
	return func(yield func(int) bool) {
		for k := range n {
			if !yield((start + k) % n) {
				return
			}
		}
	}
}
