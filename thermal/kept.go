package thermal

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sync"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// An observer is what is known of a unit, whatever its model.
type observer interface {
	observe(seen []Seen) (observer, error)
	runs() (Runs, error)
	lesson() Lesson
	keys() []string
	course(key string, times []time.Duration) ([]honestplate.Estimate, error)
}

// A kept is a study that goes on: what is known of one unit.
type kept[M any] struct {
	frame  frame[M]
	before Lesson // what was known before this unit
	basis  *basis
	seen   []Seen // of this unit
	sample *study.Sample
}

// known is what a basis says before anything was seen of the unit; with something seen
// it holds the outputs of its look.
func (f frame[M]) known(l Lesson, b *basis, seen []Seen) *kept[M] {
	k, _ := f.settled(l, b, seen, b.out)
	return k
}

// settled is what a basis and the outputs of the look at what was seen say of a unit, and
// how many runs of equal weight tell as much.
func (f frame[M]) settled(l Lesson, b *basis, seen []Seen, out []float64) (*kept[M], float64) {
	n := len(b.out) / len(f.events)
	doubts := make([][]float64, len(f.events))
	for e := range doubts {
		doubts[e] = slices.Clone(b.doubts[e])
	}
	s := &study.Sample{Outputs: len(f.events), Weights: b.weights, Learned: b.learned}
	if len(seen) > 0 {
		s.Weights, s.Learned = reweighed(b.weights, f.looking(seen).settle(out, doubts)), true
	}
	s.Inputs, _ = f.study(nil, false).Model()
	d, plain := len(s.Inputs), len(b.inputs)
	s.Z, s.Out = make([]float64, 0, n*d), make([]float64, len(b.out))
	for r := range n {
		s.Z = append(s.Z, b.z[r*b.dims:r*b.dims+plain]...)
		for e := range doubts {
			s.Z = append(s.Z, doubts[e][r])
			i := r*len(doubts) + e
			s.Out[i] = b.out[i] * s.Inputs[plain+e].At(doubts[e][r])
		}
	}
	effective := float64(n)
	if s.Weights != nil {
		effective = study.Effective(s.Weights)
	}
	return &kept[M]{frame: f, before: l, basis: b, seen: seen, sample: s}, effective
}

// answer is the likely run with its course, and what the runs say.
func (k *kept[M]) answer() (M, Runs, error) {
	var z []float64
	if k.sample.Learned {
		z = k.sample.Centre()
	}
	m, _, err := k.frame.nominal(z)
	if err != nil {
		return m, Runs{}, err
	}
	r, err := k.runs()
	if err == nil {
		_, err = r.explain()
	}
	return m, r, err
}

// runs are the windows; what decides them is computed when it is asked for.
func (k *kept[M]) runs() (Runs, error) {
	s := k.frame.study(nil, false)
	outcomes, err := s.Outcomes(k.sample, len(k.frame.events))
	if err != nil {
		return Runs{}, err
	}
	r := Runs{weights: k.sample.Weights, kept: k, events: make([]happening, len(outcomes))}
	for i, o := range outcomes {
		h := happening{key: k.frame.events[i], event: eventOf(k.sample.Inputs, o, study.Reasons{}), at: make([]honestplate.Moment, 0, k.sample.Len())}
		for _, t := range k.sample.Output(i) {
			h.at = append(h.at, moment(t))
		}
		r.events[i] = h
	}
	r.explain = sync.OnceValues(func() ([]Event, error) {
		why, err := s.Reasons(k.sample, outcomes)
		out := make([]Event, len(why))
		for i := range why {
			out[i] = eventOf(k.sample.Inputs, outcomes[i], why[i])
		}
		return out, err
	})
	return r, nil
}

// lesson is what this unit taught of what it shares with others.
func (k *kept[M]) lesson() Lesson {
	b := k.basis
	l := Lesson{unit: k.before.unit + 1, weights: k.sample.Weights, columns: map[string][]float64{}}
	for j, u := range slices.Concat(b.inputs, asInputs(b.keys)) {
		if u.Shared != study.Unit {
			l.columns[u.Column(k.frame.kind)] = study.Column(b.z, j, b.dims)
		}
	}
	return l
}

func (k *kept[M]) observe(seen []Seen) (observer, error) { return k.after(seen) }

// after returns what is known of the unit after some more was seen of it.
func (k *kept[M]) after(seen []Seen) (*kept[M], error) {
	f := k.frame
	if len(seen) == 0 {
		return nil, &honestplate.InputError{Field: "Seen", Got: "nothing", Want: "one observation or more"}
	}
	for i, s := range seen {
		if err := s.check(f.events, f.keys()); err != nil {
			return nil, honestplate.In(fmt.Sprintf("Seen[%d]", i), err)
		}
	}
	b := k.basis
	if len(b.out) < study.TaughtRuns*len(f.events) {
		more, err := f.basis(k.before, study.TaughtRuns)
		if err != nil {
			return nil, err
		}
		b = more
	}
	all := slices.Concat(k.seen, seen)
	look := f.looking(all)
	out, err := look.outputs(b)
	if err != nil {
		return nil, err
	}
	return f.concluded(k.before, b, look, out, study.TaughtRuns)
}

// concluded is what a look says of a unit, by the runs of a basis and its outputs, or by
// so many runs drawn anew where too few of these count.
func (f frame[M]) concluded(l Lesson, b *basis, look look, out []float64, runs int) (*kept[M], error) {
	if err := look.outside(out); err != nil {
		return nil, err
	}
	next, effective := f.settled(l, b, look.seen, out)
	if effective >= study.FewestEffective {
		return next, nil
	}
	b, out, err := f.redrawn(l, b, out, look, runs)
	if err == nil {
		next, effective = f.settled(l, b, look.seen, out)
	}
	if errors.Is(err, study.ErrFar) || err == nil && effective < study.FewestEffective {
		err = &honestplate.InputError{Field: "Seen", Got: fmt.Sprintf("%d observations that hardly go together", len(look.seen)),
			Want: "what one unit can show: look at the readings, their errors and the clock's inputs"}
	}
	if err != nil {
		return nil, err
	}
	return next, nil
}

// reweighed are weights, on average 1, after the logarithms of likelihoods.
func reweighed(weights, logs []float64) []float64 {
	most, sum := slices.Max(logs), 0.0
	if weights != nil {
		most = math.Inf(-1)
		for i, l := range logs {
			if weights[i] > 0 {
				most = max(most, l+math.Log(weights[i]))
			}
		}
	}
	out := make([]float64, len(logs))
	for i, l := range logs {
		w := 1.0
		if weights != nil {
			w = weights[i]
		}
		if w > 0 {
			out[i] = math.Exp(l - most + math.Log(w))
		}
		sum += out[i]
	}
	for i := range out {
		out[i] *= float64(len(out)) / sum
	}
	return out
}
