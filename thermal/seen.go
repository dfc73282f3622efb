package thermal

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"example.org/honestplate"
)

// A Seen is something seen, or read from an instrument, on one unit: an event that
// happened, one that has not happened yet, or a reading at some time. Just one of Event
// and Reading is given.
type Seen struct {
	// Event is its key, one of [Runs.Events], such as "haze".
	Event string `json:"event,omitzero"`
	// Reading is the key of a reading of the course, one of [Runs.Readings], such as
	// "core_c".
	Reading string `json:"reading,omitzero"`
	// At is when, since the start.
	At time.Duration `json:"at_ns"`
	// Within is how far At may be off, as a 95 % limit to both sides; 0 means 5 s or 5 %
	// of At, whichever is more: an eye and a watch.
	Within time.Duration `json:"within_ns,omitzero"`
	// NotYet says that the Event had not happened at At.
	NotYet bool `json:"not_yet,omitzero"`
	// Value is what the instrument read.
	Value float64 `json:"value,omitzero"`
	// WithinValue is how far Value may be off, as a 95 % limit; 0 means 1 (degC) for a
	// temperature, else 10 % of Value.
	WithinValue float64 `json:"within_value,omitzero"`
}

// check returns what is wrong with an observation of a clock with these keys.
func (s Seen) check(events, readings []string) error {
	switch {
	case s.Event != "" && s.Reading != "":
		return &honestplate.InputError{Field: "Reading", Got: fmt.Sprintf("%q beside the event %q", s.Reading, s.Event), Want: "an event or a reading; two observations for both"}
	case s.Reading != "" && s.NotYet:
		return &honestplate.InputError{Field: "NotYet", Got: "given for a reading", Want: "it for an event only"}
	}
	err := oneOf("Event", s.Event, events)
	if s.Reading != "" {
		err = oneOf("Reading", s.Reading, readings)
	}
	return cmp.Or(err,
		honestplate.InRange("At", s.At.Seconds(), 0, longest, "s", longestSource),
		honestplate.NotNegative("Within", s.Within.Seconds(), "s"),
		honestplate.Finite("Value", s.Value, ""),
		honestplate.NotNegative("WithinValue", s.WithinValue, ""))
}

// oneOf refuses a key that is none of some.
func oneOf(field, key string, keys []string) error {
	if !slices.Contains(keys, key) {
		return &honestplate.InputError{Field: field, Got: fmt.Sprintf("%q", key), Want: fmt.Sprintf("one of %q", keys)}
	}
	return nil
}

// longest is the latest time, s, that a clock is asked about.
const (
	longest       = 30 * 86400.0
	longestSource = "a month: nobody waits longer"
)

// limitsToSD makes the 95 % limit of a reading its standard deviation.
const limitsToSD = 1 / 1.959963984540054

// timeSD is the standard deviation of At, s.
func (s Seen) timeSD() float64 {
	within := s.Within.Seconds()
	if within == 0 {
		within = max(5, 0.05*s.At.Seconds())
	}
	return within * limitsToSD
}

// valueSD is the standard deviation of Value.
func (s Seen) valueSD() float64 {
	within := s.WithinValue
	if within == 0 {
		within = 0.1 * math.Abs(s.Value)
		if strings.HasSuffix(s.Reading, "_c") || within == 0 { // degrees
			within = 1
		}
	}
	return within * limitsToSD
}

// impossible is the logarithm of the likelihood of what a run cannot show: an event that
// never happens in it. It is finite, so that runs can still be compared.
const impossible = -1e300

// readLog is the logarithm of the likelihood of a reading in a run that comes to v, give
// or take a scatter.
func (s Seen) readLog(v, scatter float64) float64 {
	sd := math.Hypot(s.valueSD(), scatter)
	d := (v - s.Value) / sd
	return -0.5*d*d - math.Log(sd)
}
