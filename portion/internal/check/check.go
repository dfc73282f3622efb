// Package check holds the errors that the packages of the portion tree share.
package check

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"example.org/honestplate"
)

// Input returns an [honestplate.InputError] about a value with its unit. What is not
// a number is called so.
func Input(field string, got any, unit, want string) error {
	text := fmt.Sprint(got)
	if v, ok := got.(float64); ok {
		if text = fmt.Sprintf("%.6g", v); math.IsNaN(v) {
			text = "not a number"
		}
	}
	return &honestplate.InputError{Field: field, Got: strings.TrimSuffix(text+" "+unit, " "), Want: want}
}

// NoMass refuses a declaration of a count alone.
func NoMass(why string) error {
	return Input("Grams", "0 g", "", "a declared mass above 0 "+why)
}

// Sized returns an error unless v is finite, above 0 and in low..high.
func Sized(field string, v, low, high float64, unit, source string) error {
	return cmp.Or(honestplate.Positive(field, v, unit), honestplate.InRange(field, v, low, high, unit, source))
}

// Bounded returns an error unless v is finite, 0 or more and at most high.
func Bounded(field string, v, high float64, unit, source string) error {
	return cmp.Or(honestplate.NotNegative(field, v, unit), honestplate.InRange(field, v, 0, high, unit, source))
}

// Beyond returns an [honestplate.RangeError] about a value above high.
func Beyond(field string, v, high float64, unit, source string) error {
	return &honestplate.RangeError{Field: field, Value: v, High: high, Unit: unit, Source: source}
}

// Rename returns an error of the vocabulary with the field from put in the words of
// a caller, to: Claims[2].Weight becomes Zones[2].Weight. Others stay as they are.
func Rename(err error, from, to string) error {
	return Reword(err, func(f string) string {
		if rest, ok := strings.CutPrefix(f, from); ok && (rest == "" || strings.ContainsAny(rest[:1], "[.")) {
			return to + rest
		}
		return f
	})
}

// Reword returns an error of the vocabulary with its field in other words. Others stay as
// they are.
func Reword(err error, field func(string) string) error {
	switch e := err.(type) {
	case *honestplate.InputError:
		return &honestplate.InputError{Field: field(e.Field), Got: e.Got, Want: e.Want}
	case *honestplate.RangeError:
		return &honestplate.RangeError{Field: field(e.Field), Value: e.Value, Low: e.Low, High: e.High, Unit: e.Unit, Source: e.Source}
	case *honestplate.RefusedError:
		return &honestplate.RefusedError{Field: field(e.Field), Kind: e.Kind, Reason: e.Reason, Advice: e.Advice}
	}
	return err
}
