package portion

import (
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// A Component is one line of an uncertainty budget.
type Component struct {
	Name        string  // for messages; may be empty
	Standard    float64 // standard uncertainty u of the input, 0 or more, in its own unit
	Sensitivity float64 // change c of the result per unit of the input; 0 means 1
	Freedom     float64 // degrees of freedom; 0 means infinitely many
}

// Rectangular returns the standard uncertainty of a value equally likely anywhere
// within plus or minus halfWidth: halfWidth/sqrt 3 (GUM 4.3.7). Errors: InputError.
func Rectangular(halfWidth float64) (float64, error) {
	return halfWidth / math.Sqrt(3), notNegative("half-width", halfWidth, "")
}

// Resolution returns the standard uncertainty of one rounding to a step d:
// d/sqrt 12 = 0.289 d (GUM F.2.2.1). Errors: InputError.
func Resolution(step float64) (float64, error) {
	return step / math.Sqrt(12), notNegative("step", step, "")
}

// Repeated returns the mean of repeated readings, their standard deviation s and
// the standard uncertainty of the mean, s/sqrt n (GUM 4.2). It needs 2 finite
// readings or more. Errors: InputError.
func Repeated(readings ...float64) (mean, deviation, standard float64, err error) {
	if len(readings) < 2 {
		return 0, 0, 0, &InputError{"number of readings", float64(len(readings)), "", "2 or more"}
	}
	for _, r := range readings {
		if err := finite("reading", r, ""); err != nil {
			return 0, 0, 0, err
		}
	}
	mean, deviation = stat.MeanStdDev(readings, nil)
	standard = deviation / math.Sqrt(float64(len(readings)))
	return mean, deviation, standard, finite("standard deviation of the readings", standard, "")
}

// A Combined is the result of an uncertainty budget.
type Combined struct {
	Standard float64 // combined standard uncertainty
	Freedom  float64 // effective degrees of freedom; +Inf if every component has infinitely many
}

// Combine returns the combined standard uncertainty of independent components and
// its effective degrees of freedom (Welch and Satterthwaite):
//
//	u_c^2 = sum of (c u)^2        nu = u_c^4 / sum of ((c u)^4/nu_i)
//
// First-order terms only. Common errors of several inputs must be one component
// with the sum of their sensitivities. Errors: InputError.
//
// Source: JCGM 100:2008 (GUM), 5.1.2 and G.4 (numbers from memory); checked against
// its example H.1 and others.
func Combine(components ...Component) (Combined, error) {
	if len(components) == 0 {
		return Combined{}, &InputError{"number of components", 0, "", "at least 1"}
	}
	largest := 0.0
	terms := make([]float64, len(components))
	for i, c := range components {
		if err := notNegative("standard uncertainty of "+c.Name, c.Standard, ""); err != nil {
			return Combined{}, err
		}
		if err := finite("sensitivity of "+c.Name, c.Sensitivity, ""); err != nil {
			return Combined{}, err
		}
		if !(c.Freedom >= 0) { // +Inf is allowed
			return Combined{}, &InputError{"degrees of freedom of " + c.Name, c.Freedom, "", "above 0, or 0 for infinitely many"}
		}
		terms[i] = c.Standard
		if c.Sensitivity != 0 {
			terms[i] *= math.Abs(c.Sensitivity)
		}
		if err := finite("contribution of "+c.Name, terms[i], ""); err != nil {
			return Combined{}, err
		}
		largest = max(largest, terms[i])
	}
	if largest == 0 {
		return Combined{0, math.Inf(1)}, nil
	}
	squares, fourths := 0.0, 0.0
	for i, c := range components {
		t := terms[i] / largest // squares of huge terms stay finite
		squares += t * t
		if c.Freedom > 0 {
			fourths += t * t * t * t / c.Freedom
		}
	}
	standard := largest * math.Sqrt(squares)
	return Combined{standard, squares * squares / fourths}, finite("combined standard uncertainty", standard, "")
}

// leastFreedom is where k for 95 % passes 1e12; Student's quantile fails far below.
const leastFreedom = 0.1

// Expanded returns the expanded uncertainty k u for a confidence above 0 and below
// 1, with k from Student's t for the effective degrees of freedom, or from the
// normal distribution if they are a million or more. Errors: InputError; RangeError
// for fewer than a tenth of a degree of freedom, from which nothing follows.
func (c Combined) Expanded(confidence float64) (float64, error) {
	if !(confidence > 0 && confidence < 1) {
		return 0, &InputError{"confidence", confidence, "", "above 0 and below 1"}
	}
	if err := notNegative("combined standard uncertainty", c.Standard, ""); err != nil {
		return 0, err
	}
	if !(c.Freedom > 0) {
		return 0, &InputError{"degrees of freedom", c.Freedom, "", "above 0"}
	}
	if c.Freedom < leastFreedom {
		return 0, &RangeError{"degrees of freedom", c.Freedom, leastFreedom, math.MaxFloat64, "", "limit of this package"}
	}
	p := (1 + confidence) / 2
	k := distuv.UnitNormal.Quantile(p)
	if c.Freedom < 1e6 { // beyond, the two agree to 6 digits and gonum's t loses more
		k = distuv.StudentsT{Sigma: 1, Nu: c.Freedom}.Quantile(p)
	}
	u := k * c.Standard
	return u, finite("expanded uncertainty", u, "")
}
