package look

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

var recipe = rheology.Recipe{
	Thin: rheology.Dairy{FatPercent: 3.5}, Thick: rheology.Dairy{FatPercent: 36}, BatchGrams: 500, StepGrams: 0.5, TempC: 6,
}

// A thinner coat or a higher contrast wants no less cream; one step less would not do.
func TestCreamForIsTheLeastThatDoes(t *testing.T) {
	for _, contrast := range []float64{0.9, 0.95, 0.97} {
		last := math.Inf(1)
		for mm := 1.0; mm < 5; mm += 0.23 {
			c, err := CreamFor(recipe, mm/1000, contrast)
			if errors.Is(err, honestplate.ErrInfeasible) {
				continue
			}
			if err != nil {
				t.Fatal(err)
			}
			if c.Batch.ThickGrams > last {
				t.Errorf("%g mm: %g g of cream after %g", mm, c.Batch.ThickGrams, last)
			}
			last = c.Batch.ThickGrams
			if steps := c.Batch.ThickGrams / recipe.StepGrams; steps != math.Trunc(steps) || c.Batch.ThinGrams+c.Batch.ThickGrams != recipe.BatchGrams {
				t.Errorf("%g mm: %g and %g g", mm, c.Batch.ThinGrams, c.Batch.ThickGrams)
			}
			if c.Contrast.Likely < contrast-1e-5 || c.Hides.Likely > mm/1000*1.01 {
				t.Errorf("%g mm: contrast %v, hides at %v m, wanted %g", mm, c.Contrast, c.Hides, contrast)
			}
			if last == 0 {
				continue
			}
			thin, thinMilk, _ := part(recipe.Thin)
			thick, thickMilk, _ := part(recipe.Thick)
			less := (last - recipe.StepGrams) / recipe.BatchGrams
			o, err := Mix(Part{thin, (1 - less) * thinMilk.volume()}, Part{thick, less * thickMilk.volume()})
			if err != nil {
				t.Fatal(err)
			}
			if got, _ := o.Contrast(Scene{}, mm/1000, Black, White); got >= contrast+1e-5 {
				t.Errorf("%g mm: a step less of cream reaches %g of %g", mm, got, contrast)
			}
		}
	}
}

func TestCreamForRefuses(t *testing.T) {
	advertised, sweet, same := recipe, recipe, recipe
	advertised.Advertised = true
	sweet.Thick = rheology.Honey{}
	same.Thick = same.Thin
	for name, c := range map[string]struct {
		r              rheology.Recipe
		coat, contrast float64
		kind           error
	}{
		"advertised": {advertised, 0.002, 0.95, honestplate.ErrAdvertised},
		"too thin":   {recipe, 0.0001, 0.95, honestplate.ErrInfeasible},
		"honey":      {sweet, 0.002, 0.95, honestplate.ErrInput},
		"one liquid": {same, 0.02, 0.95, honestplate.ErrInput},
		"no recipe":  {rheology.Recipe{}, 0.002, 0.95, honestplate.ErrInput},
		"no coat":    {recipe, math.NaN(), 0.95, honestplate.ErrInput},
		"no contrast": {
			recipe, 0.002, 2, honestplate.ErrRange,
		},
	} {
		if _, err := CreamFor(c.r, c.coat, c.contrast); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Milk, thinned milk, a blend: more water scatters less.
func TestOf(t *testing.T) {
	blend := func(other rheology.Liquid) rheology.Mix {
		m, err := rheology.Blend(rheology.Part{Liquid: rheology.Dairy{FatPercent: 3.5}, Grams: 50}, rheology.Part{Liquid: other, Grams: 50})
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	last := 0.0
	for _, l := range []rheology.Liquid{rheology.Water{}, blend(rheology.Water{}), rheology.Dairy{FatPercent: 3.5}, blend(rheology.Dairy{FatPercent: 20})} {
		m, err := Of(l)
		if err != nil {
			t.Fatal(err)
		}
		o, err := m.Optics()
		if err != nil {
			t.Fatal(err)
		}
		c, err := o.At(550)
		if err != nil || last > 0 && c.ReducedScattering.Likely <= last {
			t.Errorf("%s scatters %g after %g, %v", l.Describe().Name, c.ReducedScattering.Likely, last, err)
		}
		last = c.ReducedScattering.Likely
	}
	for _, l := range []rheology.Liquid{nil, rheology.Honey{}, rheology.Food("olive oil"), blend(rheology.Honey{})} {
		if _, err := Of(l); err == nil {
			t.Errorf("%v is taken for milk", l)
		}
	}
}

// Whole milk has the protein that a carton prints, 3.2 to 3.4 %.
func TestOfKnowsTheProtein(t *testing.T) {
	m, err := Of(rheology.Dairy{FatPercent: 3.5})
	if p := m.ProteinPercent; err != nil || !p.Given || p.Value < 3.2 || p.Value > 3.4 {
		t.Errorf("%+v, %v", m, err)
	}
}
