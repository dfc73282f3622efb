package sets

// solve finds the most sets and the best of them.
func (t *tray) solve() Answer {
	most := t.mostSets()
	if most == 0 {
		return t.answer(packing{}, 0, 0, true, true)
	}
	if len(t.mass) <= maxBits && t.many() {
		a, done := t.manySets(most)
		switch {
		case done:
			return a
		case a.Number == most:
			return t.further(a)
		}
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

// manySets finds sets union by union, with half the effort, and reports whether the answer
// is proven.
func (t *tray) manySets(most int) (Answer, bool) {
	for m := most; m > 0; m-- {
		best, bound, done := t.byParting(m, t.Effort/(2*most))
		if !done || best.found {
			return t.answer(best, m, max(bound, best.score), done, done), done
		}
	}
	return t.answer(packing{}, 0, 0, true, true), true
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
