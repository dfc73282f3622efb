package sets

import (
	"cmp"
	"math/bits"
	"slices"
)

// A packing is disjoint sets of a family with their value.
type packing struct {
	sets       []set
	score, off int64
	found      bool
}

// compare is below 0 where score and off are preferred to another's by the goal.
func (t *tray) compare(score, off, toScore, toOff int64) int {
	looks, near := cmp.Compare(toScore, score), cmp.Compare(off, toOff)
	if t.Goal == Closest {
		return cmp.Or(near, looks)
	}
	return cmp.Or(looks, near)
}

func (t *tray) better(score, off, thanScore, thanOff int64) bool {
	return t.compare(score, off, thanScore, thanOff) < 0
}

// packed returns the packing of some sets.
func packed(sets []set) packing {
	out := packing{sets: slices.Clone(sets), found: true}
	for _, s := range sets {
		out.score, out.off = out.score+s.score, out.off+s.off
	}
	return out
}

// least is the lowest score of a set.
func (p packing) least() int64 { return slices.MinFunc(p.sets, byScore).score }

func byScore(a, b set) int { return cmp.Compare(a.score, b.score) }

// stated is the stated order of sets.
func stated(a, b set) int { return cmp.Compare(b.mask, a.mask) }

// answer lists the sets of a packing in stated order.
func (t *tray) answer(p packing, most int, bound int64, proven, first bool) Answer {
	a := Answer{Most: most, Score: p.score, Off: p.off, Bound: bound, Proven: proven, First: first}
	for _, s := range slices.SortedFunc(slices.Values(p.sets), stated) {
		a.Sets = append(a.Sets, members(s.mask))
	}
	if len(a.Sets) > 0 {
		a.Least = p.least()
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

// maskOf is the set of some pieces.
func maskOf(pieces []int) (mask uint64) {
	for _, i := range pieces {
		mask |= bit(i)
	}
	return mask
}
