package sets

import "slices"

// exist reports whether all the sets wanted are found, whatever they score.
func (t *tray) exist() bool {
	if pairs, known := t.easy(); known {
		return len(pairs) >= t.Sets
	}
	if t.mostSets() < t.Sets {
		return false
	}
	b := t.newBuild(t.Sets)
	b.greedy(t.Sets)
	if len(b.sets) < t.Sets && len(t.mass) <= maxBits {
		if a := t.small(t.Sets); len(a.Sets) == t.Sets || a.Proven {
			return len(a.Sets) == t.Sets
		}
	}
	b.grow(t.Sets)
	return len(b.sets) == t.Sets
}

// reachWords bounds the memory of a list of totals while sets are built, 8 bytes a word.
const reachWords = 1 << 18

// anyOf looks for a permitted set of pieces of one group, the earliest as far as may be: at
// first all but a few of those that it needs stand. known is unset where it cannot tell
// whether there is one.
func (t *tray) anyOf(order []int) (set []int, known bool) {
	const few, spare = 8, 24
	count := t.Groups[0].Count
	if len(order) < count {
		return nil, true
	}
	most := max(count-few, 0)
	for _, try := range [3][2]int{{most, spare}, {most, len(order)}, {0, len(order)}} {
		stand, pieces := try[0], order[:min(len(order), count+try[1])]
		mass := t.massOf(pieces[:stand])
		set, known = t.these(pieces[stand:], count-stand, t.lo-mass, t.hi-mass)
		if set != nil {
			return append(slices.Clone(pieces[:stand]), set...), true
		}
		if known && stand == 0 && len(pieces) == len(order) {
			break
		}
	}
	return nil, known
}

// these looks for so many of some pieces whose mass is within a window; where that is most
// of them, for those to leave out.
func (t *tray) these(pieces []int, count int, low, high int64) (set []int, known bool) {
	rest := len(pieces) - count
	if high < 0 || rest >= count && !t.partable(len(pieces), count, high, reachWords) {
		return nil, high < 0
	}
	if rest >= count {
		return t.reach(pieces, count, high).within(low, high), true
	}
	// The latest go first.
	slices.Reverse(pieces)
	mass := t.massOf(pieces)
	out, known := t.these(pieces, rest, mass-high, mass-low)
	slices.Reverse(pieces)
	if out == nil {
		return nil, known
	}
	return slices.DeleteFunc(slices.Clone(pieces), func(i int) bool { return slices.Contains(out, i) }), true
}
