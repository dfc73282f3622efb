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

// FitRule returns the Rule whose D and E fits measured blends of the recipe's two liquids,
// in place of any law's departure: honey with milk, a sauce with cream. Measure the two
// liquids as well, see [Measured]. Points of two compositions are needed for D and E; from
// one D alone is found and E is 0. A point at either end tells nothing and is an InputError,
// as are no points; other errors are those of For.
func (r Recipe) FitRule(points ...MixPoint) (Rule, error) {
	if len(points) == 0 {
		return Rule{}, check.Missing("Points", "at least one measured blend")
	}
	r.Rule = Rule{}
	p, err := r.pair()
	if err != nil {
		return Rule{}, err
	}
	var f interactionFit
	for i, at := range points {
		field := fmt.Sprintf("Points[%d]", i)
		err := cmp.Or(honestplate.InRange(field+".ThickFraction", at.ThickFraction, 0, 1, "", "the recipe's two liquids"),
			honestplate.InRange(field+".PaS", at.PaS, 1e-9, 1e12, "Pa s", "a liquid that flows"))
		if err != nil {
			return Rule{}, err
		}
		t := p.mixed(at.ThickFraction)
		if !f.add(at.ThickFraction, math.Log(at.PaS)-logMixed(t[:])) {
			return Rule{}, check.Input(field+".ThickFraction", at.ThickFraction, "", "between the ends, not at one")
		}
	}
	return f.rule(), nil
}

// An interactionFit is the least squares of y = a D + b E with a = w(1-w), b = a (2w - 1).
type interactionFit struct{ aa, ab, bb, ay, by float64 }

// add takes a blend with w of the thick part, y in ln above log-mixing; false for an end.
func (f *interactionFit) add(w, y float64) bool {
	a := w * (1 - w)
	if a < 1e-6 {
		return false
	}
	b := a * (2*w - 1)
	f.aa, f.ab, f.bb = f.aa+a*a, f.ab+a*b, f.bb+b*b
	f.ay, f.by = f.ay+a*y, f.by+b*y
	return true
}

func (f *interactionFit) rule() Rule {
	det := f.aa*f.bb - f.ab*f.ab
	if det <= 1e-9*f.aa*f.aa {
		return Rule{D: f.ay / f.aa}
	}
	return Rule{D: (f.bb*f.ay - f.ab*f.by) / det, E: (f.aa*f.by - f.ab*f.ay) / det}
}
