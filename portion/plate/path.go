package plate

import "math"

// A path is the straight piece from p to q.
type path struct{ p, q Point }

// at returns the point at a share of the length.
func (c path) at(u float64) Point { return c.p.toward(c.q, u) }

func (c path) length() float64 { return c.q.minus(c.p).norm() }

// crossing returns the share of the path at which it crosses another, and false if it
// does not. A path that lies within the tolerance of the other's line runs along it and
// does not cross it.
func (c path) crossing(other path, tolerance float64) (u float64, ok bool) {
	d := other.q.minus(other.p)
	n := Point{-d.Y, d.X}
	from, to := n.dot(c.p.minus(other.p)), n.dot(c.q.minus(other.p))
	if near := tolerance * n.norm(); math.Abs(from) <= near && math.Abs(to) <= near {
		return 0, false
	}
	if from == to || (from > 0) == (to > 0) && from != 0 && to != 0 {
		return 0, false
	}
	u = from / (from - to)
	s := c.at(u).minus(other.p).dot(d) / d.dot(d)
	return u, s >= -1e-12 && s <= 1+1e-12
}
