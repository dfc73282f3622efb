package apportion

// quotaWork bounds total x claims of the quota method, about a second's work.
const quotaWork = 100_000_000

// byQuota shares by the quota method of Balinski and Young: one unit at a time, to
// the largest v/(a+1) among those whose units are below their quota v h/sum of v
// at the current total h. If bounds leave nobody below quota, all below their
// maximum may take the unit.
func (p parties) byQuota() []int64 {
	got := make([]int64, len(p.weight))
	h := int64(0)
	for i, low := range p.low {
		got[i] = low
		h += low
	}
	for h++; h <= p.total; h++ {
		best, bestIn := unit{party: -1}, false
		for i, w := range p.weight {
			if got[i] >= p.high[i] {
				continue
			}
			in := mul64(uint64(got[i]), p.weightSum).compare(mul64(w, uint64(h))) < 0
			u := p.unit(Jefferson, i, got[i])
			if best.party < 0 || in && !bestIn || in == bestIn && u.before(best) {
				best, bestIn = u, in
			}
		}
		got[best.party]++
	}
	return got
}
