package thermal

import "math"

// WetBulbC returns the thermodynamic wet-bulb temperature, deg C: what a wet cloth in
// a wind cools to, and a bare drop of water too. It solves
//
//	W = ((2501 - 2.326 t*) W_s* - 1.006 (t - t*))/(2501 + 1.86 t - 4.186 t*)   t* from 0 degC up
//	W = ((2830 - 0.24 t*) W_s* - 1.006 (t - t*))/(2830 + 1.86 t - 2.1 t*)      below
//
// with W_s* the saturated humidity ratio at t*, to 1e-8 K. The two meet with a small
// step at 0 degC; air that falls into it gets 0. Below -100 degC there is no answer
// and the error is a *RangeError.
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eqs. 33 and 35, read in a
// copy.
func (a Air) WetBulbC() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	w, p := a.ratio(), a.pressure()
	excess := func(wet float64, ice bool) float64 { return wetRatio(a.TempC, wet, p, ice) - w }
	high := a.TempC
	if a.RH == 1 {
		return high, nil
	}
	low, ice := 0.0, false
	if high <= 0 || excess(0, false) > 0 {
		// The answer is below freezing: between 60 K less, or the end of the
		// formulas, and 0 degC.
		low, ice = max(-100, high-60), true
		high = min(high, 0)
		if excess(high, true) <= 0 {
			return high, nil // in the step
		}
		if excess(low, true) > 0 {
			return 0, &RangeError{"wet bulb", low, -100, 100, "degC", saturationBy}
		}
	}
	// Newton's method with the slope by differences, kept in the bracket.
	wet := (low + high) / 2
	if !ice {
		wet = max(low, min(high, a.TempC-0.4*(1-a.RH)*a.TempC)) // a fair guess in rooms
	}
	for range 60 {
		f := excess(wet, ice)
		if f > 0 {
			high = wet
		} else {
			low = wet
		}
		const d = 1e-4
		step := -f * d / (excess(wet+d, ice) - f)
		next := wet + step
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-wet) < 1e-9 {
			return next, nil
		}
		wet = next
	}
	return wet, nil
}

// wetRatio is the humidity ratio of air at t that has the wet bulb wet.
func wetRatio(t, wet, p float64, ice bool) float64 {
	ws := ratioFrom(saturation(wet), p)
	if ice {
		return ((2830-0.24*wet)*ws - 1.006*(t-wet)) / (2830 + 1.86*t - 2.1*wet)
	}
	return ((2501-2.326*wet)*ws - 1.006*(t-wet)) / (2501 + 1.86*t - 4.186*wet)
}

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
	w := wetRatio(tempC, wetC, a.pressure(), wetC < 0)
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
