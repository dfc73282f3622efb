package sets

import "math"

// byUnion tries to better a build union by union: the pieces first, then how to part
// them, sets built one by one. It returns what is known about the score.
func (b *build) byUnion(m int, bound int64) int64 {
	t, open := b.t, int64(math.MinInt64) // the score of a union that was not parted, and may be
	done, reach := t.unionsOf(b.x, ^uint64(0)<<(maxBits-len(t.mass)), m, t.remaining(2), func(bound int64) bool {
		score, off, _ := b.totals()
		return t.better(bound, 0, score, off)
	}, func(mask uint64) bool {
		var score int64
		own := members(mask)
		for _, i := range own {
			score += t.Score[i]
		}
		if have, _, _ := b.totals(); score <= have {
			return t.work < t.Effort
		}
		p := Problem{Goal: Exist, Effort: partEffort, Groups: make([]Span, len(t.Groups))}
		for _, i := range own {
			p.Mass, p.Score = append(p.Mass, t.Mass[i]), append(p.Score, t.Score[i])
			for g := t.groupOf(i); g < len(t.Groups); g++ {
				p.Groups[g].To++
				if g+1 < len(t.Groups) {
					p.Groups[g+1].From++
				}
			}
		}
		for want, s := range b.sets {
			if s != nil {
				p.Wants = append(p.Wants, t.Wants[want])
			}
		}
		small := newTray(&p)
		a := small.solve()
		t.work += small.work
		if a.Number < m {
			open = max(open, score)
			return t.work < t.Effort
		}
		k := 0
		for want, s := range b.sets {
			if s != nil {
				b.put(want, nil)
			}
		}
		for want := range b.sets {
			if k < m && (b.t.Wants[want].Counts != nil) {
				set := a.Sets[k]
				for j, at := range set {
					set[j] = own[at]
				}
				b.put(want, set)
				k++
			}
		}
		return true
	})
	have, _, _ := b.totals()
	if done {
		reach = have
	}
	return min(bound, max(reach, open, have))
}
