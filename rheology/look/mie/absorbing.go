package mie

import "math/cmplx"

// absorbing is Sphere for a complex index.
func absorbing(m complex128, x float64) Efficiencies {
	last := terms(x)
	inner := make([]complex128, last)
	complexLogDerivatives(inner, m*complex(x, 0))
	from := int(x) + 1
	outer := make([]float64, max(0, last-from+1))
	logDerivatives(outer, from, x)
	r := newRiccati(x, outer, from)
	var ext, sca, asym float64
	var a0, b0 complex128
	for n := 1; n <= last; n++ {
		psi, before, chi, chiBefore := r.next(n)
		f := float64(n)
		d, o := inner[n-1], complex(f/x, 0)
		ea, eb := d/m+o, d*m+o
		var pa, pb complex128
		if n >= from {
			// psi before = psi (outer + n/x): the difference without its lost digits.
			u := complex(outer[n-from], 0)
			pa, pb = complex(psi, 0)*(d/m-u), complex(psi, 0)*(d*m-u)
		} else {
			pa, pb = ea*complex(psi, 0)-complex(before, 0), eb*complex(psi, 0)-complex(before, 0)
		}
		qa := ea*complex(chi, 0) - complex(chiBefore, 0)
		qb := eb*complex(chi, 0) - complex(chiBefore, 0)
		a, b := pa/(pa-1i*qa), pb/(pb-1i*qb)
		ext += (2*f + 1) * real(a+b)
		sca += (2*f + 1) * (square(a) + square(b))
		asym += (f - 1) * (f + 1) / f * real(a0*cmplx.Conj(a)+b0*cmplx.Conj(b))
		asym += (2*f + 1) / (f * (f + 1)) * real(a*cmplx.Conj(b))
		a0, b0 = a, b
	}
	return Efficiencies{Extinction: 2 * ext / (x * x), Scattering: 2 * sca / (x * x), Asymmetry: 2 * asym / sca}
}

func square(z complex128) float64 { return real(z)*real(z) + imag(z)*imag(z) }

// complexLogDerivatives fills d with the logarithmic derivatives of psi of complex
// argument z for the orders 1..len(d).
func complexLogDerivatives(d []complex128, z complex128) {
	inverse := 1 / z
	var v complex128
	for n := above(len(d), cmplx.Abs(z)); n > 0; n-- {
		if n <= len(d) {
			d[n-1] = v
		}
		a := complex(float64(n), 0) * inverse
		v = a - 1/(v+a)
	}
}
