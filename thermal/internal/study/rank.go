package study

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// A Rank says how much of an event's uncertainty comes from one input.
type Rank struct {
	Input     int     // its number
	Low, High float64 // s; when the event happens with this input alone at its limits
	// Share of the spread, 0..1, that the input explains alone: the squared rank
	// correlation of input and event over the runs, less what chance gives.
	Share float64
}

// rank gives every input's share of an event's spread, the greatest first, and what is
// left of the whole. Ranks are used because an event may never come, which ranks last
// but has no variance. Columns are the ranks of the inputs, nil for one without width.
func (s *Sample) rank(columns [][]float64, event []float64) ([]Rank, float64) {
	y := ranks(event, s.Weights)
	chance := 1 / s.effective() // the mean for unrelated ranks
	out := make([]Rank, len(columns))
	sum := 0.0
	for j, x := range columns {
		out[j].Input = j
		if x == nil {
			continue
		}
		if r := stat.Correlation(x, y, s.Weights); !math.IsNaN(r) {
			out[j].Share = max(0, r*r-chance)
			sum += out[j].Share
		}
	}
	slices.SortStableFunc(out, func(a, b Rank) int { return cmp.Compare(b.Share, a.Share) })
	return out, max(0, 1-sum)
}

// ranks replaces values by their ranks, the weight below each, ties by the mean of
// theirs.
func ranks(v, weights []float64) []float64 {
	order := inOrder(v)
	out := make([]float64, len(v))
	below := 0.0
	for i := 0; i < len(order); {
		j, here := i, 0.0
		for j < len(order) && v[order[j]] == v[order[i]] {
			if weights == nil {
				here++
			} else {
				here += weights[order[j]]
			}
			j++
		}
		for _, k := range order[i:j] {
			out[k] = below + here/2
		}
		below += here
		i = j
	}
	return out
}
