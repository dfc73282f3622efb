package flow

import "math"

// unmeasured names the constants of a fit that its points do not reach.
func unmeasured(f Fitted, points []Point) []string {
	first, last := points[0], points[0]
	least := math.Inf(1)
	for _, p := range points {
		if p.ShearRate < first.ShearRate {
			first = p
		}
		if p.ShearRate > last.ShearRate {
			last = p
		}
		least = min(least, p.Stress)
	}
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
	if yield < least/2 {
		out = append(out, "yield stress")
	}
	return out
}
