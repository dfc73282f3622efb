package thermal

import (
	"encoding/json"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// An Event says when something happens to what a clock is about.
type Event struct {
	honestplate.Window
	// Decides ranks the inputs by how much of this window's width they explain, the
	// decisive one first; empty where the window has no width.
	Decides []Sensitivity
}

// A Sensitivity says how much of an event's uncertainty comes from one input.
type Sensitivity struct {
	// Key names the input in a record, Input to people.
	Key   string `json:"key"`
	Input string `json:"input"`
	// SharedWith says what else hangs on the same unknown value: this unit alone, the
	// room, the lamps, the crew's judgement or the product.
	SharedWith string `json:"shared_with"`
	// Low and High are when the event happens with this input alone at its limits.
	Low  honestplate.Moment `json:"low_s"`
	High honestplate.Moment `json:"high_s"`
	// Share of the spread, 0..1: the squared rank correlation of input and event
	// over the samples, less what chance gives, made to sum to 1 over the inputs.
	Share float64 `json:"share"`
}

// String gives the sensitivity for people: "humidity 62 % (5:10 to 2:05)".
func (s Sensitivity) String() string {
	return fmt.Sprintf("%s %.0f %% (%s to %s)", s.Input, 100*s.Share, s.Low, s.High)
}

// wireEvent is an Event as it is written.
type wireEvent struct {
	Window  honestplate.Window `json:"window"`
	Decides []Sensitivity      `json:"decides,omitempty"`
}

// MarshalJSON writes {"window":..,"decides":..}.
func (e Event) MarshalJSON() ([]byte, error) { return json.Marshal(wireEvent{e.Window, e.Decides}) }

// UnmarshalJSON reads what MarshalJSON writes; the window must be there.
func (e *Event) UnmarshalJSON(b []byte) error {
	var w struct {
		Window  *honestplate.Window `json:"window"`
		Decides []Sensitivity       `json:"decides"`
	}
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	if w.Window == nil {
		return &honestplate.InputError{Field: "window", Got: "missing", Want: "earliest_s, likely_s and latest_s"}
	}
	*e = Event{Window: *w.Window, Decides: w.Decides}
	return nil
}

// A frame is what every clock stands on: the checked model at its likely values, its
// uncertain inputs bound to the fields of a copy, and the run that reads them. A run
// writes the times of the events, never where one does not happen; asked for the
// course, it leaves it in the model.
type frame[M any] struct {
	model  M
	inputs func(*M) []study.Input
	run    func(m *M, at []float64, course bool) error
	events int
}

// never is the time, in seconds, of what does not happen.
var never = math.Inf(1)

// likely runs the model once, with its course.
func (f frame[M]) likely() (M, []Event, error) {
	m, at := f.model, make([]float64, f.events)
	if err := f.run(&m, at, true); err != nil {
		return f.model, nil, err
	}
	out := make([]Event, f.events)
	for i, t := range at {
		out[i].Window = window(t, t, t)
	}
	return m, out, nil
}

// banded runs the model once with its course and then the study over its inputs.
func (f frame[M]) banded() (M, []Event, error) {
	m, events, err := f.likely()
	if err != nil {
		return m, nil, err
	}
	inputs := f.inputs(&m)
	outcomes, err := study.Study{Events: f.events, Model: func() ([]study.Input, func([]float64) error) {
		copied := new(M)
		*copied = f.model
		return f.inputs(copied), func(at []float64) error { return f.run(copied, at, false) }
	}}.Run()
	for i, o := range outcomes {
		events[i] = eventOf(inputs, o)
	}
	return m, events, err
}

func eventOf(inputs []study.Input, o study.Outcome) Event {
	e := Event{Window: window(o.Earliest, o.Likely, o.Latest)}
	for _, r := range o.Decides {
		in := inputs[r.Input]
		e.Decides = append(e.Decides, Sensitivity{Key: in.Key, Input: in.Name, SharedWith: sharedNames[in.Shared],
			Low: moment(r.Low), High: moment(r.High), Share: r.Share})
	}
	return e
}

var sharedNames = [...]string{study.Unit: "this unit alone", study.Room: "room", study.Lamps: "lamps", study.Crew: "crew", study.Product: "product"}

// moment is a time in seconds; what lies beyond centuries is never.
func moment(s float64) honestplate.Moment {
	if !(s < 9e9) {
		return honestplate.Never()
	}
	return honestplate.After(seconds(s))
}

func window(earliest, likely, latest float64) honestplate.Window {
	return honestplate.Window{Earliest: moment(earliest), Likely: moment(likely), Latest: moment(latest)}
}

// seconds is a length of time of at most centuries.
func seconds(s float64) time.Duration { return time.Duration(math.Round(s * 1e9)) }
