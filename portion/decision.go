package portion

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
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

// Worst returns the worse of two verdicts: what differs outweighs what cannot be told,
// and that what agrees.
func (v Verdict) Worst(other Verdict) Verdict {
	if v == Differs || other == Agrees || other == "" {
		return v
	}
	return other
}

// Limits are the least and the most that a quantity may be, in its unit, with the
// decision rule that goes with them.
type Limits struct {
	Low  honestplate.Optional `json:"low,omitzero"`  // not given: no lower limit
	High honestplate.Optional `json:"high,omitzero"` // not given: no upper limit; at least Low
	// Guard is the guard band in expanded uncertainties U = 2u, 0..3. Not given means
	// 1, after which less than 2.5 % of what lies on a limit agrees. 0 is simple
	// acceptance: half of what lies on a limit agrees, and nothing cannot be told.
	Guard honestplate.Optional `json:"guard,omitzero"`
}

// A Decision is what a measured value says about limits.
type Decision struct {
	Verdict Verdict `json:"verdict"` // agrees, differs or cannot tell
	// Probability of conformity: that the true value lies inside the limits, given
	// what was measured (normal distribution, nothing known before).
	Probability float64 `json:"probability"`
}

// Decide judges a value with the standard uncertainty u, 0 or more: with the guard
// band g = Guard 2u it
//
//	agrees       from Low + g to High - g,
//	differs      below Low - g and above High + g,
//	cannot tell  between.
//
// Where Low and High are less than 2g apart nothing agrees, whatever is measured: see
// [Limits.Capability]. Errors: [honestplate.InputError]; [honestplate.RangeError] for the guard band.
//
// Source: JCGM 106:2012, 7.3, 7.4 and 8.3 (from memory); guard bands of ILAC-G8:09/2019,
// table 1 (as laboratories give it).
func (l Limits) Decide(value, u float64) (Decision, error) {
	if err := cmp.Or(l.Validate(), honestplate.Finite("Value", value, ""), honestplate.NotNegative("U", u,
		"")); err != nil {
		return Decision{}, err
	}
	low, high := l.ends()
	g := l.band(u)
	d := Decision{Verdict: CannotTell, Probability: l.probability(value, u)}
	// Decimals of a scale are not to fall outside by the dust of their binary form.
	dust := 1e-9 * (1 + math.Abs(value))
	switch {
	case low+g-dust <= value && value <= high-g+dust:
		d.Verdict = Agrees
	case value < low-g-dust || value > high+g+dust:
		d.Verdict = Differs
	}
	return d, nil
}

// Accept returns the limits inside which a measured value agrees: Low + g to High - g.
// Low above High says that nothing can. Errors: as [Limits.Decide].
func (l Limits) Accept(u float64) (Limits, error) {
	if err := cmp.Or(l.Validate(), honestplate.NotNegative("U", u, "")); err != nil {
		return Limits{}, err
	}
	g := l.band(u)
	if l.Low.Given {
		l.Low.Value += g
	}
	if l.High.Given {
		l.High.Value -= g
	}
	return l, nil
}

// band returns the guard band: so many expanded uncertainties, k = 2.
func (l Limits) band(u float64) float64 { return 2 * u * l.Guard.Or(1) }

// ends are the limits as numbers.
func (l Limits) ends() (low, high float64) { return l.Low.Or(math.Inf(-1)), l.High.Or(math.Inf(1)) }

// probability returns Phi((High-value)/u) - Phi((Low-value)/u), each tail from its own
// side, so that nothing is lost where it is small.
func (l Limits) probability(value, u float64) float64 {
	low, high := l.ends()
	if u == 0 {
		if low <= value && value <= high {
			return 1
		}
		return 0
	}
	tail := func(z float64) float64 { return math.Erfc(z/math.Sqrt2) / 2 } // beyond z
	a, b := (low-value)/u, (high-value)/u
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
// comfortable. It is infinite where a limit is not given or u is 0. Errors: as Decide.
//
// Source: JCGM 106:2012, 7.6 (from memory).
func (l Limits) Capability(u float64) (float64, error) {
	if err := cmp.Or(l.Validate(), honestplate.NotNegative("U", u, "")); err != nil {
		return 0, err
	}
	low, high := l.ends()
	if high == low {
		return 0, nil
	}
	return (high - low) / (4 * u), nil
}

// Validate returns nil for limits that can decide, else the error of [Limits.Decide].
func (l Limits) Validate() error {
	low, high := l.ends()
	err := cmp.Or(honestplate.Finite("Low", l.Low.Value, ""), honestplate.Finite("High", l.High.Value, ""))
	if err == nil && low > high {
		err = check.Input("Low", low, "", fmt.Sprintf("at most High, %g", high))
	}
	return cmp.Or(err, honestplate.InRange("Guard", l.Guard.Or(1), 0, 3, "U",
		"ILAC-G8:09/2019, table 1: guard bands from none to three expanded uncertainties"))
}
