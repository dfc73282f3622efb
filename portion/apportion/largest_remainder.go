package apportion

import (
	"math/bits"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/top"
)

// largestRemainder shares by one rule, with bounds or without: the quotas are
// clamp(k v, low, high) with one k for all, so that they sum to the total; they are
// rounded down, and the units left go to the largest fractions. A quota that a bound
// holds is whole, so rounding never meets a bound.
func (p parties) largestRemainder() []int64 {
	got := make([]int64, len(p.weight))
	if p.weightSum == 0 {
		copy(got, p.low) // checked: the minima are the total
		return got
	}
	held, units, weight := p.boundQuotas()
	p.round(got, held, units, weight)
	return got
}

// vinton shares by largest remainder of quotas that bounds do not rescale.
func (p parties) vinton() ([]int64, error) {
	got := make([]int64, len(p.weight))
	if p.weightSum == 0 {
		copy(got, p.low)
		return got, nil
	}
	if !p.round(got, nil, uint64(p.total), p.weightSum) {
		return nil, &honestplate.RefusedError{
			Field: "Claims", Kind: honestplate.ErrInfeasible,
			Reason: "the bounds take or leave more than the rounding of the quotas can make up",
			Advice: "share by LargestRemainder, which scales the other quotas",
		}
	}
	return got, nil
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
			fractions = append(fractions, fraction{rest, w, i})
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
	weight uint64
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
