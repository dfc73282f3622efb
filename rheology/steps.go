package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// maxSteps keeps step counts well inside what float64 holds exactly.
const maxSteps = 1 << 40

// stepsOf returns grams as a whole number of scale steps, or an InputError if it
// is not one (to a billionth).
func stepsOf(quantity string, grams, step float64) (int, error) {
	if err := honestplate.Positive("scale step", step, "g"); err != nil {
		return 0, err
	}
	if err := honestplate.NotNegative(quantity, grams, "g"); err != nil {
		return 0, err
	}
	n := math.RoundToEven(grams / step)
	if n > maxSteps {
		return 0, check.Input(quantity, grams, "g", fmt.Sprintf("at most %d steps of %.6g g", maxSteps, step))
	}
	if math.Abs(grams-n*step) > 1e-9*grams {
		return 0, check.Input(quantity, grams, "g", fmt.Sprintf("a whole number of steps of %.6g g", step))
	}
	return int(n), nil
}

// gramsOf returns n scale steps in grams, with no more digits than the scale shows:
// 3 steps of 0.1 g are 0.3 g and not 0.30000000000000004.
func gramsOf(n int, step float64) float64 { return scaleOf(step).grams(n) }

// A scale turns steps into grams.
type scale struct{ step, per float64 } // g, and whole steps per g or 0

func scaleOf(step float64) scale {
	if per := math.RoundToEven(1 / step); per >= 1 && math.Abs(per*step-1) < 1e-12 {
		return scale{step, per}
	}
	return scale{step, 0}
}

func (s scale) grams(n int) float64 {
	if s.per > 0 {
		return float64(n) / s.per
	}
	return float64(n) * s.step
}
