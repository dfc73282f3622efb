package rheology

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Correction is what to add to a batch that was measured.
type Correction struct {
	AddThinGrams  float64              `json:"add_thin_grams"`  // of the thin liquid, whole scale steps
	AddThickGrams float64              `json:"add_thick_grams"` // or of the thick one; at most one of the two is above 0
	TotalGrams    float64              `json:"total_grams"`     // of the batch afterwards
	MeasuredPaS   float64              `json:"measured_pas"`    // what the correction starts from, Pa s
	Predicted     honestplate.Estimate `json:"predicted_pas"`   // of the batch afterwards, Pa s
	Batch         Batch                `json:"batch"`           // afterwards: measure and Correct it again
}

// maxAddition is how many times the batch may be added to it; more is a new batch.
const maxAddition = 10

// Correct returns the least to add of one of the two liquids, in whole scale
// steps, to bring a batch of measured viscosity, in Pa s at the recipe's TempC,
// nearest to its target. The measured value replaces the model: the curve of
// viscosity against mix is moved to pass through it.
//
// How it is moved follows from what was uncertain. The deviation is shared between
// an error of the thin liquid, of the thick one (each as wide as its own band) and
// of the mixing step (as in Mix.Viscosity), each in proportion to the square of
// its part in the band of this mix: least squares with one observation. So a
// cream known to a factor takes most of the blame beside a milk known to per
// cents. Predicted has the band that is left.
//
// A target out of reach of an addition of up to ten times the batch is a
// RangeError with what can be reached; other errors are those of For.
func (b Batch) Correct(measuredPaS float64) (Correction, error) {
	return b.correct(honestplate.Exactly(measuredPaS))
}

// CorrectFromCup corrects a batch from its time in a flow cup, filled at the
// recipe's TempC: Correct with the cup's kinematic viscosity times the density of
// the mix. The cup's band goes into Predicted.
func (b Batch) CorrectFromCup(c Cup, t time.Duration) (Correction, error) {
	measured, err := b.cupViscosity(c, t)
	if err != nil {
		return Correction{}, err
	}
	return b.correct(measured)
}

