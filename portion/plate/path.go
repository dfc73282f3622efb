package plate

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// A path is a straight piece from p to q or, where arc is set, the arc of the
// ellipse (a cos t, b sin t) from t0 to t1, t0 < t1.
type path struct {
	p, q         Point
	arc          bool
	a, b, t0, t1 float64
}

// at returns the point at the share u of the path's parameter.
func (c path) at(u float64) Point {
	if !c.arc {
		return c.p.toward(c.q, u)
	}
	t := c.t0 + u*(c.t1-c.t0)
	return Point{c.a * math.Cos(t), c.b * math.Sin(t)}
}

// part returns the path between two shares of its parameter.
func (c path) part(u, v float64) path {
	if !c.arc {
		return path{p: c.at(u), q: c.at(v)}
	}
	c.t0, c.t1 = c.t0+u*(c.t1-c.t0), c.t0+v*(c.t1-c.t0)
	return c
}

// measure returns the path's length and its first moment, the integral of Y along
// it, in closed form.
func (c path) measure() (length, moment float64) {
	if !c.arc {
		length = c.q.minus(c.p).norm()
		return length, length * (c.p.Y + c.q.Y) / 2
	}
	if c.a == c.b {
		return c.a * (c.t1 - c.t0), c.a * c.a * (math.Cos(c.t0) - math.Cos(c.t1))
	}
	// With t counted so that the speed is long*sqrt(1 - m sin^2).
	if c.a > c.b {
		m := (1 - c.b/c.a) * (1 + c.b/c.a)
		length = c.a * (ellipticE(c.t1+math.Pi/2, m) - ellipticE(c.t0+math.Pi/2, m))
	} else {
		m := (1 - c.a/c.b) * (1 + c.a/c.b)
		length = c.b * (ellipticE(c.t1, m) - ellipticE(c.t0, m))
	}
	return length, c.b * (c.rise(math.Cos(c.t0)) - c.rise(math.Cos(c.t1)))
}

// rise is the antiderivative of sqrt(a^2 - k u^2), k = a^2 - b^2: with u = cos t,
// the moment of an arc over b.
func (c path) rise(u float64) float64 {
	k := (c.a - c.b) * (c.a + c.b)
	root := math.Sqrt(math.Abs(k))
	angle := math.Asinh(root * u / c.a)
	if k > 0 {
		angle = math.Asin(root * u / c.a)
	}
	return u/2*math.Sqrt(c.a*c.a-k*u*u) + c.a*c.a/2*angle/root
}

// ellipticE is Legendre's incomplete integral of the second kind for any angle: a
// half turn adds twice the complete integral.
func ellipticE(phi, m float64) float64 {
	turns := math.Round(phi / math.Pi)
	return 2*turns*mathext.CompleteE(m) + mathext.EllipticE(phi-turns*math.Pi, m)
}

// crossings returns the shares of the parameter at which the path crosses the straight
// piece from p to q, unordered. A straight path that lies within the tolerance of the piece's
// line runs along it and does not cross it.
func (c path) crossings(p, q Point, tolerance float64) []float64 {
	d := q.minus(p)
	n := Point{-d.Y, d.X}
	onPiece := func(x Point) bool {
		s := x.minus(p).dot(d) / d.dot(d)
		return s >= -1e-12 && s <= 1+1e-12
	}
	if !c.arc {
		from, to := n.dot(c.p.minus(p)), n.dot(c.q.minus(p))
		if near := tolerance * n.norm(); math.Abs(from) <= near && math.Abs(to) <= near {
			return nil
		}
		if from == to || (from > 0) == (to > 0) && from != 0 && to != 0 {
			return nil
		}
		if u := from / (from - to); onPiece(c.at(u)) {
			return []float64{u}
		}
		return nil
	}
	// n.(a cos t, b sin t) = n.p
	x, y, z := n.X*c.a, n.Y*c.b, n.dot(p)
	r := math.Hypot(x, y)
	if math.Abs(z) > r {
		return nil
	}
	var out []float64
	middle, half := math.Atan2(y, x), math.Acos(z/r)
	for _, t := range [2]float64{middle - half, middle + half} {
		for t = math.Mod(t-c.t0, 2*math.Pi); t < 0; t += 2 * math.Pi {
		}
		if u := t / (c.t1 - c.t0); u <= 1 && onPiece(c.at(u)) {
			out = append(out, u)
		}
	}
	return out
}
