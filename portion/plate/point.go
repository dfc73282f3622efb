package plate

import "math"

// A Point is a place on a dish, seen from above: m from the dish's centre, X to the
// right, Y away from the camera. The camera stands at the bottom of the page.
type Point struct {
	X float64 `json:"x_m"` // m to the right of the centre
	Y float64 `json:"y_m"` // m away from the camera
}

func (p Point) plus(q Point) Point              { return Point{p.X + q.X, p.Y + q.Y} }
func (p Point) minus(q Point) Point             { return Point{p.X - q.X, p.Y - q.Y} }
func (p Point) times(k float64) Point           { return Point{p.X * k, p.Y * k} }
func (p Point) dot(q Point) float64             { return float64(p.X*q.X) + float64(p.Y*q.Y) }
func (p Point) square() float64                 { return float64(p.X*p.X) + float64(p.Y*p.Y) }
func (p Point) norm() float64                   { return math.Hypot(p.X, p.Y) }
func (p Point) toward(q Point, u float64) Point { return p.plus(q.minus(p).times(u)) }
