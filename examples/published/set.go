package published

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/honestplate/testdata"
	"gonum.org/v1/gonum/stat"
)

// Fewest points of a set whose lean and whose sharpness say anything.
const (
	fewestForLean      = 2
	fewestForSharpness = 8
)

// CourseShare is the least share of the readings of a course that must lie inside
// their bands.
const CourseShare = 0.85

// A Set is the compared points of a check that are of one kind and one class, and what
// they say together.
type Set struct {
	Check
	Mark        string // of a timed measurement
	Kind, Class string
	Points      []Point
	Outside     int
	Origins     int // independent sources
	// Lean is the mean of ln(published/likely), or of the difference of an additive
	// set: above 0 where nature lies above the likely value. S is the standard
	// deviation about it.
	Lean, S float64
	// Sharpness is the mean of ln(High/Low), or of High - Low, over 3.92 S: 1 where the
	// band is as wide as the scatter, more where it is wider. NaN where it has no
	// meaning: a point alone, no band, a band without an end.
	Sharpness float64
}

// Sets divides the compared points by kind and class, in the order of the classes' limits
// and else in that of the table.
func (r Result) Sets() []Set {
	var sets []Set
	for _, p := range r.Compared() {
		i := slices.IndexFunc(sets, func(s Set) bool { return s.Kind == p.Kind && s.Class == p.Class })
		if i < 0 {
			i = len(sets)
			sets = append(sets, Set{Check: r.Check, Mark: r.Mark, Kind: p.Kind, Class: p.Class})
		}
		sets[i].Points = append(sets[i].Points, p)
	}
	slices.SortStableFunc(sets, func(a, b Set) int { return ranks[a.Class] - ranks[b.Class] })
	for i := range sets {
		sets[i].measure()
	}
	return sets
}

// Residual is ln(published/predicted), or the difference where the set is additive.
func (s Set) Residual(p Point) float64 {
	if s.Floor > 0 {
		return p.Published - p.Predicted
	}
	return math.Log(p.Published / p.Predicted)
}

// width is ln(High/Low), or the difference where the set is additive.
func (s Set) width(p Point) float64 {
	if s.Floor > 0 {
		return p.High - p.Low
	}
	if p.Low <= 0 {
		return math.NaN()
	}
	return math.Log(p.High / p.Low)
}

func (s *Set) measure() {
	var residuals, widths []float64
	origins := map[string]bool{}
	for _, p := range s.Points {
		if !p.Inside() {
			s.Outside++
		}
		origins[p.Origin] = true
		residuals = append(residuals, s.Residual(p))
		widths = append(widths, s.width(p))
	}
	s.Origins = len(origins)
	s.Lean, s.S = stat.Mean(residuals, nil), math.NaN()
	s.Sharpness = math.NaN()
	if len(residuals) > 1 {
		s.S = stat.StdDev(residuals, nil)
	}
	if w := stat.Mean(widths, nil); s.S > 0 && w > 0 && !math.IsInf(w, 1) {
		s.Sharpness = w / (3.92 * s.S)
	}
}

// Judged reports whether the set is held to the statistics of a 95 % band: it was
// measured, and the band is the model's own. The others must agree in full.
func (s Set) Judged() bool { return s.Banded && s.Kind == testdata.Measured && !s.Order }

// LeanLimit is the largest lean that is no miss: 5 %, or the Floor of an additive set,
// or twice the standard error.
func (s Set) LeanLimit() float64 {
	floor := 0.05
	if s.Floor > 0 {
		floor = s.Floor
	}
	return max(floor, 2*s.S/math.Sqrt(float64(len(s.Points))))
}

// Misses names what the set misses on: count, lean, sharpness, far; nothing where it
// misses nothing.
//
//   - A set that is not judged misses on count with its first point outside.
//   - The readings of a course hang together, so that no law of chance holds for their
//     number: it misses on count when less than CourseShare of them are inside.
//   - Any other misses on count beyond OutsideLimits, on lean beyond LeanLimit (from 2
//     points on), on sharpness outside 0.7..1.6 (from 8 points on: with fewer the
//     scatter itself is not known to that), and as far with a point that lies three
//     half bands from the likely value, where no chance puts it.
func (s Set) Misses() []string {
	var out []string
	n := len(s.Points)
	switch least, most := OutsideLimits(n); {
	case !s.Judged():
		if s.Outside > 0 {
			out = append(out, "count")
		}
		return out
	case s.Mark != "":
		if float64(n-s.Outside) < CourseShare*float64(n) {
			out = append(out, "count")
		}
		return out
	case s.Outside < least || s.Outside > most:
		out = append(out, "count")
	}
	if n >= fewestForLean && !(math.Abs(s.Lean) <= s.LeanLimit()) {
		out = append(out, "lean")
	}
	if n >= fewestForSharpness && (s.Sharpness < 0.7 || s.Sharpness > 1.6) {
		out = append(out, "sharpness")
	}
	if slices.ContainsFunc(s.Points, s.far) {
		out = append(out, "far")
	}
	return out
}

// far reports whether the point lies three half bands or more from the likely value,
// on its side of it.
func (s Set) far(p Point) bool {
	end := p
	end.Published = p.High
	if p.Published < p.Predicted {
		end.Published = p.Low
	}
	return math.Abs(s.Residual(p)) > 3*math.Abs(s.Residual(end))
}

// Name says which set it is.
func (s Set) Name() string {
	parts := []string{s.Table, s.Quantity}
	if s.Class != "" {
		parts = append(parts, s.Class)
	}
	if s.Kind != testdata.Measured {
		parts = append(parts, s.Kind)
	}
	return strings.Join(parts, ", ")
}

// String says what the set says, in a line.
func (s Set) String() string {
	unit := ""
	lean := fmt.Sprintf("%+.3f", s.Lean)
	if s.Floor > 0 {
		unit = " " + strings.ReplaceAll(s.Unit, "degC", "K")
	}
	return fmt.Sprintf("%s: %d points, %d outside, lean %s%s, s %.3f, sharpness %.2f",
		s.Name(), len(s.Points), s.Outside, lean, unit, s.S, s.Sharpness)
}
