package rheology

import (
	"cmp"
	_ "embed"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/table"
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
	Name, Unit, Source, Band string
	Usual, Low, High         float64 // solids, % by mass
	LowC                     float64 `json:"low_c"`
	HighC                    float64 `json:"high_c"`
	Limits                   string  // whose they are
	Spread                   float64 // factor of the viscosity's band
	Density                  float64 // band of the density, as a fraction, that of sucrose of its solids
	Tension                  line    // N/m; 0 for that of sucrose
}

// syrupKinds holds every Syrup, as syrups.json has them. Read only.
var syrupKinds = table.Read[map[string]syrupKind](syrupTable)

//go:embed syrups.json
var syrupTable []byte

// syrupPaS is the viscosity in Pa s of a syrup of a kind.
func syrupPaS(of string, solids, tempC float64) float64 {
	switch of {
	case "maple":
		return genotelle(solids, tempC)
	case "invert":
		return sugarGlass(100-solids, tempC)
	case "golden":
		return williamsLandelFerry(syrupGlass, tempC-(-41+3*(solids-83)))
	}
	return williamsLandelFerry(syrupGlass, tempC-(-35+5.7*(solids-80)))
}

// kind returns what is known of the syrup, and its solids.
func (s Syrup) kind() (k syrupKind, solids float64, err error) {
	k, known := syrupKinds[s.Of]
	if !known {
		return k, 0, &honestplate.InputError{Field: "Of", Got: fmt.Sprintf("%q", s.Of), Want: "maple, invert, golden or glucose"}
	}
	return k, cmp.Or(s.SolidsPercent, k.Usual), nil
}

func (s Syrup) at(tempC float64) (k syrupKind, solids float64, err error) {
	if k, solids, err = s.kind(); err == nil {
		err = cmp.Or(honestplate.InRange("SolidsPercent", solids, k.Low, k.High, "% by mass", k.Limits),
			honestplate.InRange("TempC", tempC, k.LowC, k.HighC, "degC", k.Limits))
	}
	return k, solids, err
}

// Describe says what stands in for the syrup.
func (s Syrup) Describe() Description {
	k, solids, err := s.kind()
	if err != nil {
		return Description{Name: "unknown syrup " + honestplate.OneLine(s.Of)}
	}
	return Description{Name: fmt.Sprintf("%s, %.4g %s", k.Name, solids, k.Unit), Source: k.Source, LowC: k.LowC, HighC: k.HighC, Band: k.Band}
}

// Viscosity returns the dynamic viscosity in Pa s: of maple that of [Sucrose] of the same
// Brix, band x/: 1.4; of invert that of [Honey] of the same water, band x/: 5; of golden and
// glucose syrup as the type says, bands x/: 1.6 and x/: 3.
func (s Syrup) Viscosity(tempC float64) (honestplate.Estimate, error) {
	k, solids, err := s.at(tempC)
	return check.Unless(err, honestplate.Factor(syrupPaS(s.Of, solids, tempC), k.Spread))
}

// Density returns the density in kg/m3, that of sucrose of the same solids, band +-1 % for
// maple, +-1.5 % for the others.
func (s Syrup) Density(tempC float64) (honestplate.Estimate, error) {
	k, solids, err := s.at(tempC)
	return check.Unless(err, honestplate.Within(sucroseDensity(solids, tempC), k.Density))
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
	if k.Tension == (line{}) {
		v := waterSurfaceTension(tempC) + 5.9e-3*solids/100
		return honestplate.Estimate{Low: 0.7 * v, Likely: 0.9 * v, High: 1.05 * v}, nil
	}
	return k.Tension.at(tempC), nil
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
