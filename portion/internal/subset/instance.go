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

// Positions lists the positions of the group.
func (g Group) Positions() []int {
	out := make([]int, 0, g.To-g.From)
	for i := g.From; i < g.To; i++ {
		out = append(out, i)
	}
	return out
}

// Extremes returns the least and the greatest mass of so many pieces as Count says, of
// masses that are sorted, light to heavy.
func (g Group) Extremes(sorted []int64) (least, most int64) {
	for i, w := range sorted {
		if i < g.Count {
			least += w
		}
		if g.Count == AnyCount || i >= len(sorted)-g.Count {
			most += w
		}
	}
	return least, most
}

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

// An instance is a problem under way, with scores over their common divisor and masses
// [Reduced].
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
	in.w, in.base, in.step = Reduced(p.Masses, p.Groups)
	in.lo, in.hi = decimal.CeilDiv(p.Low-in.base, in.step), decimal.FloorDiv(p.High-in.base, in.step)
	in.below, in.above = decimal.FloorDiv(p.Target-in.base, in.step), decimal.CeilDiv(p.Target-in.base, in.step)
	return in
}

// Reduced returns masses less the lightest of their group where its count is fixed, over
// their common divisor: a total is base plus step times that of the reduced ones. Even
// masses then have no odd total.
func Reduced(masses []int64, groups []Group) (reduced []int64, base, step int64) {
	reduced = slices.Clone(masses)
	for _, sp := range groups {
		own := reduced[sp.From:sp.To]
		if sp.Count != AnyCount && len(own) > 0 {
			less := slices.Min(own)
			base += less * int64(sp.Count)
			for i := range own {
				own[i] -= less
			}
		}
		for i := 0; i < len(own) && step != 1; i++ {
			step = decimal.CommonDivisor(step, own[i])
		}
	}
	if step = max(step, 1); step > 1 {
		for i := range reduced {
			reduced[i] /= step
		}
	}
	return reduced, base, step
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
