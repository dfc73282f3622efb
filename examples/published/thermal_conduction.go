package published

import (
	"fmt"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal/food"
)

// Checks of conduction, food and freezing.
var thermalConduction = []Check{
	{Table: "sucrose_depression", Package: "thermal", Quantity: "freezing point depression of sucrose", Unit: "K",
		Claim: "half the last printed digit", Points: sucroseDepression},
	{Table: "ice_cream_freezing_curve", Package: "thermal", Quantity: "freezing curve of an ice cream mix", Unit: "degC",
		Claim: "0.02 K inside the depression table, 0.3 K beyond it", Points: freezingCurve},
	{Table: "mix_freezing_points", Package: "thermal", Quantity: "freezing point of ice cream mixes", Unit: "degC", Floor: 0.1,
		Claim: "0.12 K", Points: mixFreezing},
	{Table: "mix_density_overrun", Package: "thermal", Quantity: "density and overrun of frozen desserts",
		Claim: "printed digits", Points: mixDensityOverrun},
	{Table: "ice_properties", Package: "thermal", Quantity: "properties of ice",
		Claim: "density 0.4 %, conductivity 5.5 % at -10 degC, specific heat 3.5 %: as the sources among themselves", Points: iceProperties},
	{Table: "melting_points", Package: "thermal", Quantity: "melting of chocolate, butter and gelatin", Unit: "degC", Floor: 1,
		Claim: "inside the band of temperatures at which the food runs; end of melting 0.5 K", Points: meltingPoints},
	{Table: "sucrose_equivalents", Package: "thermal", Quantity: "sucrose equivalents of sweeteners", Unit: "%",
		Claim: "1 %; glucose syrup between 0.8 and 1.3", Points: sucroseEquivalents},
	{Table: "freezer_media", Package: "thermal", Quantity: "heat transfer in freezers",
		Claim: "inside the medium's band", Points: freezerMedia},
}

func sucroseDepression(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "sucrose_g_per_100g_water", "depression_k")
	if err != nil {
		return nil, err
	}
	if v[0] <= 3 {
		return []Point{Skip(fmt.Sprintf("%g g/100 g", v[0]), "too little for a frozen dessert")}, nil
	}
	share := v[0] / (100 + v[0]) * (1 - 1e-12) // so that the last row is not beyond the table by rounding
	got, err := food.FrozenMix{SucrosePercent: 100 * share}.FrozenAtC(0)
	got = -got
	return []Point{Near(fmt.Sprintf("%g g/100 g", v[0]), v[1], got, 0.005)}, err
}

func freezingCurve(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "water_frozen_percent", "temp_c", "sucrose_equivalent_g_per_100g_water")
	if err != nil {
		return nil, err
	}
	// Fat and stabiliser make up the rest and do not matter here.
	mix := food.FrozenMix{MSNFPercent: 10, WheySolidsPercent: 2, SucrosePercent: 12, GlucoseSyrupPercent: 4, FatPercent: 12}
	got, err := mix.FrozenAtC(v[0] / 100)
	tolerance := 0.02
	if v[2] > 180 {
		tolerance = 0.3
	}
	return []Point{Near(fmt.Sprintf("%g %% frozen", v[0]), v[1], got, tolerance)}, err
}

func mixFreezing(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "fat_percent", "msnf_percent", "sucrose_percent", "freezing_point_c")
	if err != nil {
		return nil, err
	}
	mix := food.FrozenMix{FatPercent: v[0], MSNFPercent: v[1], SucrosePercent: v[2]}
	if water, err := r.Float("water_percent"); err == nil {
		mix.OtherSolidsPercent = 100 - water - v[0] - v[1] - v[2]
	}
	got, err := mix.FrozenAtC(0)
	return []Point{Near(r.Text("mix"), v[3], got, 0.12)}, err
}

// floats reads several columns of a row as numbers.
func floats(r testdata.Row, columns ...string) ([]float64, error) {
	out := make([]float64, len(columns))
	for i, c := range columns {
		v, err := r.Float(c)
		if err != nil {
			return nil, err
		}
		out[i] = v
	}
	return out, nil
}
