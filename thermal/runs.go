package thermal

import (
	"fmt"
	"slices"

	"example.org/honestplate"
)

// Runs are what came of a clock's runs, each with its own values of what is uncertain.
// Run r of every clock that knows the same [Lesson] has the same room, lamps and crew:
// what holds in run r for several things holds for them together. The zero value has no
// runs; the Runs of a Likely have no runs either, only events.
type Runs struct {
	events  []happening
	weights []float64 // nil: all 1
	kept    observer  // for Observe and Course; nil of a Likely
	// explain returns the events with what decides them; nil where they have it.
	explain func() ([]Event, error)
}

// A happening is an event over the runs.
type happening struct {
	key   string
	event Event
	at    []honestplate.Moment
}

// Len returns how many runs there are.
func (r Runs) Len() int {
	if len(r.events) == 0 {
		return 0
	}
	return len(r.events[0].at)
}

// Events returns the keys of the events, such as "haze" or "drips".
func (r Runs) Events() []string {
	keys := make([]string, len(r.events))
	for i, h := range r.events {
		keys[i] = h.key
	}
	return keys
}

func (r Runs) find(event string) int {
	return slices.IndexFunc(r.events, func(h happening) bool { return h.key == event })
}

// At returns when the event happens in each run; nil for a key that is none of Events.
func (r Runs) At(event string) []honestplate.Moment {
	if i := r.find(event); i >= 0 {
		return slices.Clone(r.events[i].at)
	}
	return nil
}

// Event returns the window of an event and what decides it; never for a key that is none
// of Events. After an Observe what decides is computed when an event is first asked for.
func (r Runs) Event(event string) Event {
	if i := r.find(event); i >= 0 {
		return r.at(i)
	}
	return Event{Window: window(never, never, never)}
}

// at is the i-th event, in the order of the clock.
func (r Runs) at(i int) Event {
	if r.explain != nil {
		if events, err := r.explain(); err == nil { // else the model fails where one input alone is at its limit
			return events[i]
		}
	}
	return r.events[i].event
}

// Weights returns how much each run counts: 1 until something was observed, then on
// average 1.
func (r Runs) Weights() []float64 {
	if r.weights == nil {
		return slices.Repeat([]float64{1}, r.Len())
	}
	return slices.Clone(r.weights)
}

// Chance returns the chance, 0..1, of what holds in some of the runs: the share of the
// weight of those for which holds returns true. Without runs it is 0.
func (r Runs) Chance(holds func(run int) bool) float64 {
	sum, all := 0.0, 0.0
	for i := range r.Len() {
		w := 1.0
		if r.weights != nil {
			w = r.weights[i]
		}
		all += w
		if holds(i) {
			sum += w
		}
	}
	if all == 0 {
		return 0
	}
	return sum / all
}

// String says how many runs there are and of what: not all of them.
func (r Runs) String() string { return fmt.Sprintf("%d runs of %q", r.Len(), r.Events()) }

// MarshalJSON refuses: runs go over no wire. What was learned does, as a [Lesson], and so do
// the windows of a clock.
func (r Runs) MarshalJSON() ([]byte, error) {
	return nil, &honestplate.InputError{Field: "Runs", Got: "to be written", Want: "a Lesson, or the clock without its runs"}
}

// Observe returns the runs of the same unit after some more was seen of it, and what that
// teaches of what it shares with others. The runs are kept and weighed: nothing is run
// again unless fewer than 200 effective ones are left, or something was read.
func (r Runs) Observe(seen ...Seen) (Runs, Lesson, error) {
	if r.kept == nil {
		return Runs{}, Lesson{}, errNotKept()
	}
	o, err := r.kept.observe(seen)
	if err != nil {
		return Runs{}, Lesson{}, err
	}
	after, err := o.runs()
	return after, o.lesson(), err
}
