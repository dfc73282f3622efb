package rheology

import (
	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// restedFactor is what a sauce's yield stress rises by while it stands undisturbed and its
// structure builds up again: static over dynamic yield stress, about 2 for ketchup (from
// memory; no table was found), and restedBand how well that is known (estimated).
const (
	restedFactor = 2.0
	restedBand   = 1.5
)

// RestedYieldStress returns the stress in Pa at which a liquid that has stood begins to
// move: the one that holds ketchup in its bottle until a tap breaks it. It is twice the
// [Yielding] one, to a factor of 1.5 on top of its band, but that itself for mayonnaise
// and mustard, whose published ones were measured undisturbed. The zero Estimate for a
// liquid that has none. Errors: those of the liquid.
func RestedYieldStress(l Liquid, tempC float64) (honestplate.Estimate, error) {
	if check.IsNil(l) {
		return honestplate.Estimate{}, check.Missing("Liquid", "a liquid")
	}
	e, err := check.YieldStress(l, tempC)
	if err != nil || e == (honestplate.Estimate{}) {
		return e, err
	}
	if f, ok := l.(Food); ok && foods[f].Undisturbed {
		return e, nil
	}
	return honestplate.Estimate{Low: e.Low * restedFactor / restedBand, Likely: e.Likely * restedFactor, High: e.High * restedFactor * restedBand}, nil
}
