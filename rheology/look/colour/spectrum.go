package colour

import (
	"fmt"

	"example.org/honestplate"
)

// Samples is the number of wavelengths of a [Spectrum].
const Samples = 81

// A Spectrum is a share of light reflected or let through, 0..1, at 380, 385 .. 780 nm.
type Spectrum [Samples]float64

// Wavelength returns the wavelength in nm of sample i of a [Spectrum].
func Wavelength(i int) float64 { return 380 + 5*float64(i) }

// flat is the spectrum of a grey that reflects the share r at every wavelength.
func flat(r float64) (s Spectrum) {
	for i := range s {
		s[i] = r
	}
	return s
}

// check wants shares, 0..1.
func (s *Spectrum) check(field string) error {
	for i, v := range s {
		if !(v >= 0 && v <= 1) {
			return honestplate.InRange(fmt.Sprintf("%s[%d]", field, i), v, 0, 1, "", "a share of the light")
		}
	}
	return nil
}
