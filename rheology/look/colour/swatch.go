package colour

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
)

// A Swatch is a colour for a screen, in sRGB.
type Swatch struct {
	R uint8 `json:"r"` // red, 0..255
	G uint8 `json:"g"` // green
	B uint8 `json:"b"` // blue
	// Shown is false where the screen cannot show the colour: then the nearest edge of
	// each primary stands.
	Shown bool `json:"shown"`
}

// Hex writes the swatch as the web does: "#fdfbf2".
func (s Swatch) Hex() string { return fmt.Sprintf("#%02x%02x%02x", s.R, s.G, s.B) }

// Swatch returns the colour for a screen, adapted from the light's white to that of the
// screen, D65, by Bradford's method: a white stays white. Sources: IEC 61966-2-1 and
// Bradford's matrix (Lam 1985), both from memory; a test holds them to their definitions.
func (c XYZ) Swatch(white XYZ) (Swatch, error) {
	if err := cmp.Or(c.check("XYZ", 0), white.check("white", 1)); err != nil {
		return Swatch{}, err
	}
	screen := XYZ{95.047, 100, 108.883}
	x1, y1, z1 := cone(c)
	xw, yw, zw := cone(white)
	xs, ys, zs := cone(screen)
	if !(xw > 0 && yw > 0 && zw > 0) {
		return Swatch{}, &honestplate.InputError{Field: "white", Got: fmt.Sprint(white), Want: "the white of a light"}
	}
	x1, y1, z1 = x1*xs/xw, y1*ys/yw, z1*zs/zw
	x := 0.9869929*x1 - 0.1470543*y1 + 0.1599627*z1
	y := 0.4323053*x1 + 0.5183603*y1 + 0.0492912*z1
	z := -0.0085287*x1 + 0.0400428*y1 + 0.9684867*z1
	s := Swatch{Shown: true}
	channel := func(linear float64) uint8 {
		v := 12.92 * linear
		if linear > 0.0031308 {
			v = 1.055*math.Pow(linear, 1/2.4) - 0.055
		}
		// A rounded hex digit is no reason to call a white impossible.
		if v < -0.002 || v > 1.002 {
			s.Shown = false
		}
		return uint8(math.Floor(255*min(1, max(0, v)) + 0.5))
	}
	s.R = channel((3.2404542*x - 1.5371385*y - 0.4985314*z) / 100)
	s.G = channel((-0.9692660*x + 1.8760108*y + 0.0415560*z) / 100)
	s.B = channel((0.0556434*x - 0.2040259*y + 1.0572252*z) / 100)
	return s, nil
}

// cone returns the responses in which Bradford's method adapts.
func cone(c XYZ) (l, m, s float64) {
	l = 0.8951*c.X + 0.2664*c.Y - 0.1614*c.Z
	m = -0.7502*c.X + 1.7135*c.Y + 0.0367*c.Z
	s = 0.0389*c.X - 0.0685*c.Y + 1.0296*c.Z
	return l, m, s
}
