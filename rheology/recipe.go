package rheology

import (
	"fmt"
	"math"
	"sort"
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
	Recipe     Recipe   // that was asked
	ThinGrams  float64  // of Recipe.Thin, g, whole steps
	ThickGrams float64  // of Recipe.Thick, g, whole steps
	TargetPaS  float64  // the viscosity wanted, Pa s
	Predicted  Estimate // Pa s, with the band of Mix.Viscosity
}

// A pair is the two liquids of a recipe, evaluated once.
type pair struct {
	mixing
	thin, thick term
	fats        [2]float64 // % by mass
}

func (r Recipe) pair() (pair, error) {
	if r.Thin == nil || r.Thick == nil {
		return pair{}, &InputError{"liquid of the recipe", math.NaN(), "", "a liquid for Thin and for Thick, not nil"}
	}
	if r.Advertised {
		return pair{}, &AdvertisedError{[]string{r.Thin.Describe().Name, r.Thick.Describe().Name}}
	}
	var p pair
	var err error
	if p.law, err = lawOf(r.Rule); err != nil {
		return pair{}, err
	}
	p.tempC = r.TempC
	for i, l := range [2]Liquid{r.Thin, r.Thick} {
		kind, fat := dairyOf(l)
		if p.law.kind == emulsionLaw && math.IsNaN(fat) {
			return pair{}, &InputError{"fat of " + l.Describe().Name, fat, "%", "milk or cream in every part, for the emulsion rule"}
		}
		p.kind = max(p.kind, kind)
		p.fats[i] = fat
		t := &p.thin
		if i == 1 {
			t = &p.thick
		}
		if err := t.fill(p.law, &share{liquid: l, fat: fat}, r.TempC, -1); err != nil {
			return pair{}, err
		}
	}
	if p.thick.ln < p.thin.ln {
		return pair{}, &InputError{"viscosity of the thick liquid", math.Exp(p.thick.ln), "Pa s",
			fmt.Sprintf("at least the thin one's, %.6g Pa s at %.6g degC", math.Exp(p.thin.ln), r.TempC)}
	}
	// An interaction this strong has its thickest blend between the two liquids.
	if math.Abs(p.law.d)+math.Abs(p.law.e) > p.thick.ln-p.thin.ln {
		return pair{}, &InputError{"interaction |D| + |E|", math.Abs(p.law.d) + math.Abs(p.law.e), "",
			fmt.Sprintf("at most ln of the ratio of the viscosities, %.6g", p.thick.ln-p.thin.ln)}
	}
	return p, nil
}

// terms returns the two terms with w of the thick liquid.
func (p *pair) terms(w float64) [2]term {
	t := [2]term{p.thin, p.thick}
	t[0].w, t[1].w = 1-w, w
	return t
}

// lnAt returns the logarithm of the viscosity with w of the thick liquid.
func (p *pair) lnAt(w float64) float64 {
	t := p.terms(w)
	return p.ln(t[:])
}

// at returns the viscosity with w of the thick liquid.
func (p *pair) at(w float64) (Estimate, error) {
	if w == 0 || w == 1 {
		end := p.thin
		if w == 1 {
			end = p.thick
		}
		return Estimate{math.Exp(end.ln), math.Exp(end.lnLow), math.Exp(end.lnHigh)}, nil
	}
	t := p.terms(w)
	m := p.mixing
	if m.kind == tableDairy {
		var err error
		if _, m.lnLow, m.lnHigh, err = (Dairy{(1-w)*p.fats[0] + w*p.fats[1]}).lnViscosity(p.tempC); err != nil {
			return Estimate{}, err
		}
	}
	return m.estimate(t[:])
}

// Reach returns the viscosities, in Pa s, between which the recipe can choose: the
// thin liquid and the thick one as they are. It fails as For does.
func (r Recipe) Reach() (low, high Estimate, err error) {
	p, err := r.pair()
	if err != nil {
		return Estimate{}, Estimate{}, err
	}
	if low, err = p.at(0); err != nil {
		return Estimate{}, Estimate{}, err
	}
	high, err = p.at(1)
	return low, high, err
}

