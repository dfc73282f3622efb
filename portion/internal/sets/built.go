package sets

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// A build is disjoint sets of a large tray on their way to be the best.
type build struct {
	t    *tray
	x    *price
	sets [][]int // by want; nil where there is none
	used []bool
	rnd  *rand.Rand // of a fixed seed: the same tray gives the same answer
}

// built answers where the permitted sets are too many to list: it builds one set after
// the other, then improves them in parts until the bound is met or the effort is spent.
func (t *tray) built(most int) Answer {
	x := t.newPrice(most)
	best := t.newBuild(x)
	best.greedy(x.value)
	if best.number() < most {
		// The pieces that fit least go first.
		b, far := t.newBuild(x), make([]int64, len(t.mass))
		for _, sp := range t.Groups {
			var sum int64
			for i := sp.From; i < sp.To; i++ {
				sum += t.mass[i]
			}
			mean := sum / int64(max(sp.To-sp.From, 1))
			for i := sp.From; i < sp.To; i++ {
				far[i] = max(t.mass[i]-mean, mean-t.mass[i])
			}
		}
		b.greedy(far)
		if b.number() > best.number() {
			best = b
		}
	}
	best.grow(most)
	m := best.number()
	if m == 0 {
		return Answer{Sets: best.sets, Most: most}
	}
	x = t.newPrice(m)
	best.x = x
	bound := t.boundOf(x, m)
	if t.Goal != Exist {
		best.improve(bound)
		if t.Goal == Total && len(t.mass) <= maxBits && t.unionable() && !best.reached(bound) {
			bound = best.byUnion(m, bound)
		}
	}
	return best.answer(most, bound)
}

func (t *tray) newBuild(x *price) *build {
	return &build{t, x, make([][]int, len(t.Wants)), make([]bool, len(t.mass)), rand.New(rand.NewPCG(14, 3))}
}

func (b *build) number() int {
	n := 0
	for _, s := range b.sets {
		if s != nil {
			n++
		}
	}
	return n
}

func (b *build) put(want int, set []int) {
	for _, i := range b.sets[want] {
		b.used[i] = false
	}
	b.sets[want] = set
	for _, i := range set {
		b.used[i] = true
	}
}

const (
	looseCount = 4  // pieces of a set that are chosen exactly
	loosePool  = 18 // of so many
	tries      = 4
)

// greedy builds the sets one after the other, valuable pieces first.
func (b *build) greedy(value []int64) {
	t := b.t
	order := make([][]int, len(t.Groups))
	for g, sp := range t.Groups {
		for i := sp.From; i < sp.To; i++ {
			order[g] = append(order[g], i)
		}
		slices.SortFunc(order[g], func(i, j int) int { return cmp.Or(cmp.Compare(value[j], value[i]), cmp.Compare(i, j)) })
	}
	for _, c := range t.classes {
		for k, want := range c.wants {
			if !c.possible() {
				break
			}
			for g := range order {
				order[g] = slices.DeleteFunc(order[g], func(i int) bool { return b.used[i] })
			}
			set := b.one(want, len(c.wants)-k, order)
			if set == nil {
				break
			}
			b.put(want, set)
		}
	}
}

// one builds a set for a want, one of several still open, out of free pieces in order of
// value by group, or returns nil: all but a few pieces come evenly from those that the
// open wants can take, near the mean that is still wanted, and the last few exactly.
func (b *build) one(want, open int, order [][]int) []int {
	t, w := b.t, b.t.Wants[want]
	total := 0
	for g, n := range w.Counts {
		if n > len(order[g]) {
			return nil
		}
		total += max(n, 0)
	}
	for try := range tries {
		var tied, loose []int
		mass, left, spare := w.Target, total, looseCount+try/2
		for g, n := range w.Counts {
			held := map[int]bool{}
			for k := 0; (n == Any || k < n) && k < len(order[g]); k++ {
				if n != Any && left <= spare || n == Any && mass < looseCount*t.Mass[order[g][k]] {
					break
				}
				start, mean := k, mass
				if n != Any {
					start, mean = k*min(open, len(order[g])/n), mass/int64(left)
				}
				pick := nearest(t.Mass, order[g], start, 6+4*try, mean, held)
				held[pick] = true
				tied, mass, left = append(tied, pick), mass-t.Mass[pick], left-1
			}
			if n == Any || len(held) < n {
				loose = append(loose, b.pool(order[g], held, loosePool)...)
			}
			t.work += len(held)
		}
		if got := t.part(part{[]Want{w}, [][]int{tied}, loose[:min(len(loose), maxBits-4)]}); got != nil {
			return got[0]
		}
		if t.work > t.Effort && try > 0 {
			return nil
		}
	}
	return nil
}

