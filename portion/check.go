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

// steps returns v grams as whole steps, or an [honestplate.InputError] that names the
// steps on either side, or an [honestplate.RangeError]. v must be finite and not negative.
func steps(field string, v float64, step decimal.Decimal) (int64, error) {
	floor, ceil, ok := decimal.Around(v, step)
	if !ok {
		return 0, check.Beyond(field, v/step.Times(1), maxSteps, "steps", stepsReason)
	}
	if floor != ceil {
		return 0, check.Input(field, decimal.Plain(v), "g", fmt.Sprintf("a whole number of %s g steps, such as %s g or %s g",
			decimal.Plain(step.Times(1)), decimal.Plain(step.Times(floor)), decimal.Plain(step.Times(ceil))))
	}
	return floor, nil
}
