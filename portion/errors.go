package portion

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"unicode"
)

// The kinds of error of this package, for errors.Is.
var (
	// ErrInput marks an input that makes no sense: NaN, Inf, negative where a
	// size is wanted, empty, contradictory.
	ErrInput = errors.New("portion: invalid input")
	// ErrRange marks a sensible input outside the stated range of a model.
	ErrRange = errors.New("portion: outside the model's range")
)

// An InputError says which input makes no sense and what is wanted instead.
// errors.Is(err, ErrInput) holds.
type InputError struct {
	Quantity string  // what was given, such as "batch mass"
	Value    float64 // as given
	Unit     string  // of the value; empty for a pure number
	Want     string  // the condition that fails, such as "above 0"
}

// Error gives the quantity, its value and what is wanted.
func (e *InputError) Error() string {
	return fmt.Sprintf("portion: %s is %s, want %s", oneLine(e.Quantity), withUnit(e.Value, e.Unit), e.Want)
}

// Is reports that an InputError is an ErrInput.
func (e *InputError) Is(target error) bool { return target == ErrInput }

// A RangeError says which quantity left a model's range, the limits and whose
// limits they are. errors.Is(err, ErrRange) holds.
type RangeError struct {
	Quantity  string  // such as "fat"
	Value     float64 // as given
	Low, High float64 // the range
	Unit      string  // of the value and the range
	Source    string  // whose range: author, year, or the rule that sets it
}

// Error gives the quantity, its value, the limits and their source.
func (e *RangeError) Error() string {
	return fmt.Sprintf("portion: %s is %s, outside %.6g..%s (%s)",
		oneLine(e.Quantity), withUnit(e.Value, e.Unit), e.Low, withUnit(e.High, e.Unit), e.Source)
}

// Is reports that a RangeError is an ErrRange.
func (e *RangeError) Is(target error) bool { return target == ErrRange }

// oneLine keeps names that users choose from breaking a message into lines.
func oneLine(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, name)
}

func withUnit(v float64, unit string) string {
	if unit == "" {
		return fmt.Sprintf("%.6g", v)
	}
	return fmt.Sprintf("%.6g %s", v, unit)
}

// finite returns an InputError if v is NaN or infinite.
func finite(quantity string, v float64, unit string) error {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return &InputError{quantity, v, unit, "a finite number"}
	}
	return nil
}

// positive returns an InputError unless v is finite and above zero.
func positive(quantity string, v float64, unit string) error {
	if !(v > 0) || math.IsInf(v, 0) {
		return &InputError{quantity, v, unit, "a finite number above 0"}
	}
	return nil
}

// notNegative returns an InputError unless v is finite and at least zero.
func notNegative(quantity string, v float64, unit string) error {
	if !(v >= 0) || math.IsInf(v, 0) {
		return &InputError{quantity, v, unit, "a finite number, 0 or more"}
	}
	return nil
}

// within returns an InputError for a value that is not finite and a RangeError
// for one outside low..high.
func within(quantity string, v, low, high float64, unit, source string) error {
	if err := finite(quantity, v, unit); err != nil {
		return err
	}
	if v < low || v > high {
		return &RangeError{quantity, v, low, high, unit, source}
	}
	return nil
}
