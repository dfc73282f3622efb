// Package published compares the library with the published values in testdata.
// It is the one place where a table's row is turned into a prediction: the
// packages' own tests fail on a row that disagrees, and the agreement program
// prints the same results as a table.
package published

import (
	"fmt"
	"math"
	"slices"
	"sync"

	"example.org/honestplate/testdata"
)

// A Check turns the rows of one table into points.
type Check struct {
	Table    string // in testdata
	Package  string // rheology, thermal or portion
	Quantity string // what is compared, such as "viscosity"
	Unit     string // of the points
	// Claim says what the band of each point is: "half the last printed digit",
	// "the model's own 95 % band", "chart reading, 4 %".
	Claim string
	// Banded is set where the band is the model's own 95 % band, so that a few
	// points may fall outside. Otherwise every point must be inside.
	Banded bool
	// Floor, above 0, makes the set additive, such as one of temperatures: differences
	// take the place of the logarithms of ratios, and a mean difference up to the
	// Floor, in the Unit (K for degC), is no lean.
	Floor float64
	// Order says that a point is not a value but an order of two, 1 where it holds.
	Order bool
	// Left is the reason why no row of the table is compared yet.
	Left   string
	Points func(testdata.Row) ([]Point, error)
}

// A Point is one published value beside what the library says. A row that is
// not compared yields a Point with only Label and Skip, the reason.
type Point struct {
	Label                string
	Published, Predicted float64
	Low, High            float64 // where Published is expected
	Skip                 string
	// What the row says of itself; Run fills these in.
	Kind, Known, Origin, Assumed string
	Class                        string // of the set that the point belongs to; see ClassOf
}

// Inside reports whether the published value lies in the band.
func (p Point) Inside() bool { return p.Low <= p.Published && p.Published <= p.High }

// Near returns a point whose band is the predicted value plus or minus abs.
func Near(label string, published, predicted, abs float64) Point {
	return Point{Label: label, Published: published, Predicted: predicted, Low: predicted - abs, High: predicted + abs}
}

// NearRel returns a point whose band is plus or minus the fraction rel of the
// predicted value.
func NearRel(label string, published, predicted, rel float64) Point {
	return Near(label, published, predicted, rel*math.Abs(predicted))
}

// Same returns a point that agrees only if the two are equal.
func Same(label string, published, predicted float64) Point {
	return Near(label, published, predicted, 0)
}

// Skip returns a point that is not compared, and why.
func Skip(label, reason string) Point { return Point{Label: label, Skip: reason} }

// A Result is a Check carried out.
type Result struct {
	Check
	Source string // the table's first source
	Mark   string // A, B or C of a timed measurement, else empty
	Points []Point
}

// All lists every check, by package.
func All() []Check {
	return slices.Concat(
		rheologyLiquids, dairyMore, honeyMore, rheologyFlow, rheologyBlends, rheologyPours, rheologyLook,
		thermalAir, thermalConduction, thermalClocks, thermalCourses,
		portionShares, portionBounds, portionPieces, portionSets, portionDecisions, portionTakes,
	)
}

// ran keeps what was carried out, by table and quantity: the clocks take seconds.
var ran sync.Map

// Run carries out a check.
func Run(c Check) (Result, error) {
	key := c.Table + "\n" + c.Quantity
	if kept, ok := ran.Load(key); ok {
		r := kept.(Result)
		r.Points = slices.Clone(r.Points)
		return r, nil
	}
	r, err := carryOut(c)
	if err == nil {
		ran.Store(key, r)
		r.Points = slices.Clone(r.Points)
	}
	return r, err
}

func carryOut(c Check) (Result, error) {
	table, err := testdata.Load(c.Table)
	if err != nil {
		return Result{}, err
	}
	r := Result{Check: c, Source: table.Sources[0], Mark: table.Mark}
	for _, row := range table.Rows {
		points, err := c.points(row)
		if err != nil {
			return Result{}, fmt.Errorf("%s.csv:%d: %w", c.Table, row.Line, err)
		}
		if len(points) == 0 {
			return Result{}, fmt.Errorf("%s.csv:%d: neither compared nor skipped with a reason", c.Table, row.Line)
		}
		for _, p := range points {
			p.Kind, p.Known, p.Origin, p.Assumed = row.Kind(), row.Known(), row.Origin(), row.Assumed()
			p.Class = ClassOf(c.Table, row)
			r.Points = append(r.Points, p)
		}
	}
	return r, nil
}

func (c Check) points(r testdata.Row) ([]Point, error) {
	if c.Left != "" {
		return []Point{Skip(fmt.Sprintf("line %d", r.Line), c.Left)}, nil
	}
	return c.Points(r)
}

// Compared returns the points that were compared, without the skipped.
func (r Result) Compared() []Point {
	return slices.DeleteFunc(slices.Clone(r.Points), func(p Point) bool { return p.Skip != "" })
}
