package sets

import (
	"cmp"

	"example.org/honestplate/portion/internal/decimal"
	"example.org/honestplate/portion/internal/subset"
)

// A price is the Lagrangian relaxation of all sets together: m sets hold m times the
// counts and weigh m windows together, and mass costs price a step ([subset.Problem.Price]).
// The best pieces by priced score then bound the score of any m disjoint sets.
type price struct {
	t            *tray
	scale, price int64
	value        []int64 // of each piece, priced
	order        [][]int // by group: positions, the most valuable first
}

// sampled is about how many pieces the search for the price looks at: any price gives a
// bound, a good one a tight bound.
const sampled = 4096

// newPrice finds the price with about the least bound for m sets.
func (t *tray) newPrice(m int) *price {
	stride := len(t.mass)/sampled + 1
	p := subset.Problem{Low: int64(m) * t.lo / int64(stride), High: int64(m) * t.hi / int64(stride)}
	for _, sp := range t.Groups {
		g := subset.Group{From: len(p.Masses), Count: sp.Count}
		if g.Count != subset.AnyCount {
			g.Count = sp.Count * m / stride
		}
		for i := sp.From; i < sp.To; i += stride {
			p.Masses, p.Scores = append(p.Masses, t.mass[i]), append(p.Scores, t.Scores[i])
		}
		g.To = len(p.Masses)
		p.Groups = append(p.Groups, g)
	}
	x := &price{t: t, value: make([]int64, len(t.mass))}
	x.scale, x.price = p.Price()
	for ; stride > 1; stride /= 2 { // sums over more pieces than were looked at
		x.scale, x.price = max(x.scale/2, 1), x.price/2
	}
	for i := range x.value {
		x.value[i] = x.scale*t.Scores[i] - x.price*t.mass[i]
	}
	for _, sp := range t.Groups {
		x.order = append(x.order, ordered(sp, func(a, b int) int { return cmp.Compare(x.value[b], x.value[a]) }))
	}
	t.work += len(x.value)
	return x
}

// paid is what r sets give back for their mass.
func (x *price) paid(r int) int64 {
	if x.price > 0 {
		return x.price * x.t.hi * int64(r)
	}
	return x.price * x.t.lo * int64(r)
}

// bound returns what r more sets can score at the most with the pieces for which free
// holds, and false if there are too few pieces.
func (x *price) bound(r int, free func(int) bool) (int64, bool) {
	sum := x.paid(r)
	for g, order := range x.order {
		left := x.t.Groups[g].Count * r // below 0 where any number will do
		for _, i := range order {
			if left == 0 || left < 0 && x.value[i] <= 0 {
				break
			}
			if free(i) {
				sum += x.value[i]
				left--
			}
		}
		if left > 0 {
			return 0, false
		}
	}
	return decimal.FloorDiv(sum, x.scale), true
}
