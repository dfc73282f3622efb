package study

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/floats"
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

// Quantiles returns the least values that have at least the shares p of the weight up to
// them; nil weights are equal.
func Quantiles(values, weights []float64, p ...float64) []float64 {
	left := make([]weighed, 0, len(values))
	all := 0.0
	for i, v := range values {
		w := 1.0
		if weights != nil {
			w = weights[i]
		}
		if w > 0 {
			left = append(left, weighed{v, w})
			all += w
		}
	}
	out := make([]float64, len(p))
	for i := range p {
		// A rounding of the sum must not decide which run an end is.
		out[i] = upTo(left, (p[i]-1e-9)*all)
	}
	return out
}

type weighed struct{ value, weight float64 }

// upTo is the least value with a weight up to it, itself included, of at least so much; it
// changes the order of the values.
func upTo(v []weighed, weight float64) float64 {
	for {
		a, b, c := v[0].value, v[len(v)/2].value, v[len(v)-1].value
		pivot := max(min(a, b), min(max(a, b), c))
		// Those below the pivot go to the front, those above it to the end.
		from, to := 0, len(v)
		below, here := 0.0, 0.0
		for i := 0; i < to; {
			switch w := v[i]; {
			case w.value < pivot:
				below += w.weight
				v[i], v[from] = v[from], w
				from, i = from+1, i+1
			case w.value > pivot:
				to--
				v[i], v[to] = v[to], w
			default:
				here += w.weight
				i++
			}
		}
		switch {
		case below >= weight && from > 0:
			v = v[:from]
		case below+here >= weight || to == len(v):
			return pivot
		default:
			v, weight = v[to:], weight-below-here
		}
	}
}

// Centre returns the likely value of every input, in standard deviations: 0, or once
// something was learned the mean of the runs.
func (s *Sample) Centre() []float64 {
	d := len(s.Inputs)
	centre := make([]float64, d)
	if !s.Learned {
		return centre
	}
	sum := 0.0
	for i := range s.Len() {
		w := 1.0
		if s.Weights != nil {
			w = s.Weights[i]
		}
		floats.AddScaled(centre, w, s.Z[i*d:(i+1)*d])
		sum += w
	}
	floats.Scale(1/sum, centre)
	return centre
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
}

// Outcomes returns what a sample says of the first events of its outputs. It runs the
// model with every input likely.
func (s Study) Outcomes(m *Sample, events int) ([]Outcome, error) {
	likely, err := s.At(m.Centre(), len(m.Inputs))
	if err != nil {
		return nil, err
	}
	out := make([]Outcome, events)
	for e := range out {
		q := Quantiles(m.Output(e), m.Weights, 0.025, 0.975)
		out[e] = Outcome{Earliest: min(q[0], likely[e]), Likely: likely[e], Latest: max(q[1], likely[e])}
	}
	return out, nil
}
