package subset

import (
	"cmp"
	"math/bits"
	"slices"

	"example.org/honestplate/portion/internal/top"
)

// A relaxation prices mass: with slope price a step, every piece has the reduced
// score r = v*scale - price*w - (its group's threshold). Dropping the window of
// totals, the best set is then simply the count pieces of highest r in each group.
// A set's score times scale is bound minus the |r| of every piece where it differs
// from that set, minus price times how far its total lies inside the window's end.
type relaxation struct {
	scale, price int64
	r            []int64
	base         []bool // the relaxed set
	sum          int64  // its total mass
	bound        int64  // its value: scale times an upper bound of the score
}

// A rated piece is a position with its priced score.
type rated struct {
	r   int64
	pos int
}

// relax finds the price with the least bound by bisection: the bound is convex in
// the price and its slope is the window's end less the relaxed set's total. Prices
// are whole numbers over scale, so the bound is exact whatever price is found.
func (in *instance) relax() *relaxation {
	var maxV, maxW int64
	for i := range in.v {
		maxV, maxW = max(maxV, in.v[i], -in.v[i]), max(maxW, in.w[i])
	}
	// scale and price times n pieces, and so any sum of |r|, stay under 2^60.
	n := int64(len(in.w))
	shift := min(20, max(0, 58-bits.Len64(uint64(n*maxV))))
	room := bits.Len64(uint64(max(maxW, in.hi/n+1))) + bits.Len64(uint64(n))
	most := min(2*maxV<<shift+1, int64(1)<<max(0, 58-room))
	x := &relaxation{scale: 1 << shift}
	buf := make([]rated, len(in.w))
	low, high := -most, most
	if _, sum := in.top(buf, x.scale, 0); sum > in.hi {
		low = 0
	} else if sum < in.lo {
		high = 0
	} else {
		low, high = 0, 0
	}
	for high-low > 1 {
		mid := low + (high-low)/2
		if _, sum := in.top(buf, x.scale, mid); sum > in.end(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	valueLow, _ := in.top(buf, x.scale, low)
	valueHigh, _ := in.top(buf, x.scale, high)
	x.price = high
	if valueLow+low*in.end(low) < valueHigh+high*in.end(high) {
		x.price = low
	}
	x.fill(in, buf)
	return x
}

// Price returns the price of a step of mass with about the least bound of the score: both
// over a scale, so that scale times a score less price times a mass is whole.
func (p Problem) Price() (scale, price int64) {
	x := (&instance{w: p.Masses, v: p.Scores, groups: p.Groups, lo: p.Low, hi: p.High}).relax()
	return x.scale, x.price
}

// end is the end of the window that a price pulls towards.
func (in *instance) end(price int64) int64 {
	if price >= 0 {
		return in.hi
	}
	return in.lo
}

// top orders buf so that each group's first count entries are its best at the
// price, and returns their value and mass.
func (in *instance) top(buf []rated, scale, price int64) (value, sum int64) {
	for i := range buf {
		buf[i] = rated{in.v[i]*scale - price*in.w[i], i}
	}
	for _, g := range in.groups {
		part := buf[g.From:g.To]
		if g.Count == AnyCount {
			for _, e := range part {
				if e.r > 0 {
					value, sum = value+e.r, sum+in.w[e.pos]
				}
			}
			continue
		}
		top.Select(part, g.Count, rated.before)
		for _, e := range part[:g.Count] {
			value, sum = value+e.r, sum+in.w[e.pos]
		}
	}
	return value, sum
}

// fill sets the reduced scores, the relaxed set and the bound at x.price.
func (x *relaxation) fill(in *instance, buf []rated) {
	value, sum := in.top(buf, x.scale, x.price)
	x.bound, x.sum = value+x.price*in.end(x.price), sum
	x.r, x.base = make([]int64, len(buf)), make([]bool, len(buf))
	for _, g := range in.groups {
		part := buf[g.From:g.To]
		if g.Count == AnyCount {
			for _, e := range part {
				x.r[e.pos], x.base[e.pos] = e.r, e.r > 0
			}
			continue
		}
		// Any threshold between the worst chosen and the best left out will do;
		// the middle leaves both sides equally free.
		threshold := int64(0)
		switch {
		case g.Count == 0:
			threshold = slices.MaxFunc(part, byScore).r
		case g.Count == len(part):
			threshold = slices.MinFunc(part, byScore).r
		default:
			worst := slices.MinFunc(part[:g.Count], byScore).r
			best := slices.MaxFunc(part[g.Count:], byScore).r
			threshold = best + (worst-best)/2
		}
		for j, e := range part {
			x.r[e.pos], x.base[e.pos] = e.r-threshold, j < g.Count
		}
	}
}

// cost is the reduced score that a change of a piece takes.
func (x *relaxation) cost(i int) int64 { return max(x.r[i], -x.r[i]) }

// nearer orders pieces by how near they are to their threshold, then by position.
func (x *relaxation) nearer(a, b int) int {
	return cmp.Or(cmp.Compare(x.cost(a), x.cost(b)), cmp.Compare(a, b))
}

func byScore(a, b rated) int { return cmp.Compare(a.r, b.r) }

// better orders by score, then by the earlier position.
func (a rated) before(b rated) bool {
	return a.r > b.r || (a.r == b.r && a.pos < b.pos)
}
