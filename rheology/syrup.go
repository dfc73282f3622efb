package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
)

// A Syrup is maple, invert, golden or glucose syrup by its solids: syrups whose own viscosity
// tables were not found in the open literature. Each stands on a named substitute and says
// so in its Description; the bands are wide for that reason. [Measured] replaces them. Hot
// syrup sticks and burns.
//
// "maple" is maple syrup, 60..70 % (its Brix), at 0..60 degC; 0 means 66.9, a usual grade
// limit (rules ask for 66..69). No measured viscosity of maple syrup with its temperature
// was found: this is [Sucrose] of the same Brix, of which maple syrup is nearly all. One
// trade value, 150..200 mPa s without temperature, is what Sucrose gives at 20..25 degC.
//
// "invert" is glucose and fructose in water, 70..85 %, at 2..70 degC; 0 means 80. No table
// was found: it stands on [Honey], which is nature's invert syrup, carried to more water
// by the Gordon-Taylor mixing of glass temperatures.
//
// "golden" is golden syrup, partly inverted sugar, 80..85 %, at 2..70 degC; 0 means 83 (from
// memory). The one value found is about 0.05 m2/s at 20 degC (Worster 2009, Understanding
// Fluid Flow, ch. 3), 71 Pa s; how it changes with temperature and strength is taken from the
// Williams-Landel-Ferry equation and from sugars, 3 degC of glass temperature for each %.
//
// "glucose" is glucose (corn) syrup of about 42 dextrose equivalent, 74..84 %, at 2..70
// degC; 0 means 80, confectioner's glucose. The trade's own table may not be reused. The
// Williams-Landel-Ferry equation is drawn through two: remembered values of confectioner's
// glucose, about 60 Pa s at 27 and 12 at 38 degC with 80 % solids, and a laboratory's fit to
// a corn syrup of 77 %, 15603 t^-2.44 Pa s with t in degC, 23.5..46 (read in its public
// program), 6 Pa s at 25 degC; so its glass temperature is -35 degC at 80 % solids and 5.7
// degC more for each %. Dextrose equivalent and maker matter as much: measure yours.
type Syrup struct {
	Of            string  `json:"of"`                      // "maple", "invert", "golden" or "glucose"
	SolidsPercent float64 `json:"solids_percent,omitzero"` // % by mass; 0 means the usual
}

// A syrupKind is what is known of one of them.
type syrupKind struct {
	name, source, band string
	usual, low, high   float64 // solids, % by mass
	lowC, highC        float64
	limits             string // whose they are
	pas                func(solids, tempC float64) float64
	spread             float64 // factor of the viscosity's band
	density            float64 // band of the density, as a fraction, that of sucrose of its solids
	tension            line    // N/m; 0 for that of sucrose
}

var syrupKinds = map[string]syrupKind{
	"maple": {
		name: "maple syrup", source: "no table found; a sucrose solution of its Brix (" + sourceGenotelle + ")",
		band:  "x/: 1.4, an engineering estimate for the sugars and acids that are not sucrose",
		usual: 66.9, low: 60, high: 70, lowC: 0, highC: 60, limits: "usual grades with a margin",
		pas: genotelle, spread: 1.4, density: 0.01,
	},
	"invert": {
		name: "invert syrup", source: "no table found; as honey of the same water (" + sourceHoney + ")",
		band:  "x/: 5, an engineering estimate: what share is inverted, and honey's own",
		usual: 80, low: 70, high: 85, lowC: 2, highC: 70, limits: "invert syrup as honey",
		pas:    func(solids, t float64) float64 { return sugarGlass(100-solids, t) },
		spread: 5, density: 0.015, tension: line{0.070, -1e-4, 0.15},
	},
	"golden": {
		name: "golden syrup", source: "Worster 2009, Understanding Fluid Flow, ch. 3 (one value, 20 degC); carried on as sugars are",
		band:  "x/: 1.6, an engineering estimate for makers; one value",
		usual: 83, low: 80, high: 85, lowC: 2, highC: 70, limits: "golden syrup as sold, from memory",
		pas:    func(solids, t float64) float64 { return williamsLandelFerry(syrupGlass, t-(-41+3*(solids-83))) },
		spread: 1.6, density: 0.015, tension: line{0.075, -1e-4, 0.15},
	},
	"glucose": {
		name: "glucose syrup", source: "through remembered glucose syrup of 42 dextrose equivalent, 80 %, and a laboratory's fit to a corn syrup of 77 %",
		band:  "x/: 3, an engineering estimate: dextrose equivalent and maker",
		usual: 80, low: 74, high: 84, lowC: 2, highC: 70, limits: "typical glucose syrup, from memory",
		pas:    func(solids, t float64) float64 { return williamsLandelFerry(syrupGlass, t-(-35+5.7*(solids-80))) },
		spread: 3, density: 0.015, tension: line{0.079, -1e-4, 0.1},
	},
}

