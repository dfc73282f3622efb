package subset

import (
	"errors"
	"math"
	"slices"

	"example.org/honestplate/portion/internal/decimal"
)

// The reasons for no answer.
var (
	// ErrNone marks a problem that is proven to have no permitted set.
	ErrNone = errors.New("no set is permitted")
	// ErrEffort marks an effort that was spent before a set was found.
	ErrEffort = errors.New("effort spent before a set was found")
)

// Best returns the best permitted set: of highest score, or at the closest total where
// Closest is set; among equals by the other, then the first in order of position.
// Errors: ErrNone, ErrEffort.
func (p Problem) Best() (Solution, error) {
	in := p.instance()
	if low, high := in.extremes(); low > in.hi || high < in.lo || in.lo > in.hi {
		return Solution{}, ErrNone
	}
	var s solution
	var err error
	switch {
	case in.flat():
		s, err = in.flatBest()
	case p.Closest:
		s, err = in.closest()
	default:
		s, err = in.bestScore()
	}
	if err != nil {
		return Solution{}, err
	}
	return Solution{s.chosen, in.total(s.sum), s.score * in.unit, s.bound * in.unit, s.proven, s.proven && s.first, in.work}, nil
}

// Nearest returns the totals that sets of the right counts make next to the target: at
// or below it and at or above it, as far as there are any. known is false where listing
// them would take more memory or work than the effort allows.
func (p Problem) Nearest() (below, above int64, hasBelow, hasAbove, known bool) {
	in := p.instance()
	low, high := in.extremes()
	switch {
	case high <= in.below:
		return in.total(high), 0, true, false, true
	case low >= in.above:
		return 0, in.total(low), false, true, true
	}
	r := in.reachable(false)
	if r == nil {
		return 0, 0, false, false, false
	}
	below, above, hasBelow, hasAbove = in.nearest(r, 0, math.MaxInt64)
	return in.total(below), in.total(above), hasBelow, hasAbove, true
}

// flatBest answers where every permitted set has one score: the closest total, and
// of its sets the first in stated order.
func (in *instance) flatBest() (solution, error) {
	r := in.reachable(true)
	if r == nil {
		return in.bestScore()
	}
	best := solution{}
	for _, t := range in.closestOf(r) {
		s := in.listed(r, t)
		s.bound, s.proven, s.first = s.score, true, true
		if in.better(s, best) {
			best = s
		}
	}
	if !best.found {
		return best, ErrNone
	}
	return best, nil
}

// listed is the first set that makes a total.
func (in *instance) listed(r *Reach, total int64) solution {
	s := solution{chosen: r.Set(total), sum: total, found: true}
	for _, i := range s.chosen {
		s.score += in.v[i]
	}
	return s
}

// closest answers a problem that wants the closest total: the reachable totals say which distance is
// least, then the best score at that distance is sought.
func (in *instance) closest() (solution, error) {
	// Mostly the declared mass itself can be had, and that is soon seen.
	if in.below == in.above {
		if s, err := in.inside(in.below, in.below, min(in.effort, 100_000)); err == nil && s.proven {
			return s, nil
		}
	}
	r := in.reachable(false)
	if r == nil {
		return in.widening()
	}
	totals := in.closestOf(r)
	if totals == nil {
		return solution{}, ErrNone
	}
	best := solution{}
	bound, proven, first := int64(math.MinInt64), true, true
	for _, t := range totals {
		s, err := in.inside(t, t, in.effort)
		if err != nil {
			return solution{}, err
		}
		bound, proven, first = max(bound, s.bound), proven && s.proven, first && s.first
		if in.better(s, best) {
			best = s
		}
	}
	best.bound, best.proven, best.first = bound, proven, first
	return best, nil
}

// widening is closest where the totals are too many to list: windows about the
// target widen until one holds a set. The first that does, fully searched, would
// prove a distance only if it were one step wide, so nothing is claimed.
func (in *instance) widening() (solution, error) {
	for d := int64(0); ; d = 2*d + 1 {
		low, high := max(in.lo, in.below-d), min(in.hi, in.above+d)
		s, err := in.inside(low, high, in.effort)
		if err == nil {
			s.proven = s.proven && in.off(s.sum) == 0
			return s, nil
		}
		if low == in.lo && high == in.hi {
			return solution{}, err
		}
	}
}

// inside is bestScore with another window.
func (in *instance) inside(low, high int64, effort int) (solution, error) {
	narrow := *in
	narrow.lo, narrow.hi, narrow.effort = low, high, effort
	s, err := narrow.bestScore()
	in.work = narrow.work
	return s, err
}

// bestScore answers one that wants the best score, by searching ever larger budgets.
func (in *instance) bestScore() (solution, error) {
	x := in.relax()
	costs := make([]int64, len(x.r))
	total := int64(0)
	for i := range costs {
		costs[i] = x.cost(i)
		total += costs[i]
	}
	// The first budget: sets that differ in about the ten least decided pieces.
	slices.Sort(costs)
	budget := costs[min(10, len(costs)-1)]
	searched, checked := int64(-1), false
	kept := solution{}
	for {
		s, thinned := in.within(x, budget)
		if in.better(kept, s) {
			s = kept // found before, within a smaller budget
		}
		kept = s
		if !thinned {
			if s.found {
				cost := x.bound - s.score*x.scale
				if cost <= budget {
					s.bound, s.proven, s.first = s.score, true, true
					return s, nil
				}
				searched, budget = budget, cost
				continue
			}
			if searched = budget; budget >= total {
				return s, ErrNone
			}
		} else if s.found {
			// Every set of cost up to searched has been seen: none is permitted.
			s.bound = max(s.score, decimal.FloorDiv(x.bound-searched-1, x.scale))
			s.proven = s.bound == s.score && in.off(s.sum) == 0
			return s, nil
		} else if budget >= total {
			return in.anySet(x, decimal.FloorDiv(x.bound-searched-1, x.scale))
		}
		if !checked && in.work > 100_000 {
			checked = true
			if r := in.reachable(false); r != nil && in.closestOf(r) == nil {
				return s, ErrNone
			}
		}
		budget = min(2*budget+1, total)
		// Pieces left out of the core stay out with a larger budget too.
		if in.work > in.effort || thinned && len(in.w) > in.core() {
			budget = total
		}
	}
}

// anySet is the last resort when the search was cut short empty-handed: a set near
// the relaxed one, or any permitted set, with the bound.
func (in *instance) anySet(x *relaxation, bound int64) (solution, error) {
	s := in.repair(x)
	if !s.found {
		r := in.reachable(true)
		if r == nil {
			return s, ErrEffort
		}
		totals := in.closestOf(r)
		if totals == nil {
			return s, ErrNone
		}
		s = in.listed(r, totals[0])
	}
	s.bound = max(s.score, bound)
	s.proven = s.bound == s.score && in.off(s.sum) == 0
	return s, nil
}
