package law

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
)

// The prefactors of Huppert's two laws.
const (
	releasedFactor = 0.89391 // (1024/(81 pi3))^(1/8)
	fedFactor      = 0.71502
)

// ReleasedPuddle returns the radius in m, t seconds after it was let go, of a volume V
// (m3) of liquid of kinematic viscosity nu (m2/s) that spreads over a level plate by its
// weight against its viscosity:
//
//	R = 0.894 (g V3/(3 nu))^(1/8) t^(1/8)
//
// The prefactor is exact, (1024/(81 pi3))^(1/8). Range: after inertia and before surface
// tension or a yield stress; a pour's puddle looks after both. Source: Huppert
// 1982, "The propagation of two-dimensional and axisymmetric viscous gravity currents
// over a rigid horizontal surface", J. Fluid Mech. 121, 43 (0.894 from memory, derived
// again).
func ReleasedPuddle(volume, nu, t float64) (float64, error) {
	if err := spreads("Volume", volume, "m3", nu, t); err != nil {
		return 0, err
	}
	return releasedFactor * math.Pow(physics.Gravity*volume*volume*volume*t/(3*nu), 0.125), nil
}

// FedPuddle returns the same for a puddle fed at a steady rate Q (m3/s) at its middle:
//
//	R = 0.715 (g Q3/(3 nu))^(1/8) t^(1/2)
//
// Range and source as for [ReleasedPuddle] (0.715 from memory; 0.71502 by
// integrating Huppert's similarity equation). On a plate that slopes by 2.5 degrees the
// half width of a fed spill still follows it within 10 % for two minutes (Lister 1992).
func FedPuddle(rate, nu, t float64) (float64, error) {
	if err := spreads("Rate", rate, "m3/s", nu, t); err != nil {
		return 0, err
	}
	return fedFactor * math.Pow(physics.Gravity*rate*rate*rate/(3*nu), 0.125) * math.Sqrt(t), nil
}

func spreads(field string, v float64, unit string, nu, t float64) error {
	return cmp.Or(honestplate.InRange(field, v, 1e-18, 1e6, unit, "from a fine drop to a lake"), kinematic(nu),
		honestplate.InRange("T", t, 0, 1e9, "s", "thirty years"))
}
