package rheology

import "example.org/honestplate/rheology/internal/check"

// A Prepared is a recipe whose liquids have been evaluated, for a list of viscosities. Make it
// with [Recipe.Prepare].
type Prepared struct {
	recipe Recipe
	pair   pair
	steps  int64 // of the batch
}

// Prepare evaluates the liquids and counts the steps of the batch. Its errors are those of
// [Recipe.For] but for what is about the viscosity.
func (r Recipe) Prepare() (Prepared, error) {
	x := Prepared{recipe: r}
	var err error
	if x.steps, err = r.prepare(&x.pair); err != nil {
		return Prepared{}, err
	}
	return x, nil
}

// For returns the batch for a viscosity in Pa s, as [Recipe.For] does. The zero Prepared has
// no liquids: an InputError.
func (x *Prepared) For(pas float64) (b Batch, err error) {
	if x.steps == 0 {
		return Batch{}, check.Missing("Recipe", "a recipe, by Recipe.Prepare")
	}
	p := &x.pair
	if !p.told() {
		own := x.pair // a law keeps what it has worked out: calls may go side by side
		p = &own
	}
	err = x.recipe.answer(&b, p, x.steps, pas)
	return b, err
}
