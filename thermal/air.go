package thermal

import "math"

// StandardPressure is the pressure of the standard atmosphere at sea level, Pa.
const StandardPressure = 101325.0

// Air is the air of the room. Air{TempC: 23, RH: 0.5} is 23 degC at 50 % relative
// humidity, at sea level, still.
type Air struct {
	// TempC is the dry-bulb temperature, deg C, -100..100.
	TempC float64
	// RH is the relative humidity, 0..1: the vapour pressure over that of
	// saturation, over ice below 0.01 degC and over water above.
	RH float64
	// PressurePa is the pressure, Pa, 20000..200000; 0 means 101325. See
	// PressureAtAltitude.
	PressurePa float64
	// Speed is how fast the air moves past things, m/s, 0..30. 0 is still air,
	// which a set with people, fans and lamps rarely is: 0.1..0.3 is a calm room,
	// 0.5..1 a draught or a fan across the room (engineering estimates, no
	// source).
	Speed float64
}

// Validate returns an *InputError or a *RangeError that names the first field
// that makes no sense, nil if all do. Every method of Air begins with it.
func (a Air) Validate() error {
	if a.TempC >= -100 && a.TempC <= 46 && a.RH >= 0 && a.RH <= 1 && a.PressurePa == 0 && a.Speed >= 0 && a.Speed <= 30 {
		return nil // the usual case, quickly
	}
	if err := within("air temperature", a.TempC, -100, 100, "degC", saturationBy); err != nil {
		return err
	}
	if err := within("relative humidity", a.RH, 0, 1, "", "a fraction; saturation is 1"); err != nil {
		return err
	}
	if a.PressurePa != 0 {
		if err := within("air pressure", a.PressurePa, 20000, 200000, "Pa", "this package"); err != nil {
			return err
		}
	}
	if err := within("air speed", a.Speed, 0, 30, "m/s", "this package"); err != nil {
		return err
	}
	// Above 46 degC, or high up, saturated vapour may be a large part of the air.
	if a.TempC > 46 {
		if pw, limit := a.vapour(), 0.95*a.pressure(); pw > limit {
			return &RangeError{"vapour pressure", pw, 0, limit, "Pa", "95 % of the air pressure"}
		}
	}
	return nil
}

func (a Air) pressure() float64 {
	if a.PressurePa == 0 {
		return StandardPressure
	}
	return a.PressurePa
}

// vapour is VapourPressure without the check.
func (a Air) vapour() float64 { return a.RH * saturation(a.TempC) }

// VapourPressure returns the partial pressure of water vapour, Pa: RH times
// SaturationPressure.
func (a Air) VapourPressure() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return a.vapour(), nil
}

// VapourDensity returns the mass of water vapour in the air, kg/m3:
// p_w/(461.52 T), T in K.
func (a Air) VapourDensity() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return a.vapour() / (vapourGas * (a.TempC + kelvin)), nil
}

// DewPointC returns the temperature in deg C at which the vapour of this air is
// saturated: a surface colder than it gathers dew. Below 0.01 degC it is the
// frost point (saturation over ice), as in the ASHRAE Handbook. It inverts the
// formulas of SaturationPressure to 1e-7 K. Air with no vapour, or less than
// saturates at -100 degC, has none: a *RangeError.
func (a Air) DewPointC() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	ln, _ := lnSaturation(a.TempC + kelvin)
	ln += math.Log(a.RH)
	if ln < -6.5677 { // ln(lowestVapour)
		return 0, &RangeError{"vapour pressure", a.vapour(), lowestVapour, StandardPressure, "Pa", "saturation at -100 degC; drier air has no dew point here"}
	}
	return saturatedAt(ln), nil
}

// HumidityRatio returns the mass of vapour per mass of dry air, kg/kg, of ideal
// gases:
//
//	W = 0.621945 p_w/(p - p_w)
//
// Saturated, it is 0.42 % (0 degC) to 0.53 % (40 degC) below the real-gas table
// of the handbook; EnhancementFactor is the reason.
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eq. 20, read in a
// copy.
func (a Air) HumidityRatio() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return a.ratio(), nil
}

func (a Air) ratio() float64 { return ratioFrom(a.vapour(), a.pressure()) }

func ratioFrom(pw, p float64) float64 { return ratioOfMoles * pw / (p - pw) }

// Enthalpy returns the heat content in J per kg of dry air, zero for dry air at
// 0 degC and liquid water at 0 degC:
//
//	h = 1006 t + W (2501000 + 1860 t), t in deg C
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eq. 30, read in a
// copy.
func (a Air) Enthalpy() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return enthalpy(a.TempC, a.ratio()), nil
}

func enthalpy(t, w float64) float64 { return 1006*t + w*(2.501e6+1860*t) }

// SpecificVolume returns the volume in m3 of the moist air that holds 1 kg of
// dry air:
//
//	v = 287.042 T (1 + 1.607858 W)/p, T in K
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eq. 26, read in a
// copy.
func (a Air) SpecificVolume() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return a.volume(), nil
}

func (a Air) volume() float64 {
	return dryGas * (a.TempC + kelvin) * (1 + 1.607858*a.ratio()) / a.pressure()
}

// EnhancementFactor returns f, by how much saturated vapour in moist air exceeds
// the saturation pressure of pure vapour: 1.004 at sea level. It is the reason why
// the humidity ratios of ideal gases are half a per cent low; the other methods of
// Air leave it out, as common tools do. f - 1 is interpolated between the tabulated
// values at 1000 mb and taken in proportion to the pressure. Outside -50..50 degC
// or 20000..200000 Pa it returns a *RangeError.
//
// Source: Buck 1981, New equations for computing vapor pressure and enhancement
// factor, J. Appl. Meteorol. 20:1527, as tabulated in an encyclopedia (read).
func EnhancementFactor(tempC, pressurePa float64) (float64, error) {
	if err := within("temperature", tempC, -50, 50, "degC", "Buck 1981"); err != nil {
		return 0, err
	}
	if err := within("air pressure", pressurePa, 20000, 200000, "Pa", "this package"); err != nil {
		return 0, err
	}
	excess := [...]float64{5.8, 5.2, 4.7, 4.4, 4.1, 3.95, 3.88, 4.00, 4.26, 4.67, 5.19} // 1e-3, every 10 K from -50
	x := (tempC + 50) / 10
	i := min(int(x), len(excess)-2)
	e := excess[i] + (x-float64(i))*(excess[i+1]-excess[i])
	return 1 + 1e-3*e*pressurePa/1e5, nil
}
