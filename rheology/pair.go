package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A pair is the two liquids of a recipe, evaluated once: a mixing of a thin and a thick
// term.
type pair struct {
	mixing
	terms [2]term
}

// pair evaluates the two liquids of a recipe and checks that they make one.
func (r Recipe) pair() (pair, error) {
	if err := r.check(); err != nil {
		return pair{}, err
	}
	p := pair{mixing: mixing{rule: r.Rule, tempC: r.TempC, rate: rateOf([]share{{liquid: r.Thin}, {liquid: r.Thick}})}}
	var thin, thick error
	p.terms[0], thin = p.term(r.Thin)
	p.terms[1], thick = p.term(r.Thick)
	if err := cmp.Or(honestplate.In("Thin", thin), honestplate.In("Thick", thick)); err != nil {
		return pair{}, err
	}
	ratio := p.terms[1].ln - p.terms[0].ln
	if ratio < 0 {
		return pair{}, check.Input("Thick.Viscosity", math.Exp(p.terms[1].ln), "Pa s",
			fmt.Sprintf("at least the thin one's, %.6g Pa s at %.6g degC: change the two over", math.Exp(p.terms[0].ln), r.TempC))
	}
	// An interaction this strong has its thickest or thinnest blend between the two liquids.
	if math.Abs(r.Rule.D) > ratio {
		return pair{}, check.Input("Rule.D", r.Rule.D, "", fmt.Sprintf("at most ln of the ratio of the viscosities, %.6g, either way", ratio))
	}
	return p, nil
}

// mixed returns the terms with w of the thick liquid.
func (p *pair) mixed(w float64) [2]term {
	t := p.terms
	t[0].w, t[1].w = 1-w, w
	return t
}

// lnAt returns the logarithm of the viscosity with w of the thick liquid.
func (p *pair) lnAt(w float64) float64 {
	t := p.mixed(w)
	return p.ln(t[:])
}

// at returns the viscosity with w of the thick liquid.
func (p *pair) at(w float64) (honestplate.Estimate, error) {
	switch w {
	case 0:
		return p.terms[0].end(), nil
	case 1:
		return p.terms[1].end(), nil
	}
	t := p.mixed(w)
	return p.estimate(t[:])
}

// end is the viscosity of a term by itself.
func (t term) end() honestplate.Estimate { return exp(t.ln, t.lnLow, t.lnHigh) }

// nearest returns which of the steps 0..n of the thick liquid comes nearest to
// the logarithm of a viscosity, the smaller of two equally near.
func (p *pair) nearest(target float64, n int64) int64 {
	t := p.terms
	off := func(k int64) float64 {
		w := float64(k) / float64(n)
		t[0].w, t[1].w = 1-w, w
		return p.ln(t[:]) - target
	}
	// The step before lies below and this one not: the curve rises and is nearly straight, so
	// that a straight line between the two tells the next to try; every third halves.
	before, k := int64(0), n
	below, above := off(before), off(k)
	if below >= 0 {
		return 0
	}
	if above < 0 {
		return n
	}
	for tries := 1; k-before > 1; tries++ {
		try := before + int64(math.Ceil(float64(k-before)*(below/(below-above))))
		if tries%3 == 0 {
			try = before + (k-before)/2
		}
		try = min(max(try, before+1), k-1)
		if v := off(try); v < 0 {
			before, below = try, v
		} else {
			k, above = try, v
		}
	}
	if -below <= above {
		return before
	}
	return k
}
