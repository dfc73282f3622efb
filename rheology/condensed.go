package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Condensed is canned concentrated milk, 5..50 degC: sweetened condensed milk (the
// zero value) or evaporated milk. No paper's table of either was found; the levels are
// the trade's, and for evaporated milk a formula for concentrates beside it. Both thicken with age until stirred.
type Condensed int

// The two kinds.
const (
	SweetenedCondensed Condensed = iota // about 75 % solids, sugared
	Evaporated                          // about 26 % solids, no sugar
	condensedKinds
)

var condensedTable = [condensedKinds]struct {
	name            string
	pas20, density  float64 // Pa s at 20 degC, kg/m3 at 20 degC
	slope           float64 // -d ln(eta)/dt, 1/K
	factor, spread  float64 // bands of viscosity and of density
	source, bandSay string
}{
	SweetenedCondensed: {"sweetened condensed milk", 4.4, 1290, 0.045, 3, 0.02,
		"pump maker's chart (2.16 Pa s, 75 % solids, 21 degC) and a property table (10 Pa s, 77 %, 25 degC)",
		"x/: 3: the two trade values differ by 4.6"},
	Evaporated: {"evaporated milk", 0.03, 1065, 0.030, 5.5, 0.02,
		"between a pump maker's chart (0.04..0.08 Pa s at 38..49 degC) and " + sourceFernandez,
		"x/: 5.5: the two are 16 times apart; age and sterilising thicken it"},
}

func (c Condensed) check(tempC float64) error {
	if c < 0 || c >= condensedKinds {
		return check.Input("kind of condensed milk", float64(c), "", "SweetenedCondensed or Evaporated")
	}
	return honestplate.InRange("temperature", tempC, 5, 50, "degC", condensedTable[c].source)
}

// Describe says where the levels come from.
func (c Condensed) Describe() Description {
	d := Description{Name: "unknown condensed milk", LowC: 5, HighC: 50}
	if c >= 0 && c < condensedKinds {
		t := condensedTable[c]
		d.Name, d.Source, d.Band = t.name, t.source, t.bandSay
	}
	return d
}

// Viscosity returns the dynamic viscosity in Pa s, eta20 exp[-s (t - 20)]: for
// sweetened condensed milk eta20 = 4.4 Pa s, the geometric mean of the two trade
// values moved to 20 degC, and s = 4.5 % a degC, that of a sugar syrup of 70 Brix;
// for evaporated milk 0.03 Pa s and 3 % a degC, that of water and a little more: the
// rounded geometric mean of a pump maker's values moved to 20 degC, 0.11 Pa s, and of
// FernandezMartin at 26 % solids, 0.0068 Pa s, for concentrate that has neither been
// sterilised nor aged. Band x/: 3 and x/: 5.5, which hold both sources of each. It is at
// the unstated shear rate of a pump; both thin a little.
func (c Condensed) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if err := c.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	t := &condensedTable[c]
	return honestplate.Factor(t.pas20*math.Exp(-t.slope*(tempC-20)), t.factor), nil
}

// Density returns the density in kg/m3, typical, from memory, band +-2 %.
func (c Condensed) Density(tempC float64) (honestplate.Estimate, error) {
	if err := c.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	t := &condensedTable[c]
	return honestplate.Within(t.density-0.5*(tempC-20), t.spread), nil
}

// SurfaceTension returns the surface tension against air in N/m: that of milk, 0.048,
// from memory, band +-15 %.
func (c Condensed) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := c.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(0.048-1.5e-4*(tempC-20), 0.15), nil
}
