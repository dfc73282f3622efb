package subset

import (
	"cmp"
	"math"
	"slices"

	"example.org/honestplate/portion/internal/top"
)

// A state is a way to differ from the relaxed set in the pieces seen so far: the
// change of mass and of the current group's count packed into key, and the reduced
// score it costs. The set itself is the state's row of bits in the layer.
type state struct {
	key, cost int64
}

// A layer is the states alive after some pieces, in order of key, no two alike, each
// with its row of bits.
type layer struct {
	states []state
	held   []uint64
}

// A change is an undecided piece: leaving the relaxed set or joining it.
type change struct {
	pos   int
	cost  int64 // |r|
	dw    int64 // change of mass
	dc    int64 // change of the group's count; 0 where the count is free
	group int
	word  int    // where its bit is
	bit   uint64 // in order of position, the first the highest: a larger row of bits
	// is a set that comes earlier in stated order
}

// A search enumerates the sets whose cost is within a budget.
type search struct {
	in    *instance
	x     *relaxation
	items []change
	bits  []int // position of each bit of a row
	words int   // of a row
	width int64 // keys are mass*width + count
	// thinned is set when states or pieces were left out to bound the work, so that
	// what is found need not be the best.
	thinned bool
}

const (
	maxCore    = 4096    // pieces that a search leaves undecided
	maxMemory  = 1 << 22 // words in the rows of a layer
	thinLayer  = 2048    // states in a layer once the effort is spent
	leastLayer = 64      // and at the least
)

// within returns the best permitted set among those that cost at most budget, and
// whether anything was left out.
func (in *instance) within(x *relaxation, budget int64) (solution, bool) {
	s := &search{in: in, x: x}
	s.core(budget)
	now, next := &layer{}, &layer{}
	now.states = append(now.states, state{})
	now.held = make([]uint64, s.words)
	for k, pos := range s.bits {
		if x.base[pos] {
			now.held[k/64] |= 1 << (63 - k%64)
		}
	}
	up, down := s.reaches()
	i := 0
	for g := range in.groups {
		for ; i < len(s.items) && s.items[i].group == g; i++ {
			s.extend(now, next, s.items[i], budget, in.lo-x.sum-up[i+1], in.hi-x.sum-down[i+1])
			now, next = next, now
			s.thin(now)
		}
		if in.groups[g].Count != AnyCount {
			s.closeGroup(now)
		}
	}
	return s.bestOf(now), s.thinned
}

// core lists the pieces that a set within the budget may change, group by group,
// the dearest first: what remains to be decided late is cheap, so few states are
// alive early. With a fixed count a piece never changes alone.
func (s *search) core(budget int64) {
	const none = int64(1) << 62
	partners := make([][2]int64, len(s.in.groups))
	s.in.work += len(s.in.w) / 16
	for g, sp := range s.in.groups {
		partner := [2]int64{none, none} // cheapest change out of, and into, the set
		for i := sp.From; i < sp.To; i++ {
			side := 0
			if !s.x.base[i] {
				side = 1
			}
			partner[side] = min(partner[side], s.x.cost(i))
		}
		partners[g] = partner
	}
	// The cheapest stay, of equal ones those that come first.
	limit, room := budget, len(s.in.w)
	wide := s.in.core()
	if most := s.eligible(budget, partners); len(most) > wide {
		s.thinned = true
		top.Select(most, wide, func(a, b int64) bool { return a < b })
		limit, room = slices.Max(most[:wide]), 0
		for _, cost := range most[:wide] {
			if cost == limit {
				room++
			}
		}
	}
	for g, sp := range s.in.groups {
		for i := sp.From; i < sp.To; i++ {
			cost := s.x.cost(i)
			if cost > limit || !s.may(i, sp.Count, budget, partners[g]) {
				continue
			}
			if cost == limit {
				if room--; room < 0 {
					continue
				}
			}
			c := change{pos: i, cost: cost, dw: s.in.w[i], dc: 1, group: g}
			if s.x.base[i] {
				c.dw, c.dc = -c.dw, -1
			}
			if sp.Count == AnyCount {
				c.dc = 0
			}
			s.items = append(s.items, c)
		}
	}
	// Positions ascend here.
	for k := range s.items {
		s.items[k].word, s.items[k].bit = k/64, 1<<(63-k%64)
		s.bits = append(s.bits, s.items[k].pos)
	}
	s.words = (len(s.items) + 63) / 64
	s.width = 2*int64(len(s.items)) + 1
	slices.SortFunc(s.items, func(a, b change) int {
		return cmp.Or(cmp.Compare(a.group, b.group), cmp.Compare(b.cost, a.cost), cmp.Compare(a.pos, b.pos))
	})
}

// core is how many pieces a search leaves undecided, for the effort allowed.
func (in *instance) core() int { return min(maxCore, max(64, in.effort/2500)) }

// may reports whether a piece can change within the budget, with the cheapest partner.
func (s *search) may(i, count int, budget int64, partner [2]int64) bool {
	other := partner[0]
	if s.x.base[i] {
		other = partner[1]
	}
	if count == AnyCount {
		other = 0
	}
	return s.x.cost(i) <= budget && other <= budget-s.x.cost(i)
}

