package plate

import (
	"cmp"
	"math"
	"reflect"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// A plate is a dish in plain geometry.
type plate struct {
	round   bool
	a, b    float64 // half width and half depth, rim included, m
	edge    float64
	cuts    []path // straight, rim to rim or centre to rim
	slices  []Slice
	turn    float64 // radians, of the round kind
	sector  float64 // angle of a slice of the round kind, radians
	columns int
	rows    int
}

// inner is the outline inside the free edge: radius or half sides.
func (p plate) inner() (a, b float64) { return p.a - p.edge, p.b - p.edge }

// sliceAt returns the index of the slice that holds the point.
func (p plate) sliceAt(x Point) int {
	if p.round {
		n := len(p.slices)
		t := -math.Pi/2 - p.turn + p.sector/2 - math.Atan2(x.Y, x.X)
		k := int(math.Floor(t / p.sector))
		return ((k % n) + n) % n
	}
	column := int((x.X + p.a) / (2 * p.a) * float64(p.columns))
	row := int((x.Y + p.b) / (2 * p.b) * float64(p.rows))
	return max(0, min(row, p.rows-1))*p.columns + max(0, min(column, p.columns-1))
}

// plateOf returns the geometry of a dish, or what is wrong with it.
func plateOf(on Dish) (plate, error) {
	if v := reflect.ValueOf(on); on == nil || v.Kind() == reflect.Pointer && v.IsNil() {
		return plate{}, check.Input("Dish", "nil", "", "a Round or a Rectangle")
	}
	p, err := on.plate()
	return p, honestplate.In("Dish", err)
}

// tolerance is the length below which places on the dish are one: far above the noise
// of arithmetic, far below what a hand can lay.
func (p plate) tolerance() float64 { return 1e-9 * (p.a + p.b) }

// farFirst is the order of placing: far side first, from left to right.
func (p plate) farFirst(s, t Point) int {
	rank := func(v float64) float64 { return math.Round(v / p.tolerance()) }
	return cmp.Or(cmp.Compare(rank(t.Y), rank(s.Y)), cmp.Compare(rank(s.X), rank(t.X)))
}
