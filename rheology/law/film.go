package law

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
)

// landauLevichFactor is the prefactor of [Fluid.DraggedFilm].
const landauLevichFactor = 0.9458

// DraggedFilm returns the thickness in m of the film that a wall carries out of a
// liquid, or that a level falling at the speed U (m/s) leaves on it:
//
//	h = 0.9458 lc Ca^(2/3),  lc = sqrt(sigma/(rho g)),  Ca = eta U/sigma
//
// Written with Ca^(1/6) the length is sqrt(eta U/(rho g)), not lc: a common slip.
// Accuracy: exact as Ca goes to 0, some 10 % at Ca = 0.01 (from memory). Source: Landau
// and Levich 1942, "Dragging of a liquid by a moving plate"; the factor 0.94 read in a
// secondary page, 0.9458 from memory. At large Ca, where gravity drains the film as fast
// as it is laid, it is the mean of Jeffreys' draining film over the wall, 2/3 sqrt(nu
// U/g). The two meet at Ca = 0.12; the join is ours.
func (f Fluid) DraggedFilm(u float64) (float64, error) {
	if err := cmp.Or(f.Check(), honestplate.InRange("Speed", u, 0, 1e9, "m/s", "finite")); err != nil {
		return 0, err
	}
	ca := f.Viscosity * u / f.SurfaceTension
	return math.Sqrt(f.Viscosity*u/(f.Density*physics.Gravity)) * min(2.0/3, landauLevichFactor*math.Pow(ca, 1.0/6)), nil
}
