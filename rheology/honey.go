package rheology

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
)

// Honey is liquid, strained honey by its moisture, 14..20 % by mass, at 5..70
// degC. The zero MoisturePercent means 17 %, about the usual jar. Crystallised
// honey, and honey that thins under shear (heather, manuka), are outside it.
type Honey struct {
	MoisturePercent float64 `json:"moisture_percent,omitzero"` // % by mass, 14..20; 0 means 17
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
		LowC:   5, HighC: 70,
		Band: "x/: 1.8, between flowers at one moisture; 10 published values, half of them from memory",
	}
}

func (h Honey) check(tempC float64) error {
	return cmp.Or(honestplate.InRange("MoisturePercent", h.moisture(), 14, 20, "%", sourceHoney),
		honestplate.InRange("TempC", tempC, 5, 70, "degC", sourceHoney))
}

// Viscosity returns the dynamic viscosity in Pa s by the Williams-Landel-Ferry
// equation with its universal constants,
//
//	log10(eta/eta_g) = -17.44 (T - Tg)/(51.6 + T - Tg),  eta_g = 2.0e11 Pa s
//
// where Tg, the glass temperature, is 228.4 K at 14.7 % and 220.3 K at 18.0 % water
// and mixed between and beyond as Gordon and Taylor did. Juszczak & Fortuna 2006
// print those ends, and eta_g of 1.88e11..2.86e11 Pa s, for Polish honeys at 10..40
// degC; that the driest has the highest Tg is our reading. The equation then gives
// the ends of their range of viscosity, 1.76..252.6 Pa s, within a third. It is
// used on to 14 and 20 % and to 5..70 degC.
//
// eta_g is the value in that range that leaves no bias. Band x/: 1.8: honeys of one
// moisture differ by flower. testdata/honey_viscosity.csv: 10 values (5 read, 5
// remembered), 9 inside.
func (h Honey) Viscosity(tempC float64) (honestplate.Estimate, error) {
	if err := h.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(sugarGlass(h.moisture(), tempC), 1.8), nil
}

// Density returns the density in kg/m3, 1417 - 6.5 (m - 18) - 0.6 (t - 20): from
// memory of the usual refractometer table; band +-1 %.
func (h Honey) Density(tempC float64) (honestplate.Estimate, error) {
	if err := h.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(1417-6.5*(h.moisture()-18)-0.6*(tempC-20), 0.01), nil
}

// SurfaceTension returns the surface tension against air in N/m: 0.055 at 20 degC,
// falling 0.1 mN/m each degC, from memory; band +-20 %.
func (h Honey) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := h.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(0.055-1e-4*(tempC-20), 0.2), nil
}
