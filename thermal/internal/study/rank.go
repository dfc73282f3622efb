package study

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/stat"
)

// A Rank says how much of an event's uncertainty comes from one input.
type Rank struct {
	Input     int     // its number
	Low, High float64 // s; when the event happens with this input alone at its limits
	// Share of the spread, 0..1: the squared rank correlation of input and event
	// over the samples, less what chance gives, made to sum to 1 over the inputs.
	Share float64
}

// rank gives every input's share of the event's spread, the greatest first. Ranks
// are used because an event may never come, which ranks last but has no variance.
func rank(inputs []Input, event, z []float64) []Rank {
	d := len(inputs)
	y := ranks(event[1+2*d:])
	x := make([]float64, len(y))
	out := make([]Rank, d)
	sum := 0.0
	for j := range inputs {
		for i := range x {
			x[i] = z[i*d+j]
		}
		share := 0.0
		if inputs[j].Band.Low < inputs[j].Band.High {
			r := stat.Correlation(ranks(x), y, nil)
			share = max(0, r*r-1/float64(len(y))) // 1/n is the mean for unrelated ranks
		}
		out[j] = Rank{Input: j, Low: event[1+2*j], High: event[2+2*j], Share: share}
		sum += share
	}
	if !(sum > 0) {
		return nil
	}
	for j := range out {
		out[j].Share /= sum
	}
	slices.SortStableFunc(out, func(a, b Rank) int { return cmp.Compare(b.Share, a.Share) })
	return out
}

// ranks replaces values by their ranks, ties by the mean of theirs.
func ranks(v []float64) []float64 {
	order := make([]int, len(v))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(v[a], v[b]) })
	out := make([]float64, len(v))
	for i := 0; i < len(order); {
		j := i
		for j < len(order) && v[order[j]] == v[order[i]] {
			j++
		}
		for _, k := range order[i:j] {
			out[k] = float64(i+j-1) / 2
		}
		i = j
	}
	return out
}
