package published

import (
	"fmt"
	"math"
	"time"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

// Checks of scoops, ice and the enthalpy solver.
var thermalClocks = []Check{
	{
		Table: "ice_ball_in_air_stream", Package: "thermal", Quantity: "melting of a ball of ice", Unit: "g/s or s",
		Claim:  "half a per cent; the printed rate has three digits",
		Points: iceBall,
	},
	{
		Table: "ice_sheet_growth", Package: "thermal", Quantity: "growth of a sheet of ice", Unit: "s",
		Claim:  "half the last printed digit",
		Points: iceSheet,
	},
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

func iceBall(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "diameter_m", "speed_m_s", "air_c", "viscosity_pa_s", "conductivity_w_mk",
		"density_kg_m3", "heat_j_kgk", "ice_kg_m3", "fusion_j_kg", "mass_share", "value")
	if err != nil {
		return nil, err
	}
	d0, speed, air, mu, k, rho, cp := v[0], v[1], v[2], v[3], v[4], v[5], v[6]
	ice, fusion, share, printed := v[7], v[8], v[9], v[10]
	h := func(d float64) float64 {
		// The correlation begins at Reynolds number 3.5; the example stays above 4000.
		nu, err := thermal.NusseltSphereInStream(rho*speed*d/mu, mu*cp/k, 1)
		if err != nil {
			return math.NaN()
		}
		return nu * k / d
	}
	label := r.Text("quantity")
	if share == 0 {
		rate := h(d0) * math.Pi * d0 * d0 * air / fusion * 1000
		return []Point{NearRel(label, printed, rate, 0.005)}, nil
	}
	t, err := thermal.BallMeltTime(d0, share, air, ice*fusion, h)
	if err != nil {
		return nil, err
	}
	return []Point{NearRel(label, printed, t.Seconds(), 0.005)}, nil
}

func iceSheet(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "from_m", "to_m", "below_freezing_k", "conductivity_w_mk", "latent_j_m3", "time_s", "printed_to_s")
	if err != nil {
		return nil, err
	}
	t, err := thermal.SheetTime(v[0], v[1], v[2], v[3], v[4])
	if err != nil {
		return nil, err
	}
	return []Point{Near(r.Text("case"), v[5], t.Seconds(), v[6])}, nil
}

func iceInWater(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "ice_g", "ice_c", "water_g", "water_c", "end_c", "ice_left_g")
	if err != nil {
		return nil, err
	}
	m, err := thermal.MixIce(v[0], v[1], v[2], v[3])
	if err != nil {
		return nil, err
	}
	if v[5] > 0 {
		return []Point{Same("melting stops at 0 degC", v[4], m.TempC), Near("ice left, g", v[5], m.IceGrams, 0.005*v[0])}, nil
	}
	return []Point{Near("end temperature, degC", v[4], m.TempC, 0.1)}, nil
}

func meltingSphere(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "radius_m", "h_w_m2k", "air_c", "start_c", "time_s", "heat_j", "melted_share")
	if err != nil {
		return nil, err
	}
	const rho, solid, liquid, latent = 917.0, 2100.0, 4180.0, 333.5e3
	body := thermal.Body{Form: thermal.SphereForm, Radius: v[0], Curve: thermal.Curve{
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
