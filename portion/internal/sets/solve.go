package sets

import "example.org/honestplate/portion/internal/decimal"

// solve finds the most sets and the best of them.
func (t *tray) solve() Answer {
	a := Answer{Most: t.mostSets()}
	switch {
	case a.Most == 0:
		return t.answer(packing{}, 0, 0, true, true)
	case len(t.mass) <= maxBits:
		a = t.small(a.Most)
		if m := len(a.Sets); t.Goal == Least && !a.Proven && m > 0 && t.partable(len(t.mass), 8*t.Effort) {
			t.boundTotal(m)
			a.Bound = min(a.Bound, decimal.FloorDiv(t.total, int64(m)))
		}
	}
	if !a.Proven && a.Most > 0 {
		return t.further(a)
	}
	return a
}

// boundTotal bounds the total score of m sets by the best that parting finds.
func (t *tray) boundTotal(m int) {
	other := *t
	other.Problem = &Problem{Problem: t.Problem.Problem, Sets: t.Sets}
	best, bound, _ := other.byParting(m, t.Effort/4)
	t.work, t.bounded, t.total = other.work, m, max(bound, best.score)
}

// listed is how many sets are listed rather than asked union by union.
const listed = 200

// small answers for up to 64 pieces: sets are listed where they are few; where they are
// many and the total score counts, or none does, they are parted.
func (t *tray) small(most int) Answer {
	parts := t.partable(len(t.mass), 8*t.Effort) && (t.Goal == Total || t.Goal == Exist)
	limit := max(t.Effort/64, 1000)
	if parts {
		limit = listed
	}
	family, all := t.family(limit, t.Effort/4)
	switch {
	case parts && !all:
		return t.manySets(most)
	case !all: // some of the sets, for a start
		t.until = t.work + partEffort
	}
	return t.exact(family, all, most)
}

// manySets finds sets union by union or, where only their number counts, one by one.
func (t *tray) manySets(most int) Answer {
	proven, effort := true, t.Effort/(2*most)
	for m := most; m > 0; m-- {
		best, bound, done := packing{}, int64(0), false
		if t.Goal == Exist {
			best, done = t.spared(m, effort)
		} else {
			best, bound, done = t.byParting(m, effort)
		}
		if proven = proven && done; best.found {
			return t.answer(best, most, max(bound, best.score), proven, proven)
		}
		if proven {
			most = m - 1
		}
	}
	return t.answer(packing{}, most, 0, proven, proven)
}

// further improves an answer that is not proven, or builds one from nothing, with what
// effort is left.
func (t *tray) further(a Answer) Answer {
	b := t.newBuild(max(len(a.Sets), 1))
	for _, s := range a.Sets {
		b.put(len(b.sets), s)
	}
	if len(a.Sets) < a.Most {
		other := t.newBuild(a.Most)
		other.greedy(a.Most)
		other.grow(a.Most)
		if len(other.sets) > len(b.sets) {
			b = other
			b.x = t.newPrice(len(b.sets))
			a.Bound = t.boundOf(b.x, len(b.sets))
		}
	}
	if len(b.sets) == 0 {
		return a
	}
	if t.Goal != Exist {
		b.improve(a.Bound)
	}
	return b.answer(a.Most, a.Bound)
}
