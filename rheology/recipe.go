package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Recipe is the question: how much of a thin liquid and how much of a thick one,
// to a given total, for a wanted viscosity. Amounts are whole steps of the scale.
type Recipe struct {
	Thin, Thick Liquid  // Thick is not thinner than Thin at TempC
	BatchGrams  float64 // the total; a whole number of steps
	StepGrams   float64 // the scale's step, such as 0.1
	TempC       float64 // at which the viscosity is wanted, degC
	Rule        Rule    // nil is LogMass
	// Advertised is set if either liquid is the advertised product. Then no batch is
	// made: the methods return an *AdvertisedError.
	Advertised bool
}

// A Batch is a recipe's answer: what to weigh out.
type Batch struct {
	Recipe     Recipe               // that was asked
	ThinGrams  float64              // of Recipe.Thin, g, whole steps
	ThickGrams float64              // of Recipe.Thick, g, whole steps
	TargetPaS  float64              // the viscosity wanted, Pa s
	Predicted  honestplate.Estimate // Pa s, with the band of Mix.Viscosity
}

// Reach returns the viscosities, in Pa s, between which the recipe can choose: the
// thin liquid and the thick one as they are. It fails as For does.
func (r Recipe) Reach() (low, high honestplate.Estimate, err error) {
	var p pair
	if err := p.of(&r); err != nil {
		return honestplate.Estimate{}, honestplate.Estimate{}, err
	}
	if low, err = p.at(0); err != nil {
		return honestplate.Estimate{}, honestplate.Estimate{}, err
	}
	high, err = p.at(1)
	return low, high, err
}

func (r Recipe) steps() (int, error) {
	n, err := stepsOf("batch", r.BatchGrams, r.StepGrams)
	if err != nil {
		return 0, err
	}
	return n, honestplate.Positive("batch", r.BatchGrams, "g")
}

// For returns the batch whose predicted viscosity is nearest, as a ratio, to pas
// in Pa s. Of two equally near the one with less of the thick liquid is taken. A
// viscosity that the two liquids cannot reach is a RangeError with what they can;
// a batch that is not a whole number of scale steps, a thick liquid thinner
// than the thin one, or any value that makes no sense an InputError; an
// advertised product an AdvertisedError.
//
// The prediction is as good as its band. Mix, time a flow cup, and Correct. To ask
// for many viscosities, Prepare the recipe first.
func (r Recipe) For(pas float64) (b Batch, err error) {
	var s search
	if err = s.prepare(&r); err != nil {
		return Batch{}, err
	}
	err = s.find(&r, pas, &b)
	return b, err
}

// ForFat returns the batch whose fat content is nearest to percent by mass: the
// Pearson square in whole steps. Both liquids must be milk or cream of
// different fat, and percent between them. TargetPaS is the viscosity predicted for
// the batch.
func (r Recipe) ForFat(percent float64) (b Batch, err error) {
	var s search
	if err := s.prepare(&r); err != nil {
		return Batch{}, err
	}
	thin, thick := s.fats[0], s.fats[1]
	if !(thin < thick) {
		return Batch{}, check.Input("fat of the thick liquid", thick, "%", fmt.Sprintf("above that of the thin one, %.6g %%", thin))
	}
	if err := honestplate.InRange("fat wanted", percent, thin, thick, "%", "the fat of the two liquids"); err != nil {
		return Batch{}, err
	}
	k := int(math.Round(float64(s.steps) * (percent - thin) / (thick - thin)))
	err = s.batch(&r, k, 0, &b)
	b.TargetPaS = b.Predicted.Likely
	return b, err
}

// Mix returns the batch as a liquid.
func (b Batch) Mix() (Mix, error) {
	if b.Recipe.Thin == nil || b.Recipe.Thick == nil {
		return Mix{}, check.Missing("liquid of the recipe", "a liquid for Thin and for Thick, not nil")
	}
	if b.Recipe.Advertised {
		return Mix{}, advertised(b.Recipe.Thin.Describe().Name, b.Recipe.Thick.Describe().Name)
	}
	rule := b.Recipe.Rule
	if rule == nil {
		rule = LogMass
	}
	return rule.Blend(Part{b.Recipe.Thin, b.ThinGrams}, Part{b.Recipe.Thick, b.ThickGrams})
}
