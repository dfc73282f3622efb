package law

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
)

// The sizes between which [TerminalSpeed] holds, m.
const smallestDrop, largestDrop = 0.6e-3, 5.8e-3

// TerminalSpeed returns the speed in m/s at which a water drop of diameter d (m)
// falls steadily through still air at 20 degC and 1013 hPa:
//
//	V = 9.65 - 10.3 exp(-0.6 d),  d in mm
//
// Range 0.6 to 5.8 mm, within 1.8 % of Gunn and Kinzer's table there; the formula is
// negative below 0.11 mm. Source: Atlas, Srivastava and Sekhon 1973, fitted to Gunn
// and Kinzer 1949, "The terminal velocity of fall for water droplets in stagnant
// air" (table read in a copy). RangeError outside.
func TerminalSpeed(d float64) (float64, error) {
	if err := honestplate.InRange("Diameter", d, smallestDrop, largestDrop, "m", "Gunn and Kinzer 1949"); err != nil {
		return 0, err
	}
	return 9.65 - 10.3*math.Exp(-600*d), nil
}

// PendantDrop returns the diameter in m of the drops that fall slowly from a downward
// spout of outer diameter outer (m), up to the width that a drop still wets whole:
//
//	V = pi d sigma f/(rho g)
//
// f is the fraction of the hanging drop that falls. Range: d from 0.1 to 15 mm; f
// from 0.60 to 0.73. Accuracy about 3 % in the diameter. Source: Tate's law with
// the factor of Harkins and Brown 1919, "The determination of surface tension and
// the weight of falling drops" (factors recalled from memory; 0.60 to 0.65 for
// ordinary tips read). RangeError outside.
func (f Fluid) PendantDrop(outer float64) (float64, error) {
	if err := cmp.Or(f.Check(), honestplate.InRange("Outer", outer, 1e-4, 0.015, "m", "drops that wet a whole tip")); err != nil {
		return 0, err
	}
	whole := math.Pi * outer * f.SurfaceTension / (f.Density * physics.Gravity)
	v, err := root.Settle(0.62*whole, func(v float64) (float64, error) {
		return whole * fallingShare(outer/2/math.Cbrt(v)), nil
	})
	return math.Cbrt(6 * v / math.Pi), err
}

// fallingShare returns the fraction of a hanging drop that falls, f of Tate's law, by x =
// r/V^(1/3), the tip's outer radius over the cube root of the fallen volume: a cubic
// through the table of Harkins and Brown 1919 (recalled from memory) from 0.3 to 1.2,
// within 0.3 %, with its end values outside.
func fallingShare(x float64) float64 {
	x = min(max(x, 0.3), 1.2)
	return hb0 + x*(hb1+x*(hb2+x*hb3))
}

// The cubic's coefficients, by least squares on the table.
const hb0, hb1, hb2, hb3 = 0.89264109, -0.67109900, 0.35882279, 0.02920537
