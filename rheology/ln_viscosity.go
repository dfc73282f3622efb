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

// lnViscosity returns the logarithms of a liquid's viscosity in Pa s and of its band,
// at a shear rate or, if rate is negative, at the liquid's own.
func lnViscosity(l Liquid, tempC, rate float64) (value, low, high float64, err error) {
	var e honestplate.Estimate
	if rate < 0 {
		e, err = check.Viscosity(l.Viscosity(tempC))
	} else {
		e, err = ViscosityAtRate(l, tempC, rate)
	}
	if err != nil {
		return 0, 0, 0, err
	}
	value = math.Log(e.Likely)
	if e.Low == e.Likely && e.Likely == e.High {
		return value, value, value, nil
	}
	return value, math.Log(e.Low), math.Log(e.High), nil
}
