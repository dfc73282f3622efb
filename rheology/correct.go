package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Correction is what to add to a batch that was measured.
type Correction struct {
	LeaveIt       bool                 `json:"leave_it"`        // nothing to add: the batch is on target as far as this measurement can tell
	AddThinGrams  float64              `json:"add_thin_grams"`  // of the thin liquid, whole scale steps
	AddThickGrams float64              `json:"add_thick_grams"` // or of the thick one; at most one of the two is above 0
	TotalGrams    float64              `json:"total_grams"`     // of the batch afterwards
	MeasuredPaS   float64              `json:"measured_pas"`    // what the correction starts from, Pa s, at the rate and temperature of the recipe
	OK            honestplate.Estimate `json:"ok_pas"`          // measured values that mean "leave it", Pa s, around the target
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
// A measured value within OK is left: OK is the measurement's own error about the target
// and, where the scale is coarser, what one more step of either liquid would do. So a
// correction repeated with its own prediction adds nothing.
//
// A target out of reach of an addition of up to ten times the batch is a
// RangeError with what can be reached; other errors are those of For.
//
// The band of the measurement goes into Predicted. The instrument is one that cannot tell the
// batch from its target within a half-width in the logarithm of the viscosity, 0 to 10: 0.02
// is 2 %, and OK is no narrower than that.
func (b Batch) Correct(measured honestplate.Estimate, instrument float64) (Correction, error) {
	r := b.Recipe
	var p pair
	if err := r.pair(&p); err != nil {
		return Correction{}, honestplate.In("Recipe", err)
	}
	thin, err := stepsOf("ThinGrams", b.ThinGrams, r.StepGrams)
	thick, err2 := stepsOf("ThickGrams", b.ThickGrams, r.StepGrams)
	if err := cmp.Or(err, err2, honestplate.Positive("ThinGrams+ThickGrams", b.ThinGrams+b.ThickGrams, "g"),
		honestplate.Positive("TargetPaS", b.TargetPaS, "Pa s"), honestplate.Positive("MeasuredPaS", measured.Likely, "Pa s"),
		honestplate.InRange("Instrument", instrument, 0, 10, "in ln", "an instrument that tells anything"), measured.Check("Measured")); err != nil {
		return Correction{}, err
	}
	n := thin + thick
	curve := p.through(float64(thick)/float64(n), measured)
	target := math.Log(b.TargetPaS)
	addThick := measured.Likely < b.TargetPaS
	tolerance := max(instrument, curve.oneStep(thin, thick))
	c := Correction{MeasuredPaS: measured.Likely, OK: honestplate.Factor(b.TargetPaS, math.Exp(tolerance)), Batch: b}
	if math.Abs(math.Log(measured.Likely)-target) <= tolerance {
		c.LeaveIt, c.TotalGrams, c.Predicted = true, b.ThinGrams+b.ThickGrams, curve.at(float64(thick)/float64(n))
		c.Batch.Predicted = c.Predicted
		return c, nil
	}
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
			reach(gramsOf(limit, r.StepGrams)))
	}
	add := firstStep(limit, reached)
	if add > 0 && math.Abs(at(add-1)-target) <= math.Abs(at(add)-target) {
		add--
	}
	c.TotalGrams, c.Predicted = gramsOf(n+add, r.StepGrams), curve.at(share(add))
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

// reach says how far additions were tried.
func reach(grams float64) string {
	if grams == 0 {
		return "what this batch can be: no more of either liquid brings it nearer, mix a new one from others"
	}
	return fmt.Sprintf("reach of additions to this batch, up to %.6g g: mix a new one", grams)
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
