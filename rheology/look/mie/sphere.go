package mie

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// largestSize is the largest size parameter that [Sphere] takes: a globule of 1 mm in
// visible light. Beyond it, rays and their diffraction say the same for less work.
const largestSize = 20_000

// smallestSize is the least size parameter: below it nothing scatters.
const smallestSize = 1e-3

// Efficiencies say how much light a sphere takes out of a beam, in units of its
// shadow's area, and where the scattered light goes.
type Efficiencies struct {
	Extinction float64 `json:"extinction"` // scattered and absorbed
	Scattering float64 `json:"scattering"` // scattered
	Asymmetry  float64 `json:"asymmetry"`  // mean cosine of the angle of scattering, -1..1
}

// Sphere returns the efficiencies of a sphere of relative refractive index m (the
// sphere's over the liquid's; an absorbing sphere has a positive imaginary part) and size
// parameter x, the circumference over the wavelength in the liquid.
//
// Range: real part of m 0.1..20, imaginary part 0..20, x 1e-3..20,000; outside
// them an error. The sums run to x + 4.05 x^(1/3) + 2 terms (Wiscombe 1980) and hold nine
// digits or more.
func Sphere(m complex128, x float64) (Efficiencies, error) {
	if err := cmp.Or(checkIndex(m), honestplate.InRange("x", x, smallestSize, largestSize, "",
		"below it nothing scatters, beyond it use rays")); err != nil {
		return Efficiencies{}, err
	}
	return sphere(m, x), nil
}

func checkIndex(m complex128) error {
	const tried = "the range over which the sums were tried"
	return cmp.Or(honestplate.InRange("m, its real part", real(m), 0.1, 20, "", tried),
		honestplate.InRange("m, its imaginary part", imag(m), 0, 20, "", tried))
}

func sphere(m complex128, x float64) Efficiencies {
	if imag(m) != 0 || real(m) < 1 || real(m) > 2 {
		return general(m, x)
	}
	if x < 16 {
		var room [64]float64
		return soft(real(m), x, room[:])
	}
	var room [1024]float64
	return soft(real(m), x, room[:])
}

// terms is the number of terms of the series for size parameter x.
func terms(x float64) int { return int(x+4.05*math.Cbrt(x)) + 2 }

// above is the order at which a downward recurrence for argument size z may start from
// 0, so that the orders up to n are right. |z| + 16 is not enough beyond |z| = 1000.
func above(n int, z float64) int { return max(n, int(z+8*math.Cbrt(z))) + 16 }

// space returns n numbers, from room if it has them.
func space(room []float64, n int) []float64 {
	if n <= len(room) {
		return room[:n]
	}
	return make([]float64, n)
}
