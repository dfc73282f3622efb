package plate

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// A Dish is what the food lies on or is: a Round or a Rectangle. Seen from
// above, the camera stands at the bottom.
type Dish interface {
	// plate returns the dish as plain geometry, or what is wrong with it.
	plate() (plate, error)
}

// A Round is a round dish or bread, cut from the centre into equal slices. Slice 1
// faces the camera; the others follow clockwise as seen from above.
type Round struct {
	Diameter float64 `json:"diameter_m,omitzero"` // m, above 0, up to 10
	// Edge is the rim kept free of what is laid on, m, 0 up to less than the radius.
	Edge   float64 `json:"edge_m,omitzero"`
	Slices int     `json:"slices,omitzero"` // 0 or 1 means uncut; up to 1000
	// TurnDegrees turns the cuts clockwise as seen from above; at 0 the middle of
	// slice 1 faces the camera.
	TurnDegrees float64 `json:"turn_degrees,omitzero"`
}

// A Rectangle is a tray cut into equal rows and columns. Slice 1 is nearest to the
// camera on the left; the others follow to the right, then row by row away.
type Rectangle struct {
	Width   float64 `json:"width_m,omitzero"` // m, across, above 0, up to 10
	Depth   float64 `json:"depth_m,omitzero"` // m, away from the camera, likewise
	Edge    float64 `json:"edge_m,omitzero"`  // free rim, m
	Columns int     `json:"columns,omitzero"` // 0 means 1; up to 1000 slices in all
	Rows    int     `json:"rows,omitzero"`    // likewise
}

// A Slice is one portion of a cut dish.
type Slice struct {
	Number int     `json:"number"`  // from 1
	Area   float64 `json:"area_m2"` // of the whole slice, rim included, m2
	Centre Point   `json:"centre"`  // its centre of area
	Grams  float64 `json:"grams"`   // what it carries, in whole steps; 0 before something is laid
}

const (
	maxDish   = 10.0 // m
	maxSlices = 1000
)

func (d Round) plate() (plate, error) {
	if err := checkSize("Diameter", d.Diameter); err != nil {
		return plate{}, err
	}
	p, err := newPlate(d.Diameter, d.Diameter, d.Edge, d.Slices)
	if err != nil {
		return p, err
	}
	if err := honestplate.InRange("TurnDegrees", d.TurnDegrees, -360, 360, "degrees", "a full turn"); err != nil {
		return p, err
	}
	n := max(d.Slices, 1)
	p.round, p.turn, p.sector = true, d.TurnDegrees*math.Pi/180, 2*math.Pi/float64(n)
	for k := range n {
		p.slices = append(p.slices, Slice{Number: k + 1, Area: math.Pi * p.a * p.a / float64(n), Centre: p.sectorCentre(k, p.a)})
		if n > 1 {
			sin, cos := math.Sincos(p.middle(k) - p.sector/2)
			p.cuts = append(p.cuts, path{q: Point{p.a * cos, p.a * sin}})
		}
	}
	return p, nil
}

// middle is the direction of the middle of a slice of the round kind, in radians.
func (p plate) middle(k int) float64 { return -math.Pi/2 - p.turn - p.sector*float64(k) }

// sectorCentre is the centre of area of a slice of the round kind up to a radius: for
// an angle t it lies at 2 sin(t/2) / (3 t/2) of it from the middle.
func (p plate) sectorCentre(k int, radius float64) Point {
	if p.sector > math.Pi {
		return Point{} // uncut
	}
	sin, cos := math.Sincos(p.middle(k))
	return Point{cos, sin}.times(radius * 4 * math.Sin(p.sector/2) / (3 * p.sector))
}

func (d Rectangle) plate() (plate, error) {
	if err := cmp.Or(checkSlices("Columns", d.Columns), checkSlices("Rows", d.Rows)); err != nil {
		return plate{}, err
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
		p.slices = append(p.slices, Slice{Number: k + 1, Area: w * h, Centre: centre})
	}
	for k := 1; k < columns; k++ {
		x := -p.a + w*float64(k)
		p.cuts = append(p.cuts, path{p: Point{x, -p.b}, q: Point{x, p.b}})
	}
	for k := 1; k < rows; k++ {
		y := -p.b + h*float64(k)
		p.cuts = append(p.cuts, path{p: Point{-p.a, y}, q: Point{p.a, y}})
	}
	return p, nil
}

// newPlate checks what all shapes share.
func newPlate(width, depth, edge float64, slices int) (plate, error) {
	err := cmp.Or(checkSize("Width", width), checkSize("Depth", depth),
		honestplate.NotNegative("Edge", edge, "m"), checkSlices("Slices", slices))
	if err == nil && edge >= 0.499*min(width, depth) {
		err = check.Input("Edge", edge, "m", "less than half the dish")
	}
	return plate{a: width / 2, b: depth / 2, edge: edge}, err
}

func checkSize(field string, v float64) error {
	return check.Sized(field, v, 1e-3, maxDish, "m", "a dish: larger than a crumb, smaller than a room")
}

func checkSlices(field string, n int) error {
	if n < 0 || n > maxSlices {
		return check.Input(field, n, "", fmt.Sprintf("0 to %d", maxSlices))
	}
	return nil
}
