package published

import (
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

// Checks of air, surfaces, light and cold glass.
var thermalAir = []Check{
	{
		Table: "saturation_pressure_ashrae", Package: "thermal",
		Quantity: "saturation pressure", Unit: "kPa",
		Claim: "0.05 % and half the last printed digit; -60 degC 0.2 %",
		Points: func(r testdata.Row) ([]Point, error) {
			t, err := r.Float("temp_c")
			if err != nil {
				return nil, err
			}
			want, err := r.Float("p_ws_kpa")
			if err != nil {
				return nil, err
			}
			got, err := thermal.SaturationPressure(t)
			if err != nil {
				return nil, err
			}
			rel := 5e-4
			if t < -40 {
				rel = 2e-3
			}
			if r.Text("phase") == "liquid" && t < thermal.TripleC {
				return []Point{Skip(r.Text("temp_c")+" degC", "liquid below its triple point: the package takes ice")}, nil
			}
			return []Point{Near(r.Text("temp_c")+" degC", want, got/1e3, rel*want+5e-6)}, nil
		},
	},
}
