package sets

import (
	"cmp"
	"slices"
	"sort"
)

// maxBits is how many pieces a listed family can tell apart.
const maxBits = 64

// A set is a permitted set of one class. The first piece is the highest bit, so that of
// two sets the larger number comes earlier in stated order.
type set struct {
	mask       uint64
	score, off int64
	class      int
}

func bit(piece int) uint64 { return 1 << (63 - piece) }

// A lister lists the permitted sets of a class.
type lister struct {
	t     *tray
	c     *class
	k     int
	order [][]int   // by group: positions by mass, light to heavy
	sums  [][]int64 // by group: sums of the first masses in that order
	out   []set
	limit int // of sets
	until int // of work
	cut   bool
}

// family lists the permitted sets of all classes, each at least one piece, and whether
// all are there.
func (t *tray) family(effort int) ([]set, bool) {
	l := &lister{t: t, limit: max(effort/16, 1000), until: t.work + effort}
	for _, sp := range t.Groups {
		order := make([]int, 0, sp.To-sp.From)
		for i := sp.From; i < sp.To; i++ {
			order = append(order, i)
		}
		slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(t.mass[a], t.mass[b]), cmp.Compare(a, b)) })
		sums := make([]int64, len(order)+1)
		for i, k := range order {
			sums[i+1] = sums[i] + t.mass[k]
		}
		l.order, l.sums = append(l.order, order), append(l.sums, sums)
	}
	for k := range t.classes {
		if l.c, l.k = &t.classes[k], k; l.c.possible() {
			l.group(0, 0, 0, 0)
		}
	}
	return l.out, !l.cut
}

// group goes on with group g.
func (l *lister) group(g int, mask uint64, sum, score int64) {
	switch {
	case g == len(l.order):
		if mask == 0 || sum < l.c.lo || sum > l.c.hi {
			return
		}
		if len(l.out) >= l.limit {
			l.cut = true
			return
		}
		l.out = append(l.out, set{mask, score, l.t.off(l.c, sum), l.k})
	case l.c.want.Counts[g] == Any:
		l.free(g, len(l.order[g]), mask, sum, score)
	default:
		l.choose(g, 0, l.c.want.Counts[g], mask, sum, score)
	}
}

// choose takes left more pieces of a group from index j of its order on.
func (l *lister) choose(g, j, left int, mask uint64, sum, score int64) {
	if left == 0 {
		l.group(g+1, mask, sum, score)
		return
	}
	order, sums := l.order[g], l.sums[g]
	n := len(order)
	// What must be added by the piece chosen now at the least, so that the heaviest
	// others still reach the window.
	need := l.c.lo - sum - (sums[n] - sums[n-left+1]) - l.c.most[g+1]
	if need > 0 {
		j += sort.Search(n-j, func(i int) bool { return l.t.mass[order[j+i]] >= need })
	}
	room := l.c.hi - sum - l.c.least[g+1]
	for i := j; i <= n-left && !l.cut; i++ {
		l.t.work++
		if sums[i+left]-sums[i] > room {
			return
		}
		if l.t.work > l.until {
			l.cut = true
			return
		}
		k := order[i]
		l.choose(g, i+1, left-1, mask|bit(k), sum+l.t.mass[k], score+l.t.Score[k])
	}
}

// free takes or leaves the pieces of a group below index j of its order, the heaviest
// first.
func (l *lister) free(g, j int, mask uint64, sum, score int64) {
	if l.t.work++; l.t.work > l.until {
		l.cut = true
	}
	if l.cut || sum+l.c.least[g+1] > l.c.hi || sum+l.sums[g][j]+l.c.most[g+1] < l.c.lo {
		return
	}
	if j == 0 {
		l.group(g+1, mask, sum, score)
		return
	}
	k := l.order[g][j-1]
	l.free(g, j-1, mask|bit(k), sum+l.t.mass[k], score+l.t.Score[k])
	l.free(g, j-1, mask, sum, score)
}
