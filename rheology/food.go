package rheology

import (
	"cmp"
	_ "embed"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/table"
)

// A Food is an oil, a canned milk, a sauce or a chocolate by its name, such as "olive
// oil" or "tomato ketchup", with typical values for planning; [Catalogue] lists them, and an
// unknown name is an InputError that does. Makers differ by factors: measure yours, see
// [Measured] and [Custom]. Keep oil from hot lamps: it burns, and a warm oil on a wet floor
// is a fall. Food that stood out is not eaten.
type Food string

// A foodData is what is known of a Food: a Newtonian viscosity or flow curves.
type foodData struct {
	Source, Band string
	LowC         float64      `json:"low_c"`
	HighC        float64      `json:"high_c"`
	PaS          float64      // at 38 degC of an oil, at 20 of another; 0 where there are curves
	Spread       float64      // factor of the viscosity's band
	Curves       []sauceCurve // rising in temperature
	Oil          bool         // nothing but fat
	Casson       bool         // the curves are Casson's
	Undisturbed  bool         // the yield stress was measured at rest, and is known better than a curve
	YieldSpread  float64      `json:"yield_spread"` // factor of its band; 0 for Spread
	PerC         float64      `json:"per_c"`        // change of ln(viscosity) per degC; of k and yield beyond the curves
	Density      line         // kg/m3
	Tension      line         // N/m
}

// A line is a property at 20 degC, its change per degC, and its band as a fraction.
type line [3]float64

func (l line) at(tempC float64) honestplate.Estimate {
	return honestplate.Within(l[0]+l[1]*(tempC-20), l[2])
}

// foods holds every Food, as foods.json has them. Read only.
//
// Oils: most published values were taken at 38 degC; of those that Diamante & Lan 2014
// measured, rice bran oil is the thickest and walnut oil the thinnest. In a refrigerator some
// stay clear and liquid for days (from 2 degC), others cloud and set (from 5; common practice,
// no source).
//
// Canned milks, sweetened of about 75 % solids, evaporated of about 26 %: no paper's table of
// either was found; the levels are the trade's, and for evaporated milk a formula for
// concentrates beside it.
//
// Sauces: [sauceCurve].
var foods = table.Read[map[Food]*foodData](foodTable)

//go:embed foods.json
var foodTable []byte

// newtonian is the viscosity of a food without curves, Pa s.
func (d *foodData) newtonian(tempC float64) float64 {
	if d.Oil {
		return d.PaS * math.Exp(1070*(1/(tempC+physics.Kelvin-140)-1/171.15))
	}
	return d.PaS * math.Exp(d.PerC*(tempC-20))
}

func (f Food) data(tempC float64) (foodData, error) {
	d := foods[f]
	if d == nil {
		return foodData{}, f.unknown()
	}
	return *d, honestplate.InRange("TempC", tempC, d.LowC, d.HighC, "degC", d.Source)
}

func (f Food) unknown() error {
	var names []string
	for _, n := range slices.Sorted(maps.Keys(foods)) {
		names = append(names, string(n))
	}
	return &honestplate.InputError{Field: "Food", Got: fmt.Sprintf("%q", string(f)), Want: "one of " + strings.Join(names, ", ")}
}

// Describe says whose numbers these are.
func (f Food) Describe() Description {
	d := foods[f]
	if d == nil {
		return Description{Name: "unknown food " + honestplate.OneLine(string(f))}
	}
	out := Description{Name: string(f), Source: d.Source, LowC: d.LowC, HighC: d.HighC, Band: d.Band}
	if d.PaS == 0 {
		out.ShearRate, out.LowRate, out.HighRate = sauceRate, sauceLowRate, sauceHighRate
	}
	return out
}

