package published

import (
	"fmt"

	"example.org/honestplate/rheology"
	"example.org/honestplate/testdata"
)

// Checks of dairy by the values that a second search found.
var dairyMore = []Check{
	{
		Table: "dairy_more", Package: "rheology", Quantity: "viscosity", Unit: "mPa s",
		Claim: "the model's own 95 % band", Banded: true, Points: moreDairyViscosity,
	},
	{
		Table: "dairy_more", Package: "rheology", Quantity: "density", Unit: "kg/m3",
		Claim: "the model's own 95 % band", Banded: true, Points: moreDairyDensity,
	},
	{
		Table: "dairy_more", Package: "rheology", Quantity: "surface tension", Unit: "mN/m",
		Claim: "the model's own 95 % band", Banded: true, Points: moreDairyTension,
	},
}

// moreDairy is a row of dairy_more; skip is the reason where the quantity is another
// or nothing in the library answers it.
type moreDairy struct {
	label            string
	fat, temp, value float64
	skip             string
}

func readMoreDairy(r testdata.Row, quantity string) (moreDairy, error) {
	d := moreDairy{label: fmt.Sprintf("%s, %s degC (%s)", r.Text("product"), r.Text("temp_c"), r.Text("source"))}
	switch of := r.Text("quantity"); {
	case of == "flow behaviour index", of == "shear rate of the tongue":
		d.skip = "no answer of the library: it has no stabilised mix and no tongue"
	case of != quantity:
		d.skip = "a " + of
	case r.Text("temp_c") == "":
		d.skip = "no temperature is stated, and the thickener sets it, not the fat"
	}
	if d.skip != "" {
		return d, nil
	}
	v, err := columns(r, "temp_c", "value")
	if err != nil {
		return d, err
	}
	d.temp, d.value, d.fat = v[0], v[1], value(r, "fat_percent", 3.5)
	if d.temp > 80 {
		d.skip = "above the model's range of 80 degC"
	}
	return d, nil
}

func moreDairyViscosity(r testdata.Row) ([]Point, error) {
	d, err := readMoreDairy(r, "viscosity")
	if err != nil {
		return nil, err
	}
	switch product := r.Text("product"); {
	case d.skip != "":
	case r.Text("rate_per_s") != "":
		d.skip = "homogenised until its globules clustered, at 0.5 1/s, fat not printed: no plain cream"
	case product == "chocolate milk drink":
		d.skip = "a hydrocolloid sets it"
	case product == "5 % lactose in water", product == "rennet whey":
		d.skip = "no casein: not milk"
	case product == "evaporated milk, 25 % total solids":
		e, err := rheology.Food("evaporated milk").Viscosity(d.temp)
		return estimated(d.label, d.value, e, err, 1e3, 0)
	}
	if d.skip != "" {
		return []Point{Skip(d.label, d.skip)}, nil
	}
	e, err := rheology.Dairy{FatPercent: d.fat}.Viscosity(d.temp)
	return estimated(d.label, d.value, e, err, 1e3, 0)
}

func moreDairyDensity(r testdata.Row) ([]Point, error) {
	d, err := readMoreDairy(r, "density")
	if err != nil {
		return nil, err
	}
	if d.skip == "" && d.fat > 50 {
		d.skip = "butterfat is no cream"
	}
	if d.skip != "" {
		return []Point{Skip(d.label, d.skip)}, nil
	}
	e, err := rheology.DairyDensity(d.fat, 8.9, d.temp)
	return estimated(d.label, d.value, e, err, 1, 0)
}

func moreDairyTension(r testdata.Row) ([]Point, error) {
	d, err := readMoreDairy(r, "surface tension")
	if err != nil {
		return nil, err
	}
	if d.skip != "" {
		return []Point{Skip(d.label, d.skip)}, nil
	}
	e, err := rheology.Dairy{FatPercent: d.fat}.SurfaceTension(d.temp)
	return estimated(d.label, d.value, e, err, 1e3, 0)
}
