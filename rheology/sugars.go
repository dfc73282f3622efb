package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
)

// Syrups whose own viscosity tables were not found in the open literature. Each
// stands on a named substitute and says so in its Description; the bands are wide
// for that reason. Measured replaces them.

// Maple is maple syrup by its Brix, 60..70, at 0..60 degC. The zero Brix means 66.9,
// a usual grade limit (rules ask for 66..69). No measured viscosity of maple syrup
// with its temperature was found: this is Sucrose of the same Brix, of which maple
// syrup is nearly all. One trade value, 150..200 mPa s without temperature, is what
// Sucrose gives at 20..25 degC.
type Maple struct {
	Brix float64 // % solids by mass, 60..70; 0 means 66.9
}

func (m Maple) sucrose() Sucrose {
	if m.Brix == 0 {
		return Sucrose{66.9}
	}
	return Sucrose(m)
}

func (m Maple) check(tempC float64) error {
	if err := honestplate.InRange("Brix of maple syrup", m.sucrose().Brix, 60, 70, "% by mass", "usual grades with a margin"); err != nil {
		return err
	}
	return honestplate.InRange("temperature", tempC, 0, 60, "degC", "maple syrup as sucrose")
}

// Describe says that sucrose stands in.
func (m Maple) Describe() Description {
	return Description{
		Name:   fmt.Sprintf("maple syrup, %.4g Brix", m.sucrose().Brix),
		Source: "no table found; a sucrose solution of its Brix (" + sourceGenotelle + ")",
		LowC:   0, HighC: 60,
		Band: "x/: 1.4, an engineering estimate for the sugars and acids that are not sucrose",
	}
}

// Viscosity is that of Sucrose of the same Brix in Pa s, with a band of x/: 1.4.
func (m Maple) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(genotelle(m.sucrose().Brix, tempC), 1.4), nil
}

// Density is that of Sucrose of the same Brix in kg/m3, band +-1 %.
func (m Maple) Density(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(sucroseDensity(m.sucrose().Brix, tempC), 0.01), nil
}

// SurfaceTension is that of Sucrose of the same Brix in N/m, from 30 % below to 5 %
// above: maple syrup foams, so something in it lowers the surface tension.
func (m Maple) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := m.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	s := waterSurfaceTension(tempC) + 5.9e-3*m.sucrose().Brix/100
	return honestplate.Estimate{Low: 0.7 * s, Likely: 0.9 * s, High: 1.05 * s}, nil
}

// Invert is invert syrup, glucose and fructose in water, by its solids,
// 70..85 % by mass, at 5..70 degC. The zero SolidsPercent means 80. No table was
// found: it stands on Honey, which is nature's invert syrup, carried to more water
// by the Gordon-Taylor mixing of glass temperatures. Golden syrup, which is part
// sucrose and has about 83 % solids (from memory), is thicker: the one value found,
// about 0.05 m2/s at 20 degC (Worster 2009, Understanding Fluid Flow, ch. 3), is 4
// times that of Invert of 83 %.
type Invert struct {
	SolidsPercent float64 // % by mass, 70..85; 0 means 80
}

func (s Invert) solids() float64 {
	if s.SolidsPercent == 0 {
		return 80
	}
	return s.SolidsPercent
}

func (s Invert) check(tempC float64) error {
	if err := honestplate.InRange("solids of invert syrup", s.solids(), 70, 85, "% by mass", "invert syrup as honey"); err != nil {
		return err
	}
	return honestplate.InRange("temperature", tempC, 5, 70, "degC", "invert syrup as honey")
}

// Describe says that honey stands in.
func (s Invert) Describe() Description {
	return Description{
		Name:   fmt.Sprintf("invert syrup, %.4g %% solids", s.solids()),
		Source: "no table found; as honey of the same water (" + sourceHoney + ")",
		LowC:   5, HighC: 70,
		Band: "x/: 5, which holds the one golden syrup found, 4 times thicker",
	}
}

