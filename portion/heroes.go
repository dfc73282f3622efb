package portion

import (
	"cmp"
	"fmt"
	"math"
	"sort"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"gonum.org/v1/gonum/mathext"
)

// Heroes asks how many units to prepare so that enough of them come out fit for
// the camera. Either the success rate is known, or it is uncertain and past takes
// speak for it.
type Heroes struct {
	SuccessRate float64 `json:"success_rate,omitzero"` // chance that one unit is fit, above 0, up to 1; 0 means judge by past takes
	Takes       int     `json:"takes,omitzero"`        // past takes, where SuccessRate is 0; 0 or more
	Good        int     `json:"good,omitzero"`         // how many of them were fit, 0..Takes
	Wanted      int     `json:"wanted,omitzero"`       // fit units needed, 1 or more; 0 means 1
	Confidence  float64 `json:"confidence,omitzero"`   // wanted chance of having them, above 0, below 1; 0 means 0.95
}

// Units returns the least number n of units for which at least k = Wanted are fit
// with probability Confidence. With a known success rate p the number of fit units
// is binomial:
//
//	P(n) = sum over i = k..n of C(n,i) p^i (1-p)^(n-i) = I(p; k, n-k+1)
//
// with I the regularised incomplete beta function. Judged by past takes, p has a
// beta distribution with a = Good+1 and b = Takes-Good+1 (every rate equally
// likely before the first take), and the number is beta-binomial:
//
//	P(n) = 1 - sum over i = 0..k-1 of C(n,i) B(a+i, b+n-i)/B(a,b)
//
// Few takes cost units: that is the price of not knowing. Units are taken as
// independent: one bad batch spoils more than this expects. P is computed to about
// 1e-12 for hundreds of units (1e-9 for a million judged by takes), and a P within
// 1e-11 below Confidence counts as reached, so that rounding never adds a unit.
//
// Errors: [honestplate.InputError] for inputs that make no sense,
// [honestplate.RangeError] if more than a million units would be needed.
//
// Source: textbook distributions; checked against the printed tables of the
// Boost.Math negative binomial examples. Their text says "at least 5" where the
// numbers are for more than 5.
func (h Heroes) Units() (int, error) {
	h, err := h.checked()
	if err != nil {
		return 0, err
	}
	enough := func(n int) bool { return h.chance(n) >= h.Confidence-1e-11 }
	if !enough(mostUnits) {
		return 0, &honestplate.RangeError{Field: "Confidence", Value: h.Confidence, High: h.chance(mostUnits),
			Source: "a million units give no more: lower Wanted or Confidence, or raise the success rate"}
	}
	return h.Wanted + sort.Search(mostUnits-h.Wanted, func(i int) bool { return enough(h.Wanted + i) }), nil
}

// Chance returns the probability that at least Wanted of n units are fit. n is
// 0..1e6. Errors as for [Heroes.Units].
func (h Heroes) Chance(n int) (float64, error) {
	h, err := h.checked()
	if err != nil {
		return 0, err
	}
	if err := checkUnits("N", n, 0); err != nil {
		return 0, err
	}
	return h.chance(n), nil
}

func (h Heroes) chance(n int) float64 {
	switch {
	case n < h.Wanted:
		return 0
	case h.SuccessRate > 0:
		return mathext.RegIncBeta(float64(h.Wanted), float64(n-h.Wanted+1), h.SuccessRate)
	default:
		return h.betaBinomial(n)
	}
}

// betaBinomial returns 1 less the chances of 0..Wanted-1 fit units, each from the
// one before by the ratio of neighbours, in logarithms so that none underflows.
func (h Heroes) betaBinomial(n int) float64 {
	a, b, trials := float64(h.Good+1), float64(h.Takes-h.Good+1), float64(n)
	logChance := mathext.Lbeta(a, b+trials) - mathext.Lbeta(a, b)
	few := 0.0
	for i := range h.Wanted {
		few += math.Exp(logChance)
		k := float64(i)
		logChance += math.Log((trials - k) / (k + 1) * (a + k) / (b + trials - k - 1))
	}
	return min(max(0, 1-few), 1)
}

// LowestRate returns the success rate that past takes support at Confidence: the
// true rate is at least that with this probability, every rate having been equally
// likely before the first take. If all n takes were good it is (1-C)^(1/(n+1)); the
// classical bound, which some tables give, is (1-C)^(1/n). SuccessRate is not
// used. Errors as for [Heroes.Units].
//
// Source: the success-run theorem in its Bayesian form; checked against a printed
// table of it.
func (h Heroes) LowestRate() (float64, error) {
	h.SuccessRate, h.Wanted = 0, 1
	h, err := h.checked()
	if err != nil {
		return 0, err
	}
	return mathext.InvRegIncBeta(float64(h.Good+1), float64(h.Takes-h.Good+1), 1-h.Confidence), nil
}

// checked returns h with its zero values filled in, or what is wrong with it.
func (h Heroes) checked() (Heroes, error) {
	if h.Wanted == 0 {
		h.Wanted = 1
	}
	if h.Confidence == 0 {
		h.Confidence = 0.95
	}
	rate := check.Input("SuccessRate", h.SuccessRate, "", "above 0 and at most 1, or Takes to judge by")
	switch err := cmp.Or(checkUnits("Wanted", h.Wanted, 1), checkUnits("Takes", h.Takes, 0)); {
	case err != nil:
		return h, err
	case !(h.Confidence > 0 && h.Confidence < 1):
		return h, check.Input("Confidence", h.Confidence, "", "above 0 and below 1")
	case !(h.SuccessRate >= 0 && h.SuccessRate <= 1), h.SuccessRate == 0 && h.Takes == 0:
		return h, rate
	case h.Good < 0 || h.Good > h.Takes:
		return h, check.Input("Good", h.Good, "", fmt.Sprintf("0 to the %d Takes", h.Takes))
	case h.SuccessRate > 0 && h.Takes > 0:
		return h, check.Input("Takes", h.Takes, "", "0 where the success rate is given")
	}
	return h, nil
}

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
