package sets

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"example.org/honestplate/portion/internal/subset"
)

// A build is disjoint sets of a tray on their way to be the best.
type build struct {
	t    *tray
	x    *price
	sets [][]int
	used []bool
	rnd  *rand.Rand // of a fixed seed: the same tray gives the same answer
}

func (t *tray) newBuild(m int) *build {
	return &build{t: t, x: t.newPrice(m), used: make([]bool, len(t.mass)), rnd: rand.New(rand.NewPCG(14, 3))}
}

// put sets or adds the set at a place.
func (b *build) put(at int, set []int) {
	if at == len(b.sets) {
		b.sets = append(b.sets, nil)
	}
	for _, i := range b.sets[at] {
		b.used[i] = false
	}
	b.sets[at] = set
	for _, i := range set {
		b.used[i] = true
	}
}

// start takes sets instead of those that stand.
func (b *build) start(sets [][]int) {
	b.sets = nil
	clear(b.used)
	for _, s := range sets {
		b.put(len(b.sets), s)
	}
}

// greedy builds the sets one after the other, each the best of some free pieces.
func (b *build) greedy(most int) {
	open := make([][]int, len(b.x.order))
	for g, order := range b.x.order {
		open[g] = slices.Clone(order)
		if b.t.Goal == Exist {
			b.t.byFit(open[g])
		}
	}
	for len(b.sets) < most {
		set := b.one(open, most-len(b.sets))
		if set == nil {
			return
		}
		b.put(len(b.sets), set)
		for g := range open {
			open[g] = slices.DeleteFunc(open[g], func(i int) bool { return b.used[i] })
		}
	}
}

// byFit puts the pieces of a group in order of how near they are to their mean: where
// only the number of sets counts, these go first.
func (t *tray) byFit(pieces []int) {
	mean := t.massOf(pieces) / int64(max(len(pieces), 1))
	slices.SortFunc(pieces, func(i, j int) int {
		return cmp.Or(cmp.Compare(gap(t.mass[i], mean), gap(t.mass[j], mean)), cmp.Compare(i, j))
	})
}

// one returns the best set of some of the open pieces, which are in order of value by
// group, or the first of all where only the number of sets counts; nil if none is found. So
// many sets are left to build.
func (b *build) one(open [][]int, left int) []int {
	t := b.t
	if t.Goal == Exist {
		if set, known := t.anyOf(open[0]); known {
			return set
		}
	}
	effort := partEffort
	if t.Goal != Exist { // half of the effort that is left goes to the sets that are left
		effort = min(effort, max((t.Effort-t.work)/(2*left), partEffort/6))
	}
	for _, spare := range [2]int{60, 600} {
		p, at := t.Problem.Problem, []int(nil)
		p.Masses, p.Scores, p.Groups, p.Effort, p.Closest = nil, nil, nil, effort, t.Goal == Closest
		for g, sp := range t.Groups {
			from := len(at)
			at = append(at, b.pool(open[g], 2*max(sp.Count, 0)+spare)...)
			slices.Sort(at[from:])
			if len(at)-from < sp.Count {
				return nil
			}
			p.Groups = append(p.Groups, subset.Group{From: from, To: len(at), Count: sp.Count})
		}
		if len(at) == 0 {
			return nil // a set of any number of pieces has at least one
		}
		for _, i := range at {
			p.Masses, p.Scores = append(p.Masses, t.Masses[i]), append(p.Scores, t.Scores[i])
		}
		s, err := p.Best()
		t.work += s.Work + len(at)
		if err == nil && len(s.Chosen) > 0 {
			for k, pos := range s.Chosen {
				s.Chosen[k] = at[pos]
			}
			return s.Chosen
		}
	}
	return nil
}

// pool takes n pieces of an order: half of them from its front, the others spread over
// the masses of some of the rest.
func (b *build) pool(order []int, n int) []int {
	front := min(n/2, len(order))
	rest := slices.Clone(order[front:min(len(order), front+4*n)])
	slices.SortFunc(rest, func(i, j int) int { return cmp.Or(cmp.Compare(b.t.mass[i], b.t.mass[j]), cmp.Compare(i, j)) })
	out := slices.Clone(order[:front])
	k := min(n-front, len(rest))
	for j := range k {
		out = append(out, rest[j*len(rest)/k])
	}
	return out
}

// totals returns the value of the sets.
func (b *build) totals() (score, off, least int64) {
	least = math.MaxInt64
	for _, s := range b.sets {
		v, d := b.t.valueOf(s)
		score, off, least = score+v, off+d, min(least, v)
	}
	return score, off, least
}

// reached reports whether nothing can be better: the bound is met, and each total is the
// wanted one. The goal Least wants the bound of the score met too.
func (b *build) reached(bound int64) bool {
	score, off, least := b.totals()
	if b.t.Goal == Least {
		return least == bound && off == 0 && score == b.t.scoreBound(b.x, nil, len(b.sets))
	}
	return score == bound && off == 0
}

// answer lists the sets by their earliest piece.
func (b *build) answer(most int, bound int64) Answer {
	a := Answer{Sets: b.sets, Most: most, Bound: bound}
	a.Score, a.Off, a.Least = b.totals()
	a.Proven = len(b.sets) == most && b.reached(bound)
	slices.SortFunc(a.Sets, func(a, b []int) int { return cmp.Compare(a[0], b[0]) })
	return a
}