// Viscosity is that of honey of the same water content in Pa s, band x/: 5: the one
// golden syrup found lies a factor of 4 above.
func (s Invert) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(sugarGlass(100-s.solids(), tempC), 5), nil
}

// Density is in kg/m3, that of sucrose of the same solids, band +-1.5 %.
func (s Invert) Density(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(sucroseDensity(s.solids(), tempC), 0.015), nil
}

// SurfaceTension is in N/m, 0.070 at 20 degC and falling 0.1 mN/m each degC, from
// memory, band +-15 %.
func (s Invert) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(0.070-1e-4*(tempC-20), 0.15), nil
}

// Glucose is glucose (corn) syrup of about 42 dextrose equivalent by its solids,
// 74..84 % by mass, at 15..70 degC. The zero SolidsPercent means 80, confectioner's
// glucose. The trade's own table may not be reused. The equation of Honey is drawn
// between two: remembered values of confectioner's glucose, about 60 Pa s at 27 and
// 12 at 38 degC with 80 % solids, and a laboratory's fit to a corn syrup of 77 %,
// 15603 t^-2.44 Pa s with t in degC, 23.5..46 (read in its public program), 6 Pa s at
// 25 degC. The two lie a factor of 5 apart at one strength: measure yours.
type Glucose struct {
	SolidsPercent float64 // % by mass, 74..84; 0 means 80
}

func (s Glucose) solids() float64 {
	if s.SolidsPercent == 0 {
		return 80
	}
	return s.SolidsPercent
}

func (s Glucose) check(tempC float64) error {
	if err := honestplate.InRange("solids of glucose syrup", s.solids(), 74, 84, "% by mass", "typical glucose syrup, from memory"); err != nil {
		return err
	}
	return honestplate.InRange("temperature", tempC, 15, 70, "degC", "typical glucose syrup, from memory")
}

// Describe says that the values are typical and remembered.
func (s Glucose) Describe() Description {
	return Description{
		Name:   fmt.Sprintf("glucose syrup, %.4g %% solids", s.solids()),
		Source: "between remembered glucose syrup of 42 dextrose equivalent and a laboratory's fit to a corn syrup of 77 %",
		LowC:   15, HighC: 70,
		Band: "x/: 3, an engineering estimate: dextrose equivalent and maker",
	}
}

// Viscosity returns the dynamic viscosity in Pa s, Honey's equation with a glass
// temperature of -42 degC at 80 % solids and 2.6 degC more for each % (from memory),
// band x/: 3, which holds both of what is known.
func (s Glucose) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(williamsLandelFerry(tempC-(-42+2.6*(s.solids()-80))), 3), nil
}

// Density is in kg/m3, that of sucrose of the same solids, band +-1.5 %.
func (s Glucose) Density(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(sucroseDensity(s.solids(), tempC), 0.015), nil
}

// SurfaceTension is in N/m, 0.079 at 20 degC and falling 0.1 mN/m each degC, from
// memory, band +-10 %.
func (s Glucose) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := s.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(0.079-1e-4*(tempC-20), 0.1), nil
}

// williamsLandelFerry is the viscosity in Pa s of a sugar melt at a number of
// degC above its glass temperature; Honey gives the equation and its source.
func williamsLandelFerry(above float64) float64 {
	return 2.0e11 * math.Exp(-math.Ln10*17.44*above/(51.6+above))
}

// sugarGlass is the viscosity in Pa s of glucose and fructose with water in % by
// mass. The glass temperature is mixed as Gordon and Taylor did (from memory),
//
//	Tg = (w Ts + k m Tw)/(w + k m),  w sugars, m water, Ts = 290 K, Tw = 136 K, k = 3.77
//
// Ts and k chosen to pass through the two ends that Juszczak & Fortuna print,
// 228.39 K at 14.7 % water and 220.34 K at 18.0 %.
func sugarGlass(waterPercent, tempC float64) float64 {
	m := waterPercent / 100
	tg := ((1-m)*290 + 3.77*m*136) / (1 - m + 3.77*m)
	return williamsLandelFerry(tempC + kelvin - tg)
}
