package portion

import (
	"math"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/words"
)

// A Class is an accuracy class of scales after OIML R 76.
type Class int

// The classes. ClassIII, the shop's and kitchen's, is the zero value.
const (
	ClassIII  Class = iota // medium
	ClassI                 // special
	ClassII                // high
	ClassIIII              // ordinary
)

var classNames = [...]string{"III", "I", "II", "IIII"}

// String returns the class as scales bear it.
func (c Class) String() string { return words.Of("Class", int(c), classNames[:]) }

// MarshalText writes the class as scales bear it.
func (c Class) MarshalText() ([]byte, error) { return words.Text("Class", int(c), classNames[:]) }

// UnmarshalText reads what MarshalText writes.
func (c *Class) UnmarshalText(text []byte) error { return words.Read(c, "Class", text, classNames[:]) }

// limits returns up to how many verification intervals e an error of 0.5 e, 1 e
// and 1.5 e is allowed (OIML R 76-1, table 6).
func (c Class) limits() (limits [3]float64, err error) {
	switch c {
	case ClassI:
		return [3]float64{50_000, 200_000, math.Inf(1)}, nil
	case ClassII:
		return [3]float64{5_000, 20_000, 100_000}, nil
	case ClassIII:
		return [3]float64{500, 2_000, 10_000}, nil
	case ClassIIII:
		return [3]float64{50, 200, 1_000}, nil
	}
	return limits, check.Input("Class", c, "", "ClassI, ClassII, ClassIII or ClassIIII")
}

// LeastLoad returns the minimum capacity of a scale of the class, the least load
// worth weighing on it, in grams: 100 e for class I, 20 e for II to e = 0.05 g and
// 50 e above, 20 e for III, 10 e for IIII. Below it the relative error is too large.
// Errors: those of [Scale.MaxError].
//
// Source: OIML R 76-1, table 3 (read).
func (s Scale) LeastLoad() (float64, error) {
	s, err := s.checked()
	if err != nil {
		return 0, err
	}
	switch {
	case s.Class == ClassI:
		return 100 * s.VerifyGrams, nil
	case s.Class == ClassII && s.VerifyGrams > 0.05:
		return 50 * s.VerifyGrams, nil
	case s.Class == ClassIIII:
		return 10 * s.VerifyGrams, nil
	default:
		return 20 * s.VerifyGrams, nil
	}
}
