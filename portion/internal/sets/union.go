package sets

import "container/heap"

// Where sets are many, it is quicker to ask first which pieces are used at all. The
// unions of m sets come in order of priced score, the best first (Lawler 1972, A
// procedure for computing the K best solutions to discrete optimization problems; from
// memory), and each is tried to be parted into m sets. The first whose bound is no better
// than what was found ends the search.

// A union is the best pieces of those not left out, with some that are bound to stay.
type union struct {
	value       int64 // priced
	free, fixed uint64
}

type unionHeap []union

func (h unionHeap) Len() int { return len(h) }
func (h unionHeap) Less(i, j int) bool {
	return h[i].value > h[j].value || h[i].value == h[j].value && h[i].free > h[j].free
}
func (h unionHeap) Swap(i, j int) { h[i], h[j] = h[j], h[i] }
func (h *unionHeap) Push(x any)   { *h = append(*h, x.(union)) }
func (h *unionHeap) Pop() any {
	old := *h
	u := old[len(old)-1]
	*h = old[:len(old)-1]
	return u
}

// unionable reports whether the packer's sets have fixed counts that are all alike.
func (p *packer) unionable() bool {
	if len(p.t.classes) != 1 {
		return false
	}
	for _, n := range p.t.classes[0].want.Counts {
		if n == Any {
			return false
		}
	}
	return true
}

// unions searches for m sets in a mode, union by union, as long as their score can be
// floor or more. It reports whether the search came to its end.
func (p *packer) unions(mode mode, m, effort int, floor int64) bool {
	p.mode, p.until = mode, p.t.work+effort
	p.found, p.spent, p.stack = false, false, p.stack[:0]
	p.table = newTable(1 << 14)
	c, need := &p.t.classes[0], p.need[m]
	start := p.after[0]
	top, ok := p.top(start, need)
	if !ok {
		return true
	}
	h := &unionHeap{{top.value, start, 0}}
	for h.Len() > 0 {
		u := heap.Pop(h).(union)
		bound := floorDiv(u.value+p.x.paid(m), p.x.scale)
		if bound < floor || p.mode == improve && p.best.found && !p.t.better(bound, int64(m)*p.nigh[0], p.best.score, p.best.off) {
			return true
		}
		p.reach = bound
		top, _ := p.top(u.free, need)
		if p.t.work += len(p.order); p.t.work > p.until || h.Len() > effort/8 {
			return false
		}
		if top.mass >= int64(m)*c.lo && top.mass <= int64(m)*c.hi {
			p.search(0, ^top.mask, m, 0, 0)
			if p.found || p.spent {
				return !p.spent
			}
		}
		// Every other union leaves out one of these pieces, and holds those before it.
		fixed := u.fixed
		for g, members := range top.members {
			for _, i := range members {
				next := top.next[g]
				if fixed&bit(i) != 0 || next < 0 {
					continue
				}
				p.t.work++
				heap.Push(h, union{u.value - p.x.value[i] + p.x.value[next], u.free &^ bit(i), fixed})
				fixed |= bit(i)
			}
		}
	}
	return true
}

// A topmost is the best pieces by priced score.
type topmost struct {
	mask        uint64
	value, mass int64
	members     [][]int
	next        []int // by group: the best piece that is not among them; -1 for none
}

// top returns the best free pieces, so many of each group, and false if there are too few.
func (p *packer) top(free uint64, need []int) (topmost, bool) {
	u := topmost{members: make([][]int, len(need)), next: make([]int, len(need))}
	for g, order := range p.x.order {
		left := need[g]
		u.next[g] = -1
		for _, i := range order {
			if free&bit(i) == 0 {
				continue
			}
			if left == 0 {
				u.next[g] = i
				break
			}
			left--
			u.mask |= bit(i)
			u.value, u.mass = u.value+p.x.value[i], u.mass+p.t.mass[i]
			u.members[g] = append(u.members[g], i)
		}
		if left > 0 {
			return u, false
		}
	}
	return u, true
}
