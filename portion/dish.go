package portion

import (
	"fmt"
	"math"
)

// A Dish is what the food lies on or is: a Round, an Oval or a Rectangle. Seen from
// above, the camera stands at the bottom.
type Dish interface {
	// plate returns the dish as plain geometry, or what is wrong with it.
	plate() (plate, error)
}

// A Round is a round dish or bread, cut from the centre into equal slices. Slice 1
// faces the camera; the others follow clockwise as seen from above.
type Round struct {
	Diameter float64 // m, above 0, up to 10
	// Edge is the rim kept free of what is laid on, m, 0 up to less than the radius.
	Edge   float64
	Slices int // 0 or 1 means uncut; up to 1000
	// TurnDegrees turns the cuts clockwise as seen from above; at 0 the middle of
	// slice 1 faces the camera.
	TurnDegrees float64
}

// An Oval is an elliptical dish cut from its centre into slices of equal area (of
// equal angle if it were stretched to a round). Slices are counted as in a Round.
type Oval struct {
	Width, Depth float64 // m, across and away from the camera, above 0, up to 10
	Edge         float64 // free rim, m, measured along the axes
	Slices       int     // 0 or 1 means uncut; up to 1000
	TurnDegrees  float64 // as in a Round
}

// A Rectangle is a tray cut into equal rows and columns. Slice 1 is nearest to the
// camera on the left; the others follow to the right, then row by row away.
type Rectangle struct {
	Width, Depth  float64 // m, across and away from the camera, above 0, up to 10
	Edge          float64 // free rim, m
	Columns, Rows int     // 0 means 1; up to 1000 slices in all
}

// A Slice is one portion of a cut dish.
type Slice struct {
	Number int     // from 1
	Area   float64 // of the whole slice, rim included, m2
	Centre Point   // its centre of area
}

const (
	maxDish   = 10.0 // m
	maxSlices = 1000
)

// A plate is a dish in plain geometry.
type plate struct {
	elliptic bool
	a, b     float64 // half width and half depth, rim included, m
	edge     float64
	cuts     []curve // straight, rim to rim or centre to rim
	slices   []Slice
	turn     float64 // radians, of the elliptic kind
	columns  int
	rows     int
}

func (d Round) plate() (plate, error) {
	if err := checkSize("diameter", d.Diameter); err != nil {
		return plate{}, err
	}
	return Oval{d.Diameter, d.Diameter, d.Edge, d.Slices, d.TurnDegrees}.plate()
}

func (d Oval) plate() (plate, error) {
	p, err := newPlate(d.Width, d.Depth, d.Edge, d.Slices)
	if err != nil {
		return p, err
	}
	if err := within("turn", d.TurnDegrees, -360, 360, "degrees", "a full turn"); err != nil {
		return p, err
	}
	n := max(d.Slices, 1)
	p.elliptic, p.turn = true, d.TurnDegrees*math.Pi/180
	step := 2 * math.Pi / float64(n)
	for k := range n {
		// The centre of area of a sector of a unit circle lies at
		// 2 sin(t/2) / (3 t/2) from its point.
		t := -math.Pi/2 - p.turn - step*float64(k)
		r := 0.0
		if n > 1 {
			r = 4 * math.Sin(step/2) / (3 * step)
		}
		p.slices = append(p.slices, Slice{k + 1, math.Pi * p.a * p.b / float64(n), Point{p.a * r * math.Cos(t), p.b * r * math.Sin(t)}})
		if n > 1 {
			sin, cos := math.Sincos(t - step/2)
			p.cuts = append(p.cuts, curve{q: Point{p.a * cos, p.b * sin}})
		}
	}
	return p, nil
}

