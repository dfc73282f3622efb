package sets

import (
	"sort"

	"example.org/honestplate/portion/internal/subset"
)

// maxBits is how many pieces a listed family can tell apart.
const maxBits = 64

// A set is a permitted set. The first piece is the highest bit, so that of
// two sets the larger number comes earlier in stated order.
type set struct {
	mask       uint64
	score, off int64
}

func bit(piece int) uint64 { return 1 << (63 - piece) }

// A lister lists the permitted sets.
type lister struct {
	*tray
	order [][]int   // by group: positions by mass, light to heavy
	sums  [][]int64 // by group: sums of the first masses in that order
	out   []set
	limit int // of sets
	until int // of work
	cut   bool
}

// family lists the permitted sets, each of at least one piece, up to a number, and
// whether all are there.
func (t *tray) family(limit, effort int) ([]set, bool) {
	l := &lister{tray: t, limit: limit, until: t.work + effort}
	for _, sp := range t.Groups {
		order := t.byMass(sp)
		sums := make([]int64, len(order)+1)
		for i, k := range order {
			sums[i+1] = sums[i] + t.mass[k]
		}
		l.order, l.sums = append(l.order, order), append(l.sums, sums)
	}
	l.group(0, 0, 0, 0)
	return l.out, !l.cut
}

// group goes on with group g.
func (l *lister) group(g int, mask uint64, sum, score int64) {
	switch {
	case g == len(l.order):
		if mask == 0 || sum < l.lo || sum > l.hi {
			return
		}
		if len(l.out) >= l.limit {
			l.cut = true
			return
		}
		l.out = append(l.out, set{mask, score, l.off(sum)})
	case l.Groups[g].Count == subset.AnyCount:
		l.free(g, len(l.order[g]), mask, sum, score)
	default:
		l.choose(g, 0, l.Groups[g].Count, mask, sum, score)
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
	need := l.lo - sum - (sums[n] - sums[n-left+1]) - l.most[g+1]
	if need > 0 {
		j += sort.Search(n-j, func(i int) bool { return l.mass[order[j+i]] >= need })
	}
	room := l.hi - sum - l.least[g+1]
	for i := j; i <= n-left && !l.cut; i++ {
		l.work++
		if sums[i+left]-sums[i] > room {
			return
		}
		if l.work > l.until {
			l.cut = true
			return
		}
		k := order[i]
		l.choose(g, i+1, left-1, mask|bit(k), sum+l.mass[k], score+l.Scores[k])
	}
}

// free takes or leaves the pieces of a group below index j of its order, the heaviest
// first.
func (l *lister) free(g, j int, mask uint64, sum, score int64) {
	if l.work++; l.work > l.until {
		l.cut = true
	}
	if l.cut || sum+l.least[g+1] > l.hi || sum+l.sums[g][j]+l.most[g+1] < l.lo {
		return
	}
	if j == 0 {
		l.group(g+1, mask, sum, score)
		return
	}
	k := l.order[g][j-1]
	l.free(g, j-1, mask|bit(k), sum+l.mass[k], score+l.Scores[k])
	l.free(g, j-1, mask, sum, score)
}
