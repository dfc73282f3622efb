package sets

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// solve finds the most sets and the best of them.
func (t *tray) solve() Answer {
	most := t.mostSets()
	if most == 0 {
		return t.answer(packing{}, 0, 0, true, true)
	}
	if len(t.mass) <= maxBits {
		if family, all := t.family(t.Effort / 4); all {
			a := t.exact(family, most)
			if !a.Proven && a.Most > 0 {
				a = t.further(a)
			}
			return a
		}
	}
	return t.built(most)
}

// further improves an answer that the exact search could not prove, with what effort is
// left, and keeps what is known of it.
func (t *tray) further(a Answer) Answer {
	b := t.newBuild(t.newPrice(max(a.Number, 1)))
	for want, s := range a.Sets {
		if s != nil {
			b.put(want, s)
		}
	}
	if a.Number < a.Most {
		other := t.newBuild(t.newPrice(a.Most))
		other.greedy(other.x.value)
		other.grow(a.Most)
		if other.number() > a.Number {
			b, a.Number = other, other.number()
			b.x = t.newPrice(a.Number)
			a.Bound = t.boundOf(b.x, a.Number)
		}
	}
	if a.Number == 0 {
		return a
	}
	if t.Goal != Exist {
		b.improve(a.Bound)
	}
	return b.answer(a.Most, a.Bound)
}

// boundOf bounds the goal of m sets by the price alone.
func (t *tray) boundOf(x *price, m int) int64 {
	bound := t.scoreBound(x, nil, m)
	if t.Goal == Least {
		return floorDiv(bound, int64(m))
	}
	return bound
}

// mostSets is a bound on the number of sets, by pieces and by mass.
func (t *tray) mostSets() int {
	able := 0
	for _, c := range t.classes {
		if c.possible() {
			able += len(c.wants)
		}
	}
	if len(t.classes) > 1 {
		return able
	}
	heavy := make([][]int64, len(t.Groups))
	for g, sp := range t.Groups {
		heavy[g] = slices.Sorted(slices.Values(t.mass[sp.From:sp.To]))
	}
	return 1 + lastTrue(able-1, func(k int) bool { return t.roomFor(k+1, heavy) })
}

