package layer

import "math"

// double returns what a slab without surfaces does to the radiance that falls on it: r
// sends it back, t lets it through. Both act on radiance by direction.
//
// The peak that a sharp phase function throws straight on is counted as not scattered
// (delta-M, Wiscombe 1977). The first layer is solved by a rational form of the hyperbolic
// tangent that its two-sided solution is; each doubling puts two layers together.
func double(a *angles, albedo, depth, asymmetry float64) (r, t matrix) {
	if depth == 0 {
		return r, identity()
	}
	peak := math.Pow(math.Abs(asymmetry), orders)
	if asymmetry < 0 {
		peak = 0
	}
	depth *= 1 - albedo*peak
	single := albedo * (1 - peak) / (1 - albedo*peak)
	if albedo*peak == 1 {
		return r, identity()
	}
	const thinnest = 0.03
	endless := math.IsInf(depth, 1)
	doublings := 0
	if endless {
		depth = thinnest
	}
	for depth > thinnest {
		depth /= 2
		doublings++
	}
	r, t = thin(a, single, depth, asymmetry, peak)
	for i := 0; endless || i < doublings; i++ {
		r, t = twice(&r, &t)
		// What comes back from below a layer that lets a millionth through is a millionth
		// of a millionth.
		if faint(&t) || endless && i >= 45 {
			return r, matrix{}
		}
	}
	return r, t
}

// faint reports that nothing to speak of gets through.
func faint(t *matrix) bool {
	for i := range t {
		for j := range t[i] {
			if math.Abs(t[i][j]) > 1e-6 {
				return false
			}
		}
	}
	return true
}

// twice puts two equal layers on each other: light that goes to and fro between them is
// (1 - rr)^-1.
func twice(r, t *matrix) (r2, t2 matrix) {
	var rr, between, back matrix
	rr.times(r, r)
	one := identity()
	open := one.plus(-1, &rr)
	between.under(&open, t)
	t2.times(t, &between)
	back.times(r, &between)
	r2.times(t, &back)
	return r.plus(1, &r2), t2
}

// thin solves the first layer. With y and x the generators of the difference and of the
// sum of up and down, sum and difference of t and r are (1 - z)/(1 + z), z being
// tanh(sqrt(yx) h) as it acts; h is half the depth.
func thin(a *angles, albedo, depth, asymmetry, peak float64) (r, t matrix) {
	var x, y matrix
	for i := range x {
		for j := range x[i] {
			// Even orders of the phase function drive the sum, odd ones the difference.
			even, odd, power := 0.0, 0.0, 1.0
			for l := range orders {
				term := float64(2*l+1) * (power - peak) / (1 - peak) * a.legends[l][i] * a.legends[l][j]
				if l%2 == 0 {
					even += term
				} else {
					odd += term
				}
				power *= asymmetry
			}
			k := albedo * a.weight[j] / a.mu[i]
			x[i][j], y[i][j] = -k*odd, -k*even
		}
		x[i][i] += 1 / a.mu[i]
		y[i][i] += 1 / a.mu[i]
	}
	h := depth / 2
	sum, difference := cayley(&y, &x, h), cayley(&x, &y, h)
	half := matrix{}
	half = half.plus(0.5, &sum)
	return half.plus(-0.5, &difference), half.plus(0.5, &difference)
}

// cayley returns (1 - z)/(1 + z) for z = hy (15 + w)/(15 + 6w), w = h2 xy.
func cayley(y, x *matrix, h float64) (out matrix) {
	var w, z, q matrix
	w.times(x, y)
	one := identity()
	top, bottom := matrix{}, matrix{}
	top = top.plus(15, &one)
	bottom = top
	top, bottom = top.plus(h*h, &w), bottom.plus(6*h*h, &w)
	q.under(&bottom, &top)
	z.times(y, &q)
	plus, minus := one.plus(h, &z), one.plus(-h, &z)
	out.under(&plus, &minus)
	return out
}
