// Package check holds the checks of inputs that the packages of the tree share. They
// return the errors of the root.
package check

import (
	"encoding"
	"fmt"
	"slices"
	"strings"

	"example.org/honestplate"
)

// ColdestC is the coldest to which the enthalpy of frozen food is known, degC.
const ColdestC = -90.0

// Between is the estimate of these limits.
func Between(low, likely, high float64) honestplate.Estimate {
	return honestplate.Estimate{Low: low, Likely: likely, High: high}
}

// A Field is a number of an input and the range in which it makes sense.
type Field struct {
	Name      string // as the caller writes it
	Value     float64
	Low, High float64
	Unit      string
}

// Number returns a field with its range.
func Number(name string, v, low, high float64, unit string) Field {
	return Field{name, v, low, high, unit}
}

// Fields returns the error of the first field that is not a number or not in its
// range; source says whose ranges they are, or what stops the model there.
func Fields(source string, fields ...Field) error {
	for _, f := range fields {
		if err := honestplate.InRange(f.Name, f.Value, f.Low, f.High, f.Unit, source); err != nil {
			return err
		}
	}
	return nil
}

// Band checks that an estimate is in order and within low..high.
func Band(field string, e honestplate.Estimate, low, high float64, unit, source string) error {
	if err := e.Check(field); err != nil {
		return err
	}
	return Fields(source, Number(field+".Low", e.Low, low, high, unit), Number(field+".High", e.High, low, high, unit))
}

// Input returns an InputError about a number.
func Input(field string, v float64, unit, want string) error {
	if err := honestplate.Finite(field, v, unit); err != nil {
		return err // which never prints "NaN"
	}
	return &honestplate.InputError{Field: field, Got: strings.TrimSuffix(fmt.Sprintf("%.6g %s", v, unit), " "), Want: want}
}

// Not returns the error of Input where something is wrong.
func Not(wrong bool, field string, v float64, unit, want string) error {
	if !wrong {
		return nil
	}
	return Input(field, v, unit, want)
}

// One returns an InputError unless the number v is that of one of the named values of
// an enumeration.
func One(field string, v int, names []string) error {
	if v < 0 || v >= len(names) {
		return &honestplate.InputError{Field: field, Got: fmt.Sprint(v), Want: "one of " + strings.Join(names, ", ")}
	}
	return nil
}

// Word returns an InputError unless the value of an enumeration has a word.
func Word(field string, v encoding.TextMarshaler) error {
	_, err := v.MarshalText()
	if e, ok := err.(*honestplate.InputError); ok {
		e.Field = field
	}
	return err
}

// Named returns the word of a value of an enumeration, or an InputError for what is
// not one of them: what cannot be read back is not written.
func Named(field string, v int, names []string) ([]byte, error) {
	if err := One(field, v, names); err != nil {
		return nil, err
	}
	return []byte(names[v]), nil
}

// Read sets an enumeration to the value that a word names.
func Read[E ~int](field string, word []byte, names []string, into *E) error {
	i := slices.Index(names, string(word))
	if i < 0 {
		return &honestplate.InputError{Field: field, Got: string(word), Want: "one of " + strings.Join(names, ", ")}
	}
	*into = E(i)
	return nil
}

// Name is the word of a value for people; of an unknown one its number.
func Name(kind string, v int, names []string) string {
	if v < 0 || v >= len(names) {
		return fmt.Sprintf("unknown %s (%d)", kind, v)
	}
	return names[v]
}
