package thermal

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
)

// inRoom checks the air, and that it is that of a room between two temperatures, deg C.
func inRoom(a Air, lowC, highC float64, source string) error {
	return cmp.Or(honestplate.In("Air", a.Validate()), honestplate.InRange("Air.TempC", a.TempC, lowC, highC, "degC", source))
}

// given refuses an optional input that was left out.
func given(field string, o honestplate.Optional, want string) error {
	if !o.Given {
		return &honestplate.InputError{Field: field, Got: "not given", Want: want}
	}
	return nil
}

// wallCheck checks what the wall of a vessel is made of.
func wallCheck(m heat.Material, source string) error {
	return check.Fields(source,
		check.Number("Wall.Conductivity", m.Conductivity, 0.01, 1000, "W/(m K)"),
		check.Number("Wall.Density", m.Density, 1, 3e4, "kg/m3"),
		check.Number("Wall.SpecificHeat", m.SpecificHeat, 100, 1e4, "J/(kg K)"))
}
