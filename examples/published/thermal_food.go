package published

import (
	"fmt"
	"math"
	"strings"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

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
