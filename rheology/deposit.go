package rheology

import (
	"math"

	"example.org/honestplate"
)

// DepositFront returns the distance in m from the front at which a deposit that stopped
// on a slope is h deep, for a liquid of yield stress tau (Pa) and density rho (kg/m3) on
// a plane that falls by degrees:
//
//	x = (tau cos b/(rho g sin2 b)) (-H - ln(1 - H)),  H = rho g h sin b/tau
//
// and on a level plane x = rho g h2/(2 tau). Range: 0 to 60 degrees, H below 1: deeper
// than tau/(rho g sin b) the deposit would still run (RangeError). Source: Coussot, Proust
// and Ancey 1996, "Rheological interpretation of deposits of yield stress fluids" (as read
// in the tests of public code, whose values this gives).
func DepositFront(tau, rho, degrees, h float64) (float64, error) {
	if err := honestplate.InRange("yield stress", tau, 1e-6, 1e6, "Pa", "a liquid that stands"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("density", rho, 1, 3e4, "kg/m3", "a liquid"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("slope", degrees, 0, 60, "degrees", "Coussot and others 1996"); err != nil {
		return 0, err
	}
	b := degrees * math.Pi / 180
	scale := rho * standardGravity * math.Sin(b) / tau
	deepest := math.MaxFloat64
	if scale > 0 {
		deepest = 0.999999 / scale
	}
	if err := honestplate.InRange("depth", h, 0, min(deepest, 1e3), "m", "what the yield stress holds"); err != nil {
		return 0, err
	}
	x := scale * h
	if x < 1e-4 {
		// -x - ln(1 - x) = x2/2 + x3/3: the digits that the difference would lose.
		return rho * standardGravity * h * h * math.Cos(b) / tau * (0.5 + x/3), nil
	}
	return tau * math.Cos(b) / (rho * standardGravity * math.Sin(b) * math.Sin(b)) * (-x - math.Log1p(-x)), nil
}

// StandingFilm returns the thickness in m of the layer that a yield stress keeps on a
// wall that leans by degrees from level (90 is upright): h = tau/(rho g sin b). Range: 1
// to 90 degrees. A coat that sets while it drains stays thicker: chocolate of 1.9 to 15
// Pa enrobes to 1.1 to 2.7 mm (Wichchukit 2005, abstract), where this says 0.15 to 1.2.
// Source: as for DepositFront.
func StandingFilm(tau, rho, degrees float64) (float64, error) {
	if err := honestplate.InRange("yield stress", tau, 0, 1e6, "Pa", "a liquid that stands"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("density", rho, 1, 3e4, "kg/m3", "a liquid"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("slope", degrees, 1, 90, "degrees", "a wall"); err != nil {
		return 0, err
	}
	return tau / (rho * standardGravity * math.Sin(degrees*math.Pi/180)), nil
}
