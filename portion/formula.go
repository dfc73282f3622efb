package portion

import (
	"cmp"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
)

// A Formula is a recipe by mass that can be made larger or smaller.
type Formula struct {
	Parts     []Ingredient `json:"parts,omitzero"`      // masses that stand for ratios, g
	StepGrams float64      `json:"step_grams,omitzero"` // step of the scale, g; 0 means 1 g
	// Locked says that the ratios are signed off by the maker's technician and are
	// constraints, not wishes: no rounding is allowed.
	Locked bool `json:"locked,omitzero"`
}

// For returns the parts of a batch of the given mass in whole steps that sum to it
// exactly. Unless Locked, every part is its ratio rounded to the step above or below
// ([apportion.LargestRemainder]). Locked, only batches that hold the ratios exactly
// will do: another is a [StepError] that gives the nearest two.
//
// Errors besides: those of [Declaration.Share]; [honestplate.InputError] for bad parts;
// [honestplate.RangeError] where Locked ratios need more steps than a batch can have.
func (f Formula) For(batchGrams float64) ([]Portion, error) {
	err := cmp.Or(check.Sized("BatchGrams", batchGrams, 0, mostGrams, "g", massReason), checkStep("StepGrams", f.StepGrams))
	if err != nil {
		return nil, err
	}
	if _, err := sumOf("Parts", f.Parts); err != nil {
		return nil, err
	}
	step := stepOf(f.StepGrams)
	if f.Locked {
		least, err := f.leastExact()
		if err != nil {
			return nil, err
		}
		step = decimal.Of(least)
	}
	if _, err := steps("BatchGrams", batchGrams, step); err != nil {
		return nil, err
	}
	zones := make([]Zone, len(f.Parts))
	for i, p := range f.Parts {
		zones[i] = Zone{Name: p.Name, Weight: p.Grams}
	}
	s, err := Declaration{Item: "batch", Grams: batchGrams, StepGrams: f.StepGrams}.Share(zones)
	return s, check.Rename(err, "Zones", "Parts")
}

// leastExact returns the smallest batch, in grams, whose parts are all whole steps
// in exactly the ratios of the formula; its multiples are the others. Ratios are
// those of the parts as written, so 12.5 : 37.5 is 1 : 3. Errors as [Formula.For].
func (f Formula) leastExact() (float64, error) {
	if _, err := sumOf("Parts", f.Parts); err != nil {
		return 0, err
	}
	if err := checkStep("StepGrams", f.StepGrams); err != nil {
		return 0, err
	}
	masses := make([]float64, len(f.Parts))
	for i, p := range f.Parts {
		masses[i] = p.Grams
	}
	n, ok := decimal.Ratio(masses)
	if !ok {
		return 0, check.Beyond("Parts", n, maxSteps, "steps in the smallest exact batch", stepsReason)
	}
	return stepOf(f.StepGrams).Times(int64(n)), nil
}
