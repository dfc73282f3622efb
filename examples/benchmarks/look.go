package main

import (
	"example.org/honestplate"
	"example.org/honestplate/rheology/look"
	"example.org/honestplate/rheology/look/colour"
)

// milkSpectrum works out what milk of 3.5 % fat is for light over the visible. The answer
// is the mean reduced scattering in 1/mm.
func milkSpectrum(pressure float64) func(int) (float64, error) {
	milk := look.Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(pressure)}
	return func(int) (float64, error) {
		o, err := milk.Optics()
		if err != nil {
			return 0, err
		}
		sum := 0.0
		for i := range colour.Samples {
			c, err := o.At(colour.Wavelength(i))
			if err != nil {
				return 0, err
			}
			sum += c.ReducedScattering.Likely / 1000 / colour.Samples
		}
		return sum, nil
	}
}
