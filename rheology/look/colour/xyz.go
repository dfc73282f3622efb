package colour

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// XYZ are the CIE's tristimulus values; a perfect white has Y = 100.
type XYZ struct {
	X float64 `json:"x"` // reddish
	Y float64 `json:"y"` // lightness, as a share of light in %
	Z float64 `json:"z"` // bluish
}

// Lab is CIE L*a*b* of 1976: lightness 0..100, green to red, blue to yellow.
type Lab struct {
	L float64 `json:"l"` // L*, lightness
	A float64 `json:"a"` // a*, negative is green, positive red
	B float64 `json:"b"` // b*, negative is blue, positive yellow
}

// check wants a colour that light can have, of a white each value at least 1.
func (c XYZ) check(field string, least float64) error {
	const real = "what light can be"
	return honestplate.In(field, cmp.Or(honestplate.InRange("X", c.X, least, 1e4, "", real),
		honestplate.InRange("Y", c.Y, least, 1e4, "", real), honestplate.InRange("Z", c.Z, least, 1e4, "", real)))
}

// Lab returns the colour in L*a*b*, relative to a white. Source: CIE 15; values of public
// code are compared in examples/published.
func (c XYZ) Lab(white XYZ) (Lab, error) {
	if err := cmp.Or(c.check("XYZ", 0), white.check("white", 1)); err != nil {
		return Lab{}, err
	}
	f := func(t float64) float64 {
		const d = 6.0 / 29
		if t > d*d*d {
			return math.Cbrt(t)
		}
		return t/(3*d*d) + 4.0/29
	}
	x, y, z := f(c.X/white.X), f(c.Y/white.Y), f(c.Z/white.Z)
	return Lab{L: float64(116*y) - 16, A: 500 * (x - y), B: 200 * (y - z)}, nil
}
