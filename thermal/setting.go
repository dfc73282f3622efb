package thermal

import (
	"cmp"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/study"
)

// A setting is the room and the light in which a thing stands.
type setting struct {
	air                    Air
	light                  honestplate.Estimate // absorbed from the lamps, W/m2
	brightness, convection float64              // factors
}

// A lit thing has a surface that takes some of the light, as its slope lets it, and a
// conductivity.
type lit struct {
	setting
	absorbs, k float64 // factors
	slope      float64 // of the surface to the light; 1 is square on
}

func litBy(s setting) lit { return lit{setting: s, absorbs: 1, k: 1, slope: 0.8} }

func (l *lit) inputs() []study.Input {
	light := l.light.Likely > 0
	return append(l.setting.inputs(),
		bound(&l.absorbs, where(light, ofProduct(factor("product.absorptance", "absorptance", 0.8, 1.25)))),
		bound(&l.slope, where(light, within(study.Input{Key: "unit.slope", Name: "slope to the light", Band: band(0.5, 0.8, 1)}, 0.3, 1))),
		bound(&l.k, ofProduct(factor("product.conductivity", "conductivity", 0.8, 1.25))))
}

func settingOf(a Air, light honestplate.Estimate) setting { return setting{a, light, 1, 1} }

// absorbed is the light of a run, W/m2.
func (s *setting) absorbed() float64 { return s.light.Likely * s.brightness }

// inputs are how well the room and the light are known.
func (s *setting) inputs() []study.Input {
	known := 1.0
	if s.light.Likely > 0 {
		known = s.light.High / s.light.Likely
	}
	light := factor("lamps.light", "light", 1/known, known)
	light.Shared, light.To = study.Lamps, &s.brightness
	return append(roomInputs(&s.air, &s.convection), light)
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
		in = slices.Delete(in, 2, 3)
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

// simmering is the hottest that a hot wet surface is taken to be in the air, deg C: just
// below where its vapour would be 95 % of the air pressure (see Exchanger.At). It is
// 98.5 degC at sea level and 90 at some 2700 m.
func simmering(a Air) float64 {
	t, _ := heat.SaturationTemperature(0.9499 * cmp.Or(a.PressurePa, heat.StandardPressure)) // in range for checked air
	return t
}
