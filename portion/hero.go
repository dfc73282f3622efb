package portion

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/mathext"
)

// mostUnits bounds how many units Heroes considers: more is no studio's problem.
const mostUnits = 1_000_000

// Heroes asks how many units to prepare so that enough of them come out fit for
// the camera.
type Heroes struct {
	SuccessRate float64 // chance that one unit is fit, above 0, up to 1
	Wanted      int     // fit units needed, 1 or more; 0 means 1
	Confidence  float64 // wanted chance of having them, above 0, below 1; 0 means 0.95
}

// Units returns the least number n of units for which at least k = Wanted are fit
// with probability Confidence:
//
//	P(n) = sum over i = k..n of C(n,i) p^i (1-p)^(n-i) = I(p; k, n-k+1)
//
// where p is SuccessRate and I the regularised incomplete beta function. Units are
// taken as independent: one bad batch spoils more than this expects. P is computed
// to about 1e-13, and a P within 1e-12 below Confidence counts as reached, so that
// rounding never adds a unit.
//
// Errors: InputError for inputs that make no sense, RangeError if more than a
// million units would be needed.
func (h Heroes) Units() (int, error) {
	h, err := h.checked()
	if err != nil {
		return 0, err
	}
	enough := func(n int) bool { return h.chance(n) >= h.Confidence-1e-12 }
	if !enough(mostUnits) {
		return 0, &RangeError{"chance of the wanted units out of a million", h.chance(mostUnits), h.Confidence, 1, "", "limit of this package"}
	}
	return h.Wanted + sort.Search(mostUnits-h.Wanted, func(i int) bool { return enough(h.Wanted + i) }), nil
}

// Chance returns the probability that at least Wanted of n units are fit. n is
// 0..1e6. Errors as for Units.
func (h Heroes) Chance(n int) (float64, error) {
	h, err := h.checked()
	if err != nil {
		return 0, err
	}
	if n < 0 {
		return 0, &InputError{"number of units", float64(n), "", "0 or more"}
	}
	if n > mostUnits {
		return 0, &RangeError{"number of units", float64(n), 0, mostUnits, "", "limit of this package"}
	}
	return h.chance(n), nil
}

func (h Heroes) chance(n int) float64 {
	if n < h.Wanted {
		return 0
	}
	return mathext.RegIncBeta(float64(h.Wanted), float64(n-h.Wanted+1), h.SuccessRate)
}

// checked returns h with its zero values filled in, or what is wrong with it.
func (h Heroes) checked() (Heroes, error) {
	if h.Wanted == 0 {
		h.Wanted = 1
	}
	if h.Confidence == 0 {
		h.Confidence = 0.95
	}
	if h.Wanted < 0 {
		return h, &InputError{"units wanted (Wanted)", float64(h.Wanted), "", "1 or more"}
	}
	if h.Wanted > mostUnits {
		return h, &RangeError{"units wanted (Wanted)", float64(h.Wanted), 1, mostUnits, "", "limit of this package"}
	}
	if !(h.Confidence > 0 && h.Confidence < 1) {
		return h, &InputError{"confidence (Confidence)", h.Confidence, "", "above 0 and below 1"}
	}
	if !(h.SuccessRate > 0 && h.SuccessRate <= 1) || math.IsNaN(h.SuccessRate) {
		return h, &InputError{"success rate (SuccessRate)", h.SuccessRate, "", "above 0, at most 1"}
	}
	return h, nil
}
