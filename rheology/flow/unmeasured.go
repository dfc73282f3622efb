package flow

import (
	"cmp"
	"math"
	"slices"
)

// unmeasured names the constants of a fit that its points do not reach.
func unmeasured(f Fitted, points []Point) []string {
	byRate := func(a, b Point) int { return cmp.Compare(a.ShearRate, b.ShearRate) }
	byStress := func(a, b Point) int { return cmp.Compare(a.Stress, b.Stress) }
	first, last := slices.MinFunc(points, byRate), slices.MaxFunc(points, byRate)
	var out []string
	yield := math.Inf(1)
	switch m := f.Model.(type) {
	case Carreau:
		if m.Time*first.ShearRate > 1 {
			out = append(out, "viscosity at rest", "time")
		}
		if m.Infinite < m.Stress(last.ShearRate)/last.ShearRate/2 {
			out = append(out, "viscosity at high rate")
		}
	case Bingham:
		yield = m.Yield
	case Casson:
		yield = m.Yield
	case HerschelBulkley:
		yield = m.Yield
	}
	if yield < slices.MinFunc(points, byStress).Stress/2 {
		out = append(out, "yield stress")
	}
	return out
}
