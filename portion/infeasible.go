package portion

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/decimal"
)

// An InfeasibleError says that no set of pieces has the count and a permitted total,
// and which totals come nearest. errors.Is(err, [honestplate.ErrInfeasible]) holds,
// and it wraps an [honestplate.RefusedError].
type InfeasibleError struct {
	Pick Pick // what was asked for
	// Below and Above are the nearest totals that sets of the right count make, g: at
	// most and at least the declared mass. One is not given where there is none on that
	// side, both where finding them would take more memory or work than the effort
	// allows.
	Below, Above honestplate.Optional
}

// Error names what was wanted and the nearest totals that can be had.
func (e *InfeasibleError) Error() string { return e.Unwrap().Error() }

// Unwrap returns the error in the module's vocabulary.
func (e *InfeasibleError) Unwrap() error {
	grams := func(v float64) string { return decimal.Plain(v) + " g" }
	what := "no set of the pieces weighs"
	if count := e.Pick.chosen(); count > 0 {
		what = fmt.Sprintf("no %d of the pieces weigh", count)
	}
	within := ", to the step"
	if e.Pick.Tolerance > 0 {
		within = " within " + grams(e.Pick.Tolerance)
	}
	if e.Pick.NeverBelow {
		within += ", never below"
	}
	if e.Pick.NeverAbove {
		within += ", never above"
	}
	advice := "allow more Effort to find the nearest totals"
	switch {
	case e.Below.Given && e.Above.Given:
		advice = fmt.Sprintf("the nearest they reach are %s and %s", grams(e.Below.Value), grams(e.Above.Value))
	case e.Below.Given:
		advice = "the most they reach is " + grams(e.Below.Value)
	case e.Above.Given:
		advice = "the least they reach is " + grams(e.Above.Value)
	}
	reason := what + " " + grams(e.Pick.Grams) + within
	return &honestplate.RefusedError{Field: "Pieces", Kind: honestplate.ErrInfeasible, Reason: reason, Advice: advice}
}

// chosen is how many pieces are wanted; 0 where the number is free.
func (p Pick) chosen() int {
	count := p.Count
	if count == 0 {
		for _, g := range p.Groups {
			count += g.Count
		}
	}
	return count
}

// infeasible builds the error with the nearest totals.
func (p Pick) infeasible(q pickProblem) error {
	e := &InfeasibleError{Pick: p}
	if below, above, hasBelow, hasAbove, known := q.Nearest(); known {
		e.Below = honestplate.Optional{Value: q.step.Times(below), Given: hasBelow && below > 0}
		e.Above = honestplate.Optional{Value: q.step.Times(above), Given: hasAbove}
	}
	return e
}
