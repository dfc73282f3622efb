package controlled

import (
	"math"

	"example.org/honestplate/portion/internal/top"
)

// prices finds node prices from which few units are out of place: rows and columns
// in turn take their best entries up, as many as their rounded total allows, and
// price the others out. gain is what an entry's rounding up saves, 0 < up < 1 of
// it; entries that are whole are -Inf. least and most are how many may go up in
// every row and column. Exactness is not its business: the flow of least cost finishes.
func prices(gain [][]float64, least, most [2][]int) (row, column []float64) {
	m, n := len(gain), len(gain[0])
	row, column = make([]float64, m), make([]float64, n)
	line := make([]float64, max(m, n))
	for range 8 {
		for j := range n {
			for i := range m {
				line[i] = gain[i][j] - row[i]
			}
			column[j] = -threshold(line[:m], least[1][j], most[1][j])
		}
		for i := range m {
			for j := range n {
				line[j] = gain[i][j] + column[j]
			}
			row[i] = threshold(line[:n], least[0][i], most[0][i])
		}
	}
	return row, column
}

// threshold returns 0 if between least and most of the values are above it, and
// otherwise what lets exactly the nearer number pass. It reorders the values.
func threshold(values []float64, least, most int) float64 {
	above := 0
	for _, v := range values {
		if v > 0 {
			above++
		}
	}
	k := min(max(above, least), most)
	if k == above {
		return 0
	}
	top.Select(values, k, func(a, b float64) bool { return a > b })
	worst, next := math.Inf(1), math.Inf(-1)
	for i, v := range values {
		if i < k {
			worst = min(worst, v)
		} else {
			next = max(next, v)
		}
	}
	switch {
	case math.IsInf(worst, -1): // margins that whole entries cannot meet
		return 0
	case k == 0:
		return next + 1
	case math.IsInf(next, -1): // only whole entries are left
		return worst - 1
	default:
		return worst + (next-worst)/2
	}
}
