package food

import (
	"example.org/honestplate/thermal/internal/check"
)

// A Structure is how the fat and the gums of a frozen dessert hold its melt. It decides
// when a scoop drips and slumps more than the room does: mixes alike in sugar and fat
// that differ in how the fat was built let 8 to 44 % drip in 150 min at 20 degC (Dairy
// Science and Technology 2010, dst0953, Table IV, read), and some commercial ice creams
// keep their shape for hours with next to no drip (Frozen Dessert Center, University of
// Wisconsin, read). What follows from it for a scoop are engineering estimates.
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