// eligible lists the costs of the pieces that may change.
func (s *search) eligible(budget int64, partners [][2]int64) (costs []int64) {
	for g, sp := range s.in.groups {
		for i := sp.From; i < sp.To; i++ {
			if s.may(i, sp.Count, budget, partners[g]) {
				costs = append(costs, s.x.cost(i))
			}
		}
	}
	return costs
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

// extend merges the layer with itself changed by an item: both are in order of key,
// for a change shifts every key alike. Of two states with one key the cheaper
// stays, of equal cost the one whose set comes first in stated order. States from
// which the window low..high of masses cannot be reached any more are left out.
func (s *search) extend(now, next *layer, c change, budget, low, high int64) {
	next.states, next.held = next.states[:0], next.held[:0]
	from, w := now.states, s.words
	row := func(i int) []uint64 { return now.held[i*w : (i+1)*w] }
	shift, half := c.dw*s.width+c.dc, s.width/2
	first, last := satMul(low, s.width)-half, satMul(high, s.width)+half
	a, b := 0, 0 // the next state to stay, and to change
	for ; a < len(from) && from[a].key < first; a++ {
	}
	for ; b < len(from) && from[b].key+shift < first; b++ {
	}
	const beyond = math.MaxInt64
	for {
		stay, moved := int64(beyond), int64(beyond)
		if a < len(from) {
			stay = from[a].key
		}
		if b < len(from) {
			moved = from[b].key + shift
		}
		if min(stay, moved) > last {
			break
		}
		s.in.work += 1 + w/8
		changed := moved < stay
		if moved == stay {
			cost := from[b].cost + c.cost
			changed = cost < from[a].cost || (cost == from[a].cost && s.earlier(row(b), row(a), c))
			if changed {
				a++
			} else {
				b++
			}
		}
		if !changed {
			next.states = append(next.states, from[a])
			next.held = append(next.held, row(a)...)
			a++
			continue
		}
		if cost := from[b].cost + c.cost; cost <= budget {
			next.states = append(next.states, state{moved, cost})
			next.held = append(next.held, row(b)...)
			next.held[len(next.held)-w+c.word] ^= c.bit
		}
		b++
	}
}

// earlier reports whether row b changed by c comes before row a in stated order.
func (s *search) earlier(b, a []uint64, c change) bool {
	for k := range a {
		x := b[k]
		if k == c.word {
			x ^= c.bit
		}
		if x != a[k] {
			s.in.work += k / 8
			return x > a[k]
		}
	}
	return false
}

// satMul multiplies a mass with the width, kept well inside 64 bits.
func satMul(mass, width int64) int64 {
	const limit = int64(1) << 61
	if mass > limit/width {
		return limit
	}
	if mass < -limit/width {
		return -limit
	}
	return mass * width
}

// closeGroup keeps the states in which a group has its count.
func (s *search) closeGroup(l *layer) {
	n := 0
	for i, t := range l.states {
		if s.count(t.key) == 0 {
			l.states[n] = t
			copy(l.held[n*s.words:], l.held[i*s.words:(i+1)*s.words])
			n++
		}
	}
	l.states, l.held = l.states[:n], l.held[:n*s.words]
}

// thin bounds the layer: above the limit the cheapest stay.
func (s *search) thin(l *layer) {
	limit := maxMemory / max(s.words, 8)
	if s.in.work > s.in.effort {
		// What is left costs four times the effort at the most.
		limit = min(limit, max(leastLayer, min(thinLayer, 4*s.in.effort/(len(s.items)*(1+s.words/8)))))
	}
	if len(l.states) <= limit {
		return
	}
	s.thinned = true
	order := make([]int, len(l.states))
	for i := range order {
		order[i] = i
	}
	top.Select(order, limit, func(a, b int) bool {
		return l.states[a].cost < l.states[b].cost || l.states[a].cost == l.states[b].cost && a < b
	})
	order = order[:limit]
	slices.Sort(order)
	for n, i := range order {
		l.states[n] = l.states[i]
		copy(l.held[n*s.words:], l.held[i*s.words:(i+1)*s.words])
	}
	l.states, l.held = l.states[:limit], l.held[:limit*s.words]
}

// bestOf returns the best permitted set of the final layer.
func (s *search) bestOf(l *layer) solution {
	in, x := s.in, s.x
	best := solution{}
	for i, t := range l.states {
		sum := x.sum + s.mass(t.key)
		if sum < in.lo || sum > in.hi {
			continue
		}
		cost := t.cost + x.price*(in.end(x.price)-sum)
		c := solution{sum: sum, score: (x.bound - cost) / x.scale, found: true}
		if best.found && (c.score < best.score || (c.score == best.score && in.off(c.sum) > in.off(best.sum))) {
			continue
		}
		c.chosen = s.set(l.held[i*s.words : (i+1)*s.words])
		if in.better(c, best) {
			best = c
		}
	}
	return best
}

// set lists the positions of a row's set, ascending.
func (s *search) set(row []uint64) []int {
	var out []int
	k := 0
	for i, base := range s.x.base {
		held := base
		if k < len(s.bits) && s.bits[k] == i {
			held = row[k/64]>>(63-k%64)&1 == 1
			k++
		}
		if held {
			out = append(out, i)
		}
	}
	return out
}
