package published

import (
	"fmt"
	"math"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look"
	"example.org/honestplate/rheology/look/colour"
	"example.org/honestplate/rheology/look/mie"
	"example.org/honestplate/testdata"
)

// Checks of milk and cream.
var lookMilk = []Check{
	{
		Table: "milk_scattering", Package: "rheology", Quantity: "reduced scattering", Unit: "1/mm",
		Claim: "the model's own 95 % band", Banded: true, Points: milkScattering,
	},
	{
		Table: "scattering_ranges", Package: "rheology", Quantity: "scattering and index as abstracts give them", Unit: "as named",
		Claim: "the model's own band; 20 % for the size of the turbidity maximum", Points: scatteringRanges,
	},
	{
		Table: "milk_components", Package: "rheology", Quantity: "scattering of micelles and globules from the table's indices", Unit: "1/m",
		Claim: "1e-6", Points: milkComponents,
	},
	{
		Table: "milk_parameters", Package: "rheology", Quantity: "size of fat globules", Unit: "um",
		Claim: "a factor of 1.6 of the diameter below which 90 % of the volume lies", Points: milkParameters,
	},
	{
		Table: "milk_model", Package: "rheology", Quantity: "scattering by the two-population model, worked out twice", Unit: "1/mm",
		Claim: "3 % up to 5 % fat, 6 % beyond: the density follows the fat, and sizes end at 10 um", Points: milkModel,
	},
	{
		Table: "milk_colour", Package: "rheology", Quantity: "L* on two scales, and of pools", Unit: "",
		Claim: "0.02 for a scale, 1.5 for a pool by another formula", Points: milkColour,
	},
	{
		Table: "milk_colour_trends", Package: "rheology", Quantity: "what changes the colour of milk", Unit: "1 if so",
		Claim: "the direction", Points: milkColourTrends,
	},
	{
		Table: "carotene", Package: "rheology", Quantity: "carotene where none is given", Unit: "mg per kg fat",
		Claim: "the model's own band", Points: carotene,
	},
	{
		Table: "milk_coats", Package: "rheology", Quantity: "coats and pools by Kubelka-Munk", Unit: "L* or mm",
		Claim: "2 of L* (4 below 80), 15 % of a thickness: diffuse light through Saunderson's formula against a beam worked out exactly", Points: milkCoats,
	},
}

// band returns a point whose band is that of the optics' scattering.
func scatterBand(label string, published float64, o *look.Optics, nm float64) (Point, error) {
	c, err := o.At(nm)
	e := c.ReducedScattering.Times(1e-3)
	return Point{Label: label, Published: published, Predicted: e.Likely, Low: e.Low, High: e.High}, err
}

func milkScattering(r testdata.Row) ([]Point, error) {
	label := r.Text("product") + " " + r.Text("band")
	if r.Text("product") == "cream" && r.Text("band") == "B" {
		return []Point{Skip(label, "less than in red: no spheres do that; the band is doubtful")}, nil
	}
	o, err := look.Milk{FatPercent: figure(r, "fat_percent")}.Optics()
	if err != nil {
		return nil, err
	}
	p, err := scatterBand(label, figure(r, "reduced_scattering_per_mm"), &o, figure(r, "wavelength_nm"))
	return []Point{p}, err
}

func scatteringRanges(r testdata.Row) ([]Point, error) {
	label := r.Text("product") + ", " + r.Text("quantity")
	switch {
	case r.Text("quantity") == "turbidity maximum":
		best, at := 0.0, 0.0
		for um := 0.5; um < 6; um += 0.02 {
			c, err := mie.Suspended{Classes: []mie.Class{{Radius: um / 2 * 1e-6, Share: 1}}, Index: 1.47, Liquid: 1.331}.At(650e-9)
			if err != nil {
				return nil, err
			}
			if c.Scattering > best {
				best, at = c.Scattering, um
			}
		}
		return []Point{NearRel(label+", um (oil of index 1.47 assumed)", 2, at, 0.2)}, nil
	case r.Text("product") == "milk" && r.Text("quantity") == "refractive index":
		// The library's index of milk is not exported: a drop of it turns a beam as
		// 1.345 does.
		mean := (figure(r, "low") + figure(r, "high")) / 2
		return []Point{Near(label, mean, 1.345, figure(r, "high")-1.345)}, nil
	case r.Text("quantity") == "reduced scattering" && strings.HasPrefix(r.Text("product"), "milk"):
		o, err := look.Milk{FatPercent: 3.5}.Optics()
		if err != nil {
			return nil, err
		}
		p, err := scatterBand(label+", the most, whole milk in blue", figure(r, "high"), &o, 465)
		return []Point{p, Skip(label+", the least", "of milk of 0.5 %: above the skim and low fat milk of two other sources by two times and more")}, err
	}
	return []Point{Skip(label, "a range without its wavelengths, another product, or no number")}, nil
}