// lastTrue returns the last of 0..n-1... for which ok holds, where it holds from 0 up to
// some number and not beyond; -1 where never.
func lastTrue(n int, ok func(int) bool) int {
	low, high := -1, n+1
	for high-low > 1 {
		mid := low + (high-low)/2
		if ok(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// roomFor reports whether m alike sets have pieces enough, and mass, by extremes: light
// ones for the lower end of all windows together and heavy ones for the upper.
func (t *tray) roomFor(m int, sorted [][]int64) bool {
	c := &t.classes[0]
	var least, most int64
	for g, mass := range sorted {
		count := c.want.Counts[g]
		if count == Any {
			for _, w := range mass {
				most += w
			}
			continue
		}
		if count*m > len(mass) {
			return false
		}
		for _, w := range mass[:count*m] {
			least += w
		}
		for _, w := range mass[len(mass)-count*m:] {
			most += w
		}
	}
	return least <= int64(m)*c.hi && most >= int64(m)*c.lo
}

// exact packs a family that holds every permitted set: any packing of as many sets as
// can be, the rarest pieces first, then the best one, then the first of its equals.
func (t *tray) exact(family []set, most int) Answer {
	useful, sharers := uint64(0), make([]int, len(t.mass))
	for _, s := range family {
		useful |= s.mask
		for m := s.mask; m != 0; m &= m - 1 {
			sharers[63-bits.TrailingZeros64(m)]++
		}
	}
	var pieces []int
	for i := range t.mass {
		if useful&bit(i) != 0 {
			pieces = append(pieces, i)
		}
	}
	rarest := slices.Clone(pieces)
	slices.SortStableFunc(rarest, func(a, b int) int { return cmp.Compare(sharers[a], sharers[b]) })
	m, proven, best := min(most, len(family)), true, packing{}
	for most = m; m > 0; m-- {
		p := t.newPacker(t.unpriced(), family, rarest)
		p.byGoal()
		done := p.seek(anything, m)
		if best = p.best; best.found {
			break
		}
		if proven = proven && done; proven {
			most = m - 1
		}
	}
	if m == 0 {
		return t.answer(packing{}, most, 0, proven, proven)
	}
	if t.Goal == Exist {
		return t.answer(best, most, best.score, proven, false)
	}
	x, lifted := t.newPrice(m), true
	if t.Goal == Least {
		best, lifted = t.lift(x, family, rarest, m, best)
		family = atLeast(family, best.least())
	}
	valued := slices.Clone(pieces)
	slices.SortStableFunc(valued, func(a, b int) int { return cmp.Compare(x.value[b], x.value[a]) })
	p := t.newPacker(x, family, valued)
	p.byGoal()
	p.best = best
	done := p.seek(improve, m)
	best = p.best
	bound := best.score
	switch {
	case t.Goal == Least && lifted:
		bound = best.least()
	case t.Goal == Least:
		bound = min(t.highest(family), floorDiv(t.scoreBound(x, family, m), int64(m)))
	case !done || t.Goal == Closest:
		bound = max(bound, min(p.reach, t.scoreBound(x, family, m)))
	}
	first := false
	if done = done && lifted && proven; done {
		p := t.newPacker(x, family, pieces)
		p.inOrder()
		p.best = best
		p.run(equal, m, t.remaining(1))
		best, first = p.best, p.found
	}
	return t.answer(best, most, bound, done, first)
}

// directly is the effort of a direct search before unions are asked.
const directly = 200_000

// seek looks for m sets in a mode with a part of the effort, directly and union by union,
// and reports whether the search came to its end.
func (p *packer) seek(mode mode, m int) bool {
	if !p.t.unionable() || p.t.Goal == Closest {
		return p.run(mode, m, p.t.remaining(2))
	}
	floor := int64(math.MinInt64)
	if p.floor > math.MinInt64/4096 {
		floor = int64(m) * p.floor
	}
	if p.run(mode, m, min(directly, p.t.remaining(4))) {
		return true
	}
	p.x = p.t.newPrice(m)
	return p.unions(mode, m, p.t.remaining(3), floor) || p.run(mode, m, p.t.remaining(3))
}

// remaining is a part of the effort that is left, and a little where none is.
func (t *tray) remaining(part int) int { return max((t.Effort-t.work)/part, 2000) }

// lift raises the score of the least set of a packing as far as it goes, and reports
// whether that is proven.
func (t *tray) lift(x *price, family []set, order []int, m int, best packing) (packing, bool) {
	for {
		family = atLeast(family, best.least()+1)
		if len(family) < m {
			return best, true
		}
		p := t.newPacker(x, family, order)
		p.byGoal()
		p.floor = best.least() + 1
		done := p.seek(anything, m)
		if !p.best.found {
			return best, done
		}
		best = p.best
	}
}

// atLeast returns the sets with no lower a score.
func atLeast(family []set, score int64) []set {
	return slices.DeleteFunc(slices.Clone(family), func(s set) bool { return s.score < score })
}

func (t *tray) highest(family []set) int64 {
	high := int64(math.MinInt64)
	for _, s := range family {
		high = max(high, s.score)
	}
	return high
}

// scoreBound is what m sets can score at the most.
func (t *tray) scoreBound(x *price, family []set, m int) int64 {
	bound, _ := x.bound(m, t.needs(m), func(int) bool { return true })
	if len(family) > 0 {
		bound = min(bound, int64(m)*t.highest(family))
	}
	return bound
}

// answer gives a packing its places among the wants: of wants that are alike the first
// takes the first set.
func (t *tray) answer(p packing, most int, bound int64, proven, first bool) Answer {
	a := Answer{Sets: make([][]int, len(t.Wants)), Number: len(p.sets), Most: most, Score: p.score, Off: p.off, Bound: bound, Proven: proven, First: first}
	if a.Number == 0 {
		return a
	}
	a.Least = p.least()
	sets := slices.SortedFunc(slices.Values(p.sets), stated)
	given := make([]int, len(t.classes))
	for _, s := range sets {
		at := t.classes[s.class].wants[given[s.class]]
		given[s.class]++
		a.Sets[at] = members(s.mask)
	}
	return a
}

// members lists the pieces of a set.
func members(mask uint64) []int {
	var out []int
	for ; mask != 0; mask &^= 1 << (63 - bits.LeadingZeros64(mask)) {
		out = append(out, bits.LeadingZeros64(mask))
	}
	return out
}