func (d Rectangle) plate() (plate, error) {
	if d.Columns < 0 || d.Rows < 0 || d.Columns > maxSlices || d.Rows > maxSlices {
		return plate{}, &InputError{"columns or rows", float64(min(d.Columns, d.Rows)), "", fmt.Sprintf("0 to %d", maxSlices)}
	}
	columns, rows := max(d.Columns, 1), max(d.Rows, 1)
	p, err := newPlate(d.Width, d.Depth, d.Edge, columns*rows)
	if err != nil {
		return p, err
	}
	p.columns, p.rows = columns, rows
	w, h := d.Width/float64(columns), d.Depth/float64(rows)
	for k := range columns * rows {
		centre := Point{-p.a + w*(float64(k%columns)+0.5), -p.b + h*(float64(k/columns)+0.5)}
		p.slices = append(p.slices, Slice{k + 1, w * h, centre})
	}
	for k := 1; k < columns; k++ {
		x := -p.a + w*float64(k)
		p.cuts = append(p.cuts, curve{p: Point{x, -p.b}, q: Point{x, p.b}})
	}
	for k := 1; k < rows; k++ {
		y := -p.b + h*float64(k)
		p.cuts = append(p.cuts, curve{p: Point{-p.a, y}, q: Point{p.a, y}})
	}
	return p, nil
}

// newPlate checks what all shapes share.
func newPlate(width, depth, edge float64, slices int) (plate, error) {
	if err := checkSize("width", width); err != nil {
		return plate{}, err
	}
	if err := checkSize("depth", depth); err != nil {
		return plate{}, err
	}
	if err := notNegative("free edge", edge, "m"); err != nil {
		return plate{}, err
	}
	if edge >= 0.499*min(width, depth) {
		return plate{}, &InputError{"free edge", edge, "m", "less than half the dish"}
	}
	if slices < 0 || slices > maxSlices {
		return plate{}, &InputError{"number of slices", float64(slices), "", fmt.Sprintf("0 to %d", maxSlices)}
	}
	return plate{a: width / 2, b: depth / 2, edge: edge}, nil
}

func checkSize(name string, v float64) error {
	if err := positive(name, v, "m"); err != nil {
		return err
	}
	return within(name, v, 1e-3, maxDish, "m", "limit of this package")
}

// inner is the outline inside the free edge: half axes or half sides.
func (p plate) inner() (a, b float64) { return p.a - p.edge, p.b - p.edge }

// sliceAt returns the index of the slice that holds the point.
func (p plate) sliceAt(x Point) int {
	if p.elliptic {
		n := len(p.slices)
		step := 2 * math.Pi / float64(n)
		t := -math.Pi/2 - p.turn + step/2 - math.Atan2(x.Y/p.b, x.X/p.a)
		k := int(math.Floor(t / step))
		return ((k % n) + n) % n
	}
	column := int((x.X + p.a) / (2 * p.a) * float64(p.columns))
	row := int((x.Y + p.b) / (2 * p.b) * float64(p.rows))
	return max(0, min(row, p.rows-1))*p.columns + max(0, min(column, p.columns-1))
}

// clip returns the part of the straight line through x along the unit vector d that
// lies inside the free edge.
func (p plate) clip(x, d Point) (curve, bool) {
	a, b := p.inner()
	low, high := math.Inf(-1), math.Inf(1)
	if p.elliptic {
		// |(x + t d) / (a, b)| = 1
		u, v := Point{x.X / a, x.Y / b}, Point{d.X / a, d.Y / b}
		half := u.dot(v) / v.dot(v)
		// The distance from the centre in the stretched plane, at the foot.
		foot := u.minus(v.times(half))
		rest := (1 - foot.norm()) * (1 + foot.norm()) / v.dot(v)
		if rest <= 0 {
			return curve{}, false
		}
		low, high = -half-math.Sqrt(rest), -half+math.Sqrt(rest)
	} else {
		for _, s := range [2][3]float64{{x.X, d.X, a}, {x.Y, d.Y, b}} {
			if math.Abs(s[1]) < 1e-15 {
				if math.Abs(s[0]) >= s[2] {
					return curve{}, false
				}
				continue
			}
			t0, t1 := (-s[2]-s[0])/s[1], (s[2]-s[0])/s[1]
			low, high = max(low, min(t0, t1)), min(high, max(t0, t1))
		}
	}
	if !(high > low) {
		return curve{}, false
	}
	return curve{p: x.plus(d.times(low)), q: x.plus(d.times(high))}, true
}

// reach is how far the outline inside the free edge extends along a unit vector.
func (p plate) reach(n Point) float64 {
	a, b := p.inner()
	if p.elliptic {
		return math.Hypot(a*n.X, b*n.Y)
	}
	return a*math.Abs(n.X) + b*math.Abs(n.Y)
}
