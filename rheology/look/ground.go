package look

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
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

// spectrum is the ground's reflectance over the visible, a smooth step.
func (g Ground) spectrum() *colour.Spectrum {
	if g.Blue == g.Red {
		s := colour.Flat(g.Blue)
		return &s
	}
	var s colour.Spectrum
	for i := range s {
		x := ramp(colour.Wavelength(i), 450, 650)
		s[i] = min(1, g.Blue+(g.Red-g.Blue)*math.Sin(x*math.Pi/2)*math.Sin(x*math.Pi/2))
	}
	return &s
}
