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

// check wants a colour that light can have.
func (c XYZ) check(field string) error {
	const real = "what light can be"
	return honestplate.In(field, cmp.Or(honestplate.InRange("X", c.X, 0, 1e4, "", real),
		honestplate.InRange("Y", c.Y, 0, 1e4, "", real), honestplate.InRange("Z", c.Z, 0, 1e4, "", real)))
}

// checkWhite wants a white to be relative to.
func checkWhite(white XYZ) error {
	const real = "the white of a light"
	return honestplate.In("white", cmp.Or(honestplate.InRange("X", white.X, 1, 1e4, "", real),
		honestplate.InRange("Y", white.Y, 1, 1e4, "", real), honestplate.InRange("Z", white.Z, 1, 1e4, "", real)))
}

// Lab returns the colour in L*a*b*, relative to a white. Source: CIE 15; values of public
// code are compared in examples/published.
func (c XYZ) Lab(white XYZ) (Lab, error) {
	if err := cmp.Or(c.check("XYZ"), checkWhite(white)); err != nil {
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

// Whiteness is that of Judd and Wyszecki 1963, the index of dairy papers: 100 less the
// distance to a perfect white. The formula as read in Hirschler, chapter 10, equation 10.1.
func (c Lab) Whiteness() float64 {
	return 100 - math.Sqrt((100-c.L)*(100-c.L)+c.A*c.A+c.B*c.B)
}

// Hunter is the L, a, b of Hunter 1948, which older colorimeters show. Its L is not L*:
// milk of Hunter 81 has L* 84.8.
type Hunter struct {
	L float64 `json:"l"` // lightness, the root of Y
	A float64 `json:"a"` // negative is green, positive red
	B float64 `json:"b"` // negative is blue, positive yellow
}

// hunterConstants follow from the white by Hunter's factors; for C they are the 175
// and 70 of the definition.
func hunterConstants(white XYZ) (ka, kb float64) {
	return 175 * math.Sqrt(white.X/98.043), 70 * math.Sqrt(white.Z/118.115)
}

// Hunter returns the colour on Hunter's scale, relative to a white. Source: values of
// public code, compared in examples/published; the white of C is from memory.
func (c XYZ) Hunter(white XYZ) (Hunter, error) {
	if err := cmp.Or(c.check("XYZ"), checkWhite(white)); err != nil {
		return Hunter{}, err
	}
	if c.Y == 0 {
		return Hunter{}, &honestplate.InputError{Field: "XYZ.Y", Got: "0", Want: "light: the scale has no black"}
	}
	ka, kb := hunterConstants(white)
	y := c.Y / white.Y
	root := math.Sqrt(y)
	return Hunter{L: 100 * root, A: ka * (c.X/white.X - y) / root, B: kb * (y - c.Z/white.Z) / root}, nil
}

// XYZ returns the colour that the reading stands for, relative to the white of the
// reading. It undoes [XYZ.Hunter].
func (h Hunter) XYZ(white XYZ) (XYZ, error) {
	if err := cmp.Or(checkWhite(white), honestplate.InRange("Hunter.L", h.L, 0.1, 200, "", "Hunter's scale"),
		honestplate.Finite("Hunter.A", h.A, ""), honestplate.Finite("Hunter.B", h.B, "")); err != nil {
		return XYZ{}, err
	}
	ka, kb := hunterConstants(white)
	root := h.L / 100
	y := root * root
	c := XYZ{X: white.X * (y + h.A*root/ka), Y: white.Y * y, Z: white.Z * (y - h.B*root/kb)}
	return c, c.check("XYZ")
}
