package portion

import (
	"cmp"
	"slices"
)

// A state is a way to differ from the relaxed set in the pieces seen so far: the
// change of mass and of the current group's count packed into key, the reduced
// score it costs, and the chain of changes.
type state struct {
	key  int64
	cost int64
	node int32
}

// A node is one change in a chain: the core item changed, and the chain before.
type node struct {
	item, before int32
}

// A change is an undecided piece: leaving the relaxed set or joining it.
type change struct {
	pos   int
	cost  int64 // |r|
	dw    int64 // change of mass
	dc    int64 // change of the group's count; 0 where the count is free
	group int
}

// A search enumerates the sets whose cost is within a budget.
type search struct {
	in    *instance
	x     *relaxation
	items []change
	width int64 // keys are mass*width + count
	nodes []node
	// thinned is set when states were dropped to bound the work, so that what is
	// found need not be the best.
	thinned bool
}

const (
	// A layer wider than this is thinned once the effort is spent, and never grows
	// above maxLayer at all.
	thinLayer = 2048
	maxLayer  = 1 << 19
	maxNodes  = 1 << 24
)

// within returns the best permitted set among those that cost at most budget.
func (in *instance) within(x *relaxation, budget int64) (solution, bool) {
	s := &search{in: in, x: x}
	s.core(budget)
	layer := []state{{0, 0, -1}}
	var next []state
	up, down := s.reaches()
	for g := range in.groups {
		first, _ := slices.BinarySearchFunc(s.items, g, func(c change, g int) int { return cmp.Compare(c.group, g) })
		i := first
		for ; i < len(s.items) && s.items[i].group == g; i++ {
			next = s.extend(layer, next[:0], i, budget, in.lo-x.sum-up[i+1], in.hi-x.sum-down[i+1])
			layer, next = next, layer
			layer = s.thin(layer)
		}
		if in.groups[g].count != anyCount {
			layer = slices.DeleteFunc(layer, func(t state) bool { return s.count(t.key) != 0 })
		}
	}
	return s.bestOf(layer), s.thinned
}

// core lists the pieces that a set within the budget may change, group by group,
// the dearest first: what remains to be decided late is cheap, so few states are
// alive early. With a fixed count a piece never changes alone.
func (s *search) core(budget int64) {
	s.width = 1
	for g, sp := range s.in.groups {
		const none = int64(1) << 62
		partner := [2]int64{none, none} // cheapest change out of, and into, the set
		for i := sp.from; i < sp.to; i++ {
			side := 0
			if !s.x.base[i] {
				side = 1
			}
			partner[side] = min(partner[side], max(s.x.r[i], -s.x.r[i]))
		}
		from := len(s.items)
		for i := sp.from; i < sp.to; i++ {
			c := change{pos: i, cost: max(s.x.r[i], -s.x.r[i]), dw: s.in.w[i], dc: 1, group: g}
			other := partner[0]
			if s.x.base[i] {
				c.dw, c.dc, other = -c.dw, -1, partner[1]
			}
			if sp.count == anyCount {
				c.dc, other = 0, 0
			}
			if c.cost <= budget && other <= budget-c.cost {
				s.items = append(s.items, c)
			}
		}
		own := s.items[from:]
		slices.SortFunc(own, func(a, b change) int {
			return cmp.Or(cmp.Compare(b.cost, a.cost), cmp.Compare(a.pos, b.pos))
		})
		s.width = max(s.width, 2*int64(len(own))+1)
	}
}

// reaches returns by how much the items from i on can still raise and lower the mass.
func (s *search) reaches() (up, down []int64) {
	up, down = make([]int64, len(s.items)+1), make([]int64, len(s.items)+1)
	for i := len(s.items) - 1; i >= 0; i-- {
		up[i] = up[i+1] + max(s.items[i].dw, 0)
		down[i] = down[i+1] + min(s.items[i].dw, 0)
	}
	return up, down
}

// count and mass unpack a key; the count's magnitude is below half the width.
func (s *search) count(key int64) int64 {
	half := s.width / 2
	c := (key+half)%s.width - half
	if c < -half {
		c += s.width
	}
	return c
}

func (s *search) mass(key int64) int64 { return (key - s.count(key)) / s.width }

