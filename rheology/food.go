package rheology

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/rheology/internal/physics"
)

// A Food is an oil, a canned milk, a sauce or a chocolate by its name, such as "olive
// oil" or "tomato ketchup", with typical values for planning; [Catalogue] lists them, and an
// unknown name is an InputError that does. Makers differ by factors: measure yours, see
// [Measured] and [Custom]. Keep oil from hot lamps: it burns, and a warm oil on a wet floor
// is a fall. Food that stood out is not eaten.
type Food string

// A foodData is what is known of a Food: a Newtonian viscosity or flow curves.
type foodData struct {
	source, band     string
	lowC, highC      float64
	pas              func(tempC float64) float64 // Pa s; nil where there are curves
	spread           float64                     // factor of the viscosity's band
	curves           []sauceCurve                // rising in temperature
	oil              bool                        // nothing but fat
	casson           bool                        // they are Casson's
	undisturbed      bool                        // the yield stress was measured at rest
	yieldSpread      float64                     // factor of its band; 0 for spread
	perC             float64                     // change of ln(k) and ln(yield) per degC beyond the curves
	density, tension line                        // kg/m3, N/m
}

// A line is a property at 20 degC, its change per degC, and its band as a fraction.
type line struct{ at20, perC, rel float64 }

func (l line) at(tempC float64) honestplate.Estimate {
	return honestplate.Within(l.at20+l.perC*(tempC-20), l.rel)
}

// foods holds every Food. Read only.
var foods = func() map[Food]*foodData {
	all := map[Food]*foodData{}
	for _, table := range []map[Food]*foodData{oils(), cannedMilks(), sauces()} {
		maps.Copy(all, table)
	}
	return all
}()

func (f Food) data(tempC float64) (*foodData, error) {
	d := foods[f]
	if d == nil {
		return nil, f.unknown()
	}
	return d, honestplate.InRange("TempC", tempC, d.lowC, d.highC, "degC", d.source)
}

func (f Food) unknown() error {
	var names []string
	for _, n := range slices.Sorted(maps.Keys(foods)) {
		names = append(names, string(n))
	}
	return &honestplate.InputError{Field: "Food", Got: fmt.Sprintf("%q", string(f)), Want: "one of " + strings.Join(names, ", ")}
}

func (f Food) check(tempC float64) error {
	_, err := f.data(tempC)
	return err
}

