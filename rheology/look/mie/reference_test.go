package mie

import (
	"errors"
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"example.org/honestplate/testdata"
)

// An independent way to the same series, for any index, clear or absorbing: by logarithmic
// derivatives in complex numbers. It is held to the tables of its sources, and Sphere to it.

type reference struct{ Extinction, Scattering, Asymmetry float64 }

// general is Sphere for any index.
func general(m complex128, x float64) reference {
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
	return reference{Extinction: 2 * ext / (x * x), Scattering: 2 * sca / (x * x), Asymmetry: 2 * asym / sca}
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
	for n := above(last, z); n >= from; n-- {
		if n <= last {
			d[n-from] = v
		}
		a := float64(n) * inverse
		v = a - 1/(v+a)
	}
}

// terms is the number of terms of the series for size parameter x.
func terms(x float64) int { return int(x+4.05*math.Cbrt(x)) + 2 }

// above is the order at which a downward recurrence for argument size z may start from
// 0, so that the orders up to n are right. |z| + 16 is not enough beyond |z| = 1000.
func above(n int, z float64) int { return max(n, int(z+8*math.Cbrt(z))) + 16 }

// The reference has what Wiscombe and Bohren and Huffman print, absorbing spheres too.
func TestReferenceAgainstPublished(t *testing.T) {
	table, err := testdata.Load("mie_spheres")
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range table.Rows {
		in, err := r.Floats("index_real")
		k, err2 := r.Float("index_imaginary")
		x, err3 := r.Float("size_parameter")
		if err := errors.Join(err, err2, err3); err != nil {
			t.Fatal(err)
		}
		e := general(complex(in[0], k), x)
		for column, got := range map[string]float64{"extinction": e.Extinction, "scattering": e.Scattering, "asymmetry": e.Asymmetry} {
			text := r.Text(column)
			if text == "" {
				continue
			}
			want, err := r.Float(column)
			if err != nil {
				t.Fatal(err)
			}
			_, digits, _ := strings.Cut(text, ".")
			if math.Abs(got-want) > max(1.01*math.Pow(10, -float64(len(digits))), 1e-9*math.Abs(want)) {
				t.Errorf("%s: %s %.12g, want %s", r.Text("case"), column, got, text)
			}
		}
	}
}
