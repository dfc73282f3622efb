package thermal

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"gonum.org/v1/gonum/stat"
)

// A Sensitivity says how much of an event's uncertainty comes from one input.
type Sensitivity struct {
	Input string        // its name
	Low   time.Duration // when the event happens with this input alone at its low limit
	High  time.Duration // and at its high limit
	// Share of the spread, 0..1: the squared rank correlation of input and event
	// over the samples, less what chance gives, made to sum to 1 over the inputs.
	Share float64
}

// String gives the sensitivity for people: "humidity 62 % (5:10 to 2:05)".
func (s Sensitivity) String() string {
	return fmt.Sprintf("%s %.0f %% (%s to %s)", s.Input, 100*s.Share, Clock(s.Low), Clock(s.High))
}

// rank gives every input's share of the event's spread, the greatest first. Ranks
// are used because an event may be Never, which ranks last but has no variance.
func (s Study) rank(event []time.Duration, z []float64) []Sensitivity {
	d := len(s.Inputs)
	samples := event[1+2*d:]
	y := make([]float64, len(samples))
	for i, t := range samples {
		y[i] = float64(t)
	}
	y = ranks(y)
	x := make([]float64, len(samples))
	out := make([]Sensitivity, d)
	sum := 0.0
	for j, u := range s.Inputs {
		for i := range x {
			x[i] = z[i*d+j]
		}
		share := 0.0
		if u.Low < u.High {
			r := stat.Correlation(ranks(x), y, nil)
			share = max(0, r*r-1/float64(len(y))) // 1/n is the mean for unrelated ranks
		}
		out[j] = Sensitivity{Input: u.Name, Low: event[1+2*j], High: event[2+2*j], Share: share}
		sum += share
	}
	if !(sum > 0) {
		return nil
	}
	for j := range out {
		out[j].Share /= sum
	}
	slices.SortStableFunc(out, func(a, b Sensitivity) int { return cmp.Compare(b.Share, a.Share) })
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
