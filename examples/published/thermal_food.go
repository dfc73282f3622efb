package published

import (
	"fmt"
	"math"

	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
)

func choiOkosCold(r testdata.Row) ([]Point, error) {
	want, err := r.Float("value")
	if err != nil {
		return nil, err
	}
	for c := thermal.Water; c <= thermal.Ice; c++ {
		if c.String() != r.Text("component") {
			continue
		}
		got, err := c.Density(-40)
		if r.Text("quantity") == "k" {
			got, err = c.Conductivity(-40)
		}
		return []Point{NearRel(r.Text("quantity")+" of "+c.String(), want, got, 6e-4)}, err
	}
	return nil, fmt.Errorf("unknown component %q", r.Text("component"))
}

func dairyComposition(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "water_percent", "protein_percent", "fat_percent", "carbohydrate_percent", "fibre_percent",
		"ash_percent", "heat_above_kj_kgk", "latent_kj_kg")
	if err != nil {
		return nil, err
	}
	f := thermal.Food{Water: v[0] / 100, Protein: v[1] / 100, Fat: v[2] / 100, Carbohydrate: v[3] / 100, Fibre: v[4] / 100, Ash: v[5] / 100}
	heat, err := f.SpecificHeat(5)
	if err != nil {
		return nil, err
	}
	latent, err := f.FreezingHeat()
	return []Point{
		NearRel(r.Text("food")+", specific heat", v[6], heat/1000, 0.015),
		NearRel(r.Text("food")+", latent heat", v[7], latent/1000, 0.011),
	}, err
}

func foodByWater(r testdata.Row) ([]Point, error) {
	food := r.Text("food")
	water, err := r.Float("water_percent")
	if err != nil {
		return []Point{Skip(food, "a range of water")}, nil
	}
	f, err := thermal.Watery(water/100, -1, 1000)
	if err != nil {
		return nil, err
	}
	var out []Point
	for _, q := range []struct {
		column string
		got    float64
	}{{"heat_above_kj_kgk", f.Heat / 1000}, {"heat_below_kj_kgk", f.FrozenHeat / 1000}, {"latent_kj_kg", f.Latent / 1000}} {
		want, err := r.Float(q.column)
		if err != nil {
			out = append(out, Skip(food+", "+q.column, "not given"))
			continue
		}
		if r.Text("table") == "Earle" {
			out = append(out, NearRel(food+", "+q.column, want, q.got, 0.07))
			continue
		}
		// This table follows the rules themselves, with 334 kJ/kg for 335.
		tolerance := 0.0051
		if q.column == "latent_kj_kg" {
			tolerance = 1.3
		}
		out = append(out, Near(food+", "+q.column, want, q.got, tolerance))
	}
	return out, nil
}

func iceProperties(r testdata.Row) ([]Point, error) {
	temp, err := r.Float("temp_c")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s %g degC", r.Text("source_name"), temp)
	if temp < -40 {
		return []Point{Skip(label, "below the range of Choi & Okos")}, nil
	}
	var out []Point
	for _, q := range []struct {
		column string
		of     func(float64) (float64, error)
		rel    float64
	}{
		{"density_kg_m3", thermal.Ice.Density, 0.004}, {"conductivity_w_mk", thermal.Ice.Conductivity, 0.04},
		{"heat_j_kgk", thermal.Ice.SpecificHeat, 0.035},
	} {
		want, err := r.Float(q.column)
		if err != nil {
			continue // not given at this temperature
		}
		if r.Text("source_name") == "DIN" && temp == 0 && q.column == "density_kg_m3" {
			out = append(out, Skip(label+", density", "rounded to 900"))
			continue
		}
		got, err := q.of(temp)
		if err != nil {
			return nil, err
		}
		out = append(out, NearRel(label+", "+q.column, want, got, q.rel))
	}
	return out, nil
}

func freezingTimes(r testdata.Row) ([]Point, error) {
	optional := func(column string) float64 {
		x, err := r.Float(column)
		if err != nil {
			return 0 // empty: not used by this row
		}
		return x
	}
	want, err := r.Float("hours")
	if err != nil {
		return nil, err
	}
	f := thermal.Freezing{
		Food: thermal.Freezable{
			FreezeC: optional("freeze_c"), Density: optional("density_kg_m3"), Heat: optional("heat_j_kgk"),
			Latent: optional("latent_j_kg"), FrozenK: optional("frozen_k_w_mk"), FrozenHeat: optional("frozen_heat_j_kgk"),
			FrozenDensity: optional("frozen_density_kg_m3"),
		},
		Size: thermal.Size{Diameter: optional("diameter_m"), Height: optional("height_m"), Width: optional("width_m"),
			Depth: optional("depth_m")},
		Medium: thermal.Medium{TempC: optional("medium_c"), H: optional("h_w_m2k")},
		StartC: optional("start_c"), EndC: optional("end_c"),
	}
	method := f.Plank
	if r.Text("method") == "Pham" {
		method = f.Pham
	}
	got, err := method()
	label := r.Text("example") + ", " + r.Text("method")
	if r.Text("width_m") != "" {
		// The book reads Plank's constants from a chart.
		return []Point{NearRel(label+" (chart)", want, got.Hours(), 0.02)}, err
	}
	return []Point{Near(label, want, got.Hours(), halfDigit(r.Text("hours")))}, err
}

func foodEnthalpy(r testdata.Row) ([]Point, error) {
	v, err := floats(r, "temp_c", "value")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s at %g degC", r.Text("quantity"), v[0])
	beef := thermal.Food{Water: 0.58, Protein: 0.17, Fat: 0.24, Ash: 0.01, FreezeC: -1.7}
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
		got, err := thermal.Overrun(v[0], v[1])
		return []Point{Near("overrun", want, got, halfDigit(r.Text("value")))}, err
	}
	mix := thermal.FrozenMix{FatPercent: 12, MSNFPercent: 11, SucrosePercent: 10, GlucoseSyrupPercent: 5, OtherSolidsPercent: 0.3}
	got, err := mix.MixDensity()
	// Printed to three decimals, cut off.
	return []Point{Near("density of the mix", want, math.Floor(got)/1000, 1e-9)}, err
}

func meltingPoints(r testdata.Row) ([]Point, error) {
	want, err := r.Float("temp_c")
	if err != nil {
		return nil, err
	}
	label := r.Text("material") + ", " + r.Text("quantity")
	band := map[string]thermal.SoftFood{
		"cocoa butter, form V": thermal.DarkChocolate(), "cocoa butter, form V low": thermal.DarkChocolate(),
		"cocoa butter, form V high": thermal.DarkChocolate(),
		"butter, melting range low": thermal.Butter(), "butter, thin liquid low": thermal.Butter(),
		"butter, thin liquid high":       thermal.Butter(),
		"gelatin gel, melting range low": thermal.SetCream(), "gelatin gel, melting range high": thermal.SetCream(),
	}
	if f, ok := band[label]; ok {
		return []Point{{Label: label, Published: want, Predicted: f.RunC.Likely, Low: f.RunC.Low, High: f.RunC.High}}, nil
	}
	switch label {
	case "cocoa butter, form IV", "cocoa butter, form VI":
		return []Point{Skip(label, "a form that well tempered chocolate does not have")}, nil
	case "milk fat, all melted", "butter, melting range high":
		return []Point{Near(label, want, thermal.Butter().MeltsToC, 0.5)}, nil
	}
	return []Point{Skip(label, "an unstable form, gone before a chocolate is photographed")}, nil
}
