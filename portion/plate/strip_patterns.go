package plate

import "math"

// paths returns the strips, each as the paths it is made of.
func (s Strips) paths(p plate) [][]path {
	var out [][]path
	switch s.Pattern {
	case AlongCuts:
		for _, c := range p.cuts {
			if laid, ok := s.along(p, c); ok {
				out = append(out, []path{laid})
			}
		}
	case Across, Lattice:
		turns := []float64{s.TurnDegrees}
		if s.Pattern == Lattice {
			turns = append(turns, s.TurnDegrees+90)
		}
		for _, turn := range turns {
			sin, cos := math.Sincos(turn * math.Pi / 180)
			along, normal := Point{cos, sin}, Point{-sin, cos}
			spacing := 2 * p.extent(normal) / float64(s.Count)
			for k := range s.Count {
				offset := (float64(k) - float64(s.Count-1)/2) * spacing
				if c, ok := p.clip(normal.times(offset), along); ok {
					out = append(out, []path{c})
				}
			}
		}
	case Rings:
		a, b := p.inner()
		for k := range s.Count {
			f := math.Sqrt((float64(k) + 0.5) / float64(s.Count))
			out = append(out, ring(p, a*f, b*f))
		}
	}
	return out
}

// along returns the part of a cut inside the free edge and outside the hub.
func (s Strips) along(p plate, cut path) (path, bool) {
	d := cut.q.minus(cut.p)
	d = d.times(1 / d.norm())
	c, ok := p.clip(cut.p, d)
	if p.elliptic {
		c.p = d.times(s.Hub) // a cut of the round kind begins at the centre
	}
	return c, ok && c.q.minus(c.p).dot(d) > 0
}

// ring returns the outline of the dish's shape with the given half axes, from the
// side nearest to the camera on.
func ring(p plate, a, b float64) []path {
	if p.elliptic {
		return []path{{arc: true, a: a, b: b, t0: -math.Pi / 2, t1: 3 * math.Pi / 2}}
	}
	c := [4]Point{{a, -b}, {a, b}, {-a, b}, {-a, -b}}
	return []path{{p: c[3], q: c[0]}, {p: c[0], q: c[1]}, {p: c[1], q: c[2]}, {p: c[2], q: c[3]}}
}
