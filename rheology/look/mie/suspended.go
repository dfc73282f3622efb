package mie

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
)

// Suspended spheres are of one clear substance and many sizes, in a clear liquid.
type Suspended struct {
	Classes []Class `json:"classes"`      // sizes; their shares sum to 1
	Index   float64 `json:"index"`        // refractive index of the spheres at the wavelength
	Liquid  float64 `json:"liquid_index"` // that of the liquid
}

// Coefficients of a suspension, each per unit of the spheres' share of the volume, so
// that a share of 0.04 scatters 0.04 times Scattering.
type Coefficients struct {
	Scattering float64 `json:"scattering_per_m"` // 1/m
	Asymmetry  float64 `json:"asymmetry"`        // mean cosine of the angle of scattering
}

// At returns the coefficients at a wavelength in vacuum, in m: the sums over the classes
// of 3 Q/(4 r), each sphere by itself. Range: 100 nm..100 um, and that of [Sphere]; spheres
// of a size parameter below 1e-3 scatter nothing.
func (s Suspended) At(wavelength float64) (Coefficients, error) {
	if err := cmp.Or(
		honestplate.InRange("wavelength", wavelength, 100e-9, 100e-6, "m", "light that lenses use"),
		honestplate.InRange("Liquid", s.Liquid, 1, 3, "", "refractive indices of liquids"),
		checkClasses(s.Classes),
	); err != nil {
		return Coefficients{}, err
	}
	m := s.Index / s.Liquid
	if err := checkIndex(m); err != nil {
		return Coefficients{}, err
	}
	perRadius := 2 * math.Pi * s.Liquid / wavelength
	var sca, forward float64
	for i, c := range s.Classes {
		x := perRadius * c.Radius
		if x < smallestSize {
			continue
		}
		if x > largestSize {
			return Coefficients{}, &honestplate.RangeError{Field: fmt.Sprintf("Classes[%d].Radius", i),
				Value: c.Radius, High: largestSize / perRadius, Unit: "m", Source: "beyond it use rays"}
		}
		e := sphere(m, x)
		k := 0.75 * c.Share / c.Radius
		sca += k * e.Scattering
		forward += k * e.Scattering * e.Asymmetry
	}
	out := Coefficients{Scattering: sca}
	if sca > 0 {
		out.Asymmetry = forward / sca
	}
	return out, nil
}
