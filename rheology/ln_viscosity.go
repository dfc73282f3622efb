package rheology

import (
	"math"

	"example.org/honestplate"
)

// lnDairyAt returns the logarithms of the viscosity of milk or cream known by its fat
// alone, as lnViscosity does. Written out because an interface would allocate.
func lnDairyAt(fatPercent, tempC, rate float64) (value, low, high float64, err error) {
	value, low, high, err = Dairy{FatPercent: fatPercent}.lnViscosity(tempC)
	if err == nil && rate >= 0 {
		value, low, high = thinningAt(tempC, rate).ln(fatPercent, value, low, high)
	}
	return value, low, high, err
}

// lnViscosity returns the logarithms of a liquid's viscosity in Pa s and of its band,
// at a shear rate or, if rate is negative, at the liquid's own.
func lnViscosity(l Liquid, tempC, rate float64) (value, low, high float64, err error) {
	var e honestplate.Estimate
	if d, ok := l.(Dairy); ok {
		return lnDairyAt(d.FatPercent, tempC, rate)
	}
	if rate < 0 {
		e, err = l.Viscosity(tempC)
	} else {
		e, err = ViscosityAtRate(l, tempC, rate)
	}
	if err != nil {
		return 0, 0, 0, err
	}
	if err := honestplate.Positive("Liquid.Viscosity", e.Likely, "Pa s"); err != nil {
		return 0, 0, 0, err
	}
	value = math.Log(e.Likely)
	if e.Low == e.Likely && e.Likely == e.High {
		return value, value, value, nil
	}
	return value, math.Log(max(0, min(e.Low, e.Likely))), math.Log(max(e.High, e.Likely)), nil
}