// nearest returns, of so many pieces not held from a start on, wrapping round, the one
// whose mass is nearest to the mean.
func nearest(mass []int64, order []int, start, n int, mean int64, held map[int]bool) int {
	pick := -1
	for j := range order {
		i := order[(start+j)%len(order)]
		if held[i] {
			continue
		}
		if pick < 0 || gap(mass[i], mean) < gap(mass[pick], mean) {
			pick = i
		}
		if n--; n == 0 {
			break
		}
	}
	return pick
}

func gap(a, b int64) int64 { return max(a-b, b-a) }

// pool takes n pieces that are not held: half of them the most valuable, the others
// spread over the masses of the rest.
func (b *build) pool(order []int, held map[int]bool, n int) []int {
	var out, rest []int
	for _, i := range order {
		if held[i] {
			continue
		}
		if len(out) < n/2 {
			out = append(out, i)
		} else if rest = append(rest, i); len(rest) >= 512 {
			break
		}
	}
	slices.SortFunc(rest, func(i, j int) int { return cmp.Or(cmp.Compare(b.t.mass[i], b.t.mass[j]), cmp.Compare(i, j)) })
	k := min(n-len(out), len(rest))
	for j := range k {
		out = append(out, rest[j*len(rest)/k])
	}
	return out
}

// grow looks for one more set in the pieces of one that stands and the free ones: some
// pieces of either stay, a few are put together anew.
func (b *build) grow(most int) {
	for want := range b.sets {
		if b.sets[want] != nil || b.number() >= most {
			continue
		}
		for try := 0; try < 2*tries && b.sets[want] == nil; try++ {
			for have := range b.sets {
				if b.sets[have] == nil || b.t.work > b.t.Effort {
					continue
				}
				if got := b.t.part(b.loosened(have, want)); got != nil {
					b.put(have, nil)
					b.put(have, got[0])
					b.put(want, got[1])
					break
				}
			}
		}
	}
}

// loosened is a part of two wants: of a set that stands some pieces, drawn at random,
// come loose; of the new one all but as many are tied, near the mean that it wants.
func (b *build) loosened(have, want int) part {
	t := b.t
	old := slices.Clone(b.sets[have])
	b.rnd.Shuffle(len(old), func(i, j int) { old[i], old[j] = old[j], old[i] })
	n := min(len(old), looseCount)
	free := b.free(40)
	b.rnd.Shuffle(len(free), func(i, j int) { free[i], free[j] = free[j], free[i] })
	w := t.Wants[want]
	left, mass := 0, w.Target
	for _, c := range w.Counts {
		left += max(c, 0)
	}
	var tied []int
	for g, sp := range t.Groups {
		for c := w.Counts[g]; c > 0 && left > looseCount; c-- {
			at, mean := -1, mass/int64(left)
			for k, i := range free {
				if i >= sp.From && i < sp.To && (at < 0 || gap(t.Mass[i], mean) < gap(t.Mass[free[at]], mean)) {
					at = k
				}
			}
			if at < 0 {
				break
			}
			tied, mass, left = append(tied, free[at]), mass-t.Mass[free[at]], left-1
			free = slices.Delete(free, at, at+1)
		}
	}
	loose := append(slices.Clone(old[:n]), free[:min(len(free), loosePool-n)]...)
	return part{[]Want{t.Wants[have], w}, [][]int{old[n:], tied}, loose}
}

// free returns up to n free pieces of the most valuable of each group.
func (b *build) free(n int) []int {
	var out []int
	for _, order := range b.x.order {
		k := 0
		for _, i := range order {
			if k < n/len(b.x.order)+1 && !b.used[i] {
				out = append(out, i)
				k++
			}
		}
	}
	return out
}

