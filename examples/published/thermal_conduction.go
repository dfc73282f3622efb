package published

import (
	"fmt"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

// Checks of conduction, food and freezing.
var thermalConduction = []Check{
	{Table: "sucrose_depression", Package: "thermal", Quantity: "freezing point depression of sucrose", Unit: "K",
		Claim: "half the last printed digit", Points: sucroseDepression},
	{Table: "one_term_coefficients", Package: "thermal", Quantity: "first root and factor of the conduction series",
		Claim: "0.52 of the last printed digit", Points: oneTerm},
	{Table: "transient_examples", Package: "thermal", Quantity: "transient conduction, textbook examples",
		Claim: "printed digits; rounded on the way 0.2 %; chart 4 %, heat from a chart 9 %", Points: transients},
	{Table: "half_space_examples", Package: "thermal", Quantity: "conduction into a half-space, textbook examples",
		Claim: "half the last printed digit; chart 4 %", Points: halfSpaces},
	{Table: "lumped_examples", Package: "thermal", Quantity: "bodies at one temperature, textbook examples",
		Claim: "half the last printed digit; rounded on the way 0.25 %", Points: lumpedBodies},
	{Table: "ice_cream_freezing_curve", Package: "thermal", Quantity: "freezing curve of an ice cream mix", Unit: "degC",
		Claim: "0.02 K inside the depression table, 0.3 K beyond it", Points: freezingCurve},
}

func sucroseDepression(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "sucrose_g_per_100g_water", "depression_k")
	if err != nil {
		return nil, err
	}
	got, err := thermal.SucroseDepression(v[0])
	return []Point{Near(fmt.Sprintf("%g g/100 g", v[0]), v[1], got, 0.005)}, err
}

func freezingCurve(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "water_frozen_percent", "temp_c", "sucrose_equivalent_g_per_100g_water")
	if err != nil {
		return nil, err
	}
	// Fat and stabiliser make up the rest and do not matter here.
	mix := thermal.FrozenMix{MSNFPercent: 10, WheySolidsPercent: 2, SucrosePercent: 12, GlucoseSyrupPercent: 4, FatPercent: 12}
	got, err := mix.FrozenAtC(v[0] / 100)
	tolerance := 0.02
	if v[2] > 180 {
		tolerance = 0.3
	}
	return []Point{Near(fmt.Sprintf("%g %% frozen", v[0]), v[1], got, tolerance)}, err
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
