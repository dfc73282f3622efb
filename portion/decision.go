package portion

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
)

// A Verdict says whether what was found is what was agreed.
type Verdict string

// The verdicts. CannotTell is one in its own right: a scale that cannot know has
// neither agreed nor disagreed.
const (
	Agrees     Verdict = "agrees"      // inside the limits, as sure as the guard band makes it
	Differs    Verdict = "differs"     // outside the limits, as sure as that
	CannotTell Verdict = "cannot tell" // too near a limit for this scale, or below its least load
)

// Limits are the least and the most that a quantity may be, in its unit, with the
// decision rule that goes with them.
type Limits struct {
	// Low and High are the limits, Low at most High; an infinity where there is none.
	Low, High float64
	// Guard is the guard band in expanded uncertainties U = 2u, 0..3. Not given means
	// 1, after which less than 2.5 % of what lies on a limit agrees. 0 is simple
	// acceptance: half of what lies on a limit agrees, and nothing cannot be told.
	Guard honestplate.Optional
}

// A Decision is what a measured value says about limits.
type Decision struct {
	Verdict Verdict
	// Probability of conformity: that the true value lies inside the limits, given
	// what was measured (normal distribution, nothing known before).
	Probability float64
	Low, High   float64 // what would have agreed; Low above High where nothing would
}

// Decide judges a value with the standard uncertainty u, 0 or more: with the guard
// band g = Guard 2u it
//
//	agrees       from Low + g to High - g,
//	differs      below Low - g and above High + g,
//	cannot tell  between.
//
// Where Low and High are less than 2g apart nothing agrees, whatever is measured: see
// [Limits.Capability]. Errors: InputError; RangeError for the guard band.
//
// Source: JCGM 106:2012, 7.3, 7.4 and 8.3 (from memory); guard bands of ILAC-G8:09/2019,
// table 1 (as laboratories give it).
func (l Limits) Decide(value, u float64) (Decision, error) {
	if err := cmp.Or(l.check(), honestplate.Finite("Value", value, ""), honestplate.NotNegative("U", u, "")); err != nil {
		return Decision{}, err
	}
	g := 2 * u * l.Guard.Or(1)
	d := Decision{Verdict: CannotTell, Probability: l.probability(value, u), Low: l.Low + g, High: l.High - g}
	// Decimals of a scale are not to fall outside by the dust of their binary form.
	dust := 1e-9 * (1 + math.Abs(value))
	switch {
	case d.Low-dust <= value && value <= d.High+dust:
		d.Verdict = Agrees
	case value < l.Low-g-dust || value > l.High+g+dust:
		d.Verdict = Differs
	}
	return d, nil
}

// probability returns Phi((High-value)/u) - Phi((Low-value)/u), each tail from its own
// side, so that nothing is lost where it is small.
func (l Limits) probability(value, u float64) float64 {
	if u == 0 {
		if l.Low <= value && value <= l.High {
			return 1
		}
		return 0
	}
	tail := func(z float64) float64 { return math.Erfc(z/math.Sqrt2) / 2 } // beyond z
	a, b := (l.Low-value)/u, (l.High-value)/u
	switch {
	case a > 0:
		return tail(a) - tail(b)
	case b < 0:
		return tail(-b) - tail(-a)
	}
	return 1 - tail(-a) - tail(b)
}

// Capability returns the measuring capability index Cm = (High - Low)/(4u). At 1 and
// below nothing can agree; at 2 half of the tolerance is left to agree in; 4 is
// comfortable. It is infinite where a limit is or u is 0. Errors: as Decide.
//
// Source: JCGM 106:2012, 7.6 (from memory).
func (l Limits) Capability(u float64) (float64, error) {
	if err := cmp.Or(l.check(), honestplate.NotNegative("U", u, "")); err != nil {
		return 0, err
	}
	if l.High == l.Low {
		return 0, nil
	}
	return (l.High - l.Low) / (4 * u), nil
}

func (l Limits) check() error {
	if !(l.Low <= l.High) || math.IsInf(l.Low, 1) || math.IsInf(l.High, -1) {
		return &honestplate.InputError{Field: "Low", Got: fmt.Sprintf("%g with a High of %g", l.Low, l.High), Want: "numbers, Low at most High"}
	}
	return honestplate.InRange("Guard", l.Guard.Or(1), 0, 3, "U", "ILAC-G8:09/2019, table 1: guard bands from none to three expanded uncertainties")
}