// Viscosity returns the dynamic viscosity in Pa s; of a food that thins the apparent one at
// 50 1/s, see [Food.ViscosityAtRate].
func (f Food) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return f.ViscosityAtRate(tempC, sauceRate)
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s.
//
// Oils and canned milk are Newtonian here: the rate does not matter. Oils (Diamante & Lan
// 2014, 64..4835 1/s):
//
//	eta = eta38 exp[1070 (1/(T - 140) - 1/171.15)],  T in K
//
// eta38 by oil, at 38 degC, fitted to the values it is checked against; the Vogel
// shape, common to all, is our fit to remembered values of olive oil at 10..70 degC and
// soya oil at 30..90. Its activation energy is 26 kJ/mol at 60 degC; Diamante & Lan print
// 21..30. Band x/: 1.15, from testdata/oil_viscosity.csv: 18 of 19 values inside. Two
// remembered values of rapeseed oil, from before it was bred low in erucic acid, are twice
// today's and are not used. Olive, peanut, cottonseed and rice bran oil cloud and set below 5
// degC; the others are asked from 2.
//
// Canned milk: eta20 exp[-s (t - 20)]: for sweetened condensed milk eta20 = 4.4 Pa s, the
// geometric mean of the two trade values moved to 20 degC, and s = 4.5 % a degC, that of a
// sugar syrup of 70 Brix; for evaporated milk 0.03 Pa s and 3 % a degC, that of water and a
// little more: the rounded geometric mean of a pump maker's values moved to 20 degC, 0.11
// Pa s, and of Fernandez-Martin's formula at 26 % solids, 0.0068 Pa s, for concentrate that
// has neither been sterilised nor aged. Band x/: 3 and x/: 5.5, which hold both sources of
// each. It is at the unstated shear rate of a pump; both thin a little, and thicken with age
// until stirred.
//
// Sauces and chocolates: stress over rate of the flow curve, for 0.1..1000 1/s (a RangeError
// outside: no curve was measured there). Band x/: 2.5, an engineering estimate of how makers
// differ: the two read milk chocolates differ by 1.4, and laboratories on one chocolate by 2.
func (f Food) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	d, err := f.data(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if d.PaS > 0 {
		return honestplate.Factor(d.newtonian(tempC), d.Spread), honestplate.NotNegative("ShearRate", shearRate, "1/s")
	}
	return check.Unless(honestplate.InRange("ShearRate", shearRate, sauceLowRate, sauceHighRate, "1/s", d.Source), honestplate.Factor(d.at(tempC).stress(d.Casson, shearRate)/shearRate, d.Spread))
}

// YieldStress returns the stress in Pa below which the sauce stands, band x/: 2.5 (x/: 7
// for chocolate: the ring test of Aeschlimann & Beckett 2000 spread that far; x/: 2 for
// mustard and mayonnaise, whose products in one laboratory differ by 1.5 and 1.1, and
// makers by more, an estimate); the zero Estimate for a food that has none. What has
// stood is stiffer: [RestedYieldStress].
func (f Food) YieldStress(tempC float64) (honestplate.Estimate, error) {
	d, err := f.data(tempC)
	if err != nil || d.PaS > 0 {
		return honestplate.Estimate{}, err
	}
	if d.Casson {
		return honestplate.Factor(d.at(tempC).yield, 7), nil
	}
	return honestplate.Factor(d.at(tempC).yield, cmp.Or(d.YieldSpread, d.Spread)), nil
}

// Density returns the density in kg/m3, typical, from memory; band +-1 % for oils, +-2 % for
// canned milk, +-3 % for sauces.
func (f Food) Density(tempC float64) (honestplate.Estimate, error) {
	d, err := f.data(tempC)
	return check.Unless(err, d.Density.at(tempC))
}

// SurfaceTension returns the surface tension against air in N/m. Oils: that of triolein,
// 36.03 - 0.0699 t mN/m (Jasper 1972, read in a public library's table), band +-8 %. Canned
// milk: that of milk, 0.048, from memory, band +-15 %. Sauces: typical, from memory, band
// +-20 %; in a sauce that stands, the yield stress decides, not this.
func (f Food) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	d, err := f.data(tempC)
	return check.Unless(err, d.Tension.at(tempC))
}