func (r Recipe) steps() (int, error) {
	n, err := stepsOf("batch", r.BatchGrams, r.StepGrams)
	if err != nil {
		return 0, err
	}
	return n, positive("batch", r.BatchGrams, "g")
}

// For returns the batch whose predicted viscosity is nearest, as a ratio, to pas
// in Pa s. Of two equally near the one with less of the thick liquid is taken. A
// viscosity that the two liquids cannot reach is a RangeError with what they can;
// a batch that is not a whole number of scale steps, a thick liquid thinner
// than the thin one, or any value that makes no sense an InputError; an
// advertised product an AdvertisedError.
//
// The prediction is as good as its band. Mix, time a flow cup, and Correct.
func (r Recipe) For(pas float64) (Batch, error) {
	p, err := r.pair()
	if err != nil {
		return Batch{}, err
	}
	n, err := r.steps()
	if err != nil {
		return Batch{}, err
	}
	if err := positive("viscosity wanted", pas, "Pa s"); err != nil {
		return Batch{}, err
	}
	target := math.Log(pas)
	// A billionth of slack lets a value that Reach returned be asked for.
	if target < p.thin.ln-1e-9 || target > p.thick.ln+1e-9 {
		return Batch{}, &RangeError{"viscosity wanted", pas, math.Exp(p.thin.ln), math.Exp(p.thick.ln), "Pa s",
			fmt.Sprintf("reach of %s and %s at %.4g degC", r.Thin.Describe().Name, r.Thick.Describe().Name, r.TempC)}
	}
	at := func(k int) float64 { return p.lnAt(float64(k) / float64(n)) }
	k := min(n, sort.Search(n+1, func(k int) bool { return at(k) >= target }))
	if k > 0 && target-at(k-1) <= at(k)-target {
		k--
	}
	return r.batch(&p, k, n, pas)
}

// batch returns the batch of k steps of the thick liquid in n.
func (r Recipe) batch(p *pair, k, n int, pas float64) (Batch, error) {
	b := Batch{Recipe: r, ThinGrams: gramsOf(n-k, r.StepGrams), ThickGrams: gramsOf(k, r.StepGrams), TargetPaS: pas}
	var err error
	b.Predicted, err = p.at(float64(k) / float64(n))
	return b, err
}

// ForFat returns the batch whose fat content is nearest to percent by mass: the
// Pearson square in whole steps. Both liquids must be milk or cream of
// different fat, and percent between them. TargetPaS is the viscosity predicted for
// the batch.
func (r Recipe) ForFat(percent float64) (Batch, error) {
	p, err := r.pair()
	if err != nil {
		return Batch{}, err
	}
	n, err := r.steps()
	if err != nil {
		return Batch{}, err
	}
	thin, thick := p.fats[0], p.fats[1]
	if !(thin < thick) {
		return Batch{}, &InputError{"fat of the thick liquid", thick, "%", fmt.Sprintf("above that of the thin one, %.6g %%", thin)}
	}
	if err := within("fat wanted", percent, thin, thick, "%", "the fat of the two liquids"); err != nil {
		return Batch{}, err
	}
	k := int(math.Round(float64(n) * (percent - thin) / (thick - thin)))
	b, err := r.batch(&p, k, n, 0)
	b.TargetPaS = b.Predicted.Value
	return b, err
}

// Mix returns the batch as a liquid.
func (b Batch) Mix() (Mix, error) {
	if b.Recipe.Thin == nil || b.Recipe.Thick == nil {
		return Mix{}, &InputError{"liquid of the recipe", math.NaN(), "", "a liquid for Thin and for Thick, not nil"}
	}
	if b.Recipe.Advertised {
		return Mix{}, &AdvertisedError{[]string{b.Recipe.Thin.Describe().Name, b.Recipe.Thick.Describe().Name}}
	}
	rule := b.Recipe.Rule
	if rule == nil {
		rule = LogMass
	}
	return rule.Blend(Part{b.Recipe.Thin, b.ThinGrams}, Part{b.Recipe.Thick, b.ThickGrams})
}
