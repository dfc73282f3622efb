package plate

import "math"

// directions are the unit vectors along strips across and at right angles to them.
func (s Strips) directions() (along, normal Point) {
	sin, cos := math.Sincos(s.TurnDegrees * math.Pi / 180)
	return Point{cos, sin}, Point{-sin, cos}
}

// paths returns the middle lines of the strips.
func (s Strips) paths(p plate) []path {
	var out []path
	if s.Pattern == AlongCuts {
		for _, c := range p.cuts {
			if laid, ok := s.along(p, c); ok {
				out = append(out, laid)
			}
		}
		return out
	}
	along, normal := s.directions()
	spacing := 2 * p.extent(normal) / float64(s.Count)
	for k := range s.Count {
		offset := (float64(k) - float64(s.Count-1)/2) * spacing
		if c, ok := p.clip(normal.times(offset), along); ok {
			out = append(out, c)
		}
	}
	return out
}

// along returns the part of a cut inside the free edge and outside the hub.
func (s Strips) along(p plate, cut path) (path, bool) {
	d := cut.q.minus(cut.p)
	d = d.times(1 / d.norm())
	c, ok := p.clip(cut.p, d)
	if p.round {
		c.p = d.times(s.Hub) // a cut of the round kind begins at the centre
	}
	return c, ok && c.q.minus(c.p).dot(d) > 0
}
