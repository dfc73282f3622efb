package apportion

import (
	"math/bits"

	"example.org/honestplate/portion/internal/top"
)

// largestRemainder shares by largest remainder within bounds.
//
// Every quota total x v / sum of v is rounded down, or to its bound, and the
// units left go to the largest fractions. That is how the US House was shared in
// 1880 with one seat at least for every state. If the bounds take or leave more
// than such rounding can absorb, the quotas of the zones that no bound holds are
// rescaled alike first: q = clamp(k v, low, high) with one k for all, so that the
// quotas sum to the total; then rounding never meets a bound.
func (p parties) largestRemainder() []int64 {
	got := make([]int64, len(p.weight))
	if p.weightSum == 0 {
		copy(got, p.low) // checked: the minima are the total
		return got
	}
	if p.round(got, nil, uint64(p.total), p.weightSum) {
		return got
	}
	held, units, weight := p.boundQuotas()
	p.round(got, held, units, weight)
	return got
}

// round sets got to the quotas weight x units/weightSum, rounded within bounds;
// parties held stay as they are. It reports whether the total came out.
func (p parties) round(got []int64, held []bool, units, weightSum uint64) bool {
	left := p.total
	var fractions []fraction
	for i, w := range p.weight {
		if held != nil && held[i] {
			got[i] = p.low[i]
			left -= got[i]
			continue
		}
		hi, lo := bits.Mul64(w, units)
		q, rest := bits.Div64(hi, lo, weightSum) // w is at most weightSum: fits
		floor := int64(q)
		got[i] = min(max(floor, p.low[i]), p.high[i])
		left -= got[i]
		if rest > 0 && floor >= p.low[i] && floor < p.high[i] {
			if fractions == nil {
				fractions = make([]fraction, 0, len(p.weight)-i)
			}
			fractions = append(fractions, fraction{rest, p.claims[i].Weight, i})
		}
	}
	if left < 0 || left > int64(len(fractions)) {
		return false
	}
	top.Select(fractions, int(left), fraction.before)
	for _, f := range fractions[:left] {
		got[f.party]++
	}
	return true
}

// A fraction is what rounding down took from a party, in parts of the weights'
// sum.
type fraction struct {
	rest   uint64
	weight float64 // as given
	party  int
}

// before orders fractions: the largest first, ties to the larger weight, then to
// the earlier party.
func (f fraction) before(g fraction) bool {
	if f.rest != g.rest {
		return f.rest > g.rest
	}
	if f.weight != g.weight {
		return f.weight > g.weight
	}
	return f.party < g.party
}
