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

// Reasons are what decides an event: the inputs by how much of the spread they explain,
// the decisive one first, and Rest, what none explains alone; empty where the window has
// no width.
type Reasons struct {
	Decides []Rank
	Rest    float64
}

// Reasons returns what decides the outcomes of a sample. It runs the model twice per input
// with that one alone at its limits.
func (s Study) Reasons(m *Sample, outcomes []Outcome) ([]Reasons, error) {
	d, n := len(m.Inputs), len(outcomes)
	centre := m.Centre()
	z := slices.Repeat(centre, 2*d)
	columns := make([][]float64, d+n) // ranks of inputs and events
	spread(d+n, func() func(int) {
		return func(j int) {
			if j >= d {
				if o := outcomes[j-d]; o.decided() {
					columns[j] = ranks(m.Output(j-d), m.Weights)
				}
				return
			}
			column := m.Column(j)
			low, high := -z95, z95
			if m.Learned {
				q := Quantiles(column, m.Weights, 0.025, 0.975)
				low, high = min(q[0], centre[j]), max(q[1], centre[j])
			}
			z[2*j*d+j], z[(2*j+1)*d+j] = low, high
			if b := m.Inputs[j].Band; b.Low < b.High {
				columns[j] = ranks(column, m.Weights)
			}
		}
	})
	alone, err := s.At(z, d)
	if err != nil {
		return nil, err
	}
	out := make([]Reasons, n)
	for e, o := range outcomes {
		if !o.decided() {
			continue
		}
		r := &out[e]
		r.Decides, r.Rest = m.rank(columns[:d], columns[d+e])
		for i := range r.Decides {
			j := r.Decides[i].Input
			r.Decides[i].Low, r.Decides[i].High = alone[2*j*s.Outputs+e], alone[(2*j+1)*s.Outputs+e]
		}
	}
	return out, nil
}

// decided reports whether something decides: else one stray run would.
func (o Outcome) decided() bool { return o.Earliest < o.Latest && !math.IsInf(o.Earliest, 1) }

// rank gives every input's share of an event's spread, the greatest first, and what is
// left of the whole. Ranks are used because an event may never come, which ranks last
// but has no variance. Columns are the ranks of the inputs, nil for one without width.
func (s *Sample) rank(columns [][]float64, event []float64) ([]Rank, float64) {
	chance := 1 / s.effective() // the mean for unrelated ranks
	out := make([]Rank, len(columns))
	sum := 0.0
	for j, x := range columns {
		out[j].Input = j
		if x == nil {
			continue
		}
		if r := stat.Correlation(x, event, s.Weights); !math.IsNaN(r) {
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
