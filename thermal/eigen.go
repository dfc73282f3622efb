package thermal

import "math"

// The eigenvalues of transient conduction with convection at the surface, and the
// factors that go with them.
//
//	slab      z tan z = Bi          c = 4 sin z/(2 z + sin 2z)        mean: sin z/z
//	cylinder  z J1(z)/J0(z) = Bi    c = 2 J1/(z (J0^2 + J1^2))        mean: 2 J1/z
//	sphere    1 - z cot z = Bi      c = 4 (sin z - z cos z)/(2z - sin 2z)  mean: 3 (sin z - z cos z)/z^3
//
// Source: Carslaw & Jaeger, Conduction of Heat in Solids (from memory), checked
// against the printed table of Cengel & Ghajar, Heat and Mass Transfer, Table 4-2.

// eigenvalue returns the n-th root, n = 1, 2 ..., for a Biot number above 0 or
// infinite. It is bracketed by the roots for Bi = 0 and infinity and found by
// Newton steps that may not leave the bracket.
func eigenvalue(form Form, bi float64, n int) float64 {
	if z, ok := smallRoot(form, bi, n); ok {
		return z
	}
	turn := float64(n) * math.Pi
	var lo, hi float64
	switch form {
	case SlabForm:
		lo, hi = turn-math.Pi, turn-math.Pi/2
	case CylinderForm:
		// The zeros of J1 and J0 to 0.02, widened; the next roots are farther off.
		lo, hi = turn-0.85*math.Pi, turn-math.Pi/4+0.1
		if n == 1 {
			lo = 0
		}
	default:
		lo, hi = turn-math.Pi, turn
	}
	if math.IsInf(bi, 1) {
		if form != CylinderForm {
			return hi
		}
		return newton(form, bi, n, hi-0.2, hi)
	}
	return newton(form, bi, n, lo, hi)
}

// smallRoot gives the first root for a Biot number so small that the equation
// cancels: z^2 = (2c+1)... the lumped rate times its first corrections, whose error
// at the limit is below 1e-10 of it.
func smallRoot(form Form, bi float64, n int) (float64, bool) {
	if n > 1 || bi > 1e-4 {
		return 0, false
	}
	switch form {
	case SlabForm:
		return math.Sqrt(bi * (1 - bi/3 + 4*bi*bi/45)), true
	case CylinderForm:
		return math.Sqrt(2 * bi * (1 - bi/4 + bi*bi/24)), true
	}
	return math.Sqrt(3 * bi * (1 - bi/5 - bi*bi/175)), true
}

func newton(form Form, bi float64, n int, lo, hi float64) float64 {
	z := (lo + hi) / 2
	flip := 1.0 // makes the function rise through the root
	if n%2 == 0 {
		flip = -1
	}
	for range 100 {
		f, slope := characteristic(form, bi, z)
		if f*flip < 0 {
			lo = z
		} else {
			hi = z
		}
		next := z - f/slope
		if math.Abs(next-z) <= 4e-15*z {
			return next
		}
		if !(next > lo && next < hi) {
			next = (lo + hi) / 2
		}
		z = next
	}
	return z
}

// characteristic returns a function that is zero at the roots, free of poles, and
// its slope. It rises through the first root, falls through the second and so on.
func characteristic(form Form, bi, z float64) (f, slope float64) {
	a, b := 1.0, bi // a times the flux term, b times the surface term
	if math.IsInf(bi, 1) {
		a, b = 0, 1
	} else if bi > 1 {
		a, b = 1/bi, 1
	}
	switch form {
	case SlabForm:
		s, c := math.Sincos(z)
		return a*z*s - b*c, a*(s+z*c) + b*s
	case CylinderForm:
		j0, j1 := math.J0(z), math.J1(z)
		return a*z*j1 - b*j0, a*z*j0 + b*j1
	default:
		s, c := math.Sincos(z)
		return a*(s-z*c) - b*s, a*z*s - b*c
	}
}

// amplitude returns the factor c of a root and that of its mean over the volume.
func amplitude(form Form, bi, z float64) (c, mean float64) {
	switch form {
	case SlabForm:
		s, cos := math.Sincos(z)
		return 2 * s / (z + s*cos), s / z
	case CylinderForm:
		j0, j1 := math.J0(z), math.J1(z)
		return 2 * j1 / (z * (j0*j0 + j1*j1)), 2 * j1 / z
	}
	s, cos := math.Sincos(z)
	if bi < 1 {
		// sin z - z cos z = Bi sin z at a root; the difference itself cancels.
		d := z*z + (1-bi)*(1-bi)
		return 2 * bi * s * d / (z * (z*z + bi*bi - bi)), 3 * bi * s / (z * z * z)
	}
	d := s - z*cos
	return 2 * d / (z - s*cos), 3 * d / (z * z * z)
}

// mode returns the shape of a root at x, 0 at the centre and 1 at the surface.
func mode(form Form, z, x float64) float64 {
	switch form {
	case SlabForm:
		return math.Cos(z * x)
	case CylinderForm:
		return math.J0(z * x)
	}
	if v := z * x; v > 1e-4 {
		return math.Sin(v) / v
	} else {
		return 1 - v*v/6
	}
}
