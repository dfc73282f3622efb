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
	Thin       Liquid  `json:"thin"`          // the thinner of the two
	Thick      Liquid  `json:"thick"`         // not thinner than Thin at TempC
	BatchGrams float64 `json:"batch_grams"`   // the total; a whole number of steps
	StepGrams  float64 `json:"step_grams"`    // the scale's step, such as 0.1
	TempC      float64 `json:"temp_c"`        // at which the viscosity is wanted, degC
	Rule       Rule    `json:"rule,omitzero"` // how to mix; zero is the house rule
	// Advertised is set if either liquid is the advertised product: thickened or thinned it
	// would no longer be what the customer gets. Then no batch is made: the methods return a
	// RefusedError (ErrAdvertised). What advertising law asks for is for the client and local
	// counsel to say.
	Advertised bool `json:"advertised,omitzero"`
}

// A Batch is a recipe's answer: what to weigh out.
type Batch struct {
	Recipe     Recipe               `json:"recipe"`        // that was asked
	ThinGrams  float64              `json:"thin_grams"`    // of Recipe.Thin, g, whole steps
	ThickGrams float64              `json:"thick_grams"`   // of Recipe.Thick, g, whole steps
	TargetPaS  float64              `json:"target_pas"`    // the viscosity wanted, Pa s
	Predicted  honestplate.Estimate `json:"predicted_pas"` // Pa s, with the band of Mix.Viscosity
}

// For returns the batch whose predicted viscosity is nearest, as a ratio, to pas
// in Pa s. Of two equally near the one with less of the thick liquid is taken. A
// viscosity that the two liquids cannot reach is a RangeError with what they can;
// a batch that is not a whole number of scale steps, a thick liquid thinner
// than the thin one, or any value that makes no sense an InputError; an
// advertised product a RefusedError.
//
// The prediction is as good as its band. Mix, time a flow cup, and [Batch.Correct].
func (r Recipe) For(pas float64) (b Batch, err error) {
	var p pair
	n, err := r.prepare(&p)
	if err == nil {
		err = r.answer(&b, &p, n, pas)
	}
	return b, err
}

// prepare evaluates the liquids and counts the steps of the batch.
func (r *Recipe) prepare(p *pair) (steps int64, err error) {
	if err = r.pair(p); err == nil {
		err = honestplate.Positive("BatchGrams", r.BatchGrams, "g")
	}
	if err != nil {
		return 0, err
	}
	return stepsOf("BatchGrams", r.BatchGrams, r.StepGrams)
}

// answer fills in the batch of n steps that comes nearest to a viscosity.
func (r *Recipe) answer(b *Batch, p *pair, n int64, pas float64) error {
	if err := honestplate.Positive("PaS", pas, "Pa s"); err != nil {
		return err
	}
	target := math.Log(pas)
	// A billionth of slack lets either liquid's own viscosity be asked for.
	if thin, thick := p.terms[0].ln, p.terms[1].ln; target < thin-1e-9 || target > thick+1e-9 {
		return check.Outside("PaS", pas, math.Exp(thin), math.Exp(thick), "Pa s",
			fmt.Sprintf("reach of %s and %s at %.4g degC", r.Thin.Describe().Name, r.Thick.Describe().Name, r.TempC))
	}
	return r.weigh(b, p, p.nearest(target, n), n, pas)
}

// ForFat returns the batch whose fat content is nearest to percent by mass: the
// Pearson square in whole steps. Both liquids must be milk or cream of
// different fat, and percent between them. TargetPaS is the viscosity predicted for
// the batch.
func (r Recipe) ForFat(percent float64) (Batch, error) {
	var b Batch
	var p pair
	n, err := r.prepare(&p)
	if err != nil {
		return Batch{}, err
	}
	thin, thick := p.terms[0].fat, p.terms[1].fat
	switch {
	case math.IsNaN(thin):
		return Batch{}, &honestplate.InputError{Field: "Thin", Got: r.Thin.Describe().Name, Want: "milk or cream, whose fat is known"}
	case math.IsNaN(thick):
		return Batch{}, &honestplate.InputError{Field: "Thick", Got: r.Thick.Describe().Name, Want: "milk or cream, whose fat is known"}
	case thin >= thick:
		return Batch{}, check.Input("Thick.FatPercent", thick, "%", fmt.Sprintf("above that of the thin one, %.6g %%", thin))
	}
	if err := honestplate.InRange("Percent", percent, thin, thick, "%", "the fat of the two liquids"); err != nil {
		return Batch{}, err
	}
	err = r.weigh(&b, &p, int64(math.Round(float64(n)*(percent-thin)/(thick-thin))), n, 0)
	b.TargetPaS = b.Predicted.Likely
	return b, err
}

// weigh fills in the batch of k of n steps of the thick liquid.
func (r *Recipe) weigh(b *Batch, p *pair, k, n int64, pas float64) (err error) {
	b.Recipe, b.TargetPaS = *r, pas
	b.ThinGrams, b.ThickGrams = gramsOf(n-k, r.StepGrams), gramsOf(k, r.StepGrams)
	b.Predicted, err = p.at(float64(k) / float64(n))
	return err
}

// Mix returns the batch as a liquid.
func (b Batch) Mix() (Mix, error) {
	if err := b.Recipe.check(); err != nil {
		return Mix{}, honestplate.In("Recipe", err)
	}
	return b.Recipe.Rule.Blend(Part{b.Recipe.Thin, b.ThinGrams}, Part{b.Recipe.Thick, b.ThickGrams})
}

// check refuses a recipe without its liquids, and one of the advertised product.
func (r *Recipe) check() error {
	switch {
	case check.IsNil(r.Thin):
		return check.Missing("Thin", "a liquid")
	case check.IsNil(r.Thick):
		return check.Missing("Thick", "a liquid")
	case r.Advertised:
		return &honestplate.RefusedError{
			Field: "Advertised", Kind: honestplate.ErrAdvertised,
			Reason: fmt.Sprintf("%s and %s would be blended, and the advertised product is shown as it is sold", r.Thin.Describe().Name, r.Thick.Describe().Name),
			Advice: "choose its temperature instead (ServeAt)",
		}
	}
	return r.Rule.check()
}
