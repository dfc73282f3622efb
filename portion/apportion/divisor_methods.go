package apportion

import "example.org/honestplate/portion/internal/top"

// divide shares by a divisor method.
//
// Instead of giving out unit by unit, it brackets the common divisor: for a
// multiplier k, the reciprocal of the divisor, everyone gets k v rounded the
// method's way, within bounds. One k gives at most the total, one at least; the
// few units between the two are ranked exactly. Floating point only finds the
// bracket: it is widened by far more than it can err, so the result is exact.
func (p parties) divide(m Method) []int64 {
	got := make([]int64, len(p.weight))
	left := p.total
	for i := range got {
		got[i] = p.low[i]
		left -= p.low[i]
	}
	if left == 0 {
		return got
	}
	if m.firstFree() && !p.firstUnits(got, &left) {
		return got
	}
	// widen exceeds every rounding error of a multiplier's rounding, which is a
	// few times 2^-53, and moves the largest count, 2^40, by far less than one.
	const widen = 1.0 / (1 << 48)
	low, high := p.multipliers(m)
	less := p.rounded(m, low*(1-2*widen))
	more := p.rounded(m, high*(1+2*widen))
	open := int64(0)
	for i := range got {
		less[i] = max(less[i], got[i])
		left -= less[i] - got[i]
		got[i] = less[i]
		open += more[i] - less[i]
	}
	between := make([]unit, 0, open)
	for i := range got {
		for a := less[i]; a < more[i]; a++ {
			between = append(between, p.unit(m, i, a))
		}
	}
	top.Select(between, int(left), unit.before)
	for _, u := range between[:left] {
		got[u.party]++
	}
	return got
}

// firstUnits raises the minima of all parties of weight above 0 to one unit, the
// heaviest first, and reports whether units remain.
func (p parties) firstUnits(got []int64, left *int64) bool {
	var wanting int64
	for i := range got {
		if p.low[i] == 0 && p.high[i] > 0 {
			wanting++
		}
	}
	if wanting < *left {
		for i := range got {
			if p.low[i] == 0 && p.high[i] > 0 {
				got[i], p.low[i] = 1, 1
			}
		}
		*left -= wanting
		return true
	}
	first := make([]fraction, 0, wanting)
	for i := range got {
		if p.low[i] == 0 && p.high[i] > 0 {
			first = append(first, fraction{0, p.weight[i], i})
		}
	}
	top.Select(first, int(*left), fraction.before)
	for _, f := range first[:*left] {
		got[f.party] = 1
	}
	return false
}

// A unit is one unit's claim: the party that would take it as its next.
type unit struct {
	num, den u128 // v/d(a), or its square
	weight   uint64
	party    int
}

// unit returns the claim of a party that already holds a units.
func (p parties) unit(m Method, party int, a int64) unit {
	num, den := m.priority(p.weight[party], uint64(a))
	return unit{num, den, p.weight[party], party}
}

// before orders units: the largest v/d(a) first, ties to the larger weight, then
// to the earlier party. Two units of one party never tie.
func (u unit) before(v unit) bool {
	if c := compareProducts(u.num, v.den, v.num, u.den); c != 0 {
		return c > 0
	}
	if u.weight != v.weight {
		return u.weight > v.weight
	}
	return u.party < v.party
}
