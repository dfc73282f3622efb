package sets

import "slices"

// easy returns the most disjoint sets there are where a set is one piece of one group, the
// best first, or two, and whether that is so. The lightest piece left and the heaviest make
// a pair if they may: where other pairs hold them, their partners fit each other as well.
// If both weigh too little the lightest fits none, if too much the heaviest.
func (t *tray) easy() (sets [][]int, known bool) {
	if len(t.Groups) != 1 || t.Groups[0].Count != 1 && t.Groups[0].Count != 2 {
		return nil, false
	}
	t.work += len(t.mass)
	if t.Groups[0].Count == 1 {
		for i, w := range t.mass {
			if w >= t.lo && w <= t.hi {
				sets = append(sets, []int{i})
			}
		}
		slices.SortStableFunc(sets, func(a, b []int) int {
			score, off := t.valueOf(a)
			other, otherOff := t.valueOf(b)
			return t.compare(score, off, other, otherOff)
		})
		return sets, true
	}
	order := t.byMass(t.Groups[0])
	for i, k := 0, len(order)-1; i < k; {
		switch sum := t.mass[order[i]] + t.mass[order[k]]; {
		case sum < t.lo:
			i++
		case sum > t.hi:
			k--
		default:
			sets = append(sets, []int{min(order[i], order[k]), max(order[i], order[k])})
			i, k = i+1, k-1
		}
	}
	return sets, true
}

// best is an answer of sets that are known to be the best.
func (t *tray) best(sets [][]int) Answer {
	b := build{t: t, sets: sets}
	a := b.answer(-1, 0)
	a.Most, a.Bound, a.Proven, a.First = len(sets), a.Score, true, true
	if t.Goal == Least {
		a.Bound = a.Least
	}
	return a
}
