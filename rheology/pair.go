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

// pair evaluates the two liquids of a recipe into a zero pair and checks that they make one.
func (r *Recipe) pair(p *pair) error {
	if err := r.check(); err != nil {
		return err
	}
	a, b := &p.terms[0], &p.terms[1]
	a.read(r.Thin)
	b.read(r.Thick)
	p.rule, p.tempC, p.rate = r.Rule, r.TempC, cmp.Or(b.commonRate(a.commonRate(0, r.Thin), r.Thick), -1)
	thin, thick := p.term(a, r.Thin), p.term(b, r.Thick)
	if thin != nil || thick != nil {
		return cmp.Or(honestplate.In("Thin", thin), honestplate.In("Thick", thick))
	}
	ratio := b.ln - a.ln
	if ratio < 0 {
		return check.Input("Thick.Viscosity", math.Exp(b.ln), "Pa s",
			fmt.Sprintf("at least the thin one's, %.6g Pa s at %.6g degC: change the two over", math.Exp(a.ln), r.TempC))
	}
	// An interaction this strong has its thickest or thinnest blend between the two liquids.
	if math.Abs(r.Rule.D) > ratio {
		return check.Input("Rule.D", r.Rule.D, "", fmt.Sprintf("at most ln of the ratio of the viscosities, %.6g, either way", ratio))
	}
	return nil
}

// mixed returns the terms with w of the thick liquid.
func (p *pair) mixed(w float64) [2]term {
	t := p.terms
	t[0].w, t[1].w = 1-w, w
	return t
}

// told reports that no law is asked for the departure: the curve is a parabola.
func (p *pair) told() bool { return p.rule != (Rule{}) }

// lnAt returns the logarithm of the viscosity with w of the thick liquid.
func (p *pair) lnAt(w float64) float64 {
	if a, b := &p.terms[0], &p.terms[1]; p.told() {
		return a.ln + w*(b.ln-a.ln) + p.rule.D*(w*(1-w)) // ln of two terms
	}
	t := p.mixed(w)
	return p.ln(t[:])
}

// at returns the viscosity with w of the thick liquid.
func (p *pair) at(w float64) (honestplate.Estimate, error) {
	a, b := &p.terms[0], &p.terms[1]
	switch {
	case w == 0:
		return a.end(), nil
	case w == 1:
		return b.end(), nil
	case p.told(): // estimate of two terms
		middle, half := p.stepError()
		g := w * (1 - w) * (b.ln - a.ln)
		return banded(p.lnAt(w), departed{middle: middle * g, half: half * g},
			(1-w)*(a.ln-a.lnLow)+w*(b.ln-b.lnLow), (1-w)*(a.lnHigh-a.ln)+w*(b.lnHigh-b.ln))
	}
	t := p.mixed(w)
	return p.estimate(t[:])
}

// end is the viscosity of a term by itself.
func (t *term) end() honestplate.Estimate { return exp(t.ln, t.lnLow, t.lnHigh) }

// nearest returns which of the steps 0..n of the thick liquid comes nearest to
// the logarithm of a viscosity, the smaller of two equally near.
func (p *pair) nearest(target float64, n int64) int64 {
	off := func(k int64) float64 { return p.lnAt(float64(k)/float64(n)) - target }
	k := min(max(0, int64(p.root(target)*float64(n))), n-1) // the last step below, or the first of all
	if !p.told() {
		k = lastBelow(off, n)
	}
	below, above := off(k), off(k+1)
	for ; below >= 0 && k > 0; k-- { // where the last digits of a root are off
		below, above = off(k-1), below
	}
	for ; above < 0 && k < n-1; k++ {
		below, above = above, off(k+2)
	}
	if -below <= above {
		return k
	}
	return k + 1
}

// root is where the parabola of a rule that was told has a logarithm between its ends.
func (p *pair) root(ln float64) float64 {
	y, d := ln-p.terms[0].ln, p.rule.D
	b := p.terms[1].ln - p.terms[0].ln + d
	return 2 * y / (b + math.Sqrt(max(0, b*b-4*d*y)))
}

// lastBelow returns the last of the steps 0..n-1 at which a rising curve is below 0, or 0. It
// is nearly straight: a straight line between two steps tells the next to try, and every third
// halves.
func lastBelow(off func(int64) float64, n int64) int64 {
	before, k := int64(0), n
	below, above := off(before), off(k)
	switch {
	case below >= 0:
		return 0
	case above < 0:
		return n - 1
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
	return before
}
