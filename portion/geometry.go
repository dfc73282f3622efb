package portion

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// A Point is a place on a dish, seen from above: m from the dish's centre, X to the
// right, Y away from the camera. The camera stands at the bottom of the page.
type Point struct {
	X, Y float64 // m from the dish's centre
}

func (p Point) plus(q Point) Point              { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point             { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) times(k float64) Point           { return Point{p.X * k, p.Y * k} }
func (p Point) dot(q Point) float64             { return p.X*q.X + p.Y*q.Y }
func (p Point) norm() float64                   { return math.Hypot(p.X, p.Y) }
func (p Point) toward(q Point, u float64) Point { return p.plus(q.minus(p).times(u)) }

// Chord returns the length of the chord of a circle at a distance from its centre:
//
//	c = 2 sqrt(R^2 - y^2)
//
// radius R and distance y in m, the chord in m; 0 at and beyond the rim. Elementary
// geometry. It fails with an *InputError unless radius is above 0 and distance finite.
func Chord(radius, distance float64) (float64, error) {
	if err := positive("radius", radius, "m"); err != nil {
		return 0, err
	}
	if err := finite("distance from the centre", distance, "m"); err != nil {
		return 0, err
	}
	y := math.Abs(distance)
	if y >= radius {
		return 0, nil
	}
	// The product form keeps its digits near the rim.
	chord := 2 * math.Sqrt(radius-y) * math.Sqrt(radius+y)
	return chord, finite("chord", chord, "m")
}

// SegmentArea returns the area a chord cuts off a circle on the far side from the
// centre:
//
//	A = R^2 (t - sin t) / 2, with t = 2 acos(y/R)
//
// radius R and distance y in m, A in m2; a negative distance gives the larger part.
// Elementary geometry. It fails with an *InputError unless radius is above 0 and
// distance finite.
func SegmentArea(radius, distance float64) (float64, error) {
	if err := positive("radius", radius, "m"); err != nil {
		return 0, err
	}
	if err := finite("distance from the centre", distance, "m"); err != nil {
		return 0, err
	}
	u := max(-1, min(distance/radius, 1))
	a := radius * radius * (math.Acos(u) - u*math.Sqrt((1-u)*(1+u)))
	return a, finite("area", a, "m2")
}

// SectorArea returns the area of a slice of a circle:
//
//	A = R^2 t / 2, with t the angle in radians
//
// radius R in m, degrees 0..360, A in m2. Elementary geometry. It fails with an
// *InputError unless radius is above 0 and a *RangeError for an angle outside 0..360.
func SectorArea(radius, degrees float64) (float64, error) {
	if err := positive("radius", radius, "m"); err != nil {
		return 0, err
	}
	if err := within("angle of the sector", degrees, 0, 360, "degrees", "a full turn"); err != nil {
		return 0, err
	}
	a := radius * radius * degrees * (math.Pi / 360)
	return a, finite("area", a, "m2")
}

// EqualRings returns the outer radii, m, of n concentric rings of equal area:
//
//	r_i = R sqrt(i/n), i = 1..n
//
// the first ring being a disc. Elementary geometry. It fails with an *InputError
// unless radius is above 0 and n is 1..100 000.
func EqualRings(radius float64, n int) ([]float64, error) {
	if err := positive("radius", radius, "m"); err != nil {
		return nil, err
	}
	if n < 1 || n > 100_000 {
		return nil, &InputError{"number of rings", float64(n), "", "1 to 100 000"}
	}
	out := make([]float64, n)
	for i := range out {
		out[i] = radius * math.Sqrt(float64(i+1)/float64(n))
	}
	return out, nil
}

// A curve is a straight piece from p to q or, where arc is set, the arc of the
// ellipse (a cos t, b sin t) from t0 to t1, t0 < t1.
type curve struct {
	p, q         Point
	arc          bool
	a, b, t0, t1 float64
}

// at returns the point at the share u of the curve's parameter.
func (c curve) at(u float64) Point {
	if !c.arc {
		return c.p.toward(c.q, u)
	}
	t := c.t0 + u*(c.t1-c.t0)
	return Point{c.a * math.Cos(t), c.b * math.Sin(t)}
}

// part returns the curve between two shares of its parameter.
func (c curve) part(u, v float64) curve {
	if !c.arc {
		return curve{p: c.at(u), q: c.at(v)}
	}
	c.t0, c.t1 = c.t0+u*(c.t1-c.t0), c.t0+v*(c.t1-c.t0)
	return c
}

// measure returns the curve's length and its first moment, the integral of Y along
// it, in closed form.
func (c curve) measure() (length, moment float64) {
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
func (c curve) rise(u float64) float64 {
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

// crossings returns the shares of the parameter at which the curve crosses the
// straight piece from p to q, unordered.
func (c curve) crossings(p, q Point) []float64 {
	d := q.minus(p)
	n := Point{-d.Y, d.X}
	onPiece := func(x Point) bool {
		s := x.minus(p).dot(d) / d.dot(d)
		return s >= -1e-12 && s <= 1+1e-12
	}
	if !c.arc {
		from, to := n.dot(c.p.minus(p)), n.dot(c.q.minus(p))
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
