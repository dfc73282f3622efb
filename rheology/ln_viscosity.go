package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// exp is the estimate whose logarithms are given.
func exp(value, low, high float64) honestplate.Estimate {
	return honestplate.Estimate{Low: math.Exp(low), Likely: math.Exp(value), High: math.Exp(high)}
}

// viscosityAt is a liquid's viscosity in Pa s at a shear rate or, if rate is negative, at the
// liquid's own.
func viscosityAt(l Liquid, tempC, rate float64) (honestplate.Estimate, error) {
	if rate < 0 {
		return check.Viscosity(l.Viscosity(tempC))
	}
	return ViscosityAtRate(l, tempC, rate)
}