// cupViscosity returns the dynamic viscosity in Pa s from a cup time.
func (b Batch) cupViscosity(c Cup, t time.Duration) (honestplate.Estimate, error) {
	nu, err := c.KinematicViscosity(t)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	m, err := b.Mix()
	if err != nil {
		return honestplate.Estimate{}, err
	}
	rho, err := m.Density(b.Recipe.TempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	return nu.Times(rho.Likely), nil
}

func (b Batch) correct(measured honestplate.Estimate) (Correction, error) {
	r := b.Recipe
	p, err := r.pair()
	if err != nil {
		return Correction{}, honestplate.In("Recipe", err)
	}
	thin, err := stepsOf("ThinGrams", b.ThinGrams, r.StepGrams)
	if err != nil {
		return Correction{}, err
	}
	thick, err := stepsOf("ThickGrams", b.ThickGrams, r.StepGrams)
	if err != nil {
		return Correction{}, err
	}
	if err := cmp.Or(honestplate.Positive("ThinGrams+ThickGrams", b.ThinGrams+b.ThickGrams, "g"),
		honestplate.Positive("TargetPaS", b.TargetPaS, "Pa s"), honestplate.Positive("MeasuredPaS", measured.Likely, "Pa s")); err != nil {
		return Correction{}, err
	}
	n := thin + thick
	curve := p.through(float64(thick)/float64(n), measured)
	target := math.Log(b.TargetPaS)
	addThick := measured.Likely < b.TargetPaS
	share := func(a int64) float64 {
		if addThick {
			return float64(thick+a) / float64(n+a)
		}
		return float64(thick) / float64(n+a)
	}
	at := func(a int64) float64 { return curve.ln(share(a)) }
	reached := func(a int64) bool { return at(a) >= target == addThick || at(a) == target }
	limit := rising(at, maxAddition*n, addThick)
	if !reached(limit) {
		from, to := math.Exp(at(0)), math.Exp(at(limit))
		return Correction{}, check.Outside("TargetPaS", b.TargetPaS, min(from, to), max(from, to), "Pa s",
			fmt.Sprintf("reach of additions to this batch, up to %.6g g: mix a new one", gramsOf(limit, r.StepGrams)))
	}
	add := firstStep(limit, reached)
	if add > 0 && math.Abs(at(add-1)-target) <= math.Abs(at(add)-target) {
		add--
	}
	c := Correction{
		TotalGrams:  gramsOf(n+add, r.StepGrams),
		MeasuredPaS: measured.Likely,
		Predicted:   curve.at(share(add)),
		Batch:       b,
	}
	if addThick {
		thick += add
		c.AddThickGrams = gramsOf(add, r.StepGrams)
	} else {
		thin += add
		c.AddThinGrams = gramsOf(add, r.StepGrams)
	}
	c.Batch.Recipe.BatchGrams = c.TotalGrams
	c.Batch.ThinGrams, c.Batch.ThickGrams = gramsOf(thin, r.StepGrams), gramsOf(thick, r.StepGrams)
	c.Batch.Predicted = c.Predicted
	return c, nil
}

// rising returns how far up to limit the curve keeps going the wanted way.
func rising(at func(int64) float64, limit int64, up bool) int64 {
	const looks = 24
	last, lastAt := int64(0), at(0)
	for i := 1; i <= looks; i++ {
		// Closer together for small additions, where the mix changes fast.
		a := int64(float64(limit) * math.Pow(float64(i)/looks, 3))
		if a == last {
			continue
		}
		v := at(a)
		if v != lastAt && v > lastAt != up {
			return last
		}
		last, lastAt = a, v
	}
	return last
}

// A conditioned pair is a recipe's curve of viscosity against mix, moved through a measurement.
type conditioned struct {
	*pair
	middle    float64    // of the mixing step's error
	errors    [3]float64 // squares of the half-widths: thin, thick, mixing step
	at0       [3]float64 // how each enters at the measured mix
	total     float64    // the square of the half-width at the measured mix
	deviation float64    // measured less expected, in ln
	noise     float64    // square of the half-width of the measurement
}

func (p *pair) through(w float64, measured honestplate.Estimate) conditioned {
	c := conditioned{pair: p}
	half := 0.0
	c.middle, half = p.stepError()
	ratio := p.terms[1].ln - p.terms[0].ln
	c.middle *= ratio
	for i, width := range [3]float64{
		(p.terms[0].lnHigh - p.terms[0].lnLow) / 2,
		(p.terms[1].lnHigh - p.terms[1].lnLow) / 2,
		half * ratio,
	} {
		// 20 is no limit in practice; it keeps a band down to 0 finite.
		width = min(width, 20)
		c.errors[i] = width * width
	}
	c.at0 = shapes(w)
	c.total = c.covariance(c.at0)
	if c.total == 0 {
		// Nothing was uncertain, and yet it deviates: move the whole curve.
		c.errors = [3]float64{1, 1, 0}
		c.total = c.covariance(c.at0)
	}
	c.deviation = math.Log(measured.Likely) - c.expected(w)
	if measured.Low > 0 && measured.High > measured.Low {
		c.noise = math.Pow(math.Log(measured.High/measured.Low)/2, 2)
	}
	return c
}

// shapes is how an error of the thin liquid, the thick one and the mixing step
// enters the logarithm of the viscosity with w of the thick liquid.
func shapes(w float64) [3]float64 { return [3]float64{1 - w, w, w * (1 - w)} }

func (c *conditioned) covariance(s [3]float64) float64 {
	var sum float64
	for i, e := range c.errors {
		sum += s[i] * c.at0[i] * e
	}
	return sum
}

// expected is ln eta before the measurement, the known lean of the rule taken out.
func (c *conditioned) expected(w float64) float64 { return c.lnAt(w) - c.middle*w*(1-w) }

// ln is ln eta after the measurement.
func (c *conditioned) ln(w float64) float64 {
	return c.expected(w) + c.covariance(shapes(w))/c.total*c.deviation
}

// at returns the viscosity after the measurement with the band that is left.
func (c *conditioned) at(w float64) honestplate.Estimate {
	s := shapes(w)
	cov := c.covariance(s)
	var prior float64
	for i, e := range c.errors {
		prior += s[i] * s[i] * e
	}
	gain := cov / c.total
	half := math.Sqrt(max(0, prior-cov*gain) + gain*gain*c.noise)
	v := c.ln(w)
	return honestplate.Estimate{Low: math.Exp(v - half), Likely: math.Exp(v), High: math.Exp(v + half)}
}
