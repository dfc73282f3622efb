package thermal

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
)

// band is an estimate in its order.
func band(low, likely, high float64) honestplate.Estimate {
	return check.Between(low, likely, high)
}

// orBand returns e, or the default where e is zero.
func orBand(e honestplate.Estimate, low, likely, high float64) honestplate.Estimate {
	if e == (honestplate.Estimate{}) {
		return band(low, likely, high)
	}
	return e
}

// factor is an input of a unit that is known to "times or divided by": 1 and its limits.
func factor(key, name string, low, high float64) study.Input {
	return study.Input{Key: key, Name: name, Band: band(low, 1, high), Factor: true}
}

// around is an input of a unit with a value and how far to both sides it may lie.
func around(key, name string, v, by float64) study.Input {
	return study.Input{Key: key, Name: name, Band: band(v-by, v, v+by)}
}

// judged is a threshold: what this crew calls soft, or beads.
func judged(key, name string, e honestplate.Estimate) study.Input {
	return study.Input{Key: key, Name: name, Shared: study.Crew, Band: e}
}

// within puts limits on an input.
func within(in study.Input, low, high float64) study.Input {
	in.Min, in.Max = low, high
	return in
}

// bound binds an input to a field.
func bound(to *float64, in study.Input) study.Input {
	in.To = to
	return in
}

// ofProduct says that an input is one of the product.
func ofProduct(in study.Input) study.Input {
	in.Shared = study.Product
	return in
}

// inRoom says that an input is one of the room.
func inRoom(in study.Input) study.Input {
	in.Shared = study.Room
	return in
}

// lightInput is how well the light that a thing of an absorptance takes from the lamps is
// known, as a factor.
func lightInput(to *float64, a light.Absorptance, lamps []light.Lamp) study.Input {
	low, high, _ := a.Known(lamps...) // checked
	in := factor("lamps.light", "light", low, high)
	in.Shared, in.To = study.Lamps, to
	return in
}

// roomInputs are how well a room is known. Temperature and dew point are the
// independent ones, since air that is warmed keeps its vapour and not its relative
// humidity: +-1.5 K and +-2 K, of which a hygrometer's 3..5 % make a good half and the
// place where it hangs the rest. A given speed may be half, or twice, or 0.2 m/s more,
// since the air moves there by fits; of one not given see [Air]. Convection is good to
// +-20 %. These are engineering estimates.
func roomInputs(a *Air, convection *float64) []study.Input {
	in := []study.Input{
		within(bound(&a.TempC, around("room.temp_c", "room temperature", a.TempC, 1.5)), -30, 60),
		dewInput(a),
		speedInput(a),
		bound(convection, factor("room.convection", "convection", 1/1.2, 1.2)),
	}
	if a.Still {
		in = append(in[:2], in[3])
	}
	for i := range in {
		in[i].Shared = study.Room
	}
	return in
}

// dewInput is the dew point, of which the humidity follows at the room's temperature as
// it is drawn before it. Air so dry that it has none keeps its relative humidity.
func dewInput(a *Air) study.Input {
	dew, err := a.moist().DewPointC()
	if err != nil {
		return within(bound(&a.RH, study.Input{Key: "room.dew_c", Name: "humidity", Band: honestplate.Factor(a.RH, 2), Factor: true}), 0, 1)
	}
	in := around("room.dew_c", "humidity", dew, 2)
	// Both lie within what the check of a room lets through, so no error can come; at
	// the likely values the humidity comes out as given to the last bit.
	saturated := func(tempC float64) float64 { p, _ := heat.SaturationPressure(max(tempC, -99)); return p }
	rh, tempC := a.RH, a.TempC
	in.Put = func(dewC float64) {
		a.RH = min(1, rh*(saturated(dewC)/saturated(dew))*(saturated(tempC)/saturated(a.TempC)))
	}
	return in
}

func speedInput(a *Air) study.Input {
	in := study.Input{Key: "room.speed_m_s", Name: "air speed", Band: band(a.Speed/2, a.Speed, max(2*a.Speed, a.Speed+0.2))}
	if a.Speed == 0 {
		in.Band, in.Factor = band(occupiedLow, occupiedSpeed, occupiedHigh), true
	}
	return within(bound(&a.Speed, in), 0, 30)
}
