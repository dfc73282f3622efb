package sets

import (
	"cmp"
	"math/bits"
	"slices"

	"example.org/honestplate/portion/internal/decimal"
)

// exact packs a family: any packing of as many sets as can be, the rarest pieces first,
// then the best one, then the first of its equals. Where the family does not hold all
// permitted sets, nothing is proven.
func (t *tray) exact(family []set, all bool, most int) Answer {
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
	m, proven, best, x, lifted := min(most, len(family)), all, packing{}, (*price)(nil), true
	if all {
		most = m
	}
	for ; m > 0; m-- {
		x = t.newPrice(m)
		p := t.newPacker(x, family, rarest)
		p.byGoal()
		done := p.run(anything, m, 2)
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
	if t.Goal == Least {
		best, lifted = t.lift(x, family, rarest, m, best)
		family = atLeast(family, best.least())
	}
	valued := slices.Clone(pieces)
	slices.SortStableFunc(valued, func(a, b int) int { return cmp.Compare(x.value[b], x.value[a]) })
	p := t.newPacker(x, family, valued)
	p.byGoal()
	p.best = best
	done := p.run(improve, m, 2)
	best = p.best
	bound := best.score
	switch {
	case t.Goal == Least && lifted:
		bound = best.least()
	case t.Goal == Least:
		bound = min(highest(family), decimal.FloorDiv(t.scoreBound(x, family, m), int64(m)))
	case !done || t.Goal == Closest:
		bound = max(bound, t.scoreBound(x, family, m))
	}
	if !all {
		bound = t.boundOf(x, m)
	}
	first := false
	if done = done && lifted && proven; done {
		p := t.newPacker(x, family, pieces)
		p.inOrder()
		p.best = best
		p.run(equal, m, 1)
		best, first = p.best, p.found
	}
	return t.answer(best, most, bound, done, first)
}

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
		done := p.run(anything, m, 2)
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
