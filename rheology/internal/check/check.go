// Package check holds the checks that the packages of the tree share beside those of
// the root: an error for a wrong number, for a missing thing, and the sizes of what is
// poured.
package check

import (
	"reflect"
	"strconv"
	"strings"

	"example.org/honestplate"
)

// Input returns an InputError for the number v of a unit.
func Input(field string, v float64, unit, want string) error {
	return &honestplate.InputError{Field: field, Got: number(v, unit), Want: want}
}

func number(v float64, unit string) string {
	if v != v {
		return "not a number"
	}
	return strings.TrimSuffix(strconv.FormatFloat(v, 'g', 6, 64)+" "+unit, " ")
}

// Missing returns an InputError for what was not given.
func Missing(field, want string) error {
	return &honestplate.InputError{Field: field, Got: "nothing", Want: want}
}

// Band returns an error unless the three numbers of a band lie in order within low..high,
// limits that source gives.
func Band(field string, e honestplate.Estimate, low, high float64, unit, source string) error {
	// The usual case in four comparisons; what is wrong is looked for afterwards.
	if low <= e.Low && e.Low <= e.Likely && e.Likely <= e.High && e.High <= high {
		return nil
	}
	for _, v := range [...]float64{e.Low, e.Likely, e.High} {
		if v <= 0 && low > 0 {
			return honestplate.Positive(field, v, unit)
		}
		if err := honestplate.InRange(field, v, low, high, unit, source); err != nil {
			return err
		}
	}
	return e.Check(field)
}

// Outside returns a RangeError for v outside low..high, limits that source gives.
func Outside(field string, v, low, high float64, unit, source string) error {
	return &honestplate.RangeError{Field: field, Value: v, Low: low, High: high, Unit: unit, Source: source}
}

// IsNil reports that nothing stands behind an interface: nil, or a nil pointer.
func IsNil(v any) bool {
	if v == nil {
		return true
	}
	r := reflect.ValueOf(v)
	return r.Kind() == reflect.Pointer && r.IsNil()
}
