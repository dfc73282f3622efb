package sets

import (
	"math"
	"slices"
)

// improve takes two sets at a time, loosens some of their pieces and puts them together
// again the best way, with free pieces to choose from.
func (b *build) improve(bound int64) {
	var have []int
	for want, s := range b.sets {
		if s != nil {
			have = append(have, want)
		}
	}
	idle := 0
	for b.t.work < b.t.Effort && idle < 60+40*len(have) && !b.reached(bound) {
		two := []int{have[b.rnd.IntN(len(have))], have[b.rnd.IntN(len(have))]}
		if b.t.Goal == Least {
			two[0] = b.lowest(have)
		}
		if two[0] == two[1] {
			two = two[:1]
		}
		pt, free := part{}, b.someFree()
		for _, want := range two {
			s := slices.Clone(b.sets[want])
			b.rnd.Shuffle(len(s), func(i, j int) { s[i], s[j] = s[j], s[i] })
			n := min(len(s), looseCount)
			pt.loose = append(pt.loose, s[:n]...)
			pt.tied = append(pt.tied, s[n:])
			pt.wants = append(pt.wants, b.t.Wants[want])
		}
		pt.loose = append(pt.loose, free...)
		if got := b.t.part(pt); got != nil && b.gains(two, got) {
			for k := range two {
				b.put(two[k], nil)
			}
			for k, want := range two {
				b.put(want, got[k])
			}
			idle = 0
			continue
		}
		idle++
		b.t.work += len(pt.loose)
	}
}

// someFree draws free pieces: most of them valuable.
func (b *build) someFree() []int {
	var out []int
	for _, order := range b.x.order {
		var free []int
		for _, i := range order {
			if !b.used[i] {
				if free = append(free, i); len(free) >= 40 {
					break
				}
			}
		}
		n := min(len(free), 10/len(b.x.order)+1)
		for k := range n {
			j := k + b.rnd.IntN(len(free)-k)
			if k < n/2 {
				j = k
			}
			free[k], free[j] = free[j], free[k]
		}
		out = append(out, free[:n]...)
	}
	return out
}

func (b *build) lowest(have []int) int {
	low, at := int64(math.MaxInt64), 0
	for _, want := range have {
		if s, _ := b.t.valueOf(b.sets[want], b.t.Wants[want]); s < low {
			low, at = s, want
		}
	}
	return at
}

// gains reports whether new sets for some wants are better than those that stand.
func (b *build) gains(wants []int, got [][]int) bool {
	var score, off [2]int64
	least := [2]int64{math.MaxInt64, math.MaxInt64}
	for k, want := range wants {
		for side, pieces := range [2][]int{b.sets[want], got[k]} {
			s, d := b.t.valueOf(pieces, b.t.Wants[want])
			score[side], off[side], least[side] = score[side]+s, off[side]+d, min(least[side], s)
		}
	}
	if b.t.Goal == Least && least[0] != least[1] {
		return least[1] > least[0]
	}
	return b.t.better(score[1], off[1], score[0], off[0])
}
