package sets

import "slices"

// grow looks for one more set in the pieces of one that stands and the free ones: some
// pieces of either stay, a few are put together anew.
func (b *build) grow(most int) {
	for want := range b.sets {
		if b.sets[want] != nil || b.number() >= most {
			continue
		}
		for try := 0; try < 2*tries && b.sets[want] == nil; try++ {
			for have := range b.sets {
				if b.sets[have] == nil || b.t.work > b.t.Effort {
					continue
				}
				if got := b.t.part(b.loosened(have, want)); got != nil {
					b.put(have, nil)
					b.put(have, got[0])
					b.put(want, got[1])
					break
				}
			}
		}
	}
}

// loosened is a part of two wants: of a set that stands some pieces, drawn at random,
// come loose; of the new one all but as many are tied, near the mean that it wants.
func (b *build) loosened(have, want int) part {
	t := b.t
	old := slices.Clone(b.sets[have])
	b.rnd.Shuffle(len(old), func(i, j int) { old[i], old[j] = old[j], old[i] })
	n := min(len(old), looseCount)
	free := b.free(40)
	b.rnd.Shuffle(len(free), func(i, j int) { free[i], free[j] = free[j], free[i] })
	w := t.Wants[want]
	left, mass := 0, w.Target
	for _, c := range w.Counts {
		left += max(c, 0)
	}
	var tied []int
	for g, sp := range t.Groups {
		for c := w.Counts[g]; c > 0 && left > looseCount; c-- {
			at, mean := -1, mass/int64(left)
			for k, i := range free {
				if i >= sp.From && i < sp.To && (at < 0 || gap(t.Mass[i], mean) < gap(t.Mass[free[at]], mean)) {
					at = k
				}
			}
			if at < 0 {
				break
			}
			tied, mass, left = append(tied, free[at]), mass-t.Mass[free[at]], left-1
			free = slices.Delete(free, at, at+1)
		}
	}
	loose := append(slices.Clone(old[:n]), free[:min(len(free), loosePool-n)]...)
	return part{[]Want{t.Wants[have], w}, [][]int{old[n:], tied}, loose}
}

// free returns up to n free pieces of the most valuable of each group.
func (b *build) free(n int) []int {
	var out []int
	for _, order := range b.x.order {
		k := 0
		for _, i := range order {
			if k < n/len(b.x.order)+1 && !b.used[i] {
				out = append(out, i)
				k++
			}
		}
	}
	return out
}