// Describe says whose numbers these are.
func (f Food) Describe() Description {
	d := foods[f]
	if d == nil {
		return Description{Name: "unknown food " + honestplate.OneLine(string(f))}
	}
	out := Description{Name: string(f), Source: d.source, LowC: d.lowC, HighC: d.highC, Band: d.band}
	if d.pas == nil {
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
	if d.pas != nil {
		return honestplate.Factor(d.pas(tempC), d.spread), honestplate.NotNegative("ShearRate", shearRate, "1/s")
	}
	if err := honestplate.InRange("ShearRate", shearRate, sauceLowRate, sauceHighRate, "1/s", d.source); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(d.at(tempC).stress(d.casson, shearRate)/shearRate, d.spread), nil
}

// Flow returns the typical flow curve at a temperature: Casson for melted chocolate,
// Herschel-Bulkley for the other sauces (with no yield stress it is a power law, with index
// 1 a Bingham liquid), Newtonian for the rest.
func (f Food) Flow(tempC float64) (flow.Model, error) {
	d, err := f.data(tempC)
	switch {
	case err != nil:
		return nil, err
	case d.pas != nil:
		return flow.Newtonian{PaS: d.pas(tempC)}, nil
	}
	c := d.at(tempC)
	if d.casson {
		return flow.Casson{Yield: c.yield, Plastic: c.k}, nil
	}
	return flow.HerschelBulkley{Yield: c.yield, K: c.k, N: c.n}, nil
}

// YieldStress returns the stress in Pa below which the sauce stands, band x/: 2.5 (x/: 7
// for chocolate: the ring test of Aeschlimann & Beckett 2000 spread that far; x/: 2 for
// mustard and mayonnaise, whose products in one laboratory differ by 1.5 and 1.1, and
// makers by more, an estimate); the zero Estimate for a food that has none. What has
// stood is stiffer: [RestedYieldStress].
func (f Food) YieldStress(tempC float64) (honestplate.Estimate, error) {
	d, err := f.data(tempC)
	if err != nil || d.pas != nil {
		return honestplate.Estimate{}, err
	}
	if d.casson {
		return honestplate.Factor(d.at(tempC).yield, 7), nil
	}
	return honestplate.Factor(d.at(tempC).yield, cmp.Or(d.yieldSpread, d.spread)), nil
}

// Density returns the density in kg/m3, typical, from memory; band +-1 % for oils, +-2 % for
// canned milk, +-3 % for sauces.
func (f Food) Density(tempC float64) (honestplate.Estimate, error) {
	d, err := f.data(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return d.density.at(tempC), nil
}

// SurfaceTension returns the surface tension against air in N/m. Oils: that of triolein,
// 36.03 - 0.0699 t mN/m (Jasper 1972, read in a public library's table), band +-8 %. Canned
// milk: that of milk, 0.048, from memory, band +-15 %. Sauces: typical, from memory, band
// +-20 %; in a sauce that stands, the yield stress decides, not this.
func (f Food) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	d, err := f.data(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return d.tension.at(tempC), nil
}

// oils are edible oils, with their viscosity at 38 degC in Pa s, at which most published
// values were taken.
func oils() map[Food]*foodData {
	const steffe, diamante = "Steffe 1996, appendix, from memory", "Diamante & Lan 2014, J. Food Processing 234583, abstract"
	// In a refrigerator some stay clear and liquid for days, others cloud and set (common
	// practice, no source).
	const clear, sets = 2.0, 5.0
	out := map[Food]*foodData{}
	for _, o := range []struct {
		name   Food
		pas38  float64
		lowC   float64
		source string
	}{
		{"olive oil", 0.0385, sets, steffe},
		{"sunflower oil", 0.0311, clear, steffe},
		{"rapeseed oil", 0.0375, clear, "typical of oil low in erucic acid, as sold today (canola), from memory"},
		{"corn oil", 0.0325, clear, steffe},
		{"soya oil", 0.0315, clear, steffe},
		{"peanut oil", 0.0375, sets, steffe},
		{"cottonseed oil", 0.0321, sets, steffe},
		{"safflower oil", 0.0299, clear, steffe},
		{"rice bran oil", 0.0398, sets, diamante}, // the thickest of those that Diamante & Lan measured
		{"walnut oil", 0.0296, clear, diamante},   // the thinnest
	} {
		out[o.name] = &foodData{
			source: o.source, band: "x/: 1.15, between oils of one name; 19 published values, most from memory",
			lowC: o.lowC, highC: 90, spread: 1.15, oil: true,
			pas:     func(t float64) float64 { return o.pas38 * math.Exp(1070*(1/(t+physics.Kelvin-140)-1/171.15)) },
			density: line{918, -0.66, 0.01},
			tension: line{1e-3 * (36.03 - 0.0699*20), -6.99e-5, 0.08},
		}
	}
	return out
}

// cannedMilks are concentrated milks. No paper's table of either was found; the levels are
// the trade's, and for evaporated milk a formula for concentrates beside it.
func cannedMilks() map[Food]*foodData {
	milk := func(pas20, slope, spread, density float64, source, band string) *foodData {
		return &foodData{
			source: source, band: band, lowC: 2, highC: 50, spread: spread,
			pas:     func(t float64) float64 { return pas20 * math.Exp(-slope*(t-20)) },
			density: line{density, -0.5, 0.02}, tension: line{0.048, -1.5e-4, 0.15},
		}
	}
	return map[Food]*foodData{
		// About 75 % solids, sugared.
		"sweetened condensed milk": milk(4.4, 0.045, 3, 1290,
			"pump maker's chart (2.16 Pa s, 75 % solids, 21 degC) and a property table (10 Pa s, 77 %, 25 degC)",
			"x/: 3: the two trade values differ by 4.6"),
		// About 26 % solids, no sugar.
		"evaporated milk": milk(0.03, 0.030, 5.5, 1065,
			"between a pump maker's chart (0.04..0.08 Pa s at 38..49 degC) and Fernandez-Martin 1972",
			"x/: 5.5: the two are 16 times apart; age and sterilising thicken it"),
	}
}
