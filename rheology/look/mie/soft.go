package mie

import "math"

// sphere is Sphere. All is real: each coefficient is p(p + iq)/(p2 + q2), and the functions
// inside the sphere are needed to a factor only, so that a term costs two divisions.
func sphere(m, x float64) Efficiencies {
	root := math.Cbrt(x)
	last := int(x+4.05*root) + 2
	// Up to the order x the outer functions go up by recurrence, beyond it they come down.
	from := int(x)
	room := make([]float64, 2*last+2-from)
	inner, outer := room[:last+1], room[last+1:]
	// The series has ended at last, so that there the functions need no digits: these few
	// orders more give twelve where it counts, as a test against the other way shows.
	downward(inner, 0, max(last, int(m*(x+5*root)))+4, m*x)
	scale := 1 / (math.Abs(inner[0]) + math.Abs(inner[1]))
	downward(outer, from, last+4, x)

	sin, cos := math.Sincos(x)
	psi0, psi1, chi0, chi1 := cos, sin, -sin, cos
	inverse, fit := 1/x, 0.0
	perM := inverse / m
	p0 := inner[0] * scale
	var sca, asym, ra0, ia0, rb0, ib0 float64
	j := 1.0
	for n := 1; n <= last; n++ {
		f := float64(n)
		k := (2*f - 1) * inverse
		psi, chi := k*psi1-psi0, k*chi1-chi0
		if n > from {
			if n == from+1 {
				fit = psi1 / outer[0]
			}
			psi = outer[n-from] * fit
		}
		p := inner[n] * scale
		slope := p0 - f*perM*p
		psiSlope, chiSlope := psi1-f*inverse*psi, chi1-f*inverse*chi
		ms, mp := m*slope, m*p
		pa, qa := mp*psiSlope-psi*slope, mp*chiSlope-chi*slope
		pb, qb := p*psiSlope-psi*ms, p*chiSlope-chi*ms
		na, nb := pa*pa+qa*qa, pb*pb+qb*qb
		both := 1 / (na * nb)
		va, vb := pa*nb*both, pb*na*both
		ra, ia, rb, ib := va*pa, va*qa, vb*pb, vb*qb
		i := j
		j = 1 / (f + 1)
		sca += (2*f + 1) * (ra + rb)
		asym += (f-i)*(ra0*ra+ia0*ia+rb0*rb+ib0*ib) + (i+j)*(ra*rb+ia*ib)
		ra0, ia0, rb0, ib0 = ra, ia, rb, ib
		psi0, psi1, chi0, chi1, p0 = psi1, psi, chi1, chi, p
	}
	q := 2 * sca * inverse * inverse
	if sca == 0 { // a sphere of the liquid's own index
		return Efficiencies{}
	}
	return Efficiencies{Scattering: q, Asymmetry: 2 * asym / sca}
}

// downward fills p with psi of real argument z, to a factor, for the orders from..from+
// len(p)-1, by Miller's recurrence from the order start, where it is as good as 0.
func downward(p []float64, from, start int, z float64) {
	inverse := 1 / z
	last := from + len(p) - 1
	k := float64(2*start+1) * inverse
	step := 2 * inverse
	var before, v float64 = 0, 1e-120
	for n := start; n > last; n-- {
		before, v = v, k*v-before
		k -= step
	}
	f := float64(2*last + 1)
	for i := len(p) - 1; i >= 0; i-- {
		p[i] = v
		before, v = v, f*inverse*v-before
		f -= 2
	}
}