func milkComponents(r testdata.Row) ([]Point, error) {
	nm := figure(r, "wavelength_nm")
	label := r.Text("wavelength_nm") + " nm"
	if nm < 380 {
		return []Point{Skip(label, "outside the visible")}, nil
	}
	const fatPercent, protein = 3.5, 3.4
	milk := look.Milk{FatPercent: fatPercent, ProteinPercent: honestplate.Some(protein), HomogenisedMPa: honestplate.Some(20)}
	o, err := milk.Optics()
	if err != nil {
		return nil, err
	}
	globules, err := milk.Globules()
	if err != nil {
		return nil, err
	}
	micelles, err := mie.LogNormalBelow(43e-9, 0.23, 150e-9)
	if err != nil {
		return nil, err
	}
	volume := fatPercent/100/915 + (1-fatPercent/100)/1034
	sum := 0.0
	for _, part := range []struct {
		classes []mie.Class
		column  string
		share   float64
	}{{globules, "fat_index", fatPercent / 100 / 915 / volume}, {micelles, "casein_index", 0.76 * protein / 100 / 1110 / volume}} {
		c, err := mie.Suspended{Classes: part.classes, Index: figure(r, part.column), Liquid: figure(r, "water_index")}.At(nm * 1e-9)
		if err != nil {
			return nil, err
		}
		sum += part.share * c.Scattering
	}
	got, err := o.At(nm)
	return []Point{
		NearRel(label, sum, got.Scattering, 1e-6),
		Skip(label+", extinction of fat and absorbance of riboflavin", "used for their shape alone: their floors are those of the instruments"),
	}, err
}

func milkParameters(r testdata.Row) ([]Point, error) {
	label := r.Text("parameter")
	if !strings.HasPrefix(label, "Dv90") {
		return []Point{Skip(label, "an input of the model, copied into it, or a size without its spread")}, nil
	}
	pressure := 20.0 // two stages of 15 and 5 MPa
	if strings.Contains(label, "0 MPa") {
		pressure = 0
	}
	globules, err := look.Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(pressure)}.Globules()
	if err != nil {
		return nil, err
	}
	sum := 0.0
	for _, c := range globules {
		if sum += c.Share; sum >= 0.9 {
			d := 2e6 * c.Radius
			return []Point{{Label: label + ", 3.5 % fat assumed", Published: figure(r, "value"), Predicted: d, Low: d / 1.6, High: d * 1.6}}, nil
		}
	}
	return nil, fmt.Errorf("shares sum to %g", sum)
}

func milkModel(r testdata.Row) ([]Point, error) {
	fat := figure(r, "fat_percent")
	milk := look.Milk{FatPercent: fat, ProteinPercent: honestplate.Some(figure(r, "protein_percent"))}
	if r.Text("pressure_mpa") != "" {
		milk.HomogenisedMPa = honestplate.Some(figure(r, "pressure_mpa"))
	}
	o, err := milk.Optics()
	if err != nil {
		return nil, err
	}
	c, err := o.At(figure(r, "wavelength_nm"))
	label := fmt.Sprintf("%s %% fat, %s MPa, %s nm", r.Text("fat_percent"), r.Text("pressure_mpa"), r.Text("wavelength_nm"))
	rel := 0.03
	if fat > 5 {
		rel = 0.06
	}
	return []Point{
		NearRel(label, figure(r, "reduced_scattering_per_mm"), c.ReducedScattering.Likely/1000, rel),
		NearRel(label+", not reduced", figure(r, "scattering_per_mm"), c.Scattering/1000, rel),
	}, err
}

// hunter is the colour that a reading on Hunter's scale stands for: his factors for C, 175 and
// 70 (Hunter 1948, as in public code), for the white of the reading.
func hunter(l, a, b float64, white colour.XYZ) colour.XYZ {
	ka, kb := 175*math.Sqrt(white.X/98.043), 70*math.Sqrt(white.Z/118.115)
	root := l / 100
	y := root * root
	return colour.XYZ{X: white.X * (y + a*root/ka), Y: white.Y * y, Z: white.Z * (y - b*root/kb)}
}

