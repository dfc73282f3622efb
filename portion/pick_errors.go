package portion

import (
	"errors"
	"fmt"
)

// The kinds of error of Pick, for errors.Is.
var (
	// ErrInfeasible marks a Pick that no set of the pieces satisfies.
	ErrInfeasible = errors.New("portion: no set of the pieces is permitted")
	// ErrEffort marks a Pick whose effort ran out before any set was found.
	ErrEffort = errors.New("portion: effort spent before a set was found")
)

// An InfeasibleError says that no set of pieces has the count and a permitted
// total, and which totals come nearest. errors.Is(err, ErrInfeasible) holds.
type InfeasibleError struct {
	Count     int     // pieces to choose; 0 where the number was free
	Grams     float64 // declared, g
	Tolerance float64 // g, as given
	// NeverBelow and NeverAbove are as in the Pick.
	NeverBelow, NeverAbove bool
	// Below and Above are the nearest totals that sets of the right count make, g:
	// at most and at least the declared mass. 0 means there is none on that side, or
	// that Known is false.
	Below, Above float64
	// Known is unset where finding the nearest totals would take more memory or work
	// than the effort allows.
	Known bool
}

// Error names what was wanted and the nearest totals that can be had.
func (e *InfeasibleError) Error() string {
	what := "no set of the pieces weighs"
	if e.Count > 0 {
		what = fmt.Sprintf("no %d of the pieces weigh", e.Count)
	}
	within := ", to the step"
	if e.Tolerance > 0 {
		within = " within " + withUnit(e.Tolerance, "g")
	}
	if e.NeverBelow {
		within += ", never below"
	}
	if e.NeverAbove {
		within += ", never above"
	}
	head := fmt.Sprintf("portion: %s %s%s", what, withUnit(e.Grams, "g"), within)
	switch {
	case !e.Known:
		return head + "; to find the nearest totals would take more effort"
	case e.Below > 0 && e.Above > 0:
		return fmt.Sprintf("%s; the nearest they reach are %s and %s", head, withUnit(e.Below, "g"), withUnit(e.Above, "g"))
	case e.Below > 0:
		return fmt.Sprintf("%s; the most they reach is %s", head, withUnit(e.Below, "g"))
	default:
		return fmt.Sprintf("%s; the least they reach is %s", head, withUnit(e.Above, "g"))
	}
}

// Is reports that an InfeasibleError is an ErrInfeasible.
func (e *InfeasibleError) Is(target error) bool { return target == ErrInfeasible }

// Closest returns the nearer of Below and Above, g, the lower on a tie, and false if
// neither is known.
func (e *InfeasibleError) Closest() (float64, bool) {
	switch {
	case !e.Known || (e.Below <= 0 && e.Above <= 0):
		return 0, false
	case e.Above <= 0 || (e.Below > 0 && e.Grams-e.Below <= e.Above-e.Grams):
		return e.Below, true
	default:
		return e.Above, true
	}
}

// An EffortError says that the bounded search found no permitted set, which does
// not prove that there is none. A larger Pick.Effort may help. errors.Is(err,
// ErrEffort) holds.
type EffortError struct {
	Effort int // that was allowed, in search steps
}

// Error names the effort that was spent.
func (e *EffortError) Error() string {
	return fmt.Sprintf("portion: no permitted set found within an effort of %d steps; allow more", e.Effort)
}

// Is reports that an EffortError is an ErrEffort.
func (e *EffortError) Is(target error) bool { return target == ErrEffort }

// infeasible builds the error with the nearest totals.
func (p Pick) infeasible(in *instance) error {
	e := &InfeasibleError{Grams: p.Grams, Tolerance: p.Tolerance, NeverBelow: p.NeverBelow, NeverAbove: p.NeverAbove}
	for _, g := range in.groups {
		e.Count += max(g.count, 0)
	}
	low, high := in.extremes()
	set := func(below, above int64, hasBelow, hasAbove bool) {
		e.Known = true
		if hasBelow {
			e.Below = in.step.times(below)
		}
		if hasAbove {
			e.Above = in.step.times(above)
		}
	}
	switch {
	case high <= in.target:
		set(high, 0, true, false)
	case low >= in.target:
		set(0, low, false, true)
	default:
		if r := in.reachable(false); r != nil {
			set(r.nearest(in.target))
		}
	}
	return e
}
