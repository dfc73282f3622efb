package apportion

// boundQuotas finds which parties a bound holds when all quotas are clamp(k v, low,
// high) with one k and sum to the total. It sets low = high = the bound for them
// and returns them with the units and the weight that are left for the others:
// k is units/weightSum.
//
// Method: find k for the free parties, see whether minima or maxima are missed by
// more in sum, hold those, repeat: the missed bounds on that side stay met for
// good, because k can only move towards them (Bitran and Hax, Disaggregation and
// Resource Allocation Using Convex Knapsack Problems with Bounded Variables,
// Management Science 27 (1981) 431-441; from memory).
func (p parties) boundQuotas() (held []bool, units, weightSum uint64) {
	held = make([]bool, len(p.weight))
	left := p.total
	for i, w := range p.weight {
		if p.low[i] == p.high[i] {
			held[i] = true
			left -= p.low[i]
			continue
		}
		weightSum += w
	}
	for weightSum > 0 {
		units = uint64(max(left, 0))
		var under, over u128 // by how much bounds are missed, times weightSum
		for i, w := range p.weight {
			if held[i] {
				continue
			}
			quota := mul64(w, units)
			if low := mul64(uint64(p.low[i]), weightSum); quota.compare(low) < 0 {
				under = under.add(low.sub(quota))
			}
			if high := mul64(uint64(p.high[i]), weightSum); quota.compare(high) > 0 {
				over = over.add(quota.sub(high))
			}
		}
		if under == (u128{}) && over == (u128{}) {
			break
		}
		side := under.compare(over)
		sum := weightSum
		for i, w := range p.weight {
			if held[i] {
				continue
			}
			quota := mul64(w, units)
			switch {
			case side >= 0 && quota.compare(mul64(uint64(p.low[i]), sum)) < 0:
				p.high[i] = p.low[i]
			case side <= 0 && quota.compare(mul64(uint64(p.high[i]), sum)) > 0:
				p.low[i] = p.high[i]
			default:
				continue
			}
			held[i] = true
			left -= p.low[i]
			weightSum -= w
		}
	}
	return held, units, weightSum
}
