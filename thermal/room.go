package thermal

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
)

// roomCheck checks the air and that it is that of a room: the set clocks know
// -30..60 degC.
func roomCheck(a Air) error {
	return cmp.Or(honestplate.In("Air", a.Validate()),
		honestplate.InRange("Air.TempC", a.TempC, -30, 60, "degC", "rooms in which people work"))
}

// simmering is the hottest that a hot wet surface is taken to be in the air, deg C: just
// below where its vapour would be 95 % of the air pressure (see Exchanger.At). It is
// 98.5 degC at sea level and 90 at some 2700 m.
func simmering(a Air) float64 {
	t, _ := heat.SaturationTemperature(0.9499 * cmp.Or(a.PressurePa, heat.StandardPressure)) // in range for checked air
	return t
}

// setDefault gives a field that is 0 its default.
func setDefault(field *float64, value float64) {
	if *field == 0 {
		*field = value
	}
}
