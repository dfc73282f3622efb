package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// maxSteps keeps step counts well inside what float64 holds exactly.
const maxSteps = 1 << 40

// stepsOf returns grams as a whole number of scale steps, or an InputError if it
// is not one (to a billionth).
func stepsOf(quantity string, grams, step float64) (int64, error) {
	n := math.RoundToEven(grams / step)
	if 0 < step && 0 <= grams && n <= maxSteps && math.Abs(grams-n*step) <= 1e-9*grams {
		return int64(n), nil
	}
	if err := cmp.Or(honestplate.Positive("StepGrams", step, "g"), honestplate.NotNegative(quantity, grams, "g")); err != nil {
		return 0, err
	}
	if n > maxSteps {
		return 0, check.Input(quantity, grams, "g", fmt.Sprintf("at most %d steps of %.6g g", int64(maxSteps), step))
	}
	return 0, check.Input(quantity, grams, "g", fmt.Sprintf("a whole number of steps of %.6g g", step))
}

// gramsOf returns n scale steps in grams, with no more digits than the scale shows:
// 3 steps of 0.1 g are 0.3 g and not 0.30000000000000004.
func gramsOf(n int64, step float64) float64 {
	if per := math.RoundToEven(1 / step); per >= 1 && math.Abs(per*step-1) < 1e-12 {
		return float64(n) / per
	}
	return float64(n) * step
}

// firstStep returns the first of 0..n at which a condition holds that stays once it does; n
// if it holds nowhere before.
func firstStep(n int64, holds func(int64) bool) int64 {
	low := int64(0)
	for low < n {
		mid := low + (n-low)/2
		if holds(mid) {
			n = mid
		} else {
			low = mid + 1
		}
	}
	return n
}