// improve takes two sets at a time, loosens some of their pieces and puts them together
// again the best way, with free pieces to choose from.
func (b *build) improve(bound int64) {
	var have []int
	for want, s := range b.sets {
		if s != nil {
			have = append(have, want)
		}
	}
	idle := 0
	for b.t.work < b.t.Effort && idle < 60+40*len(have) && !b.reached(bound) {
		two := []int{have[b.rnd.IntN(len(have))], have[b.rnd.IntN(len(have))]}
		if b.t.Goal == Least {
			two[0] = b.lowest(have)
		}
		if two[0] == two[1] {
			two = two[:1]
		}
		pt, free := part{}, b.someFree()
		for _, want := range two {
			s := slices.Clone(b.sets[want])
			b.rnd.Shuffle(len(s), func(i, j int) { s[i], s[j] = s[j], s[i] })
			n := min(len(s), looseCount)
			pt.loose = append(pt.loose, s[:n]...)
			pt.tied = append(pt.tied, s[n:])
			pt.wants = append(pt.wants, b.t.Wants[want])
		}
		pt.loose = append(pt.loose, free...)
		if got := b.t.part(pt); got != nil && b.gains(two, got) {
			for k := range two {
				b.put(two[k], nil)
			}
			for k, want := range two {
				b.put(want, got[k])
			}
			idle = 0
			continue
		}
		idle++
		b.t.work += len(pt.loose)
	}
}

// someFree draws free pieces: most of them valuable.
func (b *build) someFree() []int {
	var out []int
	for _, order := range b.x.order {
		var free []int
		for _, i := range order {
			if !b.used[i] {
				if free = append(free, i); len(free) >= 40 {
					break
				}
			}
		}
		n := min(len(free), 10/len(b.x.order)+1)
		for k := range n {
			j := k + b.rnd.IntN(len(free)-k)
			if k < n/2 {
				j = k
			}
			free[k], free[j] = free[j], free[k]
		}
		out = append(out, free[:n]...)
	}
	return out
}

func (b *build) lowest(have []int) int {
	low, at := int64(math.MaxInt64), 0
	for _, want := range have {
		if s, _ := b.t.valueOf(b.sets[want], b.t.Wants[want]); s < low {
			low, at = s, want
		}
	}
	return at
}

// gains reports whether new sets for some wants are better than those that stand.
func (b *build) gains(wants []int, got [][]int) bool {
	var score, off [2]int64
	least := [2]int64{math.MaxInt64, math.MaxInt64}
	for k, want := range wants {
		for side, pieces := range [2][]int{b.sets[want], got[k]} {
			s, d := b.t.valueOf(pieces, b.t.Wants[want])
			score[side], off[side], least[side] = score[side]+s, off[side]+d, min(least[side], s)
		}
	}
	if b.t.Goal == Least && least[0] != least[1] {
		return least[1] > least[0]
	}
	return b.t.better(score[1], off[1], score[0], off[0])
}

// totals returns the value of the sets that stand.
func (b *build) totals() (score, off, least int64) {
	least = math.MaxInt64
	for want, s := range b.sets {
		if s != nil {
			v, d := b.t.valueOf(s, b.t.Wants[want])
			score, off, least = score+v, off+d, min(least, v)
		}
	}
	return score, off, least
}

// reached reports whether nothing can be better: the bound is met, and each total is the
// wanted one. The goal Least wants the bound of the score met too.
func (b *build) reached(bound int64) bool {
	score, off, least := b.totals()
	if b.t.Goal == Exist {
		return true
	}
	if b.t.Goal == Least {
		return least == bound && off == 0 && score == b.t.scoreBound(b.x, nil, b.number())
	}
	return score == bound && off == 0
}

// answer lists the sets by their earliest piece.
func (b *build) answer(most int, bound int64) Answer {
	a := Answer{Sets: make([][]int, len(b.sets)), Number: b.number(), Most: most, Bound: bound}
	a.Score, a.Off, a.Least = b.totals()
	a.Proven = a.Number == most && b.reached(bound)
	for _, c := range b.t.classes {
		var own [][]int
		for _, want := range c.wants {
			if b.sets[want] != nil {
				own = append(own, b.sets[want])
			}
		}
		slices.SortFunc(own, func(a, b []int) int { return cmp.Compare(a[0], b[0]) })
		for k, s := range own {
			a.Sets[c.wants[k]] = s
		}
	}
	return a
}
