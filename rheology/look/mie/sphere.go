package mie

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// LargestSize is the largest size parameter that [Sphere] takes: a globule of 1 mm in
// visible light. Beyond it, rays and their diffraction say the same for less work.
const LargestSize = 20_000

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
// Range: real part of m 0.1..20, imaginary part 0..20, x 1e-3..[LargestSize]; outside
// them an error. The sums run to x + 4.05 x^(1/3) + 2 terms (Wiscombe 1980) and hold six
// digits or more.
func Sphere(m complex128, x float64) (Efficiencies, error) {
	const tried = "the range over which the sums were tried"
	if err := cmp.Or(
		honestplate.InRange("m, its real part", real(m), 0.1, 20, "", tried),
		honestplate.InRange("m, its imaginary part", imag(m), 0, 20, "", tried),
		honestplate.InRange("x", x, 1e-3, LargestSize, "", "below it nothing scatters, beyond it use rays"),
	); err != nil {
		return Efficiencies{}, err
	}
	if imag(m) != 0 {
		return absorbing(m, x), nil
	}
	if x < 16 {
		var room [64]float64
		return clear(real(m), x, room[:]), nil
	}
	var room [1024]float64
	return clear(real(m), x, room[:]), nil
}

// terms is the number of terms of the series for size parameter x.
func terms(x float64) int { return int(x+4.05*math.Cbrt(x)) + 2 }

// above is the order at which a downward recurrence for argument size z may start from
// 0, so that the orders up to n are right. |z| + 16 is not enough beyond |z| = 1000.
func above(n int, z float64) int { return max(n, int(z+8*math.Cbrt(z))) + 16 }

// A riccati steps through the Riccati-Bessel functions of real argument x:
// psi = x j, regular, and chi = -x y. Psi goes up by recurrence while the order is below x,
// and by its logarithmic derivative, which was found downward, beyond.
type riccati struct {
	x          float64
	psi0, psi1 float64 // of the last order and the one before
	chi0, chi1 float64
	d          []float64 // logarithmic derivatives of psi from order from on
	from       int
}

func newRiccati(x float64, d []float64, from int) riccati {
	s, c := math.Sincos(x)
	return riccati{x: x, psi0: c, psi1: s, chi0: -s, chi1: c, d: d, from: from}
}

// next goes on to order n and returns psi, chi of it and of the one before.
func (r *riccati) next(n int) (psi, psiBefore, chi, chiBefore float64) {
	k := float64(2*n-1) / r.x
	if n >= r.from {
		psi = r.psi1 / (r.d[n-r.from] + float64(n)/r.x)
	} else {
		psi = float64(k*r.psi1) - r.psi0
	}
	chi = float64(k*r.chi1) - r.chi0
	r.psi0, r.psi1 = r.psi1, psi
	r.chi0, r.chi1 = r.chi1, chi
	return psi, r.psi0, chi, r.chi0
}

// logDerivatives fills d with the logarithmic derivatives psi'/psi of real argument z for
// the orders from..from+len(d)-1.
func logDerivatives(d []float64, from int, z float64) {
	inverse := 1 / z
	last := from + len(d) - 1
	v := 0.0
	for n := above(last, z); n > last; n-- {
		a := float64(n) * inverse
		v = a - 1/(v+a)
	}
	for n := last; n >= from; n-- {
		d[n-from] = v
		a := float64(n) * inverse
		v = a - 1/(v+a)
	}
}

// clear is Sphere for a sphere that absorbs nothing: then each coefficient is
// p(p - iq)/(p2 + q2) with real p and q, and extinction is scattering. It works in room
// as far as that goes.
func clear(m, x float64, room []float64) Efficiencies {
	last := terms(x)
	inner := space(room[:len(room)/2], last)
	logDerivatives(inner, 1, m*x)
	from := int(x) + 1
	outer := space(room[len(room)/2:], max(0, last-from+1))
	logDerivatives(outer, from, x)
	r := newRiccati(x, outer, from)
	var sca, asym, ra0, ia0, rb0, ib0 float64
	inverse := 1 / x
	for n := 1; n <= last; n++ {
		psi, before, chi, chiBefore := r.next(n)
		f := float64(n)
		d, o := inner[n-1], f*inverse
		ea, eb := d/m+o, d*m+o
		var pa, pb float64
		if n >= from {
			// psi before = psi (outer + n/x): the difference without its lost digits.
			pa, pb = psi*(d/m-outer[n-from]), psi*(d*m-outer[n-from])
		} else {
			pa, pb = ea*psi-before, eb*psi-before
		}
		qa, qb := ea*chi-chiBefore, eb*chi-chiBefore
		na, nb := pa*pa+qa*qa, pb*pb+qb*qb
		both := 1 / (na * nb)
		va, vb := pa*nb*both, pb*na*both
		if both == 0 || math.IsInf(both, 0) {
			va, vb = pa/na, pb/nb
		}
		ra, ia, rb, ib := va*pa, va*qa, vb*pb, vb*qb
		sca += (2*f + 1) * (ra + rb)
		asym += (f - 1) * (f + 1) / f * (ra0*ra + ia0*ia + rb0*rb + ib0*ib)
		asym += (2*f + 1) / (f * (f + 1)) * (ra*rb + ia*ib)
		ra0, ia0, rb0, ib0 = ra, ia, rb, ib
	}
	q := 2 * sca * inverse * inverse
	return Efficiencies{Extinction: q, Scattering: q, Asymmetry: 2 * asym / sca}
}

// space returns n numbers, from room if it has them.
func space(room []float64, n int) []float64 {
	if n <= len(room) {
		return room[:n]
	}
	return make([]float64, n)
}
