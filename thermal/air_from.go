package thermal

// AirFromDewPoint returns the air of tempC whose vapour is saturated at dewC, deg C,
// at a pressure in Pa (0 means 101325). A dew point above the temperature gives an
// *InputError.
func AirFromDewPoint(tempC, dewC, pressurePa float64) (Air, error) {
	pw, err := SaturationPressure(dewC)
	if err != nil {
		return Air{}, err
	}
	if !(dewC <= tempC) {
		return Air{}, &InputError{"dew point", dewC, "degC", "at most the air temperature"}
	}
	return airFrom(tempC, pw, pressurePa)
}

// AirFromHumidityRatio returns the air of tempC that holds ratio kg of vapour per kg
// of dry air. More than saturation gives an *InputError.
func AirFromHumidityRatio(tempC, ratio, pressurePa float64) (Air, error) {
	if err := within("humidity ratio", ratio, 0, 100, "kg/kg", "this package"); err != nil {
		return Air{}, err
	}
	p := Air{PressurePa: pressurePa}.pressure()
	return airFrom(tempC, p*ratio/(ratioOfMoles+ratio), pressurePa)
}

// AirFromWetBulb returns the air of tempC with the thermodynamic wet bulb wetC, deg C:
// what a sling psychrometer reads. It is the formula of WetBulbC the other way. A wet
// bulb above the temperature, or one so low that the air would hold less than nothing,
// gives an *InputError.
func AirFromWetBulb(tempC, wetC, pressurePa float64) (Air, error) {
	a := Air{TempC: tempC, RH: 1, PressurePa: pressurePa}
	if err := a.Validate(); err != nil {
		return Air{}, err
	}
	if err := within("wet bulb", wetC, -100, 100, "degC", saturationBy); err != nil {
		return Air{}, err
	}
	if wetC > tempC {
		return Air{}, &InputError{"wet bulb", wetC, "degC", "at most the air temperature"}
	}
	w := wetRatio(tempC, wetC, a.pressure())
	if w < 0 {
		return Air{}, &InputError{"wet bulb", wetC, "degC", "not below that of perfectly dry air"}
	}
	return AirFromHumidityRatio(tempC, w, pressurePa)
}

// AirFromEnthalpy returns the air that holds enthalpy J and ratio kg of vapour per kg
// of dry air: the inverse of Air.Enthalpy.
func AirFromEnthalpy(enthalpy, ratio, pressurePa float64) (Air, error) {
	if err := finite("enthalpy", enthalpy, "J/kg"); err != nil {
		return Air{}, err
	}
	if err := within("humidity ratio", ratio, 0, 100, "kg/kg", "this package"); err != nil {
		return Air{}, err
	}
	return AirFromHumidityRatio((enthalpy-2.501e6*ratio)/(1006+1860*ratio), ratio, pressurePa)
}

// airFrom is the air with vapour of pressure pw.
func airFrom(tempC, pw, pressurePa float64) (Air, error) {
	a := Air{TempC: tempC, PressurePa: pressurePa}
	if err := a.Validate(); err != nil {
		return Air{}, err
	}
	a.RH = pw / saturation(tempC)
	if a.RH > 1 && a.RH < 1+1e-9 {
		a.RH = 1 // rounding
	}
	if a.RH > 1 {
		return Air{}, &InputError{"vapour pressure", pw, "Pa", "at most that of saturation at the air temperature"}
	}
	return a, a.Validate()
}
