package portion

import (
	"math"
	"sort"
)

// Sum returns the total of loads weighed one by one, each once, on the same scale:
//
//	u^2 = sum of (Repeat^2 + 2 d^2/12) + (sum of mpe/sqrt 3)^2
//
// Rounding and repeatability differ from one weighing to the next and grow with
// the square root of their number; the scale's own error is common to all and
// grows with the number. That is why weighing 40 pieces one by one says less about
// their sum than weighing them together. Errors: those of MaxError; InputError for
// no loads.
//
// Source: JCGM 100:2008 (GUM), 5.1 and 5.2 (numbers from memory).
func (s Scale) Sum(loads ...float64) (Weighing, error) {
	if len(loads) == 0 {
		return Weighing{}, &InputError{"number of loads", 0, "", "at least 1"}
	}
	w, common := Weighing{Readings: len(loads)}, 0.0
	for _, load := range loads {
		mpe, err := s.MaxError(load)
		if err != nil {
			return Weighing{}, err
		}
		w.Grams += load
		common += mpe / math.Sqrt(3)
	}
	s, _ = s.checked() // MaxError found it in order
	w.Standard = s.sumUncertainty(float64(len(loads)), common)
	w.Expanded = 2 * w.Standard
	return w, nil
}

// sumUncertainty combines n weighings that share the common error.
func (s Scale) sumUncertainty(n, common float64) float64 {
	return math.Sqrt(n*(s.Repeat*s.Repeat+s.StepGrams*s.StepGrams/6) + common*common)
}

// MostWeighings returns how many separate weighings of about the load a sum can
// bear before its expanded uncertainty exceeds the tolerance, both in grams; at
// most a million. Errors: those of MaxError; RangeError if one weighing already
// exceeds it: then a finer scale is wanted.
func (s Scale) MostWeighings(load, tolerance float64) (int, error) {
	if err := positive("tolerance", tolerance, "g"); err != nil {
		return 0, err
	}
	mpe, err := s.MaxError(load)
	if err != nil {
		return 0, err
	}
	s, _ = s.checked()
	expanded := func(n int) float64 { return 2 * s.sumUncertainty(float64(n), float64(n)*mpe/math.Sqrt(3)) }
	if one := expanded(1); one > tolerance {
		return 0, &RangeError{"tolerance", tolerance, one, math.MaxFloat64, "g", "uncertainty of a single weighing on this scale"}
	}
	return sort.Search(mostUnits, func(i int) bool { return expanded(i+1) > tolerance }), nil
}
