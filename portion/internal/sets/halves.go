package sets

import (
	"math"

	"example.org/honestplate/portion/internal/subset"
)

// halves parts a union into two permitted sets whose totals are closest to what is wanted,
// of equals the first in stated order; nil if there is no way.
func (t *tray) halves(mask uint64) []uint64 {
	pieces := members(mask)
	all := t.massOf(pieces)
	low, high := max(t.lo, all-t.hi, 0), min(t.hi, all-t.lo)
	if low > high {
		return nil
	}
	r := t.reach(pieces, t.widest(), high)
	best, off := uint64(0), int64(math.MaxInt64)
	for sum := low; sum <= high; sum++ {
		if !r.Has(sum) {
			continue
		}
		d := t.off(sum) + t.off(all-sum)
		if d > off {
			continue
		}
		half := maskOf(r.first(sum))
		half = max(half, mask&^half) // the one with the earliest piece
		if d < off || half > best {
			best, off = half, d
		}
	}
	if off == math.MaxInt64 {
		return nil
	}
	return []uint64{best, mask &^ best}
}

// A reach lists the totals that some pieces of a tray make with its counts.
type reach struct {
	*subset.Reach
	pieces []int
}

// reach lists the totals up to most of some pieces, in order of group: with the counts of
// the groups, or with another count of the only one.
func (t *tray) reach(pieces []int, count int, most int64) reach {
	masses, groups := make([]int64, len(pieces)), make([]subset.Group, len(t.Groups))
	for k, i := range pieces {
		masses[k] = t.mass[i]
	}
	k := 0
	for g, sp := range t.Groups {
		groups[g] = subset.Group{From: k, Count: sp.Count}
		for k < len(pieces) && pieces[k] < sp.To {
			k++
		}
		groups[g].To = k
	}
	if len(groups) == 1 {
		groups[0].Count = count
	}
	words := int(most/64) + 1
	t.work += (len(pieces) + 1) * (count + 1) * words / 8
	return reach{subset.NewReach(masses, groups, words, true), pieces}
}

// first reads back the first set in order that makes a sum.
func (r reach) first(sum int64) []int {
	set := []int{} // also where it is empty there is one
	for _, at := range r.Set(sum) {
		set = append(set, r.pieces[at])
	}
	return set
}

// within reads back a set whose sum is within a window; nil if there is none.
func (r reach) within(low, high int64) []int {
	for sum := max(low, 0); sum <= high; sum++ {
		if r.Has(sum) {
			return r.first(sum)
		}
	}
	return nil
}
