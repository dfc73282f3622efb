package heat

import "example.org/honestplate/thermal/internal/check"

// A Form is the shape that makes a computation one-dimensional.
type Form int

// The three forms in which heat flows along one coordinate.
const (
	SphereForm   Form = iota // a ball; the coordinate is the radius
	CylinderForm             // a long cylinder, reckoned per metre of its length
	SlabForm                 // a wall heated alike on both faces, reckoned per square metre of one face
)

var forms = [...]string{"sphere", "cylinder", "slab"}

// String gives the form's name.
func (f Form) String() string { return check.Name("form", int(f), forms[:]) }

// MarshalText writes the form's name; an unknown one is refused.
func (f Form) MarshalText() ([]byte, error) { return check.Named("Form", int(f), forms[:]) }

// UnmarshalText reads the form's name.
func (f *Form) UnmarshalText(b []byte) error { return check.Read("Form", b, forms[:], f) }
