package portion

import (
	"cmp"
	"fmt"
	"sort"

	"gonum.org/v1/gonum/mathext"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// Heroes asks how many units to prepare so that enough of them come out fit for
// the camera. Either the success rate is known, or it is uncertain: then earlier days
// and past takes speak for it.
type Heroes struct {
	// SuccessRate is the chance that one unit is fit, above 0, up to 1; 0 means judge by
	// Prior and past takes.
	SuccessRate float64 `json:"success_rate,omitzero"`
	Prior       Prior   `json:"prior,omitzero"` // what earlier days say, where SuccessRate is 0
	Takes       int     `json:"takes,omitzero"` // past takes of today, where SuccessRate is 0; 0 or more
	Good        int     `json:"good,omitzero"`  // how many of them were fit, 0..Takes
	// Correlation of two units of one batch, 0 or more and below 1: how far they go
	// right or wrong together, because the dough, the oven or the air is one. 0 takes
	// every unit for itself. Ten units at 0.3 tell as much as about 2.7 single ones:
	// the variance of their number is n p (1-p) (1 + (n-1) Correlation).
	Correlation float64 `json:"correlation,omitzero"`
	Batch       int     `json:"batch,omitzero"`  // units in one batch, where Correlation is above 0; 0 means all are of one
	Wanted      int     `json:"wanted,omitzero"` // fit units needed, 1 or more; 0 means 1
	// Confidence is the wanted chance of having them, above 0, below 1; 0 means 0.95.
	Confidence float64 `json:"confidence,omitzero"`
}

// Units returns the least number n of units for which at least k = Wanted are fit
// with probability Confidence. With a known success rate p the number of fit units
// is binomial:
//
//	P(n) = sum over i = k..n of C(n,i) p^i (1-p)^(n-i) = I(p; k, n-k+1)
//
// with I the regularised incomplete beta function. Judged by takes, p has a beta
// distribution with a = Prior.A + Good and b = Prior.B + Takes - Good, and the number
// is beta-binomial:
//
//	P(n) = 1 - sum over i = 0..k-1 of C(n,i) B(a+i, b+n-i)/B(a,b)
//
// Few takes cost units: that is the price of not knowing. With a Correlation r every
// batch has a rate of its own, beta-distributed about p with a = p (1/r - 1) and
// b = (1-p) (1/r - 1), and batches are independent; past takes then still speak for p
// one by one: discount them in the Prior. P is computed to about 1e-12 for hundreds of
// units (1e-9 for a million judged by takes; 1e-7 where rate and batches are both
// uncertain), and a P within 1e-11 below Confidence counts as reached, so that rounding
// never adds a unit.
//
// Errors: [honestplate.InputError] for inputs that make no sense, [honestplate.RangeError] if more than a million
// units would be needed, or for more than 1000 wanted from batches.
//
// Source: textbook distributions; checked against the printed tables of the
// Boost.Math negative binomial examples. Their text says "at least 5" where the
// numbers are for more than 5.
func (h Heroes) Units() (int, error) {
	h, err := h.checked()
	if err != nil {
		return 0, err
	}
	o := h.outlook()
	enough := func(n int) bool { return o.chance(n, nil) >= h.Confidence-1e-11 }
	if !enough(mostUnits) {
		return 0, &honestplate.RangeError{Field: "Confidence", Value: h.Confidence, High: o.chance(mostUnits, nil),
			Source: "a million units give no more: lower Wanted or Confidence, or raise the success rate"}
	}
	return h.Wanted + sort.Search(mostUnits-h.Wanted, func(i int) bool { return enough(h.Wanted + i) }), nil
}

// Chance returns the probability that at least Wanted of n units are fit. n is
// 0..1e6. Errors as for [Heroes.Units].
func (h Heroes) Chance(n int) (float64, error) {
	chances, err := h.Finish(n)
	if err != nil {
		return 0, err
	}
	return chances[0], nil
}

// Finish returns the chance to have Wanted fit units among n after each take of today:
// before the first, then after takes[0], takes[1] and so on, true for a fit one. Each
// take speaks for the rate and, where units of a batch go together, for the rest of its
// batch; the first take opens a batch. What is in Good and Takes comes before and
// counts for the rate only. n is at least the number of takes. Errors as for
// [Heroes.Units].
func (h Heroes) Finish(n int, takes ...bool) ([]float64, error) {
	h, err := h.checked()
	if err != nil {
		return nil, err
	}
	if err := checkUnits("N", n, len(takes)); err != nil {
		return nil, err
	}
	o, out := h.outlook(), make([]float64, len(takes)+1)
	for i := range out {
		out[i] = o.chance(n, takes[:i])
	}
	return out, nil
}

// LowestRate returns the success rate that takes support at Confidence: the true rate
// is at least that with this probability. Without a Prior, and if all n takes were
// good, it is (1-C)^(1/(n+1)); the classical bound, which some tables give, is
// (1-C)^(1/n). SuccessRate is not used. Errors as for [Heroes.Units].
//
// Source: the success-run theorem in its Bayesian form; checked against a printed
// table of it.
func (h Heroes) LowestRate() (float64, error) {
	h.SuccessRate, h.Wanted = 0, 1
	h, err := h.checked()
	if err != nil {
		return 0, err
	}
	a, b := h.beta()
	return mathext.InvRegIncBeta(a, b, 1-h.Confidence), nil
}

// beta returns the parameters of what is known of the rate.
func (h Heroes) beta() (a, b float64) {
	p := h.Prior.orFlat()
	return p.A + float64(h.Good), p.B + float64(h.Takes-h.Good)
}

// checked returns h with its zero values filled in, or what is wrong with it.
func (h Heroes) checked() (Heroes, error) {
	if h.Wanted == 0 {
		h.Wanted = 1
	}
	if h.Confidence == 0 {
		h.Confidence = 0.95
	}
	switch err := cmp.Or(checkUnits("Wanted", h.Wanted, 1), checkUnits("Takes", h.Takes, 0),
		checkUnits("Batch", h.Batch, 0)); {
	case err != nil:
		return h, err
	case !(h.Confidence > 0 && h.Confidence < 1):
		return h, check.Input("Confidence", h.Confidence, "", "above 0 and below 1")
	case !(h.SuccessRate >= 0 && h.SuccessRate <= 1):
		return h, check.Input("SuccessRate", h.SuccessRate, "", "above 0 and at most 1, or 0 to judge by takes")
	case h.Good < 0 || h.Good > h.Takes:
		return h, check.Input("Good", h.Good, "", fmt.Sprintf("0 to the %d Takes", h.Takes))
	case h.SuccessRate > 0 && h.Takes > 0:
		return h, check.Input("Takes", h.Takes, "", "0 where the success rate is given")
	case h.SuccessRate > 0 && h.Prior != (Prior{}):
		return h, check.Input("Prior.A", h.Prior.A, "", "no prior where the success rate is given")
	case !(h.Correlation >= 0 && h.Correlation < 1):
		return h, check.Input("Correlation", h.Correlation, "", "0 or more and below 1")
	case h.Correlation == 0 && h.Batch > 0:
		return h, check.Input("Batch", h.Batch, "", "0 where units do not go together (Correlation 0)")
	case h.Correlation > 0 && h.Wanted > mostFromBatches:
		return h, &honestplate.RangeError{Field: "Wanted", Value: float64(h.Wanted), Low: 1, High: mostFromBatches,
			Source: "convolving batches takes the square of it"}
	}
	return h, honestplate.In("Prior", h.Prior.check())
}

// mostFromBatches bounds how many heroes may be wanted where batches matter.
const mostFromBatches = 1000

// checkUnits refuses a number of units below least or beyond what any studio has.
func checkUnits(field string, n, least int) error {
	if n < least {
		return check.Input(field, n, "", fmt.Sprintf("%d or more", least))
	}
	if n > mostUnits {
		return check.Beyond(field, float64(n), mostUnits, "", "the formulas keep their digits up to a million")
	}
	return nil
}