// kind returns what is known of the syrup, and its solids.
func (s Syrup) kind() (k syrupKind, solids float64, err error) {
	k, known := syrupKinds[s.Of]
	if !known {
		return k, 0, &honestplate.InputError{Field: "Of", Got: fmt.Sprintf("%q", s.Of), Want: "maple, invert, golden or glucose"}
	}
	return k, cmp.Or(s.SolidsPercent, k.usual), nil
}

func (s Syrup) at(tempC float64) (k syrupKind, solids float64, err error) {
	if k, solids, err = s.kind(); err == nil {
		err = cmp.Or(honestplate.InRange("SolidsPercent", solids, k.low, k.high, "% by mass", k.limits),
			honestplate.InRange("TempC", tempC, k.lowC, k.highC, "degC", k.limits))
	}
	return k, solids, err
}

// Describe says what stands in for the syrup.
func (s Syrup) Describe() Description {
	k, solids, err := s.kind()
	if err != nil {
		return Description{Name: "unknown syrup " + honestplate.OneLine(s.Of)}
	}
	unit := "% solids"
	if s.Of == "maple" {
		unit = "Brix"
	}
	return Description{Name: fmt.Sprintf("%s, %.4g %s", k.name, solids, unit), Source: k.source, LowC: k.lowC, HighC: k.highC, Band: k.band}
}

// Viscosity returns the dynamic viscosity in Pa s: of maple that of [Sucrose] of the same
// Brix, band x/: 1.4; of invert that of [Honey] of the same water, band x/: 5; of golden and
// glucose syrup as the type says, bands x/: 1.6 and x/: 3.
func (s Syrup) Viscosity(tempC float64) (honestplate.Estimate, error) {
	k, solids, err := s.at(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(k.pas(solids, tempC), k.spread), nil
}

// Density returns the density in kg/m3, that of sucrose of the same solids, band +-1 % for
// maple, +-1.5 % for the others.
func (s Syrup) Density(tempC float64) (honestplate.Estimate, error) {
	k, solids, err := s.at(tempC)
	return check.Unless(err, honestplate.Within(sucroseDensity(solids, tempC), k.density))
}

// SurfaceTension returns the surface tension against air in N/m. Of maple it is that of
// [Sucrose] of the same Brix, from 30 % below to 5 % above: maple syrup foams, so something
// in it lowers it. Invert: 0.070 at 20 degC, band +-15 %; golden: 0.075, +-15 %; glucose: 0.079, +-10 %; all
// falling 0.1 mN/m each degC, from memory.
func (s Syrup) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	k, solids, err := s.at(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if k.tension == (line{}) {
		v := waterSurfaceTension(tempC) + 5.9e-3*solids/100
		return honestplate.Estimate{Low: 0.7 * v, Likely: 0.9 * v, High: 1.05 * v}, nil
	}
	return k.tension.at(tempC), nil
}

// Viscosities in Pa s at the glass temperature, both within what Juszczak & Fortuna print for
// honeys: of honey, and of other syrups.
const honeyGlass, syrupGlass = 2.5e11, 2.0e11

// williamsLandelFerry is the viscosity in Pa s of a sugar melt at a number of
// degC above its glass temperature, where it is glass; Honey gives the equation.
func williamsLandelFerry(glass, above float64) float64 {
	return glass * math.Exp(-math.Ln10*17.44*above/(51.6+above))
}

// sugarGlass is the viscosity in Pa s of glucose and fructose with water in % by
// mass. The glass temperature is mixed as Gordon and Taylor did (from memory),
//
//	Tg = (w Ts + k m Tw)/(w + k m),  w sugars, m water, Ts = 340.5 K, Tw = 136 K, k = 7.11
//
// Ts and k fitted to the values that Honey.Viscosity names.
func sugarGlass(waterPercent, tempC float64) float64 {
	m := waterPercent / 100
	tg := ((1-m)*340.5 + 7.11*m*136) / (1 - m + 7.11*m)
	return williamsLandelFerry(honeyGlass, tempC+physics.Kelvin-tg)
}
