package rheology

import "math"

// A Departure is a blend's viscosity in its two terms,
//
//	ln eta = sum w_i ln eta_i + E
//
// log-mixing by mass and how far the blend departs from it.
type Departure struct {
	LogMixedPaS float64 `json:"log_mixed_pas"` // exp(sum w_i ln eta_i), Pa s
	E           float64 `json:"e"`             // a pure number, as a rule below 0: the blend is thinner
	Low         float64 `json:"e_low"`         // 95 % band of E
	High        float64 `json:"e_high"`        // and its upper end
}

// Departure returns the two terms of the mix's viscosity at a temperature in degC. It fails
// as Viscosity does.
func (m Mix) Departure(tempC float64) (Departure, error) {
	x, terms, err := m.terms(tempC, m.rate)
	if err != nil {
		return Departure{}, err
	}
	d := x.departure(terms)
	return Departure{
		LogMixedPaS: math.Exp(logMixed(terms)), E: d.e,
		Low: min(d.e, d.e-d.middle-d.half), High: max(d.e, d.e-d.middle+d.half),
	}, nil
}

// Departure returns the two terms of the batch's viscosity at the recipe's temperature.
func (b Batch) Departure() (Departure, error) {
	m, err := b.Mix()
	if err != nil {
		return Departure{}, err
	}
	return m.Departure(b.Recipe.TempC)
}

// departed is E with how far the truth may lie below it: middle +- half, in ln.
type departed struct{ e, middle, half float64 }

// How far E of milk and cream can be off, as a share of it.
const (
	// Between ends that were measured: of the eleven blends of testdata/dairy_blends.csv ten
	// lie within that of the law's E, cold ones thicker by 15 % in the mean, hot ones by 10.
	emulsionStep = 1.0
	// Where k is the law's own: within one source values lie 0.07 to 0.26 (rms, in ln) off
	// the law with that source's k, beside an E of 0.5 to 1.
	emulsionShape = 0.6
)

// departure returns E: what the rule was told, or what the parts' shared compositions say,
//
//	E = sum over compositions of W (ln law(mean) - sum w_i/W ln law(part_i))
//
// W the mass fraction of the parts that share it. Between parts that share nothing E is 0,
// with the band that blends of other liquids show.
func (m *mixing) departure(terms []term) departed {
	switch {
	case len(terms) == 1:
		return departed{}
	case m.rule.NoDeparture || m.rule.interacts():
		middle, half := m.stepError()
		g := spread(terms)
		d := departed{middle: middle * g, half: half * g}
		if m.rule.interacts() {
			d.e = interaction(m.rule, terms)
		}
		return d
	}
	var d departed
	var groups [maxParts]term
	n := 0
	var square float64
	for _, s := range [...]sharing{sharesFat, sharesWater} {
		g := m.group(terms, s)
		if g.w == 0 {
			continue
		}
		d.e += g.w * g.e
		square += g.half * g.half * g.w * g.w
		groups[n] = term{w: g.w, ln: g.ln + g.e}
		n++
	}
	for _, t := range terms {
		if t.shares == sharesNothing {
			groups[n] = t
			n++
		}
	}
	if n > 1 {
		between := groups[:n]
		byThickness(between)
		middle, half := m.stepError()
		g := spread(between)
		d.middle = middle * g
		square += half * g * half * g
	}
	d.half = math.Sqrt(square)
	return d
}

// A group is the parts that share a composition: their mass fraction, the logarithm that
// log-mixing gives them, and the departure from it.
type group struct{ w, ln, e, half float64 }

func (m *mixing) group(terms []term, s sharing) group {
	var g group
	var law float64
	count, measured := 0, false
	for i := range terms {
		t := &terms[i]
		if t.shares != s {
			continue
		}
		count++
		measured = measured || t.measured
		g.w += t.w
		g.ln += t.w * t.ln
		law += t.w * t.law
	}
	if g.w == 0 {
		return g
	}
	g.ln /= g.w
	if count == 1 {
		return g
	}
	share := emulsionShape
	if measured {
		share = emulsionStep
	}
	if s == sharesFat {
		fat, bigK := meanFat(terms)
		mean, _, _ := m.lnDairy(fat, PlainCream, bigK)
		g.e = mean - law/g.w
	} else {
		var solution float64
		solution, share = m.meanSolution(terms)
		g.e = solution - law/g.w
	}
	if measured {
		// The law's shape over what was measured: as much of E as there is contrast.
		g.e *= contrast(terms, s)
	}
	g.half = share * math.Abs(g.e)
	return g
}

// contrast is the spread of the parts' viscosities over that of their laws, at most 2.
func contrast(terms []term, s sharing) float64 {
	var is, law float64
	for i := range terms {
		for j := range i {
			if a, b := &terms[i], &terms[j]; a.shares == s && b.shares == s {
				is += a.w * b.w * math.Abs(a.ln-b.ln)
				law += a.w * b.w * math.Abs(a.law-b.law)
			}
		}
	}
	if law == 0 {
		return 1
	}
	return min(2, is/law)
}

// meanFat is the fat in % of the parts that are milk and cream, and K by the fat they
// bring.
func meanFat(terms []term) (fat, bigK float64) {
	var w, plain float64
	for i := range terms {
		if t := &terms[i]; t.shares == sharesFat {
			w += t.w
			fat += t.w * t.fat
			bigK += t.w * t.fat * t.bigK
			plain += t.w * t.bigK
		}
	}
	if fat == 0 {
		return 0, plain / w
	}
	return fat / w, bigK / fat
}

// meanSolution is ln of the viscosity of a solution of the mean strength, and how far E can
// be off. Where several things are dissolved the logarithms of their solutions of that
// strength are taken by how much of each there is.
func (m *mixing) meanSolution(terms []term) (ln, share float64) {
	var w float64
	var dissolved [solutes]float64
	for i := range terms {
		if t := &terms[i]; t.shares == sharesWater {
			w += t.w
			dissolved[t.of] += t.w * t.percent
		}
	}
	var total float64
	for _, x := range dissolved {
		total += x
	}
	if total == 0 {
		return lnSolution(ofSucrose, 0, m.tempC), 0
	}
	for of, x := range dissolved {
		if x > 0 {
			ln += x / total * lnSolution(solute(of), total/w, m.tempC)
			share += x / total * solutionBand[of]
		}
	}
	return ln, share
}

// interaction is E by a rule's D.
func interaction(r Rule, terms []term) float64 {
	var sum, before float64
	for _, t := range terms {
		sum += t.w * before
		before += t.w
	}
	return r.D * sum
}
