package published

import (
	"fmt"

	"example.org/honestplate/rheology"
	"example.org/honestplate/testdata"
)

// Check of honey by the values that a second search found.
var honeyMore = []Check{
	{
		Table: "honey_more", Package: "rheology", Quantity: "viscosity", Unit: "Pa s",
		Claim: "the model's own 95 % band", Banded: true, Points: moreHoney,
	},
}

func moreHoney(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "moisture_percent", "temp_c", "viscosity_pa_s")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s, %g %% water, %g degC", r.Text("flower"), v[0], v[1])
	h := rheology.Honey{MoisturePercent: v[0]}
	switch {
	case v[0] < 13.5 || v[0] > 21.5:
		return []Point{Skip(label, "outside the model's 13.5..21.5 % of water")}, nil
	case v[1] > 70:
		return []Point{Skip(label, "above the model's range of 70 degC")}, nil
	}
	e, err := h.Viscosity(v[1])
	return estimated(label, v[2], e, err, 1, 0)
}
