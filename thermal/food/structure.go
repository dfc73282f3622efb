package food

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// A Structure is how the fat and the gums of a frozen dessert hold its melt. It decides
// when a scoop drips and slumps more than the room does: mixes alike in sugar and fat
// that differ in how the fat was built let 8 to 44 % drip in 150 min at 20 degC (Dairy
// Science and Technology 2010, dst0953, Table IV, read), and some commercial ice creams
// keep their shape for hours with next to no drip (Frozen Dessert Center, University of
// Wisconsin, read). The amounts that follow from it are engineering estimates.
type Structure int

// The structures.
const (
	UnknownStructure      Structure = iota // any of the others: the widest band
	NaturalStructure                       // no gums, no emulsifier: sorbet, ice milk, much home-made ice cream
	StabilisedStructure                    // gums hold the melt
	DestabilisedStructure                  // much of the fat is clumped by an emulsifier: a foam that stands
)

var structures = [...]string{"unknown", "natural", "stabilised", "much destabilised fat"}

// String says it for people.
func (s Structure) String() string { return check.Name("structure", int(s), structures[:]) }

// MarshalText writes the words of String; an unknown structure is refused.
func (s Structure) MarshalText() ([]byte, error) {
	return check.Named("Structure", int(s), structures[:])
}

// UnmarshalText reads the words of String.
func (s *Structure) UnmarshalText(b []byte) error {
	return check.Read("Structure", b, structures[:], s)
}

// Holds returns the melt that clings, g/m2, the share of the ball that has run off when
// its shape is lost, and how thick the thin edges and ridges are that a dipper leaves, m,
// of a mix of this structure and overrun, 0..300 %; else an [honestplate.InputError] or a
// [honestplate.RangeError].
func (s Structure) Holds(overrunPercent float64) (clingGM2, slumpShare honestplate.Estimate, fringe float64, err error) {
	if err := cmp.Or(check.Word("Structure", s), overrunInRange(overrunPercent)); err != nil {
		return honestplate.Estimate{}, honestplate.Estimate{}, 0, err
	}
	return spread(s.cling(), airy(overrunPercent, airyCling), MostClingGM2),
		spread(s.slump(), airy(overrunPercent, airySlump), MostSlumpShare), usualFringe * airy(overrunPercent, airyFringe), nil
}

// cling is the melt that clings, g/m2, and slump the share of the ball that has run off
// when its shape is lost.
func (s Structure) cling() honestplate.Estimate {
	switch s {
	case NaturalStructure:
		return check.Between(30, 60, 180)
	case StabilisedStructure:
		return check.Between(60, 200, 800)
	case DestabilisedStructure:
		return check.Between(250, 900, 20000)
	}
	return check.Between(30, 100, 8000)
}

func (s Structure) slump() honestplate.Estimate {
	switch s {
	case NaturalStructure:
		return check.Between(0.05, 0.08, 0.15)
	case StabilisedStructure:
		return check.Between(0.06, 0.12, 0.25)
	case DestabilisedStructure:
		return check.Between(0.15, 0.35, 0.9)
	}
	return check.Between(0.05, 0.10, 0.7)
}

// airy is by how much more a foam of an overrun holds its melt and its shape than one of
// 60 %. That more air melts slower is published as an order only (Sofjan and Hartel 2004:
// 80 % drips faster than 100 and 120; Sakurai 1996: low overrun melts quickly; read at
// second hand); conduction alone says the opposite. The powers are those with which the
// order of the loss of shape and of a dipped scoop's first drip comes out right.
func airy(overrunPercent, power float64) float64 {
	return math.Pow((100+overrunPercent)/160, power)
}

// MostClingGM2, g/m2, and MostSlumpShare are the limits to what is asked of a mix.
const (
	MostClingGM2   = 50000.0
	MostSlumpShare = 0.95
)

const (
	usualFringe = 2e-3 // m
	airyCling   = 5.0
	airySlump   = 4.0
	airyFringe  = 1.5
)

// spread multiplies a band and keeps it below most.
func spread(e honestplate.Estimate, by, most float64) honestplate.Estimate {
	return check.Between(min(by*e.Low, most), min(by*e.Likely, most), min(by*e.High, most))
}
