package thermal

import (
	"encoding/json"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/study"
)

// An Event says when something happens to what a clock is about.
type Event struct {
	honestplate.Window `json:"window"`
	// Decides ranks the inputs by how much of this window's width each explains alone,
	// the decisive one first; empty where the window has no width.
	Decides []Sensitivity `json:"decides,omitempty"`
	// Rest is the share of the width, 0..1, that no input explains alone: inputs that
	// count only together.
	Rest float64 `json:"rest,omitzero"`
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
	// Share of the spread, 0..1, that the input explains alone: the squared rank
	// correlation of input and event over the runs, less what chance gives.
	Share float64 `json:"share"`
}

// UnmarshalJSON reads {"window":..,"decides":..,"rest":..}; the window must be there.
func (e *Event) UnmarshalJSON(b []byte) error {
	var w struct {
		Window  *honestplate.Window `json:"window"`
		Decides []Sensitivity       `json:"decides"`
		Rest    float64             `json:"rest"`
	}
	if err := json.Unmarshal(b, &w); err != nil {
		return err
	}
	if w.Window == nil {
		return &honestplate.InputError{Field: "window", Got: "missing", Want: "earliest_s, likely_s and latest_s"}
	}
	*e = Event{Window: *w.Window, Decides: w.Decides, Rest: w.Rest}
	return nil
}

// eventOf puts what a study found for an event into words.
func eventOf(inputs []study.Input, o study.Outcome, why study.Reasons) Event {
	e := Event{Window: window(o.Earliest, o.Likely, o.Latest), Rest: why.Rest}
	for _, r := range why.Decides {
		in := inputs[r.Input]
		e.Decides = append(e.Decides, Sensitivity{Key: in.Key, Input: in.Name, SharedWith: sharedNames[in.Shared],
			Low: moment(r.Low), High: moment(r.High), Share: r.Share})
	}
	return e
}

var sharedNames = [...]string{study.Unit: "this unit alone", study.Room: "room", study.Lamps: "lamps", study.Crew: "crew", study.Product: "product"}

// never is the time, in seconds, of what does not happen.
var never = math.Inf(1)

// crossed notes in at, once, when what rises from was to is in the step of dt from t
// passes a level.
func crossed(at *float64, t, dt, was, is, level float64) {
	if *at == never && was < level && is >= level {
		*at = t + dt*(level-was)/(is-was)
	}
}

// nothing sets the times of events that have not happened.
func nothing(at []float64) {
	for i := range at {
		at[i] = never
	}
}

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
