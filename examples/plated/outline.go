package plated

import (
	"math"

	"example.org/honestplate/portion/plate"
)

// A point is a place on the dish as a vector, m.
type point plate.Point

func (p point) plus(q point) point    { return point{p.X + q.X, p.Y + q.Y} }
func (p point) minus(q point) point   { return point{p.X - q.X, p.Y - q.Y} }
func (p point) times(k float64) point { return point{p.X * k, p.Y * k} }
func (p point) dot(q point) float64   { return float64(p.X*q.X) + float64(p.Y*q.Y) }
func (p point) norm() float64         { return math.Hypot(p.X, p.Y) }

// unit is the unit vector in the point's direction.
func (p point) unit() point { return p.times(1 / p.norm()) }

// A line is straight, from p to q.
type line struct{ p, q point }

// An outline is a dish as it is drawn.
type outline struct {
	round bool
	a, b  float64 // half width and half depth, rim included, m
	edge  float64 // the rim kept free, m
	cuts  []line
}

// outlineOf returns the outline of a dish that something lies on, so that its
// dimensions are known to be good.
func outlineOf(on plate.Dish) outline {
	switch d := on.(type) {
	case *plate.Round:
		return outlineOf(*d)
	case *plate.Rectangle:
		return outlineOf(*d)
	case plate.Round:
		o := outline{round: true, a: d.Diameter / 2, b: d.Diameter / 2, edge: d.Edge}
		for k := range d.Slices {
			if d.Slices > 1 {
				turn := d.TurnDegrees*math.Pi/180 + 2*math.Pi/float64(d.Slices)*(float64(k)+0.5)
				sin, cos := math.Sincos(-math.Pi/2 - turn)
				o.cuts = append(o.cuts, line{q: point{o.a * cos, o.a * sin}})
			}
		}
		return o
	case plate.Rectangle:
		o := outline{a: d.Width / 2, b: d.Depth / 2, edge: d.Edge}
		for k := 1; k < d.Columns; k++ {
			x := -o.a + d.Width/float64(d.Columns)*float64(k)
			o.cuts = append(o.cuts, line{point{x, -o.b}, point{x, o.b}})
		}
		for k := 1; k < d.Rows; k++ {
			y := -o.b + d.Depth/float64(d.Rows)*float64(k)
			o.cuts = append(o.cuts, line{point{-o.a, y}, point{o.a, y}})
		}
		return o
	}
	return outline{}
}

// scale is how many pixels a metre takes, so that the dish fits the page.
func (o outline) scale() float64 { return min(430/(2*o.b), 470/(2*o.a)) }

// beyond is how far from x, inside the dish, the rim lies along a unit vector.
func (o outline) beyond(x, along point) float64 {
	if o.round {
		foot := x.dot(along)
		return max(0, math.Sqrt(max(0, foot*foot+o.a*o.a-x.dot(x)))-foot)
	}
	far := math.Inf(1)
	if along.X != 0 {
		far = (math.Copysign(o.a, along.X) - x.X) / along.X
	}
	if along.Y != 0 {
		far = min(far, (math.Copysign(o.b, along.Y)-x.Y)/along.Y)
	}
	return max(0, far)
}

// normal is the unit vector out of the dish at a point of its rim.
func (o outline) normal(x point) point {
	switch {
	case o.round:
		return x.unit()
	case o.b-math.Abs(x.Y) < o.a-math.Abs(x.X):
		return point{0, math.Copysign(1, x.Y)}
	}
	return point{math.Copysign(1, x.X), 0}
}
