package sets

import (
	"cmp"
	"slices"

	"example.org/honestplate/portion/internal/decimal"
	"example.org/honestplate/portion/internal/subset"
)

// A tray is a problem made ready, its masses [subset.Reduced]. Even masses with an odd
// total wanted leave an empty window, which proves that no set exists.
type tray struct {
	*Problem
	mass    []int64
	divisor int64
	base    int64     // a total is base + divisor*reduced
	lo, hi  int64     // the window, reduced
	sorted  [][]int64 // by group: masses, light to heavy
	limits            // what the groups can add
	work    int
	until   int   // of the work on a listed family
	bounded int   // sets, the total score of which is known to be
	total   int64 // no more than this
}

// limits are bounds of the reduced mass that groups from an index on can add; nil where a
// group has too few pieces.
type limits struct{ least, most []int64 }

func newTray(p *Problem) *tray {
	t := &tray{Problem: p, until: p.Effort}
	t.mass, t.base, t.divisor = subset.Reduced(p.Masses, p.Groups)
	t.lo, t.hi = decimal.CeilDiv(p.Low-t.base, t.divisor), decimal.FloorDiv(p.High-t.base, t.divisor)
	for _, sp := range t.Groups {
		t.sorted = append(t.sorted, slices.Sorted(slices.Values(t.mass[sp.From:sp.To])))
	}
	t.limits = t.limitsOf()
	return t
}

func (t *tray) limitsOf() limits {
	n := len(t.Groups)
	l := limits{make([]int64, n+1), make([]int64, n+1)}
	for g := n - 1; g >= 0; g-- {
		sp := t.Groups[g]
		if sp.Count > sp.To-sp.From {
			return limits{}
		}
		least, most := sp.Extremes(t.sorted[g])
		l.least[g], l.most[g] = l.least[g+1]+least, l.most[g+1]+most
	}
	return l
}

// off is the distance of a reduced total from what is wanted.
func (t *tray) off(sum int64) int64 { return gap(t.base+sum*t.divisor, t.Target) }

// possible reports whether there can be a set at all, by the extremes.
func (t *tray) possible() bool {
	return t.lo <= t.hi && t.least != nil && t.least[0] <= t.hi && t.most[0] >= t.lo
}

// partable reports whether every group has its count, at most so many, and the totals up
// to most that so many pieces reach fit so many words.
func (t *tray) partable(pieces, count int, most int64, words int) bool {
	for _, g := range t.Groups {
		if g.Count == subset.AnyCount {
			return false
		}
	}
	row := min(most, t.most[0])/64 + 1
	return row*int64(pieces+1)*int64(count+1) <= int64(words)
}

// ordered lists the positions of a group in an order, of equals the earlier first.
func ordered(g subset.Group, order func(a, b int) int) []int {
	out := g.Positions()
	slices.SortStableFunc(out, order)
	return out
}

// byMass lists the positions of a group, light to heavy.
func (t *tray) byMass(g subset.Group) []int {
	return ordered(g, func(a, b int) int { return cmp.Compare(t.mass[a], t.mass[b]) })
}

// widest is the largest count of a group.
func (t *tray) widest() int {
	return slices.MaxFunc(t.Groups, func(a, b subset.Group) int { return a.Count - b.Count }).Count
}

// massOf returns the reduced mass of pieces.
func (t *tray) massOf(pieces []int) (sum int64) {
	for _, i := range pieces {
		sum += t.mass[i]
	}
	return sum
}

// valueOf returns the score and the distance from the wanted total of a set.
func (t *tray) valueOf(pieces []int) (score, off int64) {
	var mass int64
	for _, i := range pieces {
		mass, score = mass+t.Masses[i], score+t.Scores[i]
	}
	return score, gap(mass, t.Target)
}

// gap is the distance of two numbers.
func gap(a, b int64) int64 { return max(a-b, b-a) }
