package portion

import (
	"math"
	"time"
)

// UnitRate returns the chance that one unit gives a good take before it fades, and
// how many takes it allows: for a unit that looks right for a window, needs setup
// before the first take, and take for every one,
//
//	m = floor((window - setup)/take)        rate = 1 - (1 - takeRate)^m
//
// It is the SuccessRate of Heroes where a unit may be shot more than once. Use the
// earliest end of a predicted window for a safe answer. Takes are taken as
// independent: a unit with a flaw fails them all, so the truth is lower.
//
// takeRate is above 0 and up to 1, the window and setup 0 or more, take above 0.
// Errors: InputError; RangeError where not one take fits.
func UnitRate(takeRate float64, window, setup, take time.Duration) (rate float64, takes int, err error) {
	if !(takeRate > 0 && takeRate <= 1) {
		return 0, 0, &InputError{"chance of one take", takeRate, "", "above 0, at most 1"}
	}
	if window < 0 || setup < 0 {
		return 0, 0, &InputError{"window or setup", min(window, setup).Seconds(), "s", "0 or more"}
	}
	if take <= 0 {
		return 0, 0, &InputError{"time of one take", take.Seconds(), "s", "above 0"}
	}
	m := (window - setup) / take
	if window < setup || m < 1 {
		return 0, 0, &RangeError{"window", window.Seconds(), (setup + min(take, math.MaxInt64-setup)).Seconds(), time.Duration(math.MaxInt64).Seconds(), "s", "setup and one take"}
	}
	return -math.Expm1(float64(m) * math.Log1p(-takeRate)), int(m), nil
}
