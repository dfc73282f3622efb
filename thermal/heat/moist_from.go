package heat

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// moistFromRatio returns the air of tempC that holds ratio kg of vapour per kg
// of dry air. More than saturation gives an [honestplate.InputError].
func moistFromRatio(tempC, ratio, pressurePa float64) (MoistAir, error) {
	if err := honestplate.InRange("Ratio", ratio, 0, 100, "kg/kg", "where the formulas of moist air hold"); err != nil {
		return MoistAir{}, err
	}
	p := MoistAir{PressurePa: pressurePa}.pressure()
	return airFrom(tempC, p*ratio/(ratioOfMoles+ratio), pressurePa)
}

// MoistFromWetBulb returns the air of tempC with the thermodynamic wet bulb wetC, deg C:
// what a sling psychrometer reads. It is the formula of WetBulbC the other way. A wet
// bulb above the temperature, or one so low that the air would hold less than nothing,
// gives an [honestplate.InputError].
func MoistFromWetBulb(tempC, wetC, pressurePa float64) (MoistAir, error) {
	a := MoistAir{TempC: tempC, RH: 1, PressurePa: pressurePa}
	if err := a.check(); err != nil {
		return MoistAir{}, err
	}
	if err := honestplate.InRange("WetC", wetC, -100, 100, "degC", saturationBy); err != nil {
		return MoistAir{}, err
	}
	if wetC > tempC {
		return MoistAir{}, check.Input("WetC", wetC, "degC", "at most the air temperature")
	}
	w := wetRatio(tempC, wetC, a.pressure())
	if w < 0 {
		return MoistAir{}, check.Input("WetC", wetC, "degC", "not below that of perfectly dry air")
	}
	return moistFromRatio(tempC, w, pressurePa)
}

// airFrom is the air with vapour of pressure pw.
func airFrom(tempC, pw, pressurePa float64) (MoistAir, error) {
	a := MoistAir{TempC: tempC, PressurePa: pressurePa}
	if err := a.check(); err != nil {
		return MoistAir{}, err
	}
	a.RH = pw / saturation(tempC)
	if a.RH > 1 && a.RH < 1+1e-9 {
		a.RH = 1 // rounding
	}
	if a.RH > 1 {
		return MoistAir{}, check.Input("VapourPa", pw, "Pa", "at most that of saturation at the air temperature")
	}
	return a, a.check()
}
