package sets

import (
	"slices"

	"example.org/honestplate/portion/internal/decimal"
)

// A tray is a problem made ready: masses less the lightest of their group where its
// count is fixed, all over their common divisor, and wants that are alike in classes.
// Even masses with an odd total wanted leave an empty window, which proves that no set
// exists.
type tray struct {
	*Problem
	mass    []int64
	divisor int64
	classes []class
	work    int
}

// A class is the wants that ask for the same.
type class struct {
	want   Want
	wants  []int // their places in Problem.Wants
	base   int64 // total mass is base + divisor*reduced
	lo, hi int64 // the window, reduced
	limits       // what the groups can add
}

// limits are bounds of the reduced mass that groups from an index on can add.
type limits struct{ least, most []int64 }

func newTray(p *Problem) *tray {
	t := &tray{Problem: p, mass: slices.Clone(p.Mass)}
	less := make([]int64, len(p.Groups))
	for g, sp := range p.Groups {
		fixed := sp.To > sp.From
		for _, w := range p.Wants {
			fixed = fixed && w.Counts[g] != Any
		}
		if fixed {
			less[g] = slices.Min(p.Mass[sp.From:sp.To])
		}
		for i := sp.From; i < sp.To; i++ {
			t.mass[i] -= less[g]
			t.divisor = decimal.CommonDivisor(t.divisor, t.mass[i])
		}
	}
	t.divisor = max(t.divisor, 1)
	for i := range t.mass {
		t.mass[i] /= t.divisor
	}
	for at, w := range p.Wants {
		if k := slices.IndexFunc(t.classes, func(c class) bool { return sameWant(c.want, w) }); k >= 0 {
			t.classes[k].wants = append(t.classes[k].wants, at)
			continue
		}
		c := class{want: w, wants: []int{at}}
		for g, n := range w.Counts {
			c.base += less[g] * int64(max(n, 0))
		}
		c.lo, c.hi = decimal.CeilDiv(w.Lo-c.base, t.divisor), decimal.FloorDiv(w.Hi-c.base, t.divisor)
		t.classes = append(t.classes, c)
	}
	for k := range t.classes {
		t.classes[k].limits = t.limitsOf(t.classes[k].want)
	}
	return t
}

// limitsOf returns the least and most that the groups from each index on can add; nil
// where a group has too few pieces.
func (t *tray) limitsOf(w Want) limits {
	n := len(t.Groups)
	l := limits{make([]int64, n+1), make([]int64, n+1)}
	for g := n - 1; g >= 0; g-- {
		sp, count := t.Groups[g], w.Counts[g]
		if count > sp.To-sp.From {
			return limits{}
		}
		l.least[g], l.most[g] = l.least[g+1], l.most[g+1]
		sorted := slices.Sorted(slices.Values(t.mass[sp.From:sp.To]))
		for i, m := range sorted {
			if count == Any || i >= len(sorted)-count {
				l.most[g] += m
			}
			if count != Any && i < count {
				l.least[g] += m
			}
		}
	}
	return l
}

// off is the distance of a reduced total from what the class wants.
func (t *tray) off(c *class, sum int64) int64 {
	d := c.base + sum*t.divisor - c.want.Target
	return max(d, -d)
}

// possible reports whether the class can have a set at all, by the extremes.
func (c *class) possible() bool {
	return c.lo <= c.hi && c.least != nil && c.least[0] <= c.hi && c.most[0] >= c.lo
}

// gap is the distance of two numbers.
func gap(a, b int64) int64 { return max(a-b, b-a) }
