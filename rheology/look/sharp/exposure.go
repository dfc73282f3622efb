package sharp

import (
	"cmp"
	"time"

	"example.org/honestplate"
)

// An Exposure is how long a picture is lit: by a flash whose times are known, or by the
// shutter where lamps burn all the time. A flash in a bright room is both: ask for each.
type Exposure struct {
	// HalfPower is t0.5, the time that a flash is above half of its peak: what most makers
	// print. Two thirds of the light are out in it, the tail is not.
	HalfPower time.Duration `json:"t05_ns,omitzero"`
	// TenthPower is t0.1, the time above a tenth of the peak, which is what blurs. Some
	// makers call the time of 90 % of the light so: it is not the same.
	TenthPower time.Duration `json:"t01_ns,omitzero"`
	// Shutter is the time that the shutter is open, for lamps that burn all the time.
	Shutter time.Duration `json:"shutter_ns,omitzero"`
}

// TailFactor is t0.1 over t0.5 of a flash that burns out by itself: about 3 (read at
// makers and photographers); a pure exponential has ln 10/ln 2 = 3.32. A flash that is
// cut off has less.
const TailFactor = 3

// exponentialTail is the most that a tail adds.
const exponentialTail = 3.3219

// check wants an exposure that gives a flash or a shutter, not both, with
// t0.5 not above t0.1.
func (e Exposure) check() error {
	for _, c := range []struct {
		field string
		t     time.Duration
	}{{"HalfPower", e.HalfPower}, {"TenthPower", e.TenthPower}, {"Shutter", e.Shutter}} {
		if c.t < 0 || c.t > time.Hour {
			return &honestplate.InputError{Field: c.field, Got: c.t.String(), Want: "a time between 0 and an hour"}
		}
	}
	flash := e.HalfPower > 0 || e.TenthPower > 0
	switch {
	case flash == (e.Shutter > 0):
		return &honestplate.InputError{Field: "Shutter", Got: e.Shutter.String(),
			Want: "either the times of a flash or a shutter"}
	case e.TenthPower > 0 && e.HalfPower > e.TenthPower:
		return &honestplate.InputError{Field: "HalfPower", Got: e.HalfPower.String(),
			Want: "at most TenthPower, " + e.TenthPower.String()}
	}
	return nil
}

// Seconds returns the time that blurs, in s: t0.1 where it is given, [TailFactor] times
// t0.5 where only that is, the shutter else. Below it the band reaches to t0.5, for the
// brightest part of the blur is shorter than all of it.
func (e Exposure) Seconds() (honestplate.Estimate, error) {
	if err := e.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	half, tenth := e.HalfPower.Seconds(), e.TenthPower.Seconds()
	switch {
	case tenth > 0:
		return honestplate.Estimate{Low: cmp.Or(half, tenth/exponentialTail), Likely: tenth, High: tenth}, nil
	case half > 0:
		return honestplate.Estimate{Low: half, Likely: TailFactor * half, High: exponentialTail * half}, nil
	}
	return honestplate.Exactly(e.Shutter.Seconds()), nil
}
