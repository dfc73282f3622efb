package rheology

import (
	"math"

	"example.org/honestplate"
)

// DropTerminalSpeed returns the speed in m/s at which a water drop of diameter d (m)
// falls steadily through still air at 20 degC and 1013 hPa:
//
//	V = 9.65 - 10.3 exp(-0.6 d),  d in mm
//
// Range 0.6 to 5.8 mm, within 1.8 % of Gunn and Kinzer's table there; the formula is
// negative below 0.11 mm. Source: Atlas, Srivastava and Sekhon 1973, fitted to Gunn
// and Kinzer 1949, "The terminal velocity of fall for water droplets in stagnant
// air" (table read in a copy). RangeError outside.
func DropTerminalSpeed(d float64) (float64, error) {
	if err := honestplate.InRange("drop diameter", d, 0.6e-3, 5.8e-3, "m", "Gunn and Kinzer 1949"); err != nil {
		return 0, err
	}
	return atlas(d), nil
}

func atlas(d float64) float64 { return 9.65 - 10.3*math.Exp(-600*d) }

// dropSpeed returns the speed of a drop after a fall from speed v0, with the drag
// that gives it its terminal speed, taken as square in the speed: the drops of a
// dripping spout are 3 to 8 mm, where it nearly is. Beyond the range of
// DropTerminalSpeed the nearest end is taken: large drops fall at the same 9 m/s.
func dropSpeed(d, fall, v0 float64) float64 {
	t := atlas(min(max(d, 0.6e-3), 5.8e-3))
	t2 := t * t
	return math.Sqrt(t2 + (v0*v0-t2)*math.Exp(-2*standardGravity*fall/t2))
}

// DropFromSpout returns the diameter in m of the drops that fall slowly from a
// downward spout of outer diameter d (m), up to the width that a drop still wets
// whole:
//
//	V = pi d sigma f/(rho g)
//
// f is the fraction of the hanging drop that falls. Range: d from 0.1 to 15 mm; f
// from 0.60 to 0.73. Accuracy about 3 % in the diameter. Source: Tate's law with
// the factor of Harkins and Brown 1919, "The determination of surface tension and
// the weight of falling drops" (factors recalled from memory; 0.60 to 0.65 for
// ordinary tips read). RangeError outside.
func DropFromSpout(d, rho, sigma float64) (float64, error) {
	if err := positiveAll(1, rho, sigma); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("outer diameter", d, 1e-4, 0.015, "m", "drops that wet a whole tip"); err != nil {
		return 0, err
	}
	return pendantDrop(d, rho, sigma), nil
}

// pendantDrop solves Tate's law with Harkins and Brown's factor by iteration.
func pendantDrop(d, rho, sigma float64) float64 {
	v := math.Pi * d * sigma * 0.62 / (rho * standardGravity)
	for range 20 {
		next := math.Pi * d * sigma * harkinsBrown(d/2/math.Cbrt(v)) / (rho * standardGravity)
		if math.Abs(next-v) < 1e-9*v {
			break
		}
		v = next
	}
	return math.Cbrt(6 * v / math.Pi)
}

// DropWeightFactor returns the fraction of a hanging drop that falls, f of Tate's law,
// by x = r/V^(1/3), the tip's outer radius over the cube root of the fallen volume:
// a cubic through the table, within 0.3 %. Range 0.3 to 1.2, RangeError outside.
// Source: Harkins and Brown 1919 (table recalled from memory).
func DropWeightFactor(x float64) (float64, error) {
	if err := honestplate.InRange("tip radius over drop size", x, 0.3, 1.2, "", "Harkins and Brown 1919"); err != nil {
		return 0, err
	}
	return harkinsBrown(x), nil
}

// harkinsBrown holds the end values outside the range.
func harkinsBrown(x float64) float64 {
	x = min(max(x, 0.3), 1.2)
	return hb0 + x*(hb1+x*(hb2+x*hb3))
}

// The cubic's coefficients, by least squares on the table.
const hb0, hb1, hb2, hb3 = 0.89264109, -0.67109900, 0.35882279, 0.02920537
