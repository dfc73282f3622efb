package sets

import (
	"slices"

	"example.org/honestplate/portion/internal/subset"
)

// tries is how often each set is taken for another one to grow from.
const tries = 8

// grow looks for one more set in the pieces of one that stands and the free ones: some
// pieces of either stay, a few are put together anew.
func (b *build) grow(most int) {
	for more := true; more && len(b.sets) < most; {
		more = false
		for try := 0; try < tries*len(b.sets) && !more && b.t.work < b.t.Effort; try++ {
			have := try % len(b.sets)
			if got := b.t.part(b.loosened(have)); got != nil {
				b.put(have, nil)
				b.put(have, got[0])
				b.put(len(b.sets), got[1])
				more = true
			}
		}
	}
}

// loosened is a part of two sets: of one that stands some pieces come loose; of a new one
// all but as many are tied, near the mean that it wants.
func (b *build) loosened(have int) part {
	t := b.t
	loose, old := b.loosen(b.sets[have])
	free := b.free(40)
	b.rnd.Shuffle(len(free), func(i, j int) { free[i], free[j] = free[j], free[i] })
	left, mass := 0, t.Target
	for _, sp := range t.Groups {
		left += max(sp.Count, 0)
	}
	var tied []int
	for _, sp := range t.Groups {
		if sp.Count == subset.AnyCount {
			continue
		}
		for range sp.Count - min(sp.Count, max(1, looseCount/len(t.Groups))) {
			at, mean := -1, mass/int64(left)
			for k, i := range free {
				if i >= sp.From && i < sp.To && (at < 0 || gap(t.Masses[i], mean) < gap(t.Masses[free[at]], mean)) {
					at = k
				}
			}
			if at < 0 {
				break
			}
			tied, mass, left = append(tied, free[at]), mass-t.Masses[free[at]], left-1
			free = slices.Delete(free, at, at+1)
		}
	}
	return part{[][]int{old, tied}, append(loose, free[:min(len(free), max(loosePool-len(loose), 0))]...)}
}

// free returns up to n free pieces of the most valuable of each group.
func (b *build) free(n int) []int {
	var out []int
	for _, order := range b.x.order {
		k := 0
		for _, i := range order {
			if k > n/len(b.x.order) {
				break
			}
			if !b.used[i] {
				out = append(out, i)
				k++
			}
		}
	}
	return out
}
