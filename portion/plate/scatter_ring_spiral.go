package plate

import (
	"math"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/root"
)

// ring sets the pieces on the outermost circle on which they are clear of the edge,
// evenly on every slice's part of it.
func (s Scatter) ring(p plate) ([]Point, error) {
	if !p.round {
		return nil, check.Input("Arrangement", s.Arrangement, "", "scattered or in a spiral on a Rectangle: a ring wants a Round")
	}
	radius := (p.a - p.edge - s.Diameter/2) * (1 - 1e-9) // a hair inside, so that no last bit decides
	if radius < 1e-9 {
		return nil, s.crowded(0)
	}
	n := len(p.slices)
	var at []Point
	for k := range n {
		middle := p.middle(k)
		if n == 1 {
			middle = math.Pi / 2 // one line without ends, whatever the turn
		}
		own := (s.Count + n - 1 - k) / n // the first slices take what is over
		for i := range own {
			sin, cos := math.Sincos(middle + p.sector*((float64(i)+0.5)/float64(own)-0.5))
			at = append(at, Point{radius * cos, radius * sin})
		}
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
