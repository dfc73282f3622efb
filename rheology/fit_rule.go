package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A MixPoint is a blend of a recipe's two liquids whose viscosity was measured.
type MixPoint struct {
	ThickFraction float64 `json:"thick_fraction"` // of the thick liquid by mass, between 0 and 1
	PaS           float64 `json:"pas"`            // as measured, Pa s, at the recipe's temperature
}

// FitRule returns the Rule whose D fits measured blends of the recipe's two liquids by least
// squares in ln(viscosity), in place of any law's departure: honey with milk, a sauce with
// cream. Measure the two liquids as well, see [Measured]. A point at either end tells nothing
// and is an InputError, as are no points; other errors are those of For.
func (r Recipe) FitRule(points ...MixPoint) (Rule, error) {
	if len(points) == 0 {
		return Rule{}, check.Missing("Points", "at least one measured blend")
	}
	r.Rule = Rule{}
	var p pair
	if err := r.pair(&p); err != nil {
		return Rule{}, err
	}
	var squares, product float64
	for i, at := range points {
		field := fmt.Sprintf("Points[%d]", i)
		err := cmp.Or(honestplate.InRange(field+".ThickFraction", at.ThickFraction, 0, 1, "", "the recipe's two liquids"),
			honestplate.InRange(field+".PaS", at.PaS, 1e-9, 1e12, "Pa s", "a liquid that flows"))
		if err != nil {
			return Rule{}, err
		}
		w := at.ThickFraction
		a := w * (1 - w)
		if a < 1e-6 {
			return Rule{}, check.Input(field+".ThickFraction", w, "", "between the ends, not at one")
		}
		t := p.mixed(w)
		squares += a * a
		product += a * (math.Log(at.PaS) - logMixed(t[:]))
	}
	return Rule{D: product / squares}, nil
}
