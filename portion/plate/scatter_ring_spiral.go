package plate

import (
	"math"

	"example.org/honestplate/portion/internal/root"
)

// ring sets the pieces on the outermost line on which they are clear of the edge,
// evenly on every slice's part of it.
func (s Scatter) ring(p plate) ([]Point, error) {
	a, b := p.inner()
	// The largest line of the dish's shape at which the whole of it is clear.
	share, _ := root.Split(0, 1, func(f float64) bool { return s.lineClear(p, ring(p, a*f, b*f)) })
	share *= 1 - 1e-9 // a nanometre inside, so that no last bit decides
	if share < 1e-9 {
		return nil, s.crowded(0)
	}
	// The line in parts: each within one slice, kept clear of its cuts.
	l := Layout{plate: p}
	line := ring(p, a*share, b*share)
	if p.elliptic && len(p.cuts) > 0 {
		// Begin at a cut, so that no slice's part is in two.
		start := math.Atan2(p.cuts[0].q.Y/p.b, p.cuts[0].q.X/p.a)
		line[0].t0, line[0].t1 = start, start+2*math.Pi
	}
	for _, c := range line {
		l.cut(0, c)
	}
	if p.elliptic && len(p.slices) == 1 {
		// One line without ends: the pieces are as far apart across its seam.
		return s.apart(alongPath(l.Segments[0].path, s.Count))
	}
	lengths := make([]float64, len(l.Segments))
	for i, g := range l.Segments {
		lengths[i] = g.Length
	}
	quota, ok := shareByParts(int64(s.Count), lengths)
	if !ok {
		return nil, s.crowded(0)
	}
	var at []Point
	for i, n := range quota {
		at = append(at, alongPath(l.Segments[i].path, int(n))...)
	}
	placed := 0
	for _, x := range at {
		if s.clear(p, x) {
			placed++
		}
	}
	if placed < len(at) {
		return nil, s.crowded(placed)
	}
	return s.apart(at)
}

// lineClear reports whether pieces everywhere on the line are clear of the edge.
func (s Scatter) lineClear(p plate, line []path) bool {
	for _, c := range line {
		for k := range 65 {
			if !p.insideBy(c.at(float64(k)/64), s.Diameter/2-roundoff) {
				return false
			}
		}
	}
	return true
}

// alongPath returns n points in the middles of n equal lengths of the path.
func alongPath(c path, n int) []Point {
	var out []Point
	whole, _ := c.measure()
	for k := range n {
		want := whole * (float64(k) + 0.5) / float64(n)
		_, u := root.Split(0, 1, func(u float64) bool {
			l, _ := c.part(0, u).measure()
			return l < want
		})
		out = append(out, c.at(u))
	}
	return out
}

// apart returns the points if they keep their distance.
func (s Scatter) apart(at []Point) ([]Point, error) {
	close := 0
	for i, x := range at {
		for _, y := range at[:i] {
			if x.minus(y).norm() < s.Diameter+s.Gap-1e-9 {
				close++
				break
			}
		}
	}
	if close > 0 {
		return nil, s.crowded(s.Count - close)
	}
	return at, nil
}

const (
	// goldenAngle is 180 (3 - sqrt 5) degrees.
	goldenAngle = math.Pi * (3 - 2.23606797749978969640917366873)
	// vogelNearest is the least distance between two spots of the spiral with step 1,
	// that of the first and the fourth: |1 - 2 exp(3i goldenAngle)|.
	vogelNearest = 1.6019503
)

// spiral sets the pieces on the widest spiral that has so many clear spots.
func (s Scatter) spiral(p plate) ([]Point, error) {
	if s.Count == 1 && s.clear(p, Point{}) {
		return []Point{{}}, nil // one piece has no neighbours to keep away from
	}
	a, b := p.inner()
	// Stretched with the dish, the spiral fills it; the widest step that still has
	// Count clear spots is found by halving. Steps narrower than the pieces need not
	// be tried: at step c two spots come as near as 1.60195 c.
	long := max(a, b)
	spots := func(c float64) []Point {
		var at []Point
		// A dish of which not one spot in twenty is clear counts as full.
		for k := 1; len(at) < s.Count && k < 20*s.Count+1000; k++ {
			rho := c * math.Sqrt(float64(k))
			if rho > math.Sqrt2*long {
				break
			}
			sin, cos := math.Sincos(float64(k) * goldenAngle)
			if x := (Point{rho * cos * a / long, rho * sin * b / long}); s.clear(p, x) {
				at = append(at, x)
			}
		}
		return at
	}
	least := (s.Diameter + s.Gap) / vogelNearest
	if at := spots(least); len(at) < s.Count {
		return nil, s.crowded(len(at))
	}
	widest, _ := root.Split(least, 1.5*long, func(c float64) bool { return len(spots(c)) >= s.Count })
	return s.apart(spots(widest))
}