func milkColour(r testdata.Row) ([]Point, error) {
	label := r.Text("product") + ", " + r.Text("scale")
	switch {
	case strings.HasPrefix(r.Text("scale"), "Hunter") && r.Text("L_star") != "":
		// Converted with the white of illuminant C, the scale's own.
		white := colour.XYZ{X: 98.074, Y: 100, Z: 118.232}
		lab, err := hunter(figure(r, "L"), figure(r, "a"), figure(r, "b"), white).Lab(white)
		return []Point{
			Near(label+", L*", figure(r, "L_star"), lab.L, 0.06), Near(label+", a*", figure(r, "a_star"), lab.A, 0.05),
			Near(label+", b*", figure(r, "b_star"), lab.B, 0.05),
		}, err
	case r.Text("product") == "UHT milk day 0" && r.Text("scale") == "CIE L*a*b*":
		// The same row prints Y = 76.06.
		lab, err := colour.XYZ{X: 70, Y: 76.06, Z: 70}.Lab(colour.XYZ{X: 95, Y: 100, Z: 109})
		return []Point{Near(label+", L* of the printed Y", figure(r, "L"), lab.L, 0.02)}, err
	case r.Known() == "computed":
		return []Point{Skip(label, "of coefficients measured on one sample: the library takes milk by what is in it")}, nil
	}
	return []Point{Skip(label, "read through a colorimeter's port or recalled, on a scale that is not said, or no milk: no wide pool")}, nil
}

func milkColourTrends(r testdata.Row) ([]Point, error) {
	colourOf := func(m look.Milk) (colour.Lab, error) {
		o, err := m.Optics()
		if err != nil {
			return colour.Lab{}, err
		}
		a, err := o.Appear(look.Scene{Depth: honestplate.Some(0.01)})
		return a.Lab, err
	}
	var less, more look.Milk
	after := func(p, q colour.Lab) bool { return q.B > p.B }
	switch r.Text("subject") {
	case "fat 0 to 2 %":
		less, more = look.Milk{FatPercent: 0}, look.Milk{FatPercent: 2}
		after = func(p, q colour.Lab) bool { return q.L > p.L && q.A > p.A && q.B > p.B }
	case "breed and feeding":
		less = look.Milk{FatPercent: 4, Carotene: honestplate.Some(4)}
		more = look.Milk{FatPercent: 4, Carotene: honestplate.Some(8)}
	case "fat substitute":
		less = look.Milk{FatPercent: 0, ProteinPercent: honestplate.Some(4.1)} // 2 % solids are about a third protein
		more = look.Milk{FatPercent: 2}
		after = func(p, q colour.Lab) bool { return q.L > p.L }
	default:
		return []Point{Skip(r.Text("subject"), "heat, storage or single cows: not what the model knows")}, nil
	}
	p, err := colourOf(less)
	if err != nil {
		return nil, err
	}
	q, err := colourOf(more)
	if err != nil {
		return nil, err
	}
	holds := 0.0
	if after(p, q) {
		holds = 1
	}
	return []Point{Same(r.Text("subject"), 1, holds)}, nil
}

func carotene(r testdata.Row) ([]Point, error) {
	label := r.Text("milk") + ", " + r.Text("note")
	v := figure(r, "value")
	if r.Text("unit") != "mg per kg fat" || v == 0 {
		return []Point{Skip(label, "per litre, without the fat; or of goats, whose milk has none")}, nil
	}
	return []Point{{Label: label, Published: v, Predicted: 5, Low: 2, High: 12}}, nil
}

func milkCoats(r testdata.Row) ([]Point, error) {
	if label := r.Text("liquid"); label != "model" {
		return []Point{Skip(label, "of coefficients measured on one sample: the library takes milk by what is in it")}, nil
	}
	label := fmt.Sprintf("%s %% fat, %s MPa", r.Text("fat_percent"), r.Text("pressure_mpa"))
	milk := look.Milk{FatPercent: figure(r, "fat_percent"), Carotene: honestplate.Some(6)}
	milk.HomogenisedMPa = honestplate.Some(figure(r, "pressure_mpa"))
	o, err := milk.Optics()
	if err != nil {
		return nil, err
	}
	deep, err := o.Appear(look.Scene{})
	if err != nil {
		return nil, err
	}
	tolerance := 2.0
	if figure(r, "L_star_deep") < 80 {
		tolerance = 4
	}
	out := []Point{
		Near(label+", deep, L*", figure(r, "L_star_deep"), deep.Lab.L, tolerance),
		Skip(label+", 1 mm over black, L*", "diffuse light within and a beam's surface reflection without: no one light does both; a beam leaves thin coats darker, by 3 to 10 of L*"),
	}
	for _, c := range []struct {
		column   string
		contrast float64
	}{{"thickness_095_mm", 0.95}, {"thickness_098_mm", 0.98}} {
		h, err := o.Hides(look.Scene{}, look.Black, look.White, c.contrast)
		if err != nil {
			return nil, err
		}
		out = append(out, NearRel(fmt.Sprintf("%s, hides to %g, mm", label, c.contrast), figure(r, c.column), 1000*h.Likely, 0.15))
	}
	return out, nil
}