// extend merges the layer with itself changed by item i: both are in order of key,
// for a change shifts every key alike. Of two states with one key the cheaper
// stays, of equal cost the one whose set comes first in stated order.
func (s *search) extend(layer, next []state, i int, budget, low, high int64) []state {
	c := s.items[i]
	shift := c.dw*s.width + c.dc
	half := s.width / 2
	// The window of keys from which the window of totals can still be reached.
	first, last := satMul(low, s.width)-half, satMul(high, s.width)+half
	a, b := 0, 0
	for ; a < len(layer) && layer[a].key < first; a++ {
	}
	for ; b < len(layer) && layer[b].key+shift < first; b++ {
	}
	for a < len(layer) || b < len(layer) {
		s.in.work++
		takeB := a >= len(layer) || (b < len(layer) && layer[b].key+shift < layer[a].key)
		if !takeB && b < len(layer) && layer[b].key+shift == layer[a].key {
			if cost := layer[b].cost + c.cost; cost < layer[a].cost || (cost == layer[a].cost && s.earlier(int32(i), layer[b].node, layer[a].node)) {
				takeB = true
				a++
			} else {
				b++
			}
		}
		if !takeB {
			if layer[a].key > last {
				break
			}
			next = append(next, layer[a])
			a++
			continue
		}
		t := state{layer[b].key + shift, layer[b].cost + c.cost, layer[b].node}
		b++
		if t.key > last {
			if a >= len(layer) || layer[a].key > last {
				break
			}
			continue
		}
		if t.cost <= budget {
			s.nodes = append(s.nodes, node{int32(i), t.node})
			t.node = int32(len(s.nodes) - 1)
			next = append(next, t)
		}
	}
	return next
}

// satMul multiplies a mass with the width, kept well inside 64 bits: masses reach
// 2e12 and widths 2e6.
func satMul(mass, width int64) int64 {
	const limit = int64(1) << 62
	if mass > limit/width {
		return limit
	}
	if mass < -limit/width {
		return -limit
	}
	return mass * width
}

// earlier reports whether the set of chain b changed by item i comes before the
// set of chain a in stated order: whether it holds the first position in which the
// two differ.
func (s *search) earlier(i, b, a int32) bool {
	first, inB := s.items[i].pos, true
	for a != b {
		// Items are numbered in order of processing, so the later one is not shared
		// unless both chains end in it.
		ia, ib := int32(-1), int32(-1)
		if a >= 0 {
			ia = s.nodes[a].item
		}
		if b >= 0 {
			ib = s.nodes[b].item
		}
		switch {
		case ia == ib:
			a, b = s.nodes[a].before, s.nodes[b].before
			continue
		case ia > ib:
			if pos := s.items[ia].pos; pos < first {
				first, inB = pos, false
			}
			a = s.nodes[a].before
		default:
			if pos := s.items[ib].pos; pos < first {
				first, inB = pos, true
			}
			b = s.nodes[b].before
		}
	}
	// The chain with the change holds the piece only if the relaxed set does not.
	return inB != s.x.base[first]
}

// thin bounds the layer: above the limit the cheapest stay.
func (s *search) thin(layer []state) []state {
	limit := maxLayer
	if s.in.work > s.in.effort || len(s.nodes) > maxNodes {
		limit = thinLayer
	}
	if len(layer) <= limit {
		return layer
	}
	s.thinned = true
	slices.SortStableFunc(layer, func(a, b state) int { return cmp.Compare(a.cost, b.cost) })
	layer = layer[:limit]
	slices.SortFunc(layer, func(a, b state) int { return cmp.Compare(a.key, b.key) })
	return layer
}

// bestOf returns the best permitted set of the final layer.
func (s *search) bestOf(layer []state) solution {
	in, x := s.in, s.x
	best := solution{}
	for _, t := range layer {
		sum := x.sum + s.mass(t.key)
		if sum < in.lo || sum > in.hi {
			continue
		}
		cost := t.cost + x.price*(in.end(x.price)-sum)
		c := solution{sum: sum, score: (x.bound - cost) / x.scale, found: true}
		if best.found && (c.score < best.score || (c.score == best.score && in.off(c.sum) > in.off(best.sum))) {
			continue
		}
		c.chosen = s.set(t.node)
		if in.better(c, best) {
			best = c
		}
	}
	return best
}

// set lists the positions of a chain's set, ascending.
func (s *search) set(n int32) []int {
	changed := make(map[int]bool)
	for ; n >= 0; n = s.nodes[n].before {
		changed[s.items[s.nodes[n].item].pos] = true
	}
	var out []int
	for i, base := range s.x.base {
		if base != changed[i] {
			out = append(out, i)
		}
	}
	return out
}
