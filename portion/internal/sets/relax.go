package sets

import (
	"cmp"
	"math/bits"
	"slices"

	"example.org/honestplate/portion/internal/decimal"
)

// A price is a Lagrangian relaxation of all sets together (Geoffrion 1974, Lagrangean
// relaxation for integer programming; from memory): m sets hold m times the counts and
// weigh m windows together, and mass costs price a step. The best pieces by priced score
// then bound the score of any m disjoint sets. It is used where all wants are alike;
// elsewhere the price is 0.
type price struct {
	t            *tray
	scale, price int64
	value        []int64 // of each piece, priced
	order        [][]int // by group: positions, the most valuable first
}

// sampled is how many pieces the search for the price looks at.
const sampled = 4096

// unpriced is the relaxation without its search, for counting pieces.
func (t *tray) unpriced() *price {
	x := &price{t: t, scale: 1, value: t.Score, order: make([][]int, len(t.Groups))}
	all := make([]int, len(t.mass))
	for i := range all {
		all[i] = i
	}
	for g, sp := range t.Groups {
		x.order[g] = all[sp.From:sp.To]
	}
	return x
}

// newPrice finds the price with about the least bound for m sets.
func (t *tray) newPrice(m int) *price {
	var maxV, maxW int64
	for i := range t.mass {
		maxV, maxW = max(maxV, t.Score[i], -t.Score[i]), max(maxW, t.mass[i])
	}
	n := int64(len(t.mass))
	x := &price{t: t, scale: 1 << min(12, max(0, 58-bits.Len64(uint64(n*maxV))))}
	x.value = make([]int64, n)
	if len(t.classes) == 1 && t.classes[0].possible() && m > 0 {
		c := &t.classes[0]
		room := 58 - bits.Len64(uint64(max(n*maxW, int64(m)*max(c.hi, 1))))
		most := min(2*maxV*x.scale+1, int64(1)<<max(0, room))
		low, high := -most, most
		for high-low > 1 {
			mid := low + (high-low)/2
			if x.heavier(m, mid) {
				low = mid
			} else {
				high = mid
			}
		}
		x.price = high
	}
	for i := range x.value {
		x.value[i] = x.scale*t.Score[i] - x.price*t.mass[i]
	}
	for _, sp := range t.Groups {
		order := make([]int, 0, sp.To-sp.From)
		for i := sp.From; i < sp.To; i++ {
			order = append(order, i)
		}
		slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(x.value[b], x.value[a]), cmp.Compare(a, b)) })
		x.order = append(x.order, order)
	}
	t.work += len(x.value)
	return x
}

// heavier reports whether the best pieces at a price weigh more than m sets may, so that
// the price should rise. Large trays are judged by a sample, evenly through each group:
// any price gives a bound, a good one a tight bound.
func (x *price) heavier(m int, price int64) bool {
	t, c := x.t, &x.t.classes[0]
	end := int64(m) * c.hi
	if price < 0 {
		end = int64(m) * c.lo
	}
	stride := len(t.mass)/sampled + 1
	var sum int64
	type priced struct{ value, mass int64 }
	var all []priced
	for g, sp := range t.Groups {
		all = all[:0]
		for i := sp.From; i < sp.To; i += stride {
			all = append(all, priced{x.scale*t.Score[i] - price*t.mass[i], t.mass[i]})
		}
		need := c.want.Counts[g] * m / stride
		if c.want.Counts[g] == Any {
			need = len(all)
		}
		slices.SortFunc(all, func(a, b priced) int { return cmp.Or(cmp.Compare(b.value, a.value), cmp.Compare(a.mass, b.mass)) })
		for _, p := range all[:min(need, len(all))] {
			if c.want.Counts[g] == Any && p.value <= 0 {
				break
			}
			sum += p.mass
		}
		t.work += len(all)
	}
	return sum*int64(stride) > end
}

// paid is what r sets give back for their mass.
func (x *price) paid(r int) int64 {
	if x.price == 0 {
		return 0
	}
	c := &x.t.classes[0]
	if x.price > 0 {
		return x.price * c.hi * int64(r)
	}
	return x.price * c.lo * int64(r)
}

// bound returns what r more sets can score at the most with the pieces for which free
// holds, and false if there are too few pieces. need is the number of pieces of each
// group, or Any.
func (x *price) bound(r int, need []int, free func(int) bool) (int64, bool) {
	// Where wants differ, need is a most, not a must.
	sum, alike := x.paid(r), len(x.t.classes) == 1
	for g, order := range x.order {
		left := need[g]
		for _, i := range order {
			if left == 0 || (left < 0 || !alike) && x.value[i] <= 0 {
				break
			}
			if free(i) {
				sum += x.value[i]
				left--
			}
		}
		if left > 0 && alike {
			return 0, false
		}
	}
	return decimal.FloorDiv(sum, x.scale), true
}

// needs returns how many pieces of each group r sets hold at the most, the wants with
// the most first; Any where a count is free.
func (t *tray) needs(r int) []int {
	out := make([]int, len(t.Groups))
	for g := range out {
		var counts []int
		for _, w := range t.Wants {
			if w.Counts[g] == Any {
				out[g] = Any
			}
			counts = append(counts, w.Counts[g])
		}
		if out[g] == Any {
			continue
		}
		slices.Sort(counts)
		for _, n := range counts[len(counts)-r:] {
			out[g] += n
		}
	}
	return out
}
