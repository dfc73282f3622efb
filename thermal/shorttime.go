package thermal

import "math"

// While heat has not reached the centre a body is a half-space, but for the
// curvature of its surface. With v the distance below the surface as a share of
// the radius, r = 1 - v, and c = 0, 1/2, 1 for slab, cylinder, sphere,
//
//	1 - theta = r^-c Bi/b [erfc(e) - exp(b v + b^2 Fo) erfc(e + b sqrt Fo)]
//	b = Bi - c,  e = v/(2 sqrt Fo)
//
// exact for sphere and slab up to the part that has come through the centre.
// Derived from the half-space with convection (Carslaw & Jaeger) by the
// substitution w = r^c (1 - theta). For the cylinder that leaves a term w/(4 r^2)
// in the equation, taken in to first order: w + (Fo w - integral of w)/4, good to
// Fo^1.5.

// curvature is c above.
func curvature(form Form) float64 {
	switch form {
	case SlabForm:
		return 0
	case CylinderForm:
		return 0.5
	}
	return 1
}

// warmed returns 1 - theta at x for small fo. The centre of cylinder and sphere,
// where the formula divides by 0, is not reached by any heat.
func warmed(form Form, bi, x, fo float64) float64 {
	c := curvature(form)
	root := math.Sqrt(fo)
	e := (1 - x) / (2 * root)
	if e > 27 {
		return 0 // erfc underflows
	}
	w := halfSpace(bi, bi-c, e, root)
	if form == SlabForm {
		return w + halfSpace(bi, bi, (1+x)/(2*root), root) // from the other face
	}
	// The radius is held at the depth where nothing has arrived yet.
	x = max(x, 0.05)
	if form == SphereForm {
		return w / x
	}
	return (w + (fo*w-elapsed(bi, bi-c, e, root))/4) / math.Sqrt(x)
}

// elapsed is the integral of halfSpace over Fo from 0 (Carslaw & Jaeger).
func elapsed(bi, b, e, root float64) float64 {
	fo, gauss, rest := root*root, math.Exp(-e*e), math.Erfc(e)
	held := fo * ((1+2*e*e)*rest - 2/math.Sqrt(math.Pi)*e*gauss)
	if math.IsInf(bi, 1) {
		return held
	}
	u := b * root
	if math.Abs(u) < 1e-3 {
		// Where it cancels it is a share of w that is too small to matter.
		return fo * halfSpace(bi, b, e, root)
	}
	ierfc := gauss/math.Sqrt(math.Pi) - e*rest
	return bi / b * (held - (gauss*erfcx(e+u)-rest+2*u*ierfc)/(b*b))
}

// halfSpace is Bi/b [erfc(e) - exp(-e^2) erfcx(e + b root)], its limit where b is
// near 0, and erfc(e) where the surface is held.
func halfSpace(bi, b, e, root float64) float64 {
	if e > 27 {
		return 0 // erfc underflows, and below it would be multiplied by infinity
	}
	if math.IsInf(bi, 1) {
		return math.Erfc(e)
	}
	u := b * root
	if math.Abs(u) > 1e-5 {
		return bi / b * (math.Erfc(e) - math.Exp(-e*e)*erfcx(e+u))
	}
	// Two terms of the series in u; the next is below 1e-10.
	g := math.Exp(-e * e)
	first := 2/math.Sqrt(math.Pi)*g - 2*e*math.Erfc(e)
	second := math.Erfc(e)*(1+2*e*e) - 2*e/math.Sqrt(math.Pi)*g
	return bi * root * (first - u*second)
}

// released returns the share of the heat exchanged for small fo:
// (2c+1) Bi times the integral of theta at the surface.
func released(form Form, bi, fo float64) float64 {
	c := curvature(form)
	n, b := 2*c+1, bi-c
	root := math.Sqrt(fo)
	if math.IsInf(bi, 1) {
		return n * (2*root/math.Sqrt(math.Pi) - c*fo)
	}
	u := b * root
	var lost float64 // integral of 1 - theta at the surface
	if math.Abs(u) > 1e-3 {
		lost = bi / b * (fo - (erfcx(u)-1+2*u/math.Sqrt(math.Pi))/(b*b))
	} else {
		lost = bi * fo * root * (4/(3*math.Sqrt(math.Pi)) - u/2 + 8*u*u/(15*math.Sqrt(math.Pi)))
	}
	return n * bi * (fo - lost)
}

// erfcx is exp(x^2) erfc(x), which stays finite where its factors do not.
func erfcx(x float64) float64 {
	if x < 20 {
		return math.Exp(x*x) * math.Erfc(x)
	}
	y := 1 / (x * x)
	return (1 - y/2*(1-1.5*y*(1-2.5*y))) / (x * math.Sqrt(math.Pi))
}
