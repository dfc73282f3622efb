package rheology

import (
	"math"

	"example.org/honestplate"
)

// dairyOf says how much is known of a liquid as a part of a blend, and its fat in
// % by mass, NaN unless it is milk or cream.
func dairyOf(l Liquid) (liquidKind, float64) {
	switch l := l.(type) {
	case Dairy:
		return tableDairy, l.FatPercent
	case Measured:
		if kind, fat := dairyOf(l.Liquid); kind != otherLiquid {
			return someDairy, fat
		}
	case Mix:
		if fat, ok := l.FatPercent(); ok {
			return someDairy, fat
		}
	}
	return otherLiquid, math.NaN()
}

// lnDairyAt returns the logarithms of the viscosity of milk or cream known by its fat
// alone, as lnViscosity does. Written out because an interface would allocate.
func lnDairyAt(fatPercent, tempC, rate float64) (value, low, high float64, err error) {
	value, low, high, err = Dairy{fatPercent}.lnViscosity(tempC)
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
	if err := honestplate.Positive("viscosity of a part", e.Likely, "Pa s"); err != nil {
		return 0, 0, 0, err
	}
	value = math.Log(e.Likely)
	if e.Low == e.Likely && e.Likely == e.High {
		return value, value, value, nil
	}
	return value, math.Log(max(0, min(e.Low, e.Likely))), math.Log(max(e.High, e.Likely)), nil
}
