package rheology

import (
	"cmp"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A term is one part of a blend at one temperature.
type term struct {
	w                 float64 // mass fraction
	ln, lnLow, lnHigh float64 // logarithms of its viscosity in Pa s
	rho               float64 // density in kg/m3, where the rule asks for it
	fat               float64 // mass fraction of fat, where the rule asks for it
}

// A mixing is what a blend's terms have in common: the one place where viscosities are
// mixed, for a Mix and for the search of a recipe.
type mixing struct {
	rule  Rule
	tempC float64
	rate  float64    // 1/s; negative for each part's own
	kind  liquidKind // the least known among the parts
}

// term evaluates one part, without its fraction.
func (m *mixing) term(l Liquid) (term, error) {
	kind, fat := dairyOf(l)
	m.kind = max(m.kind, kind)
	t := term{fat: fat / 100}
	err := m.rule.suits(l, fat)
	if err != nil {
		return term{}, err
	}
	if t.ln, t.lnLow, t.lnHigh, err = lnViscosity(l, m.tempC, m.rate); err != nil {
		return term{}, err
	}
	if m.rule.Emulsion {
		rho, err := l.Density(m.tempC)
		if err != nil {
			return term{}, err
		}
		t.rho = rho.Likely
		return t, honestplate.Positive("Liquid.Density", t.rho, "kg/m3")
	}
	return t, nil
}

// ln returns the logarithm of the blend's viscosity. The terms are in order of
// thickness and their fractions sum to 1. Written from the thinnest term up, so that
// a blend of equal terms is exactly that term.
func (m *mixing) ln(terms []term) float64 {
	base := terms[0].ln
	if m.rule.Emulsion {
		return base + m.emulsion(terms)
	}
	var sum float64
	for _, t := range terms[1:] {
		sum += t.w * (t.ln - base)
	}
	if m.rule.interacts() {
		for j := 1; j < len(terms); j++ {
			for i := range j {
				sum += terms[i].w * terms[j].w * (m.rule.D + m.rule.E*(terms[j].w-terms[i].w))
			}
		}
	}
	return base + sum
}

// emulsion returns ln eta above the thinnest term by the emulsion law: log-mixing
// by mass, corrected by the slope of ln eta in g times what g lacks of being linear.
func (m *mixing) emulsion(terms []term) float64 {
	base := terms[0].ln
	fatDensity := milkFatDensity(m.tempC)
	var volume, fat, meanL, meanG float64
	for _, t := range terms {
		volume += t.w / t.rho
		fat += t.w * t.fat
		meanL += t.w * (t.ln - base)
		meanG += t.w * phippsShape(t.fat*t.rho/fatDensity)
	}
	var cov, variance float64
	for _, t := range terms {
		dg := phippsShape(t.fat*t.rho/fatDensity) - meanG
		cov += t.w * dg * (t.ln - base - meanL)
		variance += t.w * dg * dg
	}
	if variance == 0 {
		return meanL
	}
	return meanL + cov/variance*(phippsShape(fat/volume/fatDensity)-meanG)
}

// spread returns G = sum over pairs w_i w_j |ln eta_i - ln eta_j|, the measure of
// how much a blend asks of its rule: 0 for one liquid, a quarter of the logarithm
// of the endpoints' ratio for two halves.
func spread(terms []term) float64 {
	var g, below, belowLn float64
	for _, t := range terms {
		g += t.w * (below*t.ln - belowLn)
		below += t.w
		belowLn += t.w * t.ln
	}
	return max(0, g)
}

// A liquidKind is what a blend's rule has been tried on.
type liquidKind uint8

const (
	tableDairy liquidKind = iota // milk or cream by its fat content alone
	someDairy                    // milk or cream, measured or mixed by another rule
	otherLiquid
)

// stepError returns how far the true logarithm lies below log-mixing, per unit of
// spread G: the middle and the half-width of a 95 % band, so that
//
//	ln true = ln mixed - (middle +- half) G
//
// Milk and cream to 30 degC: 0.4 +- 0.9. The evidence is thin and was judged so:
// "+10 %, then +-20 %" between milk and cream of up to 36 % fat, "+35 %, then
// x/: 1.3" with creams of 45..50 % (one standard deviation); the five blends whose
// ends and middle are printed or remembered have 0.1..1.1 (testdata/dairy_blends.csv).
// From 40 degC: 0.25 +- 0.35; the rows that follow from Phipps 1969 have 0.1..0.3,
// those from Bertsch & Cerf 1983 0.5..0.6. Between, a straight line.
// Other liquids: 0.85 +- 0.95. Sucrose solutions thinned with water have 0.6..0.9 at
// 20 degC (Genotelle's formula), glycerol 0.7..1.8 at 0..80 degC (Segur & Oberstar
// 1951 and others, testdata/glycerol_water.csv), more the less water there is; liquids
// alike, oil and oil, about 0.
func (m *mixing) stepError() (middle, half float64) {
	if m.kind == otherLiquid {
		middle, half = 0.85, 0.95
	} else {
		hot := min(1, max(0, (m.tempC-30)/10))
		middle, half = 0.4-0.15*hot, 0.9-0.55*hot
	}
	switch {
	case m.rule.Emulsion:
		middle -= 0.15
	case m.rule.interacts():
		middle = 0 // the parameters have taken the bias up
	}
	return middle, half
}

// estimate returns the blend's viscosity in Pa s with its band. The terms are in
// order of thickness.
//
// Milk and cream from the table make a milk or cream of the mean fat, whose band the
// table knows; it is widened if need be to hold the mixed value. Otherwise the
// errors of the parts go together (those of one table do) and the error of the
// mixing step is independent of them.
func (m *mixing) estimate(terms []term) (honestplate.Estimate, error) {
	v := m.ln(terms)
	if m.kind == tableDairy {
		fat := 0.0
		for _, t := range terms {
			fat += t.w * t.fat
		}
		_, low, high, err := lnDairyAt(100*fat, m.tempC, m.rate)
		if err != nil {
			return honestplate.Estimate{}, err
		}
		return expEstimate(v, min(low, v), max(high, v))
	}
	var below, above float64
	for _, t := range terms {
		below += t.w * (t.ln - t.lnLow)
		above += t.w * (t.lnHigh - t.ln)
	}
	g := spread(terms)
	middle, half := m.stepError()
	// Logarithms are far from the sizes that Hypot guards against.
	v0, step := v-middle*g, half*g*half*g
	low, high := v0-math.Sqrt(below*below+step), v0+math.Sqrt(above*above+step)
	return expEstimate(v, min(low, v), max(high, v))
}

// expEstimate returns the estimate whose logarithms are given.
func expEstimate(v, low, high float64) (honestplate.Estimate, error) {
	e := honestplate.Estimate{Low: math.Exp(low), Likely: math.Exp(v), High: math.Exp(high)}
	if !(e.Likely > 0) || math.IsInf(e.High, 0) || math.IsNaN(e.Low) {
		return honestplate.Estimate{}, check.Input("Mix.Viscosity", e.Likely, "Pa s", "a finite number above 0")
	}
	return e, nil
}

// byThickness orders terms from thin to thick; equal ones keep their order.
func byThickness(terms []term) {
	if len(terms) == 2 {
		if terms[1].ln < terms[0].ln {
			terms[0], terms[1] = terms[1], terms[0]
		}
		return
	}
	slices.SortStableFunc(terms, func(a, b term) int { return cmp.Compare(a.ln, b.ln) })
}
