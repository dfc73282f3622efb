package look

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// A Ground is what lies under a liquid, by the share of light that it sends back evenly
// within the liquid: at Blue below 450 nm, at Red above 650 nm, and sliding between. The
// zero value is black.
type Ground struct {
	Blue float64 `json:"blue"` // 0..1
	Red  float64 `json:"red"`  // 0..1
}

// Grounds of a set. White is that of the contrast ratio of paints, 0.8; the others are
// assumed, no source: measure yours, wet, with a grey card beside it.
var (
	Black     = Ground{}
	White     = Ground{0.8, 0.8}
	Flake     = Ground{0.10, 0.55}
	Chocolate = Ground{0.03, 0.09}
)

// check wants shares, 0..1.
func (g Ground) check(field string) error {
	const share = "a share of the light"
	return honestplate.In(field, cmp.Or(honestplate.InRange("Blue", g.Blue, 0, 1, "", share),
		honestplate.InRange("Red", g.Red, 0, 1, "", share)))
}

// at is the ground's reflectance at a wavelength in nm, a smooth step.
func (g Ground) at(nm float64) float64 {
	if g.Blue == g.Red {
		return g.Blue
	}
	x := math.Sin(ramp(nm, 450, 650) * math.Pi / 2)
	return min(1, g.Blue+(g.Red-g.Blue)*x*x)
}
