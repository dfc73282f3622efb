package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Prepared recipe has its liquids evaluated and its scale checked, and only the
// viscosity left to choose: for a ladder of batches from thin to thick, or a slider.
// Make it with Recipe.Prepare; the methods of the zero Prepared return an InputError.
type Prepared struct {
	recipe Recipe
	search search
}

// A search is what stays of a recipe's evaluation.
type search struct {
	pair
	steps int // of the batch
	scale scale
}

// Prepare evaluates the recipe's liquids once for many viscosities. It fails as For
// does.
func (r Recipe) Prepare() (Prepared, error) {
	p := Prepared{recipe: r}
	if err := p.search.prepare(&r); err != nil {
		return Prepared{}, err
	}
	return p, nil
}

func (s *search) prepare(r *Recipe) (err error) {
	if err := s.of(r); err != nil {
		return err
	}
	s.scale = scaleOf(r.StepGrams)
	s.steps, err = r.steps()
	return err
}

// For is Recipe.For.
func (p *Prepared) For(pas float64) (b Batch, err error) {
	if p.search.steps == 0 {
		return Batch{}, check.Input("steps of the prepared recipe", 0, "", "a recipe prepared by Prepare")
	}
	err = p.search.find(&p.recipe, pas, &b)
	return b, err
}

// find makes b the batch for a viscosity.
func (s *search) find(r *Recipe, pas float64, b *Batch) error {
	if err := honestplate.Positive("viscosity wanted", pas, "Pa s"); err != nil {
		return err
	}
	target := math.Log(pas)
	// A billionth of slack lets a value that Reach returned be asked for.
	if target < s.thin.ln-1e-9 || target > s.thick.ln+1e-9 {
		return check.Outside("viscosity wanted", pas, math.Exp(s.thin.ln), math.Exp(s.thick.ln), "Pa s", fmt.Sprintf("reach of %s and %s at %.4g degC", r.Thin.Describe().Name, r.Thick.Describe().Name, r.TempC))
	}
	return s.batch(r, s.nearest(target, s.steps), pas, b)
}

// batch makes b the batch of k steps of the thick liquid. Written in place: a
// Batch is large, and copies of it would take as long as finding it.
func (s *search) batch(r *Recipe, k int, pas float64, b *Batch) error {
	predicted, err := s.at(float64(k) / float64(s.steps))
	if err != nil {
		return err
	}
	b.Recipe, b.TargetPaS, b.Predicted = *r, pas, predicted
	b.ThinGrams, b.ThickGrams = s.scale.grams(s.steps-k), s.scale.grams(k)
	return nil
}
