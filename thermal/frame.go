package thermal

import (
	"slices"

	"example.org/honestplate/thermal/internal/study"
)

// A frame is what every clock stands on: the checked model at its likely values, its
// uncertain inputs bound to the fields of a copy, and the run that reads them. A run
// writes the times of the events, never where one does not happen; asked for a course of so
// many seconds at least, or of 0 for as long as it tells something, it leaves it in the model.
type frame[M any] struct {
	kind     string // of thing, such as "scoop": products and units of one kind draw together
	model    M
	inputs   func(*M) []study.Input
	run      func(m *M, at []float64, course float64) error
	events   []string // their keys
	readings []reading[M]
	doubt    doubt
}

// noCourse asks for the times alone.
const noCourse = -1.0

// A pace is how much slower than the model things go: lean, with all of the kind; unit,
// with this one, on its course; and each of its events.
type pace struct {
	lean, unit float64
	events     []float64
}

// plain returns the inputs of a copy of the model with those of its pace, but for the
// events' own.
func (f frame[M]) plain(m *M, p *pace) []study.Input {
	*p = pace{1, 1, slices.Repeat([]float64{1}, len(f.events))}
	lean := ofProduct(factor("product.pace", "what the model leaves out", 1/f.doubt.lean, f.doubt.lean))
	unit := factor("unit.pace", "what differs from one to the next", 1/f.doubt.unit, f.doubt.unit)
	return append(f.inputs(m), bound(&p.lean, lean), bound(&p.unit, unit))
}

// study returns the study of the frame: its outputs are the events and the readings.
// With plain set the events' own doubts are no inputs of it.
func (f frame[M]) study(reads []readAt, plain bool) study.Study {
	n := len(f.events)
	return study.Study{Outputs: n + len(reads), Model: func() ([]study.Input, func([]float64) error) {
		m, p := new(M), new(pace)
		*m = f.model
		inputs := f.plain(m, p)
		if !plain {
			inputs = append(inputs, f.doubt.inputs(f.events, p.events)...)
		}
		course := noCourse
		for _, r := range reads {
			course = max(course, 1.5*r.at) // longer than any pace asks
		}
		return inputs, func(out []float64) error {
			if err := f.run(m, out[:n:n], course); err != nil {
				return err
			}
			for i := range n {
				out[i] *= p.lean * p.events[i]
			}
			for i, r := range reads {
				out[n+i] = f.readings[r.which].at(m, r.at/(p.lean*p.unit))
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
		in := f.plain(&m, new(pace))
		study.Set(in, z[:len(in)])
	}
	err := f.run(&m, at, 0)
	return m, at, err
}
