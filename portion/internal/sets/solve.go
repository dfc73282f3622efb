package sets

import "example.org/honestplate/portion/internal/decimal"

// solve finds the most sets and the best of them.
func (t *tray) solve() Answer {
	a := Answer{Most: t.mostSets()}
	easy, known := t.easy()
	if known {
		a.Most = min(a.Most, len(easy))
	}
	switch {
	case a.Most == 0:
		return t.answer(packing{}, 0, 0, true, true)
	case known && t.Groups[0].Count == 1:
		return t.best(easy[:a.Most])
	case len(t.mass) <= maxBits:
		a = t.small(a.Most)
		if m := len(a.Sets); t.Goal == Least && !a.Proven && m > 0 && t.partable(len(t.mass), t.widest(), t.hi, 8*t.Effort) {
			t.boundTotal(m)
			a.Bound = min(a.Bound, decimal.FloorDiv(t.total, int64(m)))
		}
	}
	if !a.Proven && a.Most > 0 {
		return t.further(a, easy)
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
	parts := t.partable(len(t.mass), t.widest(), t.hi, 8*t.Effort) && (t.Goal == Total || t.Goal == Exist)
	limit := max(t.Effort/64, 1000)
	if parts {
		limit = listed
	}
	family, all := t.family(limit, t.Effort/4)
	switch {
	case parts && !all && t.Goal == Exist:
		found, done := t.spared(most, t.Effort/(2*most))
		return t.answer(found, most, 0, done, false)
	case parts && !all:
		return t.manySets(most)
	case !all: // some of the sets, for a start
		t.until = t.work + partEffort
	}
	return t.exact(family, all, most)
}

// manySets finds sets union by union.
func (t *tray) manySets(most int) Answer {
	proven, effort := true, t.Effort/(2*most)
	for m := most; m > 0; m-- {
		best, bound, done := t.byParting(m, effort)
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
func (t *tray) further(a Answer, easy [][]int) Answer {
	b := t.newBuild(a.Most)
	if len(a.Sets) < a.Most {
		b.greedy(a.Most)
		b.grow(a.Most)
		if len(b.sets) < a.Most && easy != nil {
			b.start(easy[:a.Most])
		}
	}
	more := len(b.sets) > len(a.Sets)
	if !more {
		b.start(a.Sets)
	}
	if len(b.sets) == 0 {
		return a
	}
	if len(b.sets) < a.Most {
		b.x = t.newPrice(len(b.sets))
	}
	if more {
		a.Bound = t.boundOf(b.x, len(b.sets))
	}
	b.improve(a.Bound)
	return b.answer(a.Most, a.Bound)
}
