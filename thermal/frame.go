package thermal

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// A frame is what every clock stands on: the checked model at its likely values, its
// uncertain inputs bound to the fields of a copy, and the run that reads them. A run
// writes the times of the events, never where one does not happen; asked for the
// course, it leaves it in the model.
type frame[M any] struct {
	kind     string // of thing, such as "scoop": products and units of one kind draw together
	model    M
	inputs   func(*M) []study.Input
	run      func(m *M, at []float64, course bool) error
	events   []string // their keys
	readings []reading[M]
	doubt    doubt
}

// A reading is something that can be read off the course.
type reading[M any] struct {
	key string                              // with its unit last, such as "core_c"
	at  func(m *M, seconds float64) float64 // by the course of a run
}

// A readAt is one reading of a frame at one time, s.
type readAt struct {
	which int
	at    float64
}

// a pace is how much slower than the model all that happens to one unit goes: what the
// model leaves out for all of its kind, and for this one.
type pace struct{ lean, unit float64 }

// bind returns the inputs of a copy of the model with those of the pace.
func (f frame[M]) bind(m *M, p *pace) []study.Input {
	*p = pace{1, 1}
	lean := ofProduct(factor("product.pace", "what the model leaves out", 1/f.doubt.lean, f.doubt.lean))
	unit := factor("unit.pace", "what differs from one to the next", 1/f.doubt.unit, f.doubt.unit)
	return append(f.inputs(m), bound(&p.lean, lean), bound(&p.unit, unit))
}

// study returns the study of the frame: its outputs are the events and the readings.
func (f frame[M]) study(reads []readAt) study.Study {
	n := len(f.events)
	return study.Study{Outputs: n + len(reads), Model: func() ([]study.Input, func([]float64) error) {
		m, p := new(M), new(pace)
		*m = f.model
		return f.bind(m, p), func(out []float64) error {
			if err := f.run(m, out[:n:n], len(reads) > 0); err != nil {
				return err
			}
			k := p.lean * p.unit
			for i := range n {
				out[i] *= k
			}
			for i, r := range reads {
				out[n+i] = f.readings[r.which].at(m, r.at/k)
			}
			return nil
		}
	}}
}

// nominal runs the model once for values of its inputs, with its course; nil is the
// likely ones.
func (f frame[M]) nominal(z []float64) (M, []float64, error) {
	m, at := f.model, make([]float64, len(f.events))
	if z != nil {
		study.Set(f.bind(&m, new(pace)), z)
	}
	err := f.run(&m, at, true)
	return m, at, err
}

// likely runs the model once, with its course.
func (f frame[M]) likely() (M, Runs, error) {
	m, at, err := f.nominal(nil)
	if err != nil {
		return f.model, Runs{}, err
	}
	var r Runs
	for i, t := range at {
		r.events = append(r.events, happening{key: f.events[i], event: Event{Window: window(t, t, t)}})
	}
	return m, r, nil
}

// banded runs the model once with its course and then the study over its inputs, with
// what a lesson taught of them.
func (f frame[M]) banded(l Lesson) (M, Runs, error) {
	k, err := f.keep(l, l.points(f.kind))
	if err != nil {
		return f.model, Runs{}, err
	}
	return k.answer()
}

// runsOf puts the answer of a study into words.
func runsOf(events []string, s *study.Sample, outcomes []study.Outcome) Runs {
	r := Runs{weights: s.Weights}
	for i, o := range outcomes {
		h := happening{key: events[i], event: eventOf(s.Inputs, o), at: make([]honestplate.Moment, 0, s.Len())}
		for _, t := range s.Output(i) {
			h.at = append(h.at, moment(t))
		}
		r.events = append(r.events, h)
	}
	return r
}

// observed is banded, after something was seen of the unit.
func (f frame[M]) observed(l Lesson, seen []Seen) (M, Runs, Lesson, error) {
	points := l.points(f.kind)
	points.Runs = study.TaughtRuns
	k, err := f.keep(l, points)
	if err != nil {
		return f.model, Runs{}, Lesson{}, err
	}
	o, err := k.observe(seen)
	if err != nil {
		return f.model, Runs{}, Lesson{}, err
	}
	m, r, err := o.(*kept[M]).answer()
	return m, r, o.lesson(), err
}
