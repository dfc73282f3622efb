package rheology

import (
	"cmp"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A term is one part of a blend at one temperature and shear rate.
type term struct {
	w                 float64 // mass fraction
	ln, lnLow, lnHigh float64 // logarithms of its viscosity in Pa s

	nature
	// What it shares with other parts, if it does.
	shares    sharing
	law       float64 // ln of its viscosity by the law that is shared, as measured if it was
	measured  bool    // rather than from a table
	treatment Treatment
	bigK      float64 // of the emulsion law
}

// sharing is which composition a part shares with others of a blend.
type sharing uint8

const (
	sharesNothing sharing = iota
	sharesFat
	sharesWater
)

// A mixing is what a blend's terms have in common: the one place where viscosities are
// mixed, for a Mix and for the search of a recipe.
type mixing struct {
	rule  Rule
	tempC float64
	rate  float64    // 1/s; negative where no part thins
	kind  liquidKind // the least known among the parts

	dairy    emulsion // the law of milk and cream at tempC, once a part has asked for it
	hasDairy bool
}

func (m *mixing) emulsion() *emulsion {
	if !m.hasDairy {
		m.dairy, m.hasDairy = emulsionAt(m.tempC), true
	}
	return &m.dairy
}

// term evaluates a part whose nature was read, without its fraction.
func (m *mixing) term(t *term, l Liquid) (err error) {
	m.kind = max(m.kind, t.kind)
	t.measured = t.kind != tableDairy
	var e honestplate.Estimate
	switch l := l.(type) {
	case Dairy:
		if err := l.check(m.tempC); err != nil {
			return err
		}
		t.shares, t.treatment, t.bigK = sharesFat, l.Treatment, l.Treatment.coldK()
		t.ln, t.lnLow, t.lnHigh = m.lnDairy(l.FatPercent, l.Treatment, t.bigK)
		t.law = t.ln
		return nil
	case Measured:
		if e, err = l.at(m.tempC, m.rate); err == nil {
			m.share(t, &l)
		}
	default:
		if e, err = viscosityAt(l, m.tempC, m.rate); err == nil {
			m.share(t, nil)
		}
	}
	t.ln = math.Log(e.Likely)
	t.lnLow, t.lnHigh = t.ln, t.ln
	if e.Low != e.Likely || e.Likely != e.High {
		t.lnLow, t.lnHigh = math.Log(e.Low), math.Log(e.High)
	}
	return err
}

// lnDairy is milk or cream by the law, at the rate of the blend.
func (m *mixing) lnDairy(fat float64, t Treatment, bigK float64) (value, low, high float64) {
	value, low, high = m.emulsion().estimate(fat, t, bigK)
	if m.rate < 0 {
		return value, low, high
	}
	return thinningAt(m.tempC, m.rate).ln(fat, value, low, high)
}

// share finds what a part that is not Dairy itself has in common with others. Its law is for
// the house rule alone.
func (m *mixing) share(t *term, measured *Measured) {
	d, isDairy := Dairy{}, false
	if measured != nil {
		d, isDairy = measured.Liquid.(Dairy)
	}
	house := m.rule == (Rule{})
	switch {
	case isDairy && d.Treatment == Thickened: // no law of fat
	case isDairy:
		t.shares, t.treatment = sharesFat, d.Treatment
		if house {
			t.bigK = measured.coldK(d)
			t.law, _, _ = m.lnDairy(d.FatPercent, notStated, t.bigK)
		}
	case t.kind == someDairy:
		// A blend of milk and cream, measured as a whole or mixed by another rule.
		t.shares, t.bigK = sharesFat, plainK
		if house {
			if measured != nil {
				t.bigK = measured.coldK(Dairy{FatPercent: t.fat})
			}
			t.law, _, _ = m.lnDairy(t.fat, notStated, t.bigK)
		}
	case t.of != ofNothing:
		t.shares, t.measured = sharesWater, measured != nil
		if house {
			t.law = lnSolution(t.of, t.percent, m.tempC)
		}
	}
}

// ln returns the logarithm of the blend's viscosity, log-mixing and its departure. The
// terms are in order of thickness and their fractions sum to 1. Written from the thinnest
// term up, so that a blend of equal terms is exactly that term.
func (m *mixing) ln(terms []term) float64 {
	return logMixed(terms) + m.departure(terms).e
}

func logMixed(terms []term) float64 {
	base := terms[0].ln
	var sum float64
	for i := range terms[1:] {
		t := &terms[1+i]
		sum += t.w * (t.ln - base)
	}
	return base + sum
}

// spread returns G = sum over pairs w_i w_j |ln eta_i - ln eta_j|, the measure of
// how much a blend asks of its rule: 0 for one liquid, a quarter of the logarithm
// of the endpoints' ratio for two halves.
func spread(terms []term) float64 {
	var g, below, belowLn float64
	for i := range terms {
		t := &terms[i]
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

// stepError returns how far the true logarithm lies below log-mixing alone, per unit of
// spread G: the middle and the half-width of a 95 % band, so that
//
//	ln true = ln mixed - (middle +- half) G
//
// Milk and cream to 30 degC: 0.4 +- 0.9; the five blends whose ends and middle are printed
// or remembered have 0.1..1.1 (testdata/dairy_blends.csv). From 40 degC: 0.25 +- 0.35; the
// rows that follow from Phipps 1969 have 0.1..0.3, those from Bertsch & Cerf 1983 0.5..0.6.
// Between, a straight line. Other liquids: 0.85 +- 0.95, from water with sucrose (0.6..0.9)
// and with glycerol (0.7..1.8) down to liquids alike, oil and oil, about 0.
func (m *mixing) stepError() (middle, half float64) {
	if m.kind == otherLiquid {
		middle, half = 0.85, 0.95
	} else {
		hot := min(1, max(0, (m.tempC-30)/10))
		middle, half = 0.4-0.15*hot, 0.9-0.55*hot
	}
	if m.rule.interacts() {
		middle = 0 // the parameters have taken the bias up
	}
	return middle, half
}

// estimate returns the blend's viscosity in Pa s with its band. The terms are in
// order of thickness.
//
// Milk and cream from the table make a milk or cream of the mean fat, whose band the law
// knows. Otherwise the errors of the parts go together (those of one table do) and the
// error of the departure is independent of them.
func (m *mixing) estimate(terms []term) (honestplate.Estimate, error) {
	d := m.departure(terms)
	v := logMixed(terms) + d.e
	if m.kind == tableDairy && m.rule == (Rule{}) {
		below, above := m.meanDairyBand(terms)
		return expEstimate(v, v-below, v+above)
	}
	var below, above float64
	for i := range terms {
		t := &terms[i]
		below += t.w * (t.ln - t.lnLow)
		above += t.w * (t.lnHigh - t.ln)
	}
	return banded(v, d, below, above)
}

// banded is the estimate at v in ln, whose parts leave so much below and above.
func banded(v float64, d departed, below, above float64) (honestplate.Estimate, error) {
	v0, step := v-d.middle, d.half*d.half
	low, high := v0-math.Sqrt(below*below+step), v0+math.Sqrt(above*above+step)
	return expEstimate(v, min(low, v), max(high, v))
}

// meanDairyBand is the band of milk or cream of the mean fat, each treatment counted by
// the fat it brings.
func (m *mixing) meanDairyBand(terms []term) (below, above float64) {
	fat, _ := meanFat(terms)
	var brought float64
	for _, t := range terms {
		w := t.w
		if fat > 0 {
			w *= t.fat / fat
		}
		v, low, high := m.lnDairy(fat, t.treatment, t.bigK)
		below, above, brought = below+w*(v-low), above+w*(high-v), brought+w
	}
	return below / brought, above / brought
}

// exp is the estimate whose logarithms are given.
func exp(value, low, high float64) honestplate.Estimate {
	return honestplate.Estimate{Low: math.Exp(low), Likely: math.Exp(value), High: math.Exp(high)}
}

// expEstimate is exp of what must be a viscosity.
func expEstimate(v, low, high float64) (honestplate.Estimate, error) {
	e := exp(v, low, high)
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
