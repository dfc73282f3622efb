package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A pair is the two liquids of a recipe, evaluated once.
type pair struct {
	mixing
	thin, thick term
	fats        [2]float64 // % by mass
}

// of evaluates the two liquids of a recipe and checks that they make one.
func (p *pair) of(r *Recipe) error {
	if r.Thin == nil || r.Thick == nil {
		return check.Missing("liquid of the recipe", "a liquid for Thin and for Thick, not nil")
	}
	if r.Advertised {
		return advertised(r.Thin.Describe().Name, r.Thick.Describe().Name)
	}
	var err error
	if p.law, err = lawOf(r.Rule); err != nil {
		return err
	}
	p.tempC = r.TempC
	if err := p.take(0, &p.thin, r.Thin); err != nil {
		return err
	}
	if err := p.take(1, &p.thick, r.Thick); err != nil {
		return err
	}
	if p.thick.ln < p.thin.ln {
		return check.Input("viscosity of the thick liquid", math.Exp(p.thick.ln), "Pa s", fmt.Sprintf("at least the thin one's, %.6g Pa s at %.6g degC", math.Exp(p.thin.ln), r.TempC))
	}
	// An interaction this strong has its thickest blend between the two liquids.
	if sum := math.Abs(p.law.d) + math.Abs(p.law.e); sum > p.thick.ln-p.thin.ln {
		return check.Input("interaction |D| + |E|", sum, "", fmt.Sprintf("at most ln of the ratio of the viscosities, %.6g", p.thick.ln-p.thin.ln))
	}
	return nil
}

// take evaluates one of the two liquids.
func (p *pair) take(i int, t *term, l Liquid) (err error) {
	kind, fat := dairyOf(l)
	p.kind = max(p.kind, kind)
	p.fats[i], t.fat = fat, fat/100
	if p.law.kind == emulsionLaw && math.IsNaN(fat) {
		return check.Input("fat of "+l.Describe().Name, fat, "%", "milk or cream in every part, for the emulsion rule")
	}
	t.ln, t.lnLow, t.lnHigh, err = lnViscosity(l, p.tempC, -1)
	if err == nil && p.law.wantsDensity() {
		err = t.weigh(l, p.tempC)
	}
	return err
}

// lnAt returns the logarithm of the viscosity with w of the thick liquid: mixing.ln
// for two terms, written out because a search asks for it many times.
func (p *pair) lnAt(w float64) float64 {
	if p.law.wantsDensity() {
		t := [2]term{p.thin, p.thick}
		t[0].w, t[1].w = 1-w, w
		return p.ln(t[:])
	}
	return p.thin.ln + w*(p.thick.ln-p.thin.ln) + (1-w)*w*(p.law.d+p.law.e*(w-(1-w)))
}

// at returns the viscosity with w of the thick liquid.
func (p *pair) at(w float64) (honestplate.Estimate, error) {
	thin, thick := &p.thin, &p.thick
	switch w {
	case 0:
		return honestplate.Estimate{Low: math.Exp(thin.lnLow), Likely: math.Exp(thin.ln), High: math.Exp(thin.lnHigh)}, nil
	case 1:
		return honestplate.Estimate{Low: math.Exp(thick.lnLow), Likely: math.Exp(thick.ln), High: math.Exp(thick.lnHigh)}, nil
	}
	if p.kind == tableDairy {
		_, low, high, err := (Dairy{(1-w)*p.fats[0] + w*p.fats[1]}).lnViscosity(p.tempC)
		if err != nil {
			return honestplate.Estimate{}, err
		}
		return tableBand(p.lnAt(w), low, high)
	}
	below := (1-w)*(thin.ln-thin.lnLow) + w*(thick.ln-thick.lnLow)
	above := (1-w)*(thin.lnHigh-thin.ln) + w*(thick.lnHigh-thick.ln)
	return p.band(p.lnAt(w), below, above, w*(1-w)*(thick.ln-thin.ln))
}

// nearest returns which of the steps 0..n of the thick liquid comes nearest to
// the logarithm of a viscosity, the smaller of two equally near. The curve rises,
// and mostly the guess lies between the two steps on either side of the target.
func (p *pair) nearest(target float64, n int) int {
	if p.thin.ln >= target {
		return 0
	}
	if p.thick.ln < target {
		return n
	}
	low := min(max(int(p.guess(target)*float64(n)), 0), n-1)
	high := low + 1
	lowAt := p.lnAt(float64(low)/float64(n)) - target
	highAt := p.lnAt(float64(high)/float64(n)) - target
	if lowAt >= 0 || highAt < 0 {
		low, high, lowAt, highAt = p.bracket(target, n, low, lowAt, highAt)
	}
	if -lowAt <= highAt {
		return low
	}
	return high
}

// bracket returns the two steps on either side of the target, and how far from it
// their logarithms are, from a step k near them, its own and that of the step after:
// with secants, and by halving where the curve is too bent for them.
func (p *pair) bracket(target float64, n, k int, at, after float64) (low, high int, lowAt, highAt float64) {
	low, lowAt = 0, p.thin.ln-target
	high, highAt = n, p.thick.ln-target
	if after < 0 {
		low, lowAt = k+1, after
	} else {
		high, highAt = k, at
	}
	last, lastAt, slope := k, at, after-at
	for tries := 0; high-low > 1; tries++ {
		next := low + (high-low)/2
		if tries < 8 && slope > 0 {
			next = min(max(last-int(lastAt/slope), low+1), high-1)
		}
		v := p.lnAt(float64(next)/float64(n)) - target
		if v < 0 {
			low, lowAt = next, v
		} else {
			high, highAt = next, v
		}
		slope = (v - lastAt) / float64(next-last)
		last, lastAt = next, v
	}
	return low, high, lowAt, highAt
}

// guess returns the share of the thick liquid at which the curve passes near the
// logarithm of a viscosity: the root itself of a plain log-mixing or an interaction
// without skew, near it for the others.
func (p *pair) guess(target float64) float64 {
	// D alone makes the quadratic r w + D w (1 - w) = t, with r at least |D|. It
	// also meets the skewed curve at 0, 1/2 and 1.
	r, t := p.thick.ln-p.thin.ln, target-p.thin.ln
	b := r + p.law.d
	w := 2 * t / (b + math.Sqrt(b*b-4*p.law.d*t))
	switch {
	case p.law.kind == volumeLaw:
		// t/r is the share by volume.
		return w * p.thick.rho / (w*p.thick.rho + (1-w)*p.thin.rho)
	case p.law.e != 0:
		// Two of Newton's steps for the skew.
		c1, c2, c3 := b-p.law.e, 3*p.law.e-p.law.d, -2*p.law.e
		for range 2 {
			w -= (w*(c1+w*(c2+w*c3)) - t) / (c1 + w*(2*c2+w*3*c3))
		}
	}
	return w
}
