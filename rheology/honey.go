package rheology

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Honey is liquid, strained honey by its moisture, 13.5..21.5 % by mass, at 2..70
// degC. The zero MoisturePercent means 17 %, about the usual jar. Crystallised
// honey, and honey that thins under shear (heather, manuka), are outside it.
type Honey struct {
	MoisturePercent float64 `json:"moisture_percent,omitzero"` // % by mass, 13.5..21.5; 0 means 17
}

const (
	sourceHoney   = "Juszczak & Fortuna 2006, J. Food Eng. 75, Rheology of selected Polish honeys (abstract)"
	honeyMoisture = 17.0
)

func (h Honey) moisture() float64 {
	if h.MoisturePercent == 0 {
		return honeyMoisture
	}
	return h.MoisturePercent
}

// Describe says whose numbers these are.
func (h Honey) Describe() Description {
	return Description{
		Name:   fmt.Sprintf("honey, %.4g %% moisture", h.moisture()),
		Source: sourceHoney,
		LowC:   2, HighC: 70,
		Band: "x/: 1.8, between flowers at one moisture; 21 published values, 16 of them from memory",
	}
}

func (h Honey) check(tempC float64) error {
	return cmp.Or(honestplate.InRange("MoisturePercent", h.moisture(), 13.5, 21.5, "%", sourceHoney),
		honestplate.InRange("TempC", tempC, 2, 70, "degC", sourceHoney))
}

// Viscosity returns the dynamic viscosity in Pa s by the Williams-Landel-Ferry
// equation with its universal constants,
//
//	log10(eta/eta_g) = -17.44 (T - Tg)/(51.6 + T - Tg),  eta_g = 2.5e11 Pa s
//
// where Tg, the glass temperature, is mixed from those of sugar and water as Gordon and
// Taylor did. Juszczak & Fortuna 2006 print eta_g of 1.88e11..2.86e11 Pa s, Tg of 220.3 to
// 228.4 K and activation energies of 92 to 105 kJ/mol for Polish honeys of 14.7 to 18.0 %
// water at 10..40 degC. Through those ends of Tg the slope in water is too weak: honey of 17
// to 18 % came out 26 to 30 % too thick. So the two constants of the mixing are fitted, to 15
// values of 13.7 to 20.2 % water and 10 to 50 degC; left out were those above, and three that
// lie apart from the rest by 1.5 to 2.6 times: a sage honey, and two whose water is assumed. Tg is
// then 227.9 K at 14.7 and 215.9 at 18.0 %, the activation energy 105 to 86 kJ/mol. It is
// used for 13.5 to 21.5 % and 2..70 degC.
//
// Band x/: 1.8: honeys of one moisture differ by flower, by 2.3 times in the table of
// one source. testdata/honey_viscosity.csv and honey_more.csv: 5 values read, 16 remembered.
func (h Honey) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(h.check(tempC), honestplate.Factor(sugarGlass(h.moisture(), tempC), 1.8))
}

// Density returns the density in kg/m3, 1417 - 6.5 (m - 18) - 0.6 (t - 20): from
// memory of the usual refractometer table; band +-1 %.
func (h Honey) Density(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(h.check(tempC), honestplate.Within(1417-6.5*(h.moisture()-18)-0.6*(tempC-20), 0.01))
}

// SurfaceTension returns the surface tension against air in N/m: 0.055 at 20 degC,
// falling 0.1 mN/m each degC, from memory; band +-20 %.
func (h Honey) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(h.check(tempC), honestplate.Within(0.055-1e-4*(tempC-20), 0.2))
}
