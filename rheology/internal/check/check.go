// Package check holds the checks that the packages of the tree share beside those of
// the root: an error for a wrong number, for a missing thing, and for what a liquid answers
// that is no property.
package check

import (
	"cmp"
	"math"
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

// Answered passes on what a liquid answered if it is a property: a band in order, above 0 and
// finite. A liquid of the user's own may answer anything.
func Answered(field, unit string, e honestplate.Estimate, err error) (honestplate.Estimate, error) {
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if 0 <= e.Low && e.Low <= e.Likely && 0 < e.Likely && e.Likely <= e.High && e.High <= math.MaxFloat64 {
		return e, nil
	}
	if err := honestplate.Positive(field, e.Likely, unit); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Estimate{}, Band(field, e, 0, math.MaxFloat64, unit, "numbers")
}

// Viscosity is Answered for a viscosity in Pa s.
func Viscosity(e honestplate.Estimate, err error) (honestplate.Estimate, error) {
	return Answered("Liquid.Viscosity", "Pa s", e, err)
}

// Density is Answered for a density in kg/m3.
func Density(e honestplate.Estimate, err error) (honestplate.Estimate, error) {
	return Answered("Liquid.Density", "kg/m3", e, err)
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

// Unless is e, or the zero Estimate where there is an error.
func Unless(err error, e honestplate.Estimate) (honestplate.Estimate, error) {
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return e, nil
}

// YieldStress asks a liquid for its yield stress in Pa; the zero Estimate if it has none.
func YieldStress(l any, tempC float64) (honestplate.Estimate, error) {
	y, ok := l.(interface {
		YieldStress(tempC float64) (honestplate.Estimate, error)
	})
	if !ok {
		return honestplate.Estimate{}, nil
	}
	e, err := y.YieldStress(tempC)
	return Unless(cmp.Or(err, Band("Liquid.YieldStress", e, 0, 1e6, "Pa", "softer than butter")), e)
}
