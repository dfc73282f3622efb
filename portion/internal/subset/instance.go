// Package subset finds the best set of things that weigh, together, what is wanted: the
// search behind portion.Pick, in whole numbers.
//
// [Problem.Best] answers; relaxation.go prices mass, search.go enumerates the sets near
// the relaxed one, reachable.go lists the totals that can be had, repair.go is the last
// resort, best.go puts them together.
package subset

import (
	"slices"

	"example.org/honestplate/portion/internal/decimal"
)

// AnyCount as the count of a group leaves the number of its pieces free.
const AnyCount = -1

// A Problem is a choice of pieces. Masses, scores and their sums must be below 2^60.
type Problem struct {
	Masses, Scores    []int64 // by position; masses above 0, or all 0
	Groups            []Group // one or more, which together cover all positions in order
	Low, High, Target int64   // the permitted totals, and the one wanted, which is among them
	Effort            int     // steps of the search, above 0
	Closest           bool    // wants the closest total rather than the best score
}

// A Group is the positions From..To, of which Count are chosen, or any number.
type Group struct{ From, To, Count int }

// A Solution is a permitted set of positions with what is known about it.
type Solution struct {
	Chosen []int // positions, ascending
	Sum    int64 // their mass
	Score  int64
	Bound  int64 // a score that no permitted set exceeds
	Proven bool  // no permitted set is better
	First  bool  // and no equal set comes earlier in order of position
	Work   int   // steps spent, in the unit of Problem.Effort
}

// An instance is a problem under way, with scores over their common divisor. Masses that
// have a common divisor too, once the lightest of each group of a fixed count is taken
// off, are counted in it: even masses then have no odd total.
type instance struct {
	w, v         []int64
	groups       []Group
	lo, hi       int64 // permitted totals of w
	below, above int64 // totals of w next to the wanted one, or it
	base, step   int64 // a total is base + step times that of w
	target       int64 // the wanted total, as given
	unit         int64 // common divisor of the scores
	effort, work int
}

func (p Problem) instance() *instance {
	in := &instance{v: make([]int64, len(p.Scores)), groups: p.Groups, target: p.Target, effort: p.Effort}
	for _, v := range p.Scores {
		in.unit = decimal.CommonDivisor(in.unit, v)
	}
	in.unit = max(in.unit, 1)
	for i, v := range p.Scores {
		in.v[i] = v / in.unit
	}
	in.masses(p.Masses)
	in.lo, in.hi = decimal.CeilDiv(p.Low-in.base, in.step), decimal.FloorDiv(p.High-in.base, in.step)
	in.below, in.above = decimal.FloorDiv(p.Target-in.base, in.step), decimal.CeilDiv(p.Target-in.base, in.step)
	return in
}

// masses sets the masses in their common step.
func (in *instance) masses(given []int64) {
	less := make([]int64, len(in.groups))
	for g, sp := range in.groups {
		if sp.Count != AnyCount {
			less[g] = slices.Min(given[sp.From:sp.To])
		}
		for _, w := range given[sp.From:sp.To] {
			if in.step = decimal.CommonDivisor(in.step, w-less[g]); in.step == 1 {
				in.w = given
				return
			}
		}
	}
	in.step = max(in.step, 1)
	in.w = make([]int64, len(given))
	for g, sp := range in.groups {
		in.base += less[g] * int64(max(sp.Count, 0))
		for i := sp.From; i < sp.To; i++ {
			in.w[i] = (given[i] - less[g]) / in.step
		}
	}
}

// total is a total of w as the problem counts it.
func (in *instance) total(sum int64) int64 { return in.base + in.step*sum }

// flat reports that every permitted choice has the same score.
func (in *instance) flat() bool {
	for _, g := range in.groups {
		for i := g.From; i < g.To; i++ {
			if in.v[i] != in.v[g.From] || (g.Count == AnyCount && in.v[i] != 0) {
				return false
			}
		}
	}
	return true
}
