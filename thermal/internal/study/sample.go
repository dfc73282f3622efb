package study

import (
	"cmp"
	"math"
	"slices"
)

// A Sample is runs of a study: what they drew, what came of it, and how much each
// counts.
type Sample struct {
	Inputs  []Input
	Z       []float64 // run by run
	Out     []float64 // run by run
	Outputs int
	Weights []float64 // of each run; nil: all count alike
	Learned bool      // Z is no longer what was thought before anything was seen
}

// Len is the number of runs.
func (s *Sample) Len() int { return len(s.Z) / max(1, len(s.Inputs)) }

// Column returns the values of an input.
func (s *Sample) Column(j int) []float64 { return stride(s.Z, j, len(s.Inputs)) }

// Output returns an output of every run.
func (s *Sample) Output(e int) []float64 { return stride(s.Out, e, s.Outputs) }

// Column returns the j-th of d values of every run.
func Column(v []float64, j, d int) []float64 { return stride(v, j, d) }

// Rows returns columns run by run.
func Rows(columns [][]float64) []float64 {
	d, n := len(columns), len(columns[0])
	out := make([]float64, n*d)
	for j, c := range columns {
		for i, v := range c {
			out[i*d+j] = v
		}
	}
	return out
}

func stride(v []float64, j, d int) []float64 {
	out := make([]float64, 0, len(v)/d)
	for i := j; i < len(v); i += d {
		out = append(out, v[i])
	}
	return out
}

// FewestEffective is how many runs of equal weight a window must stand on.
const FewestEffective = 200

// Effective is how many runs of equal weight tell as much: the square of the sum of the
// weights over the sum of their squares.
func Effective(weights []float64) float64 {
	sum, squares := 0.0, 0.0
	for _, w := range weights {
		sum += w
		squares += float64(w * w)
	}
	if !(squares > 0) {
		return 0
	}
	return sum * sum / squares
}

// effective is the number for the sample.
func (s *Sample) effective() float64 {
	if s.Weights == nil {
		return float64(s.Len())
	}
	return Effective(s.Weights)
}

// A weighed is values in order, with the share of the weight up to each.
type weighed struct{ values, upTo []float64 }

func weigh(values, weights []float64) weighed {
	if weights == nil {
		sorted := slices.Sorted(slices.Values(values))
		upTo := make([]float64, len(sorted))
		for i := range upTo {
			upTo[i] = float64(i+1) / float64(len(sorted))
		}
		return weighed{sorted, upTo}
	}
	order := inOrder(values)
	out := weighed{make([]float64, 0, len(order)), make([]float64, 0, len(order))}
	sum := 0.0
	for _, i := range order {
		if w := weights[i]; w > 0 {
			sum += w
			out.values, out.upTo = append(out.values, values[i]), append(out.upTo, sum)
		}
	}
	for i := range out.upTo {
		out.upTo[i] /= sum
	}
	return out
}

// quantile is the least value that has at least the share p of the weight up to it.
func (w weighed) quantile(p float64) float64 {
	// A rounding of the sum must not decide which run an end is.
	i, _ := slices.BinarySearchFunc(w.upTo, p-1e-9, func(a, b float64) int { return cmp.Compare(a, b) })
	return w.values[min(i, len(w.values)-1)]
}

// Quantiles returns the quantiles of some values under weights; nil weights are equal.
func Quantiles(values, weights []float64, p ...float64) []float64 {
	w := weigh(values, weights)
	out := make([]float64, len(p))
	for i := range p {
		out[i] = w.quantile(p[i])
	}
	return out
}

// Centre returns the likely value of every input, in standard deviations, and its 95 %
// limits: what was thought, or once something was learned the mean and the quantiles of
// the runs.
func (s *Sample) Centre() (centre, low, high []float64) {
	d := len(s.Inputs)
	centre, low, high = make([]float64, d), make([]float64, d), make([]float64, d)
	for j := range d {
		if !s.Learned {
			low[j], high[j] = -z95, z95
			continue
		}
		column, sum := s.Column(j), 0.0
		for i, z := range column {
			w := 1.0
			if s.Weights != nil {
				w = s.Weights[i]
			}
			centre[j] += float64(w * z)
			sum += w
		}
		centre[j] /= sum
		q := Quantiles(column, s.Weights, 0.025, 0.975)
		low[j], high[j] = min(q[0], centre[j]), max(q[1], centre[j])
	}
	return centre, low, high
}

func inOrder(v []float64) []int {
	order := make([]int, len(v))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(v[a], v[b]), a-b) })
	return order
}

// An Outcome is what a study finds for one event, in seconds.
type Outcome struct {
	Earliest, Likely, Latest float64 // 2.5 % quantile, the likely run, 97.5 % quantile
	// Decides ranks the inputs by how much of the spread they explain, the decisive
	// one first, and Rest is what none explains alone; empty where the window has no width.
	Decides []Rank
	Rest    float64
}

// Outcomes returns what a sample says of the first events of its outputs. It runs the
// model with every input likely, and twice per input with that one alone at its limits.
func (s Study) Outcomes(m *Sample, events int) ([]Outcome, error) {
	d := len(m.Inputs)
	centre, low, high := m.Centre()
	z := slices.Repeat(centre, 1+2*d)
	for j := range d {
		z[(1+2*j)*d+j], z[(2+2*j)*d+j] = low[j], high[j]
	}
	alone, err := s.At(z, d)
	if err != nil {
		return nil, err
	}
	columns := make([][]float64, d)
	for j := range columns {
		if b := m.Inputs[j].Band; b.Low < b.High {
			columns[j] = ranks(m.Column(j), m.Weights)
		}
	}
	out := make([]Outcome, events)
	for e := range out {
		at := m.Output(e)
		q := Quantiles(at, m.Weights, 0.025, 0.975)
		likely := alone[e]
		o := Outcome{Earliest: min(q[0], likely), Likely: likely, Latest: max(q[1], likely)}
		if o.Earliest < o.Latest && !math.IsInf(o.Earliest, 1) { // else one stray run decides nothing
			o.Decides, o.Rest = m.rank(columns, at)
			for i := range o.Decides {
				j := o.Decides[i].Input
				o.Decides[i].Low, o.Decides[i].High = alone[(1+2*j)*s.Outputs+e], alone[(2+2*j)*s.Outputs+e]
			}
		}
		out[e] = o
	}
	return out, nil
}
