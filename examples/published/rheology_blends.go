package published

import (
	"fmt"
	"math"
	"strconv"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/viscometer"
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
		Table: "cup_constants", Package: "rheology", Quantity: "constants and time limits", Unit: "",
		Claim:  "every printed digit",
		Points: cupConstantPoints,
	},
	{
		Table: "cup_conversions", Package: "rheology", Quantity: "kinematic viscosity", Unit: "mm2/s",
		Claim:  "half the last printed digit",
		Points: cupConversionPoints,
	},
	{
		Table: "falling_ball", Package: "rheology", Quantity: "viscosity", Unit: "Pa s",
		Claim:  "every printed digit",
		Points: fallingBallPoints,
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

// cupOf returns the cup of a row's family and number.
func cupOf(r testdata.Row, family, number string) (viscometer.Cup, float64, error) {
	n, err := r.Float(number)
	if err != nil {
		return viscometer.Cup{}, 0, err
	}
	c, err := viscometer.CupNamed(fmt.Sprintf("%s %g", r.Text(family), n))
	return c, n, err
}

// cupReading returns the viscosity in m2/s that a cup tells from a row's time. The
// printed times are not stopwatch readings by hand, so that only the calibration is
// in the band.
func cupReading(r testdata.Row, cup viscometer.Cup) (honestplate.Estimate, float64, error) {
	seconds, err := r.Float("time_s")
	if err != nil {
		return honestplate.Estimate{}, 0, err
	}
	cup.Reading = 0
	e, err := cup.KinematicViscosity(time.Duration(seconds * float64(time.Second)))
	return e, seconds, err
}

func cupPoints(r testdata.Row) ([]Point, error) {
	cup, number, err := cupOf(r, "cup", "number")
	if err != nil {
		return nil, err
	}
	e, seconds, err := cupReading(r, cup)
	if err != nil {
		return nil, err
	}
	nu, err := r.Float("viscosity_mm2_per_s")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s %g, %g s", r.Text("cup"), number, seconds)
	if r.Text("assigned") == "fit" {
		return []Point{Skip(label, "the cup's number is not printed; it was assigned by fit")}, nil
	}
	return []Point{{Label: label, Published: nu, Predicted: e.Likely * 1e6, Low: e.Low * 1e6, High: e.High * 1e6}}, nil
}

func cupConstantPoints(r testdata.Row) ([]Point, error) {
	cup, number, err := cupOf(r, "family", "number")
	if err != nil {
		return nil, err
	}
	label := fmt.Sprintf("%s %g", r.Text("family"), number)
	var points []Point
	for _, c := range []struct {
		column    string
		predicted float64
	}{
		{"a_mm2_per_s2", cup.A * 1e6},
		{"b_mm2", cup.B * 1e6},
		{"c_s", cup.C},
		{"least_s", cup.Least.Seconds()},
		{"most_s", cup.Most.Seconds()},
	} {
		v, err := r.Float(c.column)
		if err != nil {
			return nil, err
		}
		points = append(points, NearRel(label+" "+c.column, v, c.predicted, 1e-12))
	}
	return points, nil
}

func cupConversionPoints(r testdata.Row) ([]Point, error) {
	cup, number, err := cupOf(r, "family", "number")
	if err != nil {
		return nil, err
	}
	e, seconds, err := cupReading(r, cup)
	if err != nil {
		return nil, err
	}
	nu, err := r.Float("viscosity_mm2_per_s")
	if err != nil {
		return nil, err
	}
	return []Point{Near(fmt.Sprintf("%s %g, %g s", r.Text("family"), number, seconds), nu, e.Likely*1e6, 5e-5)}, nil
}

func fallingBallPoints(r testdata.Row) ([]Point, error) {
	var v [5]float64
	for i, column := range []string{"ball_mg", "ball_diameter_mm", "liquid_density_kg_per_m3", "speed_m_per_s", "viscosity_pa_s"} {
		var err error
		if v[i], err = r.Float(column); err != nil {
			return nil, err
		}
	}
	d := v[1] / 1000
	ball := viscometer.FallingBall{
		Diameter: d, Density: v[0] * 1e-6 / (math.Pi / 6 * d * d * d),
		TubeDiameter: 1e9, // no wall in the source
		Distance:     v[3],
	}
	e, err := ball.Viscosity(time.Second, v[2])
	if err != nil {
		return nil, err
	}
	return []Point{NearRel("steel in glycerol", v[4], e.Likely, 1e-8)}, nil
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
		parts = append(parts, rheology.Part{Liquid: rheology.Measured{Liquid: rheology.Dairy{FatPercent: 10}, TempC: 20, PaS: honestplate.Exactly(v)}, Grams: fractions[i]})
	}
	m, err := rheology.Blend(parts...)
	if err != nil {
		return nil, err
	}
	e, err := m.Viscosity(20)
	if err != nil {
		return nil, err
	}
	return []Point{NearRel("fractions "+r.Text("fractions"), want, e.Likely, 1e-15)}, nil
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
	m, err := c.Mix(rheology.Rule{})
	if err != nil {
		return nil, err
	}
	e, err := m.Viscosity(c.TempC)
	if err != nil {
		return nil, err
	}
	label := c.Source + ", " + strconv.FormatFloat(c.FatPercent, 'g', -1, 64) + " % fat"
	return []Point{{Label: label, Published: 1e3 * c.PaS, Predicted: 1e3 * e.Likely, Low: 1e3 * e.Low, High: 1e3 * e.High}}, nil
}

// MeasuredBlend is a blend of milk and cream of which both ends and the blend itself are
// printed, each as that source measured it.
type MeasuredBlend struct {
	Source                    string  // whose numbers
	TempC                     float64 // degC
	ThinFatPercent, ThinPaS   float64 // the thin part: % by mass, Pa s
	ThickFatPercent, ThickPaS float64 // the thick part
	FatPercent, PaS           float64 // the blend
}

// Mix is the blend as a rule has it, from its two ends.
func (c MeasuredBlend) Mix(r rheology.Rule) (rheology.Mix, error) {
	w := (c.FatPercent - c.ThinFatPercent) / (c.ThickFatPercent - c.ThinFatPercent)
	part := func(fat, pas, grams float64) rheology.Part {
		cup := rheology.Measured{Liquid: rheology.Dairy{FatPercent: fat}, TempC: c.TempC, PaS: honestplate.Exactly(pas)}
		return rheology.Part{Liquid: cup, Grams: grams}
	}
	return r.Blend(part(c.ThinFatPercent, c.ThinPaS, 1-w), part(c.ThickFatPercent, c.ThickPaS, w))
}

// DairyBlend reads a row of the table dairy_blends.
func DairyBlend(r testdata.Row) (MeasuredBlend, error) {
	c := MeasuredBlend{Source: r.Text("source")}
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
			return MeasuredBlend{}, err
		}
		*f.to = v * f.unit
	}
	return c, nil
}
