package published

import (
	"fmt"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/testdata"
)

// Checks of liquids and their flow curves.
var rheologyLiquids = []Check{
	{
		Table: "water_properties", Package: "rheology", Quantity: "viscosity", Unit: "uPa s",
		Claim:  "half the last printed digit",
		Points: waterProperties("viscosity_upa_s", 1e6, 0.5e-5, rheology.Water.Viscosity),
	},
	{
		Table: "water_properties", Package: "rheology", Quantity: "density", Unit: "kg/m3",
		Claim:  "half the last printed digit",
		Points: waterProperties("density_kg_per_m3", 1, 0.5e-6, rheology.Water.Density),
	},
	{
		Table: "water_surface_tension", Package: "rheology", Quantity: "surface tension", Unit: "mN/m",
		Claim: "the printed digits; 0.01 mN/m for the older table", Points: waterSurfaceTension,
	},
	{
		Table: "water_ict", Package: "rheology", Quantity: "viscosity", Unit: "mPa s",
		Claim: "1 %: the 1928 standard is 0.7 % higher at 20 degC", Points: waterICT("viscosity_mpa_s", 1e3, 0.01, rheology.Water.Viscosity),
	},
	{
		Table: "water_ict", Package: "rheology", Quantity: "density", Unit: "g/cm3",
		Claim: "1e-4 (relative to water at 4 degC)", Points: waterICT("density_g_per_cm3", 1e-3, 1e-4, rheology.Water.Density),
	},
	{
		Table: "dairy_viscosity", Package: "rheology", Quantity: "viscosity", Unit: "mPa s",
		Claim: "the model's own 95 % band, and half a step of the integer table", Banded: true, Points: dairyViscosity,
	},
	{
		Table: "dairy_density", Package: "rheology", Quantity: "density", Unit: "kg/m3",
		Claim: "the model's own 95 % band", Banded: true, Points: dairyDensity,
	},
	{
		Table: "dairy_surface_tension", Package: "rheology", Quantity: "surface tension", Unit: "mN/m",
		Claim: "the model's own 95 % band", Banded: true, Points: dairySurfaceTension,
	},
	{
		Table: "sucrose_viscosity", Package: "rheology", Quantity: "viscosity", Unit: "mPa s",
		Claim: "the model's own 95 % band", Banded: true, Points: sucroseViscosity,
	},
	{
		Table: "sucrose_density", Package: "rheology", Quantity: "density", Unit: "kg/m3",
		Claim: "the model's own 95 % band", Banded: true, Points: sucroseDensity,
	},
	{
		Table: "honey_viscosity", Package: "rheology", Quantity: "viscosity", Unit: "Pa s",
		Claim: "the model's own 95 % band", Banded: true, Points: honeyViscosity,
	},
}

// columns reads columns of a row as numbers, in order.
func columns(r testdata.Row, names ...string) ([]float64, error) {
	out := make([]float64, len(names))
	for i, c := range names {
		v, err := r.Float(c)
		if err != nil {
			return nil, err
		}
		out[i] = v
	}
	return out, nil
}

// estimated turns a prediction into a point whose band is the model's own, in the
// unit of the published value, widened by slack.
func estimated(label string, published float64, e honestplate.Estimate, err error, unit, slack float64) ([]Point, error) {
	if err != nil {
		return nil, err
	}
	e = e.Times(unit)
	return []Point{{Label: label, Published: published, Predicted: e.Likely, Low: e.Low - slack, High: e.High + slack}}, nil
}

type waterProperty func(rheology.Water, float64) (honestplate.Estimate, error)

func waterProperties(column string, unit, half float64, f waterProperty) func(testdata.Row) ([]Point, error) {
	return func(r testdata.Row) ([]Point, error) {
		v, err := columns(r, "temp_c", column)
		if err != nil {
			return nil, err
		}
		e, err := f(rheology.Water{}, v[0])
		if err != nil {
			return nil, err
		}
		return []Point{Near(fmt.Sprintf("%g degC", v[0]), v[1], e.Likely*unit, half)}, nil
	}
}

func waterICT(column string, unit, rel float64, f waterProperty) func(testdata.Row) ([]Point, error) {
	return func(r testdata.Row) ([]Point, error) {
		v, err := columns(r, "temp_c", column)
		if err != nil {
			return nil, err
		}
		e, err := f(rheology.Water{}, v[0])
		if err != nil {
			return nil, err
		}
		return []Point{NearRel(fmt.Sprintf("%g degC", v[0]), v[1], e.Likely*unit, rel)}, nil
	}
}

