package study

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// Shared says with which other units an unknown value is shared.
type Shared int

// Whom an input is shared with.
const (
	Unit    Shared = iota // this unit alone: its start, its size
	Room                  // all that stands in the room
	Lamps                 // all under these lamps
	Crew                  // all that this crew judges: what it calls beads
	Product               // all units of this product
)

// An Input is an input of a model that is not known exactly, bound to the field that a
// run reads. Its distribution is normal in two pieces: median at Likely, 2.5 % below
// Low, 2.5 % above High. With Factor set the pieces are normal in the logarithm, for
// what is known to "times or divided by", such as a heat transfer coefficient.
type Input struct {
	Key    string // of the record: the same from version to version
	Name   string // for people, such as "humidity"
	Shared Shared
	Band   honestplate.Estimate
	Factor bool // normal in the logarithm; Low must be above 0
	// Min and Max are physical limits, such as 0 and 1 for a relative humidity:
	// samples beyond them are put on them. Both zero means no limits.
	Min, Max float64
	To       *float64 // the field, in the copy of the model that is run
	// Put takes the value instead of To where the field follows from it and from inputs
	// before it.
	Put func(float64)
}

// z95 is the number of standard deviations at the limits of a 95 % band.
const z95 = 1.959963984540054

// At returns the value at z standard deviations from the median.
func (u *Input) At(z float64) float64 {
	end := u.Band.High
	if z < 0 {
		end = u.Band.Low
	}
	likely, share := u.Band.Likely, math.Abs(z)/z95
	v := likely + share*(end-likely)
	if u.Factor {
		v = likely * math.Exp(share*math.Log(end/likely))
	}
	if u.Min < u.Max {
		v = min(max(v, u.Min), u.Max)
	}
	return v
}

// Set puts a value into the copy of the model.
func (u *Input) Set(v float64) {
	if u.Put != nil {
		u.Put(v)
		return
	}
	*u.To = v
}

// check demands numbers whose tails, three times as far as the limits, stay finite.
func (u *Input) check() error {
	b := u.Band
	if err := b.Check(u.Name); err != nil {
		return err
	}
	if u.Factor && (b.Low <= 0 || b.High/b.Low > 1e50) || math.Max(-b.Low, b.High) > 1e100 {
		return &honestplate.InputError{Field: u.Name, Got: b.String(), Want: "a band that can be spread; of a factor above 0"}
	}
	if u.Min > u.Max {
		return check.Input(u.Name, u.Min, "", fmt.Sprintf("a least value of at most %.6g", u.Max))
	}
	return nil
}
