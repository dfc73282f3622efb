package law

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
)

// A Fluid is a liquid as the closed forms see it.
type Fluid struct {
	Viscosity      float64 `json:"viscosity_pas"`           // Pa s
	Density        float64 `json:"density_kg_per_m3"`       // kg/m3
	SurfaceTension float64 `json:"surface_tension_n_per_m"` // N/m
}

// Check returns an error for a property that no liquid has.
func (f Fluid) Check() error {
	return cmp.Or(
		honestplate.InRange("Viscosity", f.Viscosity, 1e-6, 1e9, "Pa s", "from thin gases to pitch"),
		honestplate.InRange("Density", f.Density, 1, 3e4, "kg/m3", "from foam to metal"),
		honestplate.InRange("SurfaceTension", f.SurfaceTension, 1e-4, 10, "N/m", "from soap to metal"))
}

// size checks a length of a stream, a drop or a tube.
func size(field string, v float64) error {
	return honestplate.InRange(field, v, 1e-6, 10, "m", "from a fine mist to a barrel")
}

// speed checks a speed; a thick liquid out of a needle takes a day for a millimetre.
func speed(field string, v float64) error {
	return honestplate.InRange(field, v, 1e-12, 1e3, "m/s", "from creeping to the speed of sound")
}

// kinematic checks a kinematic viscosity.
func kinematic(nu float64) error {
	return honestplate.InRange("Nu", nu, 1e-9, 1e6, "m2/s", "from thin gases to pitch")
}

// DrippingWeber returns the Weber number rho V2 d/sigma at a downward spout of inner
// diameter inner and outer diameter outer (m) below which the liquid drips and above
// which it leaves as a jet:
//
//	We = 4 (Bo'/Bo) (1 + K Bo Bo' - sqrt((1 + K Bo Bo')^2 - 1))^2
//
// Bo = sqrt(rho g d2/(2 sigma)), Bo' the same of the outer diameter, K = 0.37. Range:
// water-like liquids; it is 4 for the thinnest spouts and below 1 from 4 mm. Source:
// Clanet and Lasheras 1999, "Transition from dripping to jetting", J. Fluid Mech.
// 383, 307 (K and Bo read in the abstract, the bracket from memory; no printed point
// found). A thick liquid drips at a lower rate than this says.
func (f Fluid) DrippingWeber(inner, outer float64) (float64, error) {
	if err := cmp.Or(f.Check(), size("Inner", inner),
		honestplate.InRange("Outer", outer, inner, 20, "m", "a spout's wall has some thickness")); err != nil {
		return 0, err
	}
	k := math.Sqrt(f.Density * physics.Gravity / (2 * f.SurfaceTension))
	x := 0.37 * k * inner * k * outer
	// 1 + x - sqrt(x2 + 2 x), written so that large x loses no digits.
	b := 1 / (1 + x + math.Sqrt(x*(x+2)))
	return 4 * outer / inner * b * b, nil
}
