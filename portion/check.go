package portion

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// checkMass refuses a mass that is none or too large.
func checkMass(field string, grams float64) error {
	return check.Bounded(field, grams, mostGrams, "g", massReason)
}

// checkStep refuses a step that no scale has; 0 is the default.
func checkStep(field string, grams float64) error {
	if grams == 0 {
		return nil
	}
	return cmp.Or(honestplate.NotNegative(field, grams, "g"),
		honestplate.InRange(field, grams, leastStepGrams, mostStepGrams, "g", stepReason))
}

// stepOf reads a scale's step; the zero value means 1 g.
func stepOf(grams float64) decimal.Decimal {
	if grams == 0 {
		return decimal.One
	}
	return decimal.Of(grams)
}

// steps returns v grams as whole steps, or a StepError or [honestplate.RangeError] naming the
// field. v must be finite and not negative.
func steps(field string, v float64, step decimal.Decimal) (int64, error) {
	floor, ceil, ok := decimal.Around(v, step)
	if !ok {
		return 0, check.Beyond(field, v/step.Times(1), maxSteps, "steps", stepsReason)
	}
	if floor != ceil {
		return 0, &StepError{field, v, step.Times(1), step.Times(floor), step.Times(ceil)}
	}
	return floor, nil
}

// noMass refuses a declaration of a count alone.
func noMass(why string) error {
	return check.Input("Grams", "0 g", "", "a declared mass above 0 "+why)
}

// A StepError says that an amount is not a whole number of the scale's steps, and
// which neighbours are. It wraps a [honestplate.InputError].
type StepError struct {
	Field        string  // such as Grams
	Value        float64 // as given, g
	StepGrams    float64 // the step, g
	Below, Above float64 // the nearest allowed amounts, g
}

// Error says which amount it is and which amounts are next.
func (e *StepError) Error() string { return e.Unwrap().Error() }

// Unwrap returns the error in the module's vocabulary.
func (e *StepError) Unwrap() error {
	return &honestplate.InputError{Field: e.Field, Got: decimal.Plain(e.Value) + " g",
		Want: fmt.Sprintf("a whole number of %s g steps, such as %s g or %s g",
			decimal.Plain(e.StepGrams), decimal.Plain(e.Below), decimal.Plain(e.Above))}
}

// in puts a place before the field of an error, also of a StepError.
func in(place string, err error) error {
	if e, ok := err.(*StepError); ok {
		moved := *e
		moved.Field = place + "." + e.Field
		return &moved
	}
	return honestplate.In(place, err)
}

// notForTheWire refuses to write what could not be read back.
func notForTheWire(what, send string) error {
	return check.Input(what, "a result for drawing", "", send)
}
