package layer

import (
	"cmp"

	"example.org/honestplate"
)

// Alone returns the fluxes of the slab with air above and below, and the same surface on
// both sides.
func (s *Solved) Alone() (Fluxes, error) {
	if err := s.check(); err != nil {
		return Fluxes{}, err
	}
	if s.whole {
		return Fluxes{BeamReflected: 1, DiffuseReflected: 1}, nil
	}
	// Radiance that comes in through the top from a sky of radiance 1/n2, so that it is
	// 1 - back inside. Inside: down = in + back (r down + t up2), and so on; by symmetry
	// sum and difference of the two sides part.
	in := s.enters()
	plus, minus := s.r.plus(1, &s.t), s.r.plus(-1, &s.t)
	sum, difference := s.bounce(&plus, &in), s.bounce(&minus, &in)
	// Up at the top is (r+t) sum/2 + (r-t) difference/2; down at the bottom likewise.
	u, v := plus.on(&sum), minus.on(&difference)
	var up, down vector
	for i := range up {
		up[i], down[i] = (u[i]+v[i])/2, (u[i]-v[i])/2
	}
	var out Fluxes
	out.BeamReflected, out.DiffuseReflected = s.leave(&up, true)
	out.BeamTransmitted, out.DiffuseTransmitted = s.leave(&down, false)
	return out, nil
}

// check wants a slab that was solved, not the zero value.
func (s *Solved) check() error {
	if s == nil || s.angles == nil {
		return &honestplate.InputError{Field: "Solved", Got: "empty", Want: "what Slab.Solve returned"}
	}
	return nil
}

// Over returns what the slab reflects over a ground in contact with it that sends the
// share ground of what falls on it evenly back into the slab. Nothing is let through.
func (s *Solved) Over(ground float64) (Fluxes, error) {
	if err := cmp.Or(s.check(), honestplate.InRange("ground", ground, 0, 1, "", "a share")); err != nil {
		return Fluxes{}, err
	}
	if s.whole {
		return Fluxes{BeamReflected: 1, DiffuseReflected: 1}, nil
	}
	in := s.enters()
	e := uniform()
	lit, dimmed := s.t.on(&e), s.r.on(&e)
	// The ground adds k (t 1) (flux t) to what the slab sends back.
	k := ground / (1 - ground*s.angles.total(&dimmed))
	if ground == 0 {
		k = 0
	}
	all := s.r
	for j := range size {
		got := 0.0
		for i := range points {
			got += s.angles.flux[i] * s.t[i][j]
		}
		for i := range all {
			all[i][j] += k * lit[i] * got
		}
	}
	down := s.bounce(&all, &in)
	up := all.on(&down)
	var out Fluxes
	out.BeamReflected, out.DiffuseReflected = s.leave(&up, true)
	return out, nil
}

// enters is the radiance that comes in through the surface from an even sky.
func (s *Solved) enters() vector {
	in := uniform()
	for i := range in {
		in[i] -= s.angles.surface.back[i]
	}
	return in
}

// bounce returns the radiance down below a surface over a layer that sends back m, where
// in comes through: down = in + back m down.
func (s *Solved) bounce(m *matrix, in *vector) vector {
	var a matrix
	for i := range a {
		// Light beyond the angle of total reflection in a layer without scattering runs
		// to and fro for ever: a loss of 1e-12 keeps that from dividing 0 by 0.
		back := min(s.angles.surface.back[i], 1-1e-12)
		for j := range a[i] {
			a[i][j] = -back * m[i][j]
		}
		a[i][i]++
	}
	var right, x matrix
	for i := range right {
		right[i][0] = in[i]
	}
	x.under(&a, &right)
	var out vector
	for i := range out {
		out[i] = x[i][0]
	}
	return out
}

// leave returns the share of a beam and of diffuse light that comes out through a
// surface, from the radiance inside; where the light also fell on that surface, with what
// the surface itself reflected. For a beam it is the radiance seen along the beam under
// an even sky (Helmholtz: paths may be walked either way).
func (s *Solved) leave(inside *vector, fell bool) (one, all float64) {
	a := s.angles
	one = (1 - s.angles.surface.back[beam]) * inside[beam]
	if fell {
		one += s.angles.surface.back[beam]
	}
	n2 := s.angles.surface.n2
	for i := range points {
		share := (1 - s.angles.surface.back[i]) * inside[i]
		if fell && a.mu[i] > s.angles.surface.edge {
			share += s.angles.surface.back[i]
		}
		all += n2 * a.flux[i] * share
	}
	return one, all
}
