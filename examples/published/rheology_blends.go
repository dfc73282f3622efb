package published

import (
	"fmt"
	"strconv"
	"time"

	"example.org/honestplate/rheology"
	"example.org/honestplate/testdata"
)

// Checks of blends, recipes and cups.
var rheologyBlends = []Check{
	{
		Table: "cup_calibration", Package: "rheology", Quantity: "kinematic viscosity", Unit: "mm2/s",
		Claim: "the cups' band, 2.2 %", Banded: true,
		Points: cupPoints,
	},
	{
		Table: "log_mixing", Package: "rheology", Quantity: "mixed property", Unit: "",
		Claim:  "every printed digit",
		Points: logMixingPoints,
	},
	{
		Table: "fat_standardisation", Package: "rheology", Quantity: "cream to milk", Unit: "kg/100 kg",
		Claim:  "half the last printed digit",
		Points: fatPoints,
	},
	{
		Table: "dairy_blends", Package: "rheology", Quantity: "viscosity", Unit: "mPa s",
		Claim: "log-mixing by mass between the printed ends, its own 95 % band", Banded: true,
		Points: dairyBlendPoints,
	},
}

func cupPoints(r testdata.Row) ([]Point, error) {
	number, err := r.Float("number")
	if err != nil {
		return nil, err
	}
	seconds, err := r.Float("time_s")
	if err != nil {
		return nil, err
	}
	nu, err := r.Float("viscosity_mm2_per_s")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s %s, %g s", r.Text("cup"), r.Text("number"), seconds)
	if r.Text("assigned") == "fit" {
		return []Point{Skip(label, "the cup's number is not printed; it was assigned by fit")}, nil
	}
	var cup rheology.Cup
	switch r.Text("cup") {
	case "Zahn":
		cup = rheology.ZahnCup(int(number))
	case "Shell":
		cup = rheology.ShellCup(number)
	case "Ford":
		cup = rheology.FordCup(int(number))
	default:
		return nil, fmt.Errorf("unknown cup %q", r.Text("cup"))
	}
	cup.Reading = 0 // the printed times are not stopwatch readings by hand
	e, err := cup.KinematicViscosity(time.Duration(seconds * float64(time.Second)))
	if err != nil {
		return nil, err
	}
	return []Point{{Label: label, Published: nu, Predicted: e.Value * 1e6, Low: e.Low * 1e6, High: e.High * 1e6}}, nil
}

func logMixingPoints(r testdata.Row) ([]Point, error) {
	fractions, err := r.Floats("fractions")
	if err != nil {
		return nil, err
	}
	values, err := r.Floats("values")
	if err != nil {
		return nil, err
	}
	want, err := r.Float("mixed")
	if err != nil {
		return nil, err
	}
	var parts []rheology.Part
	for i, v := range values {
		parts = append(parts, rheology.Part{Liquid: rheology.Measured{Liquid: rheology.Dairy{FatPercent: 10}, TempC: 20, PaS: rheology.Exactly(v)}, Grams: fractions[i]})
	}
	m, err := rheology.Blend(parts...)
	if err != nil {
		return nil, err
	}
	e, err := m.Viscosity(20)
	if err != nil {
		return nil, err
	}
	return []Point{NearRel("fractions "+r.Text("fractions"), want, e.Value, 1e-15)}, nil
}

func fatPoints(r testdata.Row) ([]Point, error) {
	var v [6]float64
	for i, column := range []string{"milk_fat_percent", "cream_fat_percent", "wanted_fat_percent", "parts_milk", "parts_cream", "cream_kg_per_100_kg_milk"} {
		var err error
		if v[i], err = r.Float(column); err != nil {
			return nil, err
		}
	}
	b, err := rheology.Recipe{
		Thin: rheology.Dairy{FatPercent: v[0]}, Thick: rheology.Dairy{FatPercent: v[1]},
		BatchGrams: v[3] + v[4], StepGrams: 0.01, TempC: 5,
	}.ForFat(v[2])
	if err != nil {
		return nil, err
	}
	return []Point{
		Near("parts of milk", v[3], b.ThinGrams, 0.05),
		Near("parts of cream", v[4], b.ThickGrams, 0.05),
		Near("cream for 100 of milk", v[5], 100*b.ThickGrams/b.ThinGrams, 0.05),
	}, nil
}

func dairyBlendPoints(r testdata.Row) ([]Point, error) {
	c, err := DairyBlend(r)
	if err != nil {
		return nil, err
	}
	m, err := c.Mix(rheology.LogMass)
	if err != nil {
		return nil, err
	}
	e, err := m.Viscosity(c.TempC)
	if err != nil {
		return nil, err
	}
	label := c.Source + ", " + strconv.FormatFloat(c.FatPercent, 'g', -1, 64) + " % fat"
	return []Point{{Label: label, Published: 1e3 * c.PaS, Predicted: 1e3 * e.Value, Low: 1e3 * e.Low, High: 1e3 * e.High}}, nil
}

// DairyBlend reads a row of the table dairy_blends.
func DairyBlend(r testdata.Row) (rheology.BlendCase, error) {
	c := rheology.BlendCase{Source: r.Text("source")}
	for _, f := range []struct {
		column string
		to     *float64
		unit   float64
	}{
		{"temp_c", &c.TempC, 1},
		{"fat_thin_percent", &c.ThinFatPercent, 1},
		{"thin_mpas", &c.ThinPaS, 1e-3},
		{"fat_thick_percent", &c.ThickFatPercent, 1},
		{"thick_mpas", &c.ThickPaS, 1e-3},
		{"fat_percent", &c.FatPercent, 1},
		{"viscosity_mpas", &c.PaS, 1e-3},
	} {
		v, err := r.Float(f.column)
		if err != nil {
			return rheology.BlendCase{}, err
		}
		*f.to = v * f.unit
	}
	return c, nil
}
