package thermal

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
)

// Air is the air of the room. Air{TempC: 23, RH: 0.5} is 23 degC at 50 % relative
// humidity, at sea level, in a room with people in it.
type Air struct {
	// TempC is the dry-bulb temperature, degC, -100..100.
	TempC float64 `json:"temp_c"`
	// RH is the relative humidity, above 0 up to 1: the vapour pressure over that of
	// saturation, over ice below 0.01 degC and over water above. It must be given.
	RH float64 `json:"rh"`
	// PressurePa is the pressure, Pa, 20000..200000; 0 means 101325. See
	// [heat.PressureAtAltitude].
	PressurePa float64 `json:"pressure_pa,omitzero"`
	// Speed is how fast the air moves past things, m/s, 0..30. 0 means that nobody
	// measured it: likely 0.12, 0.05..0.5 in a room where people work. ASHRAE calls air
	// still below 0.15 (read on a web page); measured in occupied rooms are 0.03..0.12
	// among people who sit and 0.18..0.31 in warm rooms (the same); the upper end is an
	// engineering estimate. 0.5..1 is a draught or a fan across the room.
	Speed float64 `json:"speed_m_s"`
	// Still says that no air moves but what the thing itself stirs: a closed box. Speed
	// must then be 0.
	Still bool `json:"still,omitzero"`
}

// occupiedSpeed is the likely speed of air that nobody measured, m/s; see [Air].
const occupiedSpeed, occupiedLow, occupiedHigh = 0.12, 0.05, 0.5

// moist is the air as the physics takes it.
func (a *Air) moist() heat.MoistAir {
	m := heat.MoistAir{TempC: a.TempC, RH: a.RH, PressurePa: a.PressurePa, Speed: a.Speed}
	if a.Speed == 0 && !a.Still {
		m.Speed = occupiedSpeed
	}
	return m
}

// Validate returns the error of the first field that makes no sense or was left out.
func (a Air) Validate() error {
	if err := a.given(); err != nil {
		return err
	}
	_, err := a.moist().Properties()
	return err
}

// given returns the error of what the room says beyond moist air.
func (a *Air) given() error {
	if a.RH == 0 {
		return &honestplate.InputError{Field: "RH", Got: "0, or not given", Want: "the relative humidity, above 0 up to 1, such as 0.5"}
	}
	if a.Still && a.Speed != 0 {
		return check.Input("Speed", a.Speed, "m/s", "0 where Still is set, or no Still")
	}
	return nil
}

// DewPointC returns the temperature in degC below which a surface gathers dew in this
// air, or frost: see [heat.MoistAir.DewPointC].
func (a Air) DewPointC() (float64, error) {
	if err := a.given(); err != nil {
		return 0, err
	}
	return a.moist().DewPointC()
}

// SteamGM3 returns how much droplets the steam of a surface at surfaceC with a water
// activity carries in this air, g/m3: see [heat.MoistAir.SteamGM3].
func (a Air) SteamGM3(surfaceC, activity float64) (float64, error) {
	if err := a.given(); err != nil {
		return 0, err
	}
	return a.moist().SteamGM3(surfaceC, activity)
}

// AirFromDewPoint returns the air of tempC whose vapour is saturated at dewC,
// degC, at a pressure in Pa (0 means 101325): what a room's sensor says. A dew point above
// the temperature gives an [honestplate.InputError].
func AirFromDewPoint(tempC, dewC, pressurePa float64) (Air, error) {
	vapour, dewErr := heat.SaturationPressure(dewC)
	full, err := heat.SaturationPressure(tempC)
	if err := cmp.Or(honestplate.In("DewC", dewErr), err); err != nil {
		return Air{}, err
	}
	if dewC > tempC {
		return Air{}, check.Input("DewC", dewC, "degC", "at most the air temperature")
	}
	a := Air{TempC: tempC, RH: min(1, vapour/full), PressurePa: pressurePa}
	return a, a.Validate()
}
