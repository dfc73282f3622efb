// Package published compares the library with the published values in testdata.
// It is the one place where a table's row is turned into a prediction: the
// packages' own tests fail on a row that disagrees, and the agreement program
// prints the same results as a table.
package published

import (
	"fmt"
	"math"
	"slices"

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
	Points func(testdata.Row) ([]Point, error)
}

// A Point is one published value beside what the library says. A row that is
// not compared yields a Point with only Label and Skip, the reason.
type Point struct {
	Label                string
	Published, Predicted float64
	Low, High            float64 // where Published is expected
	Skip                 string
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
	Known  string // the weakest flag among the compared rows
	Points []Point
}

// All lists every check, by package.
func All() []Check {
	return slices.Concat(
		rheologyLiquids, rheologyFlow, rheologyBlends, rheologyPours,
		thermalAir, thermalConduction, thermalClocks,
		portionShares, portionBounds, portionPieces,
	)
}

// Run carries out a check.
func Run(c Check) (Result, error) {
	table, err := testdata.Load(c.Table)
	if err != nil {
		return Result{}, err
	}
	r := Result{Check: c, Source: table.Sources[0], Known: "read"}
	weakness := []string{"read", "computed", "memory"}
	for _, row := range table.Rows {
		points, err := c.Points(row)
		if err != nil {
			return Result{}, fmt.Errorf("%s.csv:%d: %w", c.Table, row.Line, err)
		}
		if len(points) == 0 {
			return Result{}, fmt.Errorf("%s.csv:%d: neither compared nor skipped with a reason", c.Table, row.Line)
		}
		for _, p := range points {
			if p.Skip == "" && slices.Index(weakness, row.Known()) > slices.Index(weakness, r.Known) {
				r.Known = row.Known()
			}
		}
		r.Points = append(r.Points, points...)
	}
	return r, nil
}

// Compared returns the points that were compared, without the skipped.
func (r Result) Compared() []Point {
	return slices.DeleteFunc(slices.Clone(r.Points), func(p Point) bool { return p.Skip != "" })
}

// Failures lists, in words, what contradicts the check's claim: each point
// outside its band, or for a banded check the share inside if below 90 %.
func (r Result) Failures() []string {
	var out []string
	points := r.Compared()
	if len(points) == 0 {
		return []string{r.Table + ": no row is compared"}
	}
	inside := 0
	for _, p := range points {
		if p.Inside() {
			inside++
			continue
		}
		out = append(out, fmt.Sprintf("%s, %s: published %.6g %s, predicted %.6g, band %.6g..%.6g (%s)",
			r.Table, p.Label, p.Published, r.Unit, p.Predicted, p.Low, p.High, r.Claim))
	}
	if r.Banded && float64(inside) >= 0.9*float64(len(points)) {
		return nil
	}
	return out
}

// Failures carries out every check of a package and lists what disagrees.
func Failures(pkg string) ([]string, error) {
	var out []string
	found := false
	for _, c := range All() {
		if c.Package != pkg {
			continue
		}
		found = true
		r, err := Run(c)
		if err != nil {
			return nil, err
		}
		out = append(out, r.Failures()...)
	}
	if !found {
		return nil, fmt.Errorf("no check for package %q", pkg)
	}
	return out, nil
}
