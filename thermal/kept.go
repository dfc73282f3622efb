package thermal

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// fewestEffective is how many runs of equal weight a window must stand on.
const fewestEffective = 200

// An observer is a kept study, whatever its model.
type observer interface {
	observe(seen []Seen) (observer, error)
	runs() (Runs, error)
	lesson() Lesson
}

// A kept is a study that goes on: what is known of one unit.
type kept[M any] struct {
	frame  frame[M]
	before Lesson               // what was known before this unit
	seen   []Seen               // of this unit
	others map[string][]float64 // columns of the lesson that this clock has not
	sample *study.Sample
}

// keep runs the study at the points.
func (f frame[M]) keep(l Lesson, points study.Points) (*kept[M], error) {
	s := f.study(nil)
	inputs, err := s.Inputs()
	if err != nil {
		return nil, err
	}
	k := &kept[M]{frame: f, before: l, others: maps.Clone(l.columns)}
	for _, u := range inputs {
		delete(k.others, u.Column(f.kind))
	}
	k.sample = &study.Sample{Inputs: inputs, Z: points.Of(inputs), Outputs: s.Outputs, Weights: l.weights, Learned: !l.IsZero()}
	k.sample.Out, err = s.At(k.sample.Z, len(inputs))
	return k, err
}

// answer is the likely run with its course, and what the runs say.
func (k *kept[M]) answer() (M, Runs, error) {
	var z []float64
	if k.sample.Learned {
		z, _, _ = k.sample.Centre()
	}
	m, _, err := k.frame.nominal(z)
	if err != nil {
		return m, Runs{}, err
	}
	r, err := k.runs()
	return m, r, err
}

func (k *kept[M]) runs() (Runs, error) {
	outcomes, err := k.frame.study(nil).Outcomes(k.sample, len(k.frame.events))
	if err != nil {
		return Runs{}, err
	}
	r := runsOf(k.frame.events, k.sample, outcomes)
	r.kept = k
	return r, nil
}

// lesson is what this unit taught of what it shares with others.
func (k *kept[M]) lesson() Lesson {
	l := Lesson{unit: k.before.unit + 1, weights: k.sample.Weights, columns: maps.Clone(k.others)}
	if l.columns == nil {
		l.columns = map[string][]float64{}
	}
	for j, u := range k.sample.Inputs {
		if u.Shared != study.Unit {
			l.columns[u.Column(k.frame.kind)] = k.sample.Column(j)
		}
	}
	return l
}

// keys are those of the readings.
func (f frame[M]) keys() []string {
	out := make([]string, len(f.readings))
	for i, r := range f.readings {
		out[i] = r.key
	}
	return out
}

// observe returns what is known of the unit after some more was seen of it.
func (k *kept[M]) observe(seen []Seen) (observer, error) {
	if len(seen) == 0 {
		return nil, &honestplate.InputError{Field: "Seen", Got: "nothing", Want: "one observation or more"}
	}
	for i, s := range seen {
		if err := s.check(k.frame.events, k.frame.keys()); err != nil {
			return nil, honestplate.In(fmt.Sprintf("Seen[%d]", i), err)
		}
	}
	if k.sample.Len() < study.TaughtRuns {
		points := k.before.points(k.frame.kind)
		points.Runs = study.TaughtRuns
		more, err := k.frame.keep(k.before, points)
		if err != nil {
			return nil, err
		}
		k = more
	}
	next := &kept[M]{frame: k.frame, before: k.before, others: k.others, seen: slices.Concat(k.seen, seen)}
	look := k.frame.looking(seen)
	out, err := look.outputs(k.sample)
	if err != nil {
		return nil, err
	}
	if err := look.outside(out); err != nil {
		return nil, err
	}
	weights := reweighed(k.sample.Weights, look.logLikelihoods(out))
	next.sample = &study.Sample{Inputs: k.sample.Inputs, Z: k.sample.Z, Out: k.sample.Out, Outputs: k.sample.Outputs, Weights: weights, Learned: true}
	if study.Effective(weights) < fewestEffective {
		err = next.redraw()
	}
	return next, err
}

// reweighed are weights, on average 1, after the logarithms of likelihoods.
func reweighed(weights, logs []float64) []float64 {
	most, sum := slices.Max(logs), 0.0
	out := make([]float64, len(logs))
	for i, l := range logs {
		out[i] = math.Exp(l - most)
		if weights != nil {
			out[i] *= weights[i]
		}
		sum += out[i]
	}
	for i := range out {
		out[i] *= float64(len(out)) / sum
	}
	return out
}
