package sets

import (
	"cmp"
	"slices"
)

const (
	looseCount = 4  // pieces of a set that are chosen exactly
	loosePool  = 18 // of so many
	tries      = 4
)

// one builds a set for a want, one of several still open, out of free pieces in order of
// value by group, or returns nil: all but a few pieces come evenly from those that the
// open wants can take, near the mean that is still wanted, and the last few exactly.
func (b *build) one(want, open int, order [][]int) []int {
	t, w := b.t, b.t.Wants[want]
	total := 0
	for g, n := range w.Counts {
		if n > len(order[g]) {
			return nil
		}
		total += max(n, 0)
	}
	for try := range tries {
		var tied, loose []int
		mass, left, spare := w.Target, total, looseCount+try/2
		for g, n := range w.Counts {
			held := map[int]bool{}
			for k := 0; (n == Any || k < n) && k < len(order[g]); k++ {
				if n != Any && left <= spare || n == Any && mass < looseCount*t.Mass[order[g][k]] {
					break
				}
				start, mean := k, mass
				if n != Any {
					start, mean = k*min(open, len(order[g])/n), mass/int64(left)
				}
				pick := nearest(t.Mass, order[g], start, 6+4*try, mean, held)
				held[pick] = true
				tied, mass, left = append(tied, pick), mass-t.Mass[pick], left-1
			}
			if n == Any || len(held) < n {
				loose = append(loose, b.pool(order[g], held, loosePool)...)
			}
			t.work += len(held)
		}
		if got := t.part(part{[]Want{w}, [][]int{tied}, loose[:min(len(loose), maxBits-4)]}); got != nil {
			return got[0]
		}
		if t.work > t.Effort && try > 0 {
			return nil
		}
	}
	return nil
}

// nearest returns, of so many pieces not held from a start on, wrapping round, the one
// whose mass is nearest to the mean.
func nearest(mass []int64, order []int, start, n int, mean int64, held map[int]bool) int {
	pick := -1
	for j := range order {
		i := order[(start+j)%len(order)]
		if held[i] {
			continue
		}
		if pick < 0 || gap(mass[i], mean) < gap(mass[pick], mean) {
			pick = i
		}
		if n--; n == 0 {
			break
		}
	}
	return pick
}

// pool takes n pieces that are not held: half of them the most valuable, the others
// spread over the masses of the rest.
func (b *build) pool(order []int, held map[int]bool, n int) []int {
	var out, rest []int
	for _, i := range order {
		if held[i] {
			continue
		}
		if len(out) < n/2 {
			out = append(out, i)
		} else if rest = append(rest, i); len(rest) >= 512 {
			break
		}
	}
	slices.SortFunc(rest, func(i, j int) int { return cmp.Or(cmp.Compare(b.t.mass[i], b.t.mass[j]), cmp.Compare(i, j)) })
	k := min(n-len(out), len(rest))
	for j := range k {
		out = append(out, rest[j*len(rest)/k])
	}
	return out
}