func waterSurfaceTension(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "temp_c", "surface_tension_mn_per_m")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%g degC", v[0])
	if v[0] > 110 {
		return []Point{Skip(label, "above the range of the density, 110 degC: no drink")}, nil
	}
	half := 1e-9 // ten decimals, of a temperature given as 300 K
	if strings.HasPrefix(r.Text("source"), "Haar") {
		half = 0.01 // two printed decimals, and an earlier formulation
	}
	e, err := rheology.Water{}.SurfaceTension(v[0])
	if err != nil {
		return nil, err
	}
	return []Point{Near(label, v[1], e.Likely*1e3, half)}, nil
}

func dairyViscosity(r testdata.Row) ([]Point, error) {
	product, source := r.Text("product"), r.Text("source")
	label := product + " (" + source + ")"
	if r.Text("temp_c") == "" {
		return []Point{Skip(label, "no temperature is stated")}, nil
	}
	v, err := columns(r, "temp_c", "viscosity_mpa_s")
	if err != nil {
		return nil, err
	}
	t, published := v[0], v[1]
	var fat float64
	switch {
	case r.Text("fat_percent") != "":
		if fat, err = r.Float("fat_percent"); err != nil {
			return nil, err
		}
	case strings.Contains(product, "not stated"):
		return []Point{Skip(label, "the fat content is not stated")}, nil
	case strings.HasPrefix(product, "skim"):
		fat = 0.1
	default:
		fat = 3.5 // milk without a word on its fat
	}
	label = fmt.Sprintf("%s %g %%, %g degC (%s)", product, fat, t, source)
	slack := 0.0
	if r.Text("step_mpa_s") != "" {
		step, err := r.Float("step_mpa_s")
		if err != nil {
			return nil, err
		}
		slack = step / 2
		if fat <= 5 {
			return []Point{Skip(label, "the table's formula falls below skim milk here")}, nil
		}
	}
	if fat > 50 {
		return []Point{Skip(label, "butterfat is no cream")}, nil
	}
	e, err := rheology.Dairy{FatPercent: fat}.Viscosity(t)
	return estimated(label, published, e, err, 1e3, slack)
}

func dairyDensity(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "fat_percent", "snf_percent", "temp_c", "density_kg_per_l")
	if err != nil {
		return nil, err
	}
	e, err := rheology.DairyDensity(v[0], v[1], v[2])
	return estimated(fmt.Sprintf("%s, %g degC", r.Text("product"), v[2]), v[3]*1e3, e, err, 1, 0)
}

func dairySurfaceTension(r testdata.Row) ([]Point, error) {
	label := r.Text("product") + " (" + r.Text("source") + ")"
	if r.Text("temp_c") == "" {
		return []Point{Skip(label, "no temperature is stated")}, nil
	}
	v, err := columns(r, "temp_c", "surface_tension_mn_per_m")
	if err != nil {
		return nil, err
	}
	fat := 3.5
	if r.Text("fat_percent") != "" {
		if fat, err = r.Float("fat_percent"); err != nil {
			return nil, err
		}
	}
	e, err := rheology.Dairy{FatPercent: fat}.SurfaceTension(v[0])
	return estimated(label, v[1], e, err, 1e3, 0)
}

func sucroseViscosity(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "sucrose_percent", "temp_c", "viscosity_mpa_s")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%g %%, %g degC (%s)", v[0], v[1], r.Text("source"))
	if d := r.Text("doubt"); d != "" {
		return []Point{Skip(label, d)}, nil
	}
	e, err := rheology.Sucrose{Brix: v[0]}.Viscosity(v[1])
	return estimated(label, v[2], e, err, 1e3, 0)
}

func sucroseDensity(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "sucrose_percent", "temp_c", "density_g_per_cm3")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%g %%, %g degC (%s)", v[0], v[1], r.Text("source"))
	if v[0] > 75 || v[1] > 80 {
		return []Point{Skip(label, "beyond 75 Brix or 80 degC")}, nil
	}
	if v[1] >= 25 {
		return []Point{Skip(label, "denser than the same content is at 20 degC in Circular 440: the table is suspect from 25 degC")}, nil
	}
	e, err := rheology.Sucrose{Brix: v[0]}.Density(v[1])
	return estimated(label, v[2]*999.975, e, err, 1, 0)
}

func honeyViscosity(r testdata.Row) ([]Point, error) {
	v, err := columns(r, "temp_c", "viscosity_pa_s")
	if err != nil {
		return nil, err
	}
	moisture := 0.0 // not stated: the usual
	if r.Text("moisture_percent") != "" {
		if moisture, err = r.Float("moisture_percent"); err != nil {
			return nil, err
		}
	}
	e, err := rheology.Honey{MoisturePercent: moisture}.Viscosity(v[0])
	return estimated(fmt.Sprintf("%s, %g degC", r.Text("flower"), v[0]), v[1], e, err, 1, 0)
}
