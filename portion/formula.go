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
}

// For returns the parts of a batch of the given mass in whole steps that sum to it
// exactly, every part its ratio rounded to the step above or below
// ([apportion.LargestRemainder]). Ratios that a maker's technician has signed off are a
// [example.org/honestplate/portion/record.Specification]: hold the batch against it.
//
// Errors: those of [Declaration.Share]; [honestplate.InputError] for bad parts.
func (f Formula) For(batchGrams float64) ([]Portion, error) {
	err := cmp.Or(check.Sized("BatchGrams", batchGrams, 0, mostGrams, "g", massReason), checkStep("StepGrams", f.StepGrams))
	if err != nil {
		return nil, err
	}
	if _, err := sumOf("Parts", f.Parts); err != nil {
		return nil, err
	}
	if _, err := steps("BatchGrams", batchGrams, decimal.Step(f.StepGrams)); err != nil {
		return nil, err
	}
	zones := make([]Zone, len(f.Parts))
	for i, p := range f.Parts {
		zones[i] = Zone{Name: p.Name, Weight: p.Grams}
	}
	s, err := Declaration{Item: "batch", Grams: batchGrams, StepGrams: f.StepGrams}.Share(zones)
	return s, check.Rename(err, "Zones", "Parts")
}
