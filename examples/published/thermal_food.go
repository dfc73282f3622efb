package published

import (
	"fmt"
	"math"
	"strings"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

// choiOkosCold asks for the properties of a food that is one component.
func choiOkosCold(r testdata.Row) ([]Point, error) {
	want, err := r.Float("value")
	if err != nil {
		return nil, err
	}
	name := r.Text("component")
	f, ok := map[string]food.Food{
		"protein": {Protein: 1}, "fat": {Fat: 1}, "carbohydrate": {Carbohydrate: 1}, "fibre": {Fibre: 1}, "ash": {Ash: 1},
	}[name]
	if !ok {
		return []Point{Skip(name, "water and ice come together in a food: checked inside the package")}, nil
	}
	f.FreezeC = -1
	got, err := f.Density(-40)
	if r.Text("quantity") == "k" {
		got, err = f.Conductivity(-40)
	}
	return []Point{NearRel(r.Text("quantity")+" of "+name, want, got, 6e-4)}, err
}

// iceProperties compares the constants of ice between -10 and 0 degC.
func iceProperties(r testdata.Row) ([]Point, error) {
	temp, err := r.Float("temp_c")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s %g degC", r.Text("source_name"), temp)
	if temp < -10 {
		return []Point{Skip(label, "colder than the constants are for")}, nil
	}
	var out []Point
	for _, q := range []struct {
		column string
		got    float64
		rel    float64
	}{
		{"density_kg_m3", heat.Ice().Density, 0.004}, {"conductivity_w_mk", heat.Ice().Conductivity, 0.055}, {"heat_j_kgk", heat.Ice().SpecificHeat, 0.035},
	} {
		want, err := r.Float(q.column)
		switch {
		case err != nil: // not given at this temperature
		case r.Text("source_name") == "DIN" && temp == 0 && q.column == "density_kg_m3":
			out = append(out, Skip(label+", density", "rounded to 900"))
		default:
			out = append(out, NearRel(label+", "+q.column, want, q.got, q.rel))
		}
	}
	return out, nil
}

func dairyComposition(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "water_percent", "protein_percent", "fat_percent", "carbohydrate_percent", "fibre_percent",
		"ash_percent", "heat_above_kj_kgk", "latent_kj_kg")
	if err != nil {
		return nil, err
	}
	f := food.Food{Water: v[0] / 100, Protein: v[1] / 100, Fat: v[2] / 100, Carbohydrate: v[3] / 100, Fibre: v[4] / 100, Ash: v[5] / 100}
	specific, err := f.SpecificHeat(5)
	if err != nil {
		return nil, err
	}
	latent := heat.Fusion * f.Water / (f.Water + f.Protein + f.Fat + f.Carbohydrate + f.Fibre + f.Ash)
	return []Point{
		NearRel(r.Text("food")+", specific heat", v[6], specific/1000, 0.015),
		NearRel(r.Text("food")+", latent heat", v[7], latent/1000, 0.011),
	}, nil
}

func foodEnthalpy(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "temp_c", "value")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s at %g degC", r.Text("quantity"), v[0])
	beef := food.Food{Water: 0.58, Protein: 0.17, Fat: 0.24, Ash: 0.01, FreezeC: -1.7}
	if r.Text("quantity") == "ice_kg_per_kg" {
		return []Point{Skip(label, "the example uses Tchigeov's formula, which the library leaves out")}, nil
	}
	got, err := beef.Enthalpy(v[0])
	return []Point{NearRel(label, v[1], got/1000, 0.007)}, err
}

func mixDensityOverrun(r testdata.Row) ([]Point, error) {
	want, err := r.Float("value")
	if err != nil {
		return nil, err
	}
	if r.Text("quantity") == "overrun_percent" {
		v, err := floats(r, "mix", "product")
		if err != nil {
			return nil, err
		}
		got, err := food.Overrun(v[0], v[1])
		return []Point{Near("overrun", want, got, halfDigit(r.Text("value")))}, err
	}
	mix := food.FrozenMix{FatPercent: 12, MSNFPercent: 11, SucrosePercent: 10, GlucoseSyrupPercent: 5, OtherSolidsPercent: 0.3}
	got, err := mix.Density() // without overrun
	// Printed to three decimals, cut off.
	return []Point{Near("density of the mix", want, math.Floor(got)/1000, 1e-9)}, err
}

func meltingPoints(r testdata.Row) ([]Point, error) {
	want, err := r.Float("temp_c")
	if err != nil {
		return nil, err
	}
	label := r.Text("material") + ", " + r.Text("quantity")
	band := map[string]food.SoftFood{
		"cocoa butter, form V": food.SoftFoods().DarkChocolate, "cocoa butter, form V low": food.SoftFoods().DarkChocolate,
		"cocoa butter, form V high": food.SoftFoods().DarkChocolate,
		"butter, melting range low": food.SoftFoods().Butter, "butter, thin liquid low": food.SoftFoods().Butter,
		"butter, thin liquid high":       food.SoftFoods().Butter,
		"gelatin gel, melting range low": food.SoftFoods().SetCream, "gelatin gel, melting range high": food.SoftFoods().SetCream,
	}
	if f, ok := band[label]; ok {
		return []Point{{Label: label, Published: want, Predicted: f.RunC.Likely, Low: f.RunC.Low, High: f.RunC.High}}, nil
	}
	switch label {
	case "cocoa butter, form IV", "cocoa butter, form VI":
		return []Point{Skip(label, "a form that well tempered chocolate does not have")}, nil
	case "milk fat, all melted", "butter, melting range high":
		return []Point{Near(label, want, food.SoftFoods().Butter.MeltsToC, 0.5)}, nil
	}
	return []Point{Skip(label, "an unstable form, gone before a chocolate is photographed")}, nil
}

// halfDigit is half of the last digit printed in a field.
func halfDigit(text string) float64 {
	_, decimals, _ := strings.Cut(text, ".")
	return 0.5000001 * math.Pow(10, -float64(len(decimals)))
}
