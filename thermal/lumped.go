package thermal

import (
	"math"
	"time"
)

// A Lumped body is so small, or conducts so well, that one temperature does for all
// of it: h (V/A)/k must be below 0.1, else its methods return a *RangeError. Within
// that limit the centre lags by less than 5 % of the difference (handbook rule;
// 3 to 4 % by the series).
type Lumped struct {
	Material
	Volume   float64 // m3
	Area     float64 // that exchanges heat, m2
	H        float64 // heat transfer coefficient, W/(m2 K)
	StartC   float64 // degC
	AmbientC float64 // of the surroundings, degC
}

// Biot returns h (V/A)/k. Inputs not above 0 are an *InputError; 0.1 and more is
// returned together with a *RangeError.
func (l Lumped) Biot() (float64, error) {
	if err := l.Validate(); err != nil {
		return 0, err
	}
	for _, v := range [...]struct {
		name  string
		value float64
		unit  string
	}{{"volume", l.Volume, "m3"}, {"area", l.Area, "m2"}, {"heat transfer coefficient", l.H, "W/(m2 K)"}} {
		if err := positive(v.name, v.value, v.unit); err != nil {
			return 0, err
		}
	}
	for _, c := range [...]float64{l.StartC, l.AmbientC} {
		if err := temperature("temperature", c); err != nil {
			return 0, err
		}
	}
	if err := within("time constant", l.constant(), 1e-9, 1e18, "s", "this package"); err != nil {
		return 0, err
	}
	bi := l.H * l.Volume / (l.Area * l.Conductivity)
	return bi, within("Biot number h (V/A)/k", bi, 0, 0.1, "", "limit of the lumped body")
}

// TimeConstant returns rho c V/(h A). Errors as Biot.
func (l Lumped) TimeConstant() (time.Duration, error) {
	if _, err := l.Biot(); err != nil {
		return 0, err
	}
	return seconds(l.constant()), nil
}

func (l Lumped) constant() float64 {
	return l.Density * l.SpecificHeat * l.Volume / (l.H * l.Area)
}

// TempC returns the temperature, degC, after a time of 0 or more:
// T = Ta + (T0 - Ta) exp(-h A t/(rho c V)). Errors as Biot.
func (l Lumped) TempC(after time.Duration) (float64, error) {
	if _, err := l.Biot(); err != nil {
		return 0, err
	}
	if err := notNegative("time", after.Seconds(), "s"); err != nil {
		return 0, err
	}
	return l.AmbientC + (l.StartC-l.AmbientC)*math.Exp(-after.Seconds()/l.constant()), nil
}

// TimeTo returns when the body reaches a temperature. One not between start
// (included) and surroundings is a *RangeError; others as Biot.
func (l Lumped) TimeTo(tempC float64) (time.Duration, error) {
	if _, err := l.Biot(); err != nil {
		return 0, err
	}
	low, high := min(l.StartC, l.AmbientC), max(l.StartC, l.AmbientC)
	if err := within("wanted temperature", tempC, low, high, "degC", "start and surroundings"); err != nil {
		return 0, err
	}
	if tempC == l.StartC {
		return 0, nil
	}
	if tempC == l.AmbientC {
		return 0, &RangeError{"wanted temperature", tempC, low, high, "degC", "the surroundings are only approached"}
	}
	return seconds(l.constant() * math.Log((l.StartC-l.AmbientC)/(tempC-l.AmbientC))), nil
}
