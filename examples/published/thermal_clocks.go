package published

import (
	"fmt"
	"time"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

// Checks of scoops, ice and the enthalpy solver.
var thermalClocks = []Check{
	{
		Table: "ice_in_water", Package: "thermal", Quantity: "ice mixed with water", Unit: "degC or g",
		Claim:  "the sources' latent heat: 0.5 % of the ice, 0.1 K",
		Points: iceInWater,
	},
	{
		Table: "melting_sphere", Package: "thermal", Quantity: "melting ball, melt in place", Unit: "J or share",
		Claim:  "0.2 % of the heat, 0.001 of the volume",
		Points: meltingSphere,
	},
}

func iceInWater(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "ice_g", "ice_c", "water_g", "water_c", "end_c", "ice_left_g")
	if err != nil {
		return nil, err
	}
	grams, err := food.IceFor(v[2], food.Drink{}, v[3], v[1], v[4])
	if err != nil {
		return nil, err
	}
	return []Point{Near("ice that melts, g", v[0]-v[5], grams, 0.005*v[0])}, nil
}

func meltingSphere(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "radius_m", "h_w_m2k", "air_c", "start_c", "time_s", "heat_j", "melted_share")
	if err != nil {
		return nil, err
	}
	const rho, solid, liquid, latent = 917.0, 2100.0, 4180.0, 333.5e3
	body := heat.Body{Form: heat.SphereForm, Radius: v[0], Curve: heat.Curve{
		{TempC: -50, Enthalpy: -49 * rho * solid, Conductivity: 2.2},
		{TempC: -1, Enthalpy: 0, Conductivity: 2.2},
		{TempC: 0, Enthalpy: rho * latent, Conductivity: 0.56},
		{TempC: 50, Enthalpy: rho * (latent + 50*liquid), Conductivity: 0.56},
	}}
	states, err := body.Run(v[3], 0, func(surfaceC float64, _ time.Duration) float64 {
		return v[1] * (v[2] - surfaceC)
	}, time.Duration(v[4])*time.Second)
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("radius %g m after %g s, ", v[0], v[4])
	return []Point{
		NearRel(label+"heat, J", v[5], states[0].HeatJ, 0.002),
		Near(label+"share melted", v[6], states[0].PastShare, 0.001),
	}, nil
}
