package thermal

import (
	"cmp"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
)

// mediumCheck checks what takes the heat.
func mediumCheck(m cold.Medium) error {
	return honestplate.In("Medium", cmp.Or(honestplate.InRange("TempC", m.TempC, check.ColdestC, 30, "degC", "range of the enthalpy curve of frozen food"),
		m.H.Check("H"), honestplate.Positive("H.Low", m.H.Low, "W/(m2 K)")))
}

// mediumInputs are how well it is known, under a key and with names for its coefficient
// and its temperature. Water with ice keeps to its temperature better than a freezer.
func mediumInputs(m *cold.Medium, key, h, temp string) []study.Input {
	c := around(key+"_c", temp, m.TempC, 1.5)
	if m.Water {
		c.Band = band(m.TempC-0.2, m.TempC, m.TempC+1)
	}
	return []study.Input{
		ofRoom(bound(&m.H.Likely, study.Input{Key: key + "_h", Name: h, Band: m.H, Factor: true})),
		ofRoom(bound(&m.TempC, within(c, check.ColdestC+2, 40))), // the tails stay inside the curve
	}
}
