package law

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
)

// A Tube is a long round tube through which a vessel empties.
type Tube struct {
	Bore   float64 `json:"bore_m"`   // inside diameter, m
	Length float64 `json:"length_m"` // m
}

// Time returns the time in s in which the head over the tube's mouth falls from h1 to h2
// (m) under a surface area A (m2), with a kinematic viscosity nu (m2/s):
//
//	t = 128 nu L A/(pi g D4) ln(h1/h2)
//
// Range: laminar (Re below 2000) and L much above D; velocity heads neglected. For a
// tube that points down, both heads contain L. Source: Bird, Stewart and Lightfoot,
// Transport Phenomena, Problem 7B.9 (vertical tube); Schaschke, Fluid Mechanics: Worked
// Examples for Engineers, Ex 6.10 (level). h2 must be above 0, for the last drop takes
// for ever.
func (t Tube) Time(nu, area, h1, h2 float64) (float64, error) {
	if err := cmp.Or(kinematic(nu), size("Bore", t.Bore),
		honestplate.InRange("Length", t.Length, 1e-6, 1e6, "m", "from a hole to a pipeline"),
		honestplate.InRange("Area", area, 1e-9, 1e9, "m2", "from a needle to a lake"),
		honestplate.InRange("H1", h1, 1e-9, 1e6, "m", "from a film to a mountain"),
		honestplate.Positive("H2", h2, "m")); err != nil {
		return 0, err
	}
	if h2 > h1 {
		return 0, check.Input("H2", h2, "m", "at most the first head, H1")
	}
	d2 := t.Bore * t.Bore
	s := 128 * nu * t.Length * area / (math.Pi * physics.Gravity * d2 * d2) * math.Log(h1/h2)
	return s, honestplate.Finite("Time", s, "s")
}
