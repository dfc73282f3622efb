package apportion

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/decimal"
)

// A BoundsError says that no sharing keeps all minima and maxima: the minima ask for
// more than there is, or the maxima let less be taken. It tells shares that were
// promised twice over from a number mistyped. errors.Is(err,
// [honestplate.ErrInfeasible]) holds, and it wraps an [honestplate.RefusedError].
type BoundsError struct {
	Field       string  // whose bounds: Claims, or what the caller calls them
	Total       int64   // units to share
	Least, Most int64   // what the minima ask for, and what the maxima let be taken
	StepGrams   float64 // mass of a unit, g; 0 where units are not masses
}

// excess returns by how many units the minima must come down together; negative is
// by how many the maxima must go up.
func (e *BoundsError) excess() int64 {
	if e.Least > e.Total {
		return e.Least - e.Total
	}
	return e.Most - e.Total
}

// Error says which bounds fail and by how much to change them.
func (e *BoundsError) Error() string { return e.Unwrap().Error() }

// Unwrap returns the error in the module's vocabulary.
func (e *BoundsError) Unwrap() error {
	refused := &honestplate.RefusedError{Field: e.Field, Kind: honestplate.ErrInfeasible}
	if over := e.excess(); over > 0 {
		refused.Reason = fmt.Sprintf("the minima sum to %s, and there is %s", amount(e.Least, e.StepGrams), amount(e.Total, e.StepGrams))
		refused.Advice = fmt.Sprintf("take %s off them", amount(over, e.StepGrams))
	} else {
		refused.Reason = fmt.Sprintf("the maxima let %s be taken of %s", amount(e.Most, e.StepGrams), amount(e.Total, e.StepGrams))
		refused.Advice = fmt.Sprintf("raise them by %s (weight 0 takes its minimum only)", amount(-over, e.StepGrams))
	}
	return refused
}

// amount gives units for people, in grams where they are steps of a scale.
func amount(units int64, stepGrams float64) string {
	if stepGrams > 0 {
		return decimal.Plain(decimal.Of(stepGrams).Times(units)) + " g"
	}
	return fmt.Sprint(units)
}
