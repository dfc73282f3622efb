package heat

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// StandardPressure is the pressure of the standard atmosphere at sea level, Pa.
const StandardPressure = 101325.0

// A MoistAir is a state of air, for the formulas of this package.
type MoistAir struct {
	TempC      float64 // dry-bulb temperature, degC, -100..100
	RH         float64 // relative humidity, 0..1: over ice below 0.01 degC, over water above
	PressurePa float64 // Pa, 20000..200000; 0 means 101325
	Speed      float64 // past a surface, m/s, 0..30
}

// check returns the error of the first field that makes no sense.
func (a MoistAir) check() error {
	if a.TempC >= -100 && a.TempC <= 46 && a.RH >= 0 && a.RH <= 1 && a.PressurePa == 0 && a.Speed >= 0 && a.Speed <= 30 {
		return nil // the usual case, quickly
	}
	const source = "where the formulas of moist air hold"
	if err := check.Fields(source,
		check.Number("TempC", a.TempC, -100, 100, "degC"), check.Number("RH", a.RH, 0, 1, ""),
		check.Number("PressurePa", a.pressure(), 20000, 200000, "Pa"), check.Number("Speed", a.Speed, 0, 30, "m/s")); err != nil {
		return err
	}
	// Above 46 degC, or high up, saturated vapour may be a large part of the air.
	if a.TempC > 46 {
		if full, limit := saturation(a.TempC), 0.95*a.pressure(); a.RH*full > limit {
			return &honestplate.RangeError{Field: "RH", Value: a.RH, High: limit / full, Source: "at most 95 % of the air pressure may be vapour"}
		}
	}
	return nil
}

func (a MoistAir) pressure() float64 { return cmp.Or(a.PressurePa, StandardPressure) }

// vapour is the vapour's partial pressure, Pa.
func (a MoistAir) vapour() float64 { return a.RH * saturation(a.TempC) }

func (a MoistAir) ratio() float64 { return ratioFrom(a.vapour(), a.pressure()) }

// DewPointC returns the temperature in deg C at which the vapour of this air is
// saturated: a surface colder than it gathers dew. Below 0.01 degC it is the
// frost point (saturation over ice), as in the ASHRAE Handbook. It inverts the
// formulas of SaturationPressure to 1e-7 K. Air with no vapour, or less than
// saturates at -100 degC, has none: an [honestplate.RangeError].
func (a MoistAir) DewPointC() (float64, error) {
	if err := a.check(); err != nil {
		return 0, err
	}
	ln, _ := lnSaturation(a.TempC + kelvin)
	ln += math.Log(a.RH)
	if ln < -6.5677 { // ln(lowestVapour)
		return 0, &honestplate.RangeError{Field: "RH", Value: a.RH, Low: lowestVapour / saturation(a.TempC), High: 1, Unit: "", Source: "saturation at -100 degC; drier air has no dew point"}
	}
	return saturatedAt(ln), nil
}
