package plate

import "math"

// inside is the distance of x from the outline inside the free edge; negative
// outside it.
func (p plate) inside(x Point) float64 {
	a, b := p.inner()
	if p.round {
		return a - x.norm()
	}
	return min(a-math.Abs(x.X), b-math.Abs(x.Y))
}

// fromCuts is the distance of x from the nearest cut; infinite without cuts. Only
// the cuts that bound its slice can be nearest: any other lies behind them.
func (p plate) fromCuts(x Point) float64 {
	d := math.Inf(1)
	if len(p.cuts) == 0 {
		return d
	}
	if p.round {
		k := p.sliceAt(x)
		for _, i := range [2]int{k, (k + len(p.cuts) - 1) % len(p.cuts)} {
			d = min(d, p.cuts[i].distance(x))
		}
		return d
	}
	across := func(at, half float64, n int) {
		if n > 1 {
			wide := 2 * half / float64(n)
			nearest := min(max(1, math.Round((at+half)/wide)), float64(n-1))
			d = min(d, math.Abs(at+half-nearest*wide))
		}
	}
	across(x.X, p.a, p.columns)
	across(x.Y, p.b, p.rows)
	return d
}

// distance is that of x from a straight path.
func (c path) distance(x Point) float64 {
	along := c.q.minus(c.p)
	u := max(0, min(x.minus(c.p).dot(along)/along.dot(along), 1))
	return x.minus(c.at(u)).norm()
}
