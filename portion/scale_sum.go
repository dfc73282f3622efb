package portion

import (
	"fmt"
	"math"

	"example.org/honestplate/portion/internal/check"
)

// Sum returns the total of loads weighed one by one, each once, on the same scale:
//
//	u^2 = sum of (Repeat^2 + 2 d^2/12) + (sum of mpe/sqrt 3)^2
//
// Rounding and repeatability differ from one weighing to the next and grow with
// the square root of their number; the scale's own error is common to all and
// grows with the number. With a Check what that leaves open stands for mpe/sqrt 3. That is why weighing 40 pieces one by one says less about
// their sum than weighing them together. Errors: those of [Scale.MaxError];
// [honestplate.InputError] for no loads.
//
// Source: JCGM 100:2008 (GUM), 5.1 and 5.2 (numbers from memory).
func (s Scale) Sum(loads ...float64) (Weighing, error) {
	if len(loads) == 0 {
		return Weighing{}, check.Input("Loads", "empty", "", "at least one")
	}
	w, common := Weighing{Readings: len(loads)}, 0.0
	for i, load := range loads {
		grams, off, err := s.corrected(load)
		if err != nil {
			return Weighing{}, check.Rename(err, "Load", fmt.Sprintf("Loads[%d]", i))
		}
		w.Grams += grams
		common += off
	}
	least, err := s.LeastLoad()
	if err != nil {
		return Weighing{}, err
	}
	s, _ = s.checked() // LeastLoad found it in order
	w.LeastGrams = least * float64(len(loads))
	each := float64(s.Repeat*s.Repeat) + float64(s.StepGrams*s.StepGrams)/6
	w.Standard = math.Sqrt(float64(float64(len(loads))*each) + float64(common*common))
	w.Expanded = 2 * w.Standard
	return w, nil
}
