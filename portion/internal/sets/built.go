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
