package sets

import (
	"container/heap"
	"math"

	"example.org/honestplate/portion/internal/decimal"
)

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

// unionsOf visits the unions of m sets of the pieces whose mass can be that of m sets, as
// long as it is told to go on: by the bound of their score, which falls, and by the visit.
// It reports whether it came to its end within the effort, and the last bound.
func (t *tray) unionsOf(x *price, pieces uint64, m, effort int, goOn func(int64) bool, visit func(uint64) bool) (bool, int64) {
	until := t.work + effort
	start, ok := x.top(pieces, m)
	if !ok {
		return true, math.MinInt64
	}
	h, bound := &unionHeap{{start.value, pieces, 0}}, int64(math.MaxInt64)
	for h.Len() > 0 {
		u := heap.Pop(h).(union)
		bound = decimal.FloorDiv(u.value+x.paid(m), x.scale)
		if !goOn(bound) {
			return true, bound
		}
		top, _ := x.top(u.free, m)
		if t.work += 16; t.work > until || h.Len() > effort/8 {
			return false, bound
		}
		if top.mass >= int64(m)*t.lo && top.mass <= int64(m)*t.hi && !visit(top.mask) {
			return false, bound
		}
		// Every other union leaves out one of these pieces, and holds those before it.
		fixed := u.fixed
		for g, members := range top.members {
			for _, i := range members {
				next := top.next[g]
				if fixed&bit(i) != 0 || next < 0 {
					continue
				}
				t.work++
				heap.Push(h, union{u.value - x.value[i] + x.value[next], u.free &^ bit(i), fixed})
				fixed |= bit(i)
			}
		}
	}
	return true, bound
}

// A topmost is the best pieces by priced score.
type topmost struct {
	mask        uint64
	value, mass int64
	members     [][]int
	next        []int // by group: the best piece that is not among them; -1 for none
}

// top returns the best free pieces, as many as m sets hold of each group, and false if
// there are too few.
func (x *price) top(free uint64, m int) (topmost, bool) {
	u := topmost{members: make([][]int, len(x.order)), next: make([]int, len(x.order))}
	for g, order := range x.order {
		left := m * x.t.Groups[g].Count
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
			u.value, u.mass = u.value+x.value[i], u.mass+x.t.mass[i]
			u.members[g] = append(u.members[g], i)
		}
		if left > 0 {
			return u, false
		}
	}
	return u, true
}
