package plate

import (
	"math"

	"example.org/honestplate/portion/internal/root"
)

// inside is the distance of x from the outline inside the free edge; negative
// outside it.
func (p plate) inside(x Point) float64 {
	a, b := p.inner()
	x = Point{math.Abs(x.X), math.Abs(x.Y)}
	if !p.elliptic {
		return min(a-x.X, b-x.Y)
	}
	if a == b {
		return a - x.norm()
	}
	d := ellipseNearest(a, b, x).minus(x).norm()
	if math.Hypot(x.X/a, x.Y/b) > 1 {
		return -d
	}
	return d
}

// insideBy reports whether x is inside the free edge by at least d. Most points need no
// distance: with u = |(X/a, Y/b)| the outline is at least (1-u) min(a, b) away, and
// all points that are d inside lie in the ellipse with half axes a-d and b-d (its
// support is nowhere less than the outline's less d).
func (p plate) insideBy(x Point, d float64) bool {
	if a, b := p.inner(); p.elliptic && a != b && d > 0 {
		const roundoff = 1e-9
		u := math.Hypot(x.X/a, x.Y/b)
		if (1-u)*min(a, b) > d*(1+roundoff) {
			return true
		}
		if d >= min(a, b) || math.Hypot(x.X/(a-d), x.Y/(b-d)) > 1+roundoff {
			return false
		}
	}
	return p.inside(x) >= d
}

// ellipseNearest returns the point of the ellipse's first quadrant nearest to x in
// it: (a^2 X/(t+a^2), b^2 Y/(t+b^2)) with t the largest root of
// (a X/(t+a^2))^2 + (b Y/(t+b^2))^2 = 1, found by bisection.
func ellipseNearest(a, b float64, x Point) Point {
	low, high := -min(a, b)*min(a, b), math.Hypot(a*x.X, b*x.Y)
	if a < b && x.X == 0 || a > b && x.Y == 0 || a == b {
		// On the long axis the nearest point may leave it: bisection would meet 0/0.
		if n, ok := offAxis(a, b, x); ok {
			return n
		}
	}
	_, t := root.Split(low, high, func(t float64) bool {
		u, v := a*x.X/(t+a*a), b*x.Y/(t+b*b)
		return u*u+v*v > 1
	})
	return Point{a * a * x.X / (t + a*a), b * b * x.Y / (t + b*b)}
}

// offAxis is ellipseNearest on the longer axis.
func offAxis(a, b float64, x Point) (Point, bool) {
	if a > b {
		if c := a * x.X / (a*a - b*b); c < 1 {
			return Point{a * c, b * math.Sqrt((1-c)*(1+c))}, true
		}
		return Point{a, 0}, true
	}
	if b > a {
		n, ok := offAxis(b, a, Point{x.Y, x.X})
		return Point{n.Y, n.X}, ok
	}
	return Point{}, false
}

// fromCuts is the distance of x from the nearest cut; infinite without cuts. Only
// the cuts that bound its slice can be nearest: any other lies behind them.
func (p plate) fromCuts(x Point) float64 {
	d := math.Inf(1)
	if len(p.cuts) == 0 {
		return d
	}
	k := p.sliceAt(x)
	if p.elliptic {
		for _, i := range [2]int{k, (k + len(p.cuts) - 1) % len(p.cuts)} {
			d = min(d, p.cuts[i].distance(x))
		}
		return d
	}
	// Cuts between columns come first, then those between rows.
	column, row := k%p.columns, k/p.columns
	for _, side := range [2]int{-1, 0} {
		if i := column + side; i >= 0 && i < p.columns-1 {
			d = min(d, p.cuts[i].distance(x))
		}
		if i := row + side; i >= 0 && i < p.rows-1 {
			d = min(d, p.cuts[p.columns-1+i].distance(x))
		}
	}
	return d
}

// distance is that of x from a straight path.
func (c path) distance(x Point) float64 {
	along := c.q.minus(c.p)
	u := max(0, min(x.minus(c.p).dot(along)/along.dot(along), 1))
	return x.minus(c.at(u)).norm()
}
