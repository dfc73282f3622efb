package sets

import (
	"cmp"
	"math"
	"math/bits"
	"slices"
)

// A mode says which packing a packer looks for.
type mode int

const (
	improve  mode = iota // the best one, if better than the one it has
	anything             // the first one that it comes to
	equal                // the first one as good as the one it has
)

// A packer searches the packings of m sets of a family by branch and bound: pieces come
// one by one, each either leads a set or is left out, so that no packing is met twice. A
// table drops what comes to the same pieces with no better value.
type packer struct {
	t      *tray
	x      *price
	order  []int // pieces in the order of branching
	lead   [][]set
	after  []uint64 // by rank: the pieces from there on
	most   []int64  // by rank: the highest score of a set led from there on
	nigh   []int64  // by rank: the least distance of one
	table  *table
	until  int
	mode   mode
	found  bool // and that is the end, but for mode better
	spent  bool
	floor  int64 // anything: what each set scores at the least
	sorted bool  // the sets of a piece are in order of the goal
	stack  []set
	best   packing
}

// newPacker prepares the search in an order of pieces.
func (t *tray) newPacker(x *price, family []set, order []int) *packer {
	p := &packer{t: t, x: x, order: order}
	n := len(order)
	rank := make([]int, maxBits)
	p.after = make([]uint64, n+1)
	for r := n - 1; r >= 0; r-- {
		rank[order[r]] = r
		p.after[r] = p.after[r+1] | bit(order[r])
	}
	p.lead = make([][]set, n)
	for _, s := range family {
		r := n
		for m := s.mask; m != 0; m &= m - 1 {
			r = min(r, rank[63-bits.TrailingZeros64(m)])
		}
		p.lead[r] = append(p.lead[r], s)
	}
	p.most, p.nigh = make([]int64, n+1), make([]int64, n+1)
	p.most[n], p.nigh[n] = math.MinInt64/4096, math.MaxInt64/4096
	for r := n - 1; r >= 0; r-- {
		p.most[r], p.nigh[r] = p.most[r+1], p.nigh[r+1]
		for _, s := range p.lead[r] {
			p.most[r], p.nigh[r] = max(p.most[r], s.score), min(p.nigh[r], s.off)
		}
	}
	p.floor = math.MinInt64 / 4096
	t.work += len(family)
	return p
}

// byGoal orders the sets that a piece may lead: the best first, or in stated order.
func (p *packer) byGoal() {
	p.sorted = true
	for _, l := range p.lead {
		slices.SortFunc(l, func(a, b set) int {
			return cmp.Or(p.t.compare(a.score, a.off, b.score, b.off), stated(a, b))
		})
	}
}

func (p *packer) inOrder() {
	for _, l := range p.lead {
		slices.SortFunc(l, stated)
	}
}

// run searches for m sets in a mode with a part of the effort that is left, and reports
// whether the search came to its end.
func (p *packer) run(mode mode, m, part int) bool {
	p.mode = mode
	size := 0
	for _, l := range p.lead {
		size += len(l)
	}
	p.table = newTable(size)
	p.until = p.t.work + p.t.remaining(part)
	p.found, p.spent, p.stack = false, false, p.stack[:0]
	p.search(0, 0, m, 0, 0)
	return !p.spent
}

func (p *packer) search(rank int, taken uint64, r int, score, off int64) {
	if r == 0 {
		p.take(score, off)
		return
	}
	for ; rank < len(p.order); rank++ {
		if p.t.work++; p.t.work > p.until {
			p.spent = true
		}
		if p.spent || p.found {
			return
		}
		free := p.after[rank] &^ taken
		if free&bit(p.order[rank]) == 0 {
			continue
		}
		if !p.promising(rank, free, r, score, off) || p.table.seen(free, r, score, off, p.t) {
			return
		}
		for _, s := range p.lead[rank] {
			p.t.work++
			if p.sorted && p.hopeless(score+s.score+int64(r-1)*p.most[rank], off+s.off+int64(r-1)*p.nigh[rank]) {
				break
			}
			if s.mask&taken != 0 {
				continue
			}
			p.stack = append(p.stack, s)
			if p.mode == anything {
				p.search(rank+1, taken|s.mask, r-1, 0, 0)
			} else {
				p.search(rank+1, taken|s.mask, r-1, score+s.score, off+s.off)
			}
			p.stack = p.stack[:len(p.stack)-1]
			if p.spent || p.found {
				return
			}
		}
	}
}

// hopeless reports whether neither this set nor one after it leads to anything better,
// where sets are in order of the goal.
func (p *packer) hopeless(score, off int64) bool {
	if p.mode != improve || !p.best.found {
		return false
	}
	if p.t.Goal == Closest {
		return off > p.best.off
	}
	return score < p.best.score
}

// take notes the packing on the stack, if it is wanted.
func (p *packer) take(score, off int64) {
	if p.mode == equal && (score != p.best.score || off != p.best.off) ||
		p.mode == improve && p.best.found && !p.t.better(score, off, p.best.score, p.best.off) {
		return
	}
	p.best, p.found = packed(p.stack), p.mode != improve
}

// promising reports whether r more sets of the free pieces can still be better than
// the best, or as good where that is sought.
func (p *packer) promising(rank int, free uint64, r int, score, off int64) bool {
	p.t.work += 4
	bound, ok := p.x.bound(r, func(i int) bool { return free&bit(i) != 0 })
	if !ok {
		return false
	}
	if p.most[rank] == p.most[len(p.order)] {
		return false // no set is led from here on
	}
	if p.mode == anything {
		return bound >= int64(r)*p.floor
	}
	if !p.best.found {
		return true
	}
	score += min(bound, int64(r)*p.most[rank])
	off += int64(r) * p.nigh[rank]
	return p.t.better(score, off, p.best.score, p.best.off) || p.mode == equal && score == p.best.score && off == p.best.off
}

// remaining is a part of the effort that is left, and a little where none is.
func (t *tray) remaining(part int) int { return max((t.until-t.work)/part, 2000) }
