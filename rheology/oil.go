package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// An Oil is an edible oil, 5..90 degC. The zero value is olive oil. Keep it from hot
// lamps: it burns, and a warm oil on a wet floor is a fall.
type Oil int

// The oils that have a value of their own.
const (
	Olive      Oil = iota // olive oil
	Sunflower             // sunflower oil
	Rapeseed              // rapeseed oil, low in erucic acid, as sold today (canola)
	Corn                  // maize (corn) oil
	Soybean               // soya bean oil
	Peanut                // peanut (groundnut) oil
	Cottonseed            // cottonseed oil
	Safflower             // safflower oil
	RiceBran              // rice bran oil, the thickest of those that Diamante & Lan measured
	Walnut                // walnut oil, the thinnest of them
	oils                  // how many there are
)

// oilTable holds each oil's name and its viscosity at 38 degC in Pa s, at which
// most published values were taken.
var oilTable = [oils]struct {
	name   string
	pas38  float64
	source string
}{
	Olive:      {"olive oil", 0.0385, "Steffe 1996, appendix, from memory"},
	Sunflower:  {"sunflower oil", 0.0311, "Steffe 1996, appendix, from memory"},
	Rapeseed:   {"rapeseed oil", 0.0375, "typical of oil low in erucic acid, from memory"},
	Corn:       {"corn oil", 0.0325, "Steffe 1996, appendix, from memory"},
	Soybean:    {"soya oil", 0.0315, "Steffe 1996, appendix, from memory"},
	Peanut:     {"peanut oil", 0.0375, "Steffe 1996, appendix, from memory"},
	Cottonseed: {"cottonseed oil", 0.0321, "Steffe 1996, appendix, from memory"},
	Safflower:  {"safflower oil", 0.0299, "Steffe 1996, appendix, from memory"},
	RiceBran:   {"rice bran oil", 0.0398, "Diamante & Lan 2014, J. Food Processing 234583, abstract"},
	Walnut:     {"walnut oil", 0.0296, "Diamante & Lan 2014, J. Food Processing 234583, abstract"},
}

const oilBand = 1.15

// Describe says whose numbers these are.
func (o Oil) Describe() Description {
	d := Description{Name: "unknown oil", LowC: 5, HighC: 90}
	if o >= 0 && o < oils {
		d.Name, d.Source = oilTable[o].name, oilTable[o].source
		d.Band = "x/: 1.15, between oils of one name; 19 published values, most from memory"
	}
	return d
}

func (o Oil) check(tempC float64) error {
	if o < 0 || o >= oils {
		return check.Input("kind of oil", float64(o), "", "one of the named oils")
	}
	return honestplate.InRange("temperature", tempC, 5, 90, "degC", oilTable[o].source)
}

// Viscosity returns the dynamic viscosity in Pa s, Newtonian (Diamante & Lan 2014,
// 64..4835 1/s):
//
//	eta = eta38 exp[1070 (1/(T - 140) - 1/171.15)],  T in K
//
// eta38 by oil, at 38 degC, fitted to the values it is checked against; the Vogel
// shape, common to all, is our fit to remembered
// values of olive oil at 10..70 degC and soya oil at 30..90. Its activation energy is
// 26 kJ/mol at 60 degC; Diamante & Lan print 21..30. Band x/: 1.15, from
// testdata/oil_viscosity.csv: 18 of 19 values inside. Two remembered values of
// rapeseed oil, from before it was bred low in erucic acid, are twice today's and
// are not used. Below 5 degC oils cloud and set.
func (o Oil) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if err := o.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	v := oilTable[o].pas38 * math.Exp(1070*(1/(tempC+kelvin-140)-1/171.15))
	return honestplate.Factor(v, oilBand), nil
}

// Density returns the density in kg/m3, 918 - 0.66 (t - 20), typical, from memory;
// band +-1 %.
func (o Oil) Density(tempC float64) (honestplate.Estimate, error) {
	if err := o.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(918-0.66*(tempC-20), 0.01), nil
}

// SurfaceTension returns the surface tension against air in N/m, that of triolein,
// 36.03 - 0.0699 t mN/m (Jasper 1972, read in a public library's table), band +-8 %.
func (o Oil) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := o.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(1e-3*(36.03-0.0699*tempC), 0.08), nil
}
