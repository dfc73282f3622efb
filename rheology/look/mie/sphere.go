package mie

import (
	"cmp"

	"example.org/honestplate"
)

// largestSize is the largest size parameter that [Sphere] takes: a globule of 1 mm in
// visible light. Beyond it, rays and their diffraction say the same for less work.
const largestSize = 20_000

// smallestSize is the least size parameter: below it nothing scatters.
const smallestSize = 1e-3

// Efficiencies say how much light a clear sphere takes out of a beam, in units of its
// shadow's area, and where it goes.
type Efficiencies struct {
	Scattering float64 `json:"scattering"` // scattered, which of a clear sphere is all
	Asymmetry  float64 `json:"asymmetry"`  // mean cosine of the angle of scattering, -1..1
}

// Sphere returns the efficiencies of a clear sphere of relative refractive index m (the
// sphere's over the liquid's) and size parameter x, the circumference over the wavelength in
// the liquid.
//
// Range: m 1..2, x 1e-3..20,000; outside them an error. The sums run to x + 4.05 x^(1/3) + 2
// terms (Wiscombe 1980) and hold nine digits or more.
func Sphere(m, x float64) (Efficiencies, error) {
	if err := cmp.Or(checkIndex(m), honestplate.InRange("x", x, smallestSize, largestSize, "",
		"below it nothing scatters, beyond it use rays")); err != nil {
		return Efficiencies{}, err
	}
	return sphere(m, x), nil
}

func checkIndex(m float64) error {
	return honestplate.InRange("m", m, 1, 2, "", "globules, micelles and their like: denser to light than the liquid")
}
