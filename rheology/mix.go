package rheology

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

func (m Mix) empty() error { return check.Missing("Mix", "the result of Blend") }

// Describe names the parts by mass, the rule, and the range of temperature in
// which all parts hold.
func (m Mix) Describe() Description {
	if len(m.parts) == 0 {
		return Description{Name: "empty mix"}
	}
	d := m.parts[0].liquid.Describe()
	if len(m.parts) == 1 {
		return d
	}
	var names, sources []string
	for _, s := range m.parts {
		p := s.liquid.Describe()
		names = append(names, fmt.Sprintf("%.4g %% %s", 100*s.w, p.Name))
		if !slices.Contains(sources, p.Source) {
			sources = append(sources, p.Source)
		}
		d.LowC, d.HighC = max(d.LowC, p.LowC), min(d.HighC, p.HighC)
		d.ShearRate = max(d.ShearRate, p.ShearRate)
		d.LowRate = max(d.LowRate, p.LowRate)
		if p.HighRate > 0 && (d.HighRate == 0 || p.HighRate < d.HighRate) {
			d.HighRate = p.HighRate
		}
	}
	d.Name = strings.Join(names, " + ")
	d.Source = m.rule.String() + " of: " + strings.Join(sources, "; ")
	d.Band = "the parts' bands taken together, and the error of the mixing step"
	if m.kind == tableDairy {
		d.Band = "that of milk or cream of the mean fat"
	}
	return d
}

// Viscosity returns the viscosity in Pa s by the mix's rule at the shear rate that its
// Description states, the one rate at which all parts are mixed.
//
// For milk and cream by fat content alone value and band are those of Dairy of the mean fat.
// For other parts, measured ones among them, the errors of the parts are taken to go
// together, since one treatment or one bad thermometer moves them all, and that of the
// departure is added independently: 3 % of E for sugar and water, 5 % for glycerol, 30 % for
// honey, glucose syrup, all of it for milk and cream. Between parts that share nothing E is 0; with
// G the sum over pairs of w_i w_j |ln eta_i/eta_j| true/mixed then lies in exp(-1.8 G)..
// exp(0.1 G): that reaches further down than up, for log-mixing alone is known to be high.
//
// A temperature outside the range of a part is that part's RangeError.
func (m Mix) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return m.viscosity(tempC, m.rate)
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s,
// mixed from the parts' own at that rate, with the band of Viscosity.
func (m Mix) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	if err := honestplate.NotNegative("ShearRate", shearRate, "1/s"); err != nil {
		return honestplate.Estimate{}, err
	}
	return m.viscosity(tempC, shearRate)
}

// viscosity evaluates at a shear rate; it is negative where no part thins.
func (m Mix) viscosity(tempC, rate float64) (honestplate.Estimate, error) {
	switch len(m.parts) {
	case 0:
		return honestplate.Estimate{}, m.empty()
	case 1:
		if rate < 0 {
			return check.Viscosity(m.parts[0].liquid.Viscosity(tempC))
		}
		return ViscosityAtRate(m.parts[0].liquid, tempC, rate)
	}
	x := mixing{rule: m.rule, tempC: tempC, rate: rate}
	var terms [maxParts]term
	if err := m.fill(&x, terms[:]); err != nil {
		return honestplate.Estimate{}, err
	}
	return x.estimate(terms[:len(m.parts)])
}

// fill evaluates the parts, in order of thickness.
func (m Mix) fill(x *mixing, terms []term) error {
	for i, p := range m.parts {
		t := &terms[i]
		t.w = p.w
		t.read(p.liquid)
		if err := x.term(t, p.liquid); err != nil {
			return err
		}
	}
	byThickness(terms[:len(m.parts)])
	return nil
}

// terms are the parts of a mix evaluated, for what is asked rarely.
func (m Mix) terms(tempC, rate float64) (*mixing, []term, error) {
	if len(m.parts) == 0 {
		return nil, nil, m.empty()
	}
	x := &mixing{rule: m.rule, tempC: tempC, rate: rate}
	terms := make([]term, len(m.parts))
	return x, terms, m.fill(x, terms)
}

// Density returns the density in kg/m3 of the ideal mixture by volume,
//
//	1/rho = sum w_i/rho_i
//
// with the parts' bands taken together. Solutions shrink when thinned with water,
// glycerol by up to 1.4 % (Volk & Kaehler 2018): unless every part is milk or cream
// the band reaches up by 1.5 % times 4 sum over pairs w_i w_j, at most 1.5 %.
func (m Mix) Density(tempC float64) (honestplate.Estimate, error) {
	if len(m.parts) == 0 {
		return honestplate.Estimate{}, m.empty()
	}
	if len(m.parts) == 1 {
		return check.Density(m.parts[0].liquid.Density(tempC))
	}
	var v, low, high, squares float64
	for _, s := range m.parts {
		e, err := check.Density(s.liquid.Density(tempC))
		if err != nil {
			return honestplate.Estimate{}, err
		}
		v += s.w / e.Likely
		low += s.w / e.Low
		high += s.w / e.High
		squares += s.w * s.w
	}
	e := honestplate.Estimate{Low: 1 / low, Likely: 1 / v, High: 1 / high}
	if math.IsNaN(m.fat) {
		e.High *= 1 + 0.015*min(1, 2*(1-squares))
	}
	return e, honestplate.Positive("Mix.Density", e.Likely, "kg/m3")
}

// SurfaceTension returns the surface tension in N/m as the mean of the parts' by
// mass. The band runs from the lowest to the highest of the parts' own: what lowers
// the tension goes to the surface, so a little of it may do as much as all of it.
func (m Mix) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if len(m.parts) == 0 {
		return honestplate.Estimate{}, m.empty()
	}
	e := honestplate.Estimate{Low: math.Inf(1), Likely: 0, High: 0}
	for _, s := range m.parts {
		p, err := s.liquid.SurfaceTension(tempC)
		p, err = check.Answered("Liquid.SurfaceTension", "N/m", p, err)
		if err != nil {
			return honestplate.Estimate{}, err
		}
		e.Likely += s.w * p.Likely
		e.Low, e.High = min(e.Low, p.Low), max(e.High, p.High)
	}
	e.Likely = min(max(e.Likely, e.Low), e.High) // against rounding
	return e, honestplate.Positive("Mix.SurfaceTension", e.Likely, "N/m")
}
