package sets

import "math"

// improve takes two sets at a time, loosens some of their pieces and puts them together
// again the best way, with free pieces to choose from.
func (b *build) improve(bound int64) {
	idle := 0
	for done := b.reached(bound); !done && b.t.work < b.t.Effort && idle < 60+40*len(b.sets); {
		two := []int{b.rnd.IntN(len(b.sets)), b.rnd.IntN(len(b.sets))}
		if b.t.Goal == Least {
			two[0] = b.lowest()
		}
		if two[0] == two[1] {
			two = two[:1]
		}
		pt := part{loose: b.someFree()}
		for _, k := range two {
			loose, tied := b.loosen(b.sets[k])
			pt.loose, pt.tied = append(pt.loose, loose...), append(pt.tied, tied)
		}
		b.t.work += len(pt.loose)
		got := b.t.part(pt)
		if got == nil || !b.gains(two, got) {
			idle++
			continue
		}
		for _, at := range two {
			b.put(at, nil)
		}
		for k, at := range two {
			b.put(at, got[k])
		}
		idle, done = 0, b.reached(bound)
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

func (b *build) lowest() int {
	low, at := int64(math.MaxInt64), 0
	for k, set := range b.sets {
		if s, _ := b.t.valueOf(set); s < low {
			low, at = s, k
		}
	}
	return at
}

// gains reports whether new sets in some places are better than those that stand.
func (b *build) gains(places []int, got [][]int) bool {
	var score, off [2]int64
	least := [2]int64{math.MaxInt64, math.MaxInt64}
	for k, at := range places {
		for side, pieces := range [2][]int{b.sets[at], got[k]} {
			s, d := b.t.valueOf(pieces)
			score[side], off[side], least[side] = score[side]+s, off[side]+d, min(least[side], s)
		}
	}
	if b.t.Goal == Least && least[0] != least[1] {
		return least[1] > least[0]
	}
	return b.t.better(score[1], off[1], score[0], off[0])
}
