package portion

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// A CheckWeight is what a scale showed for a weight that is known. It says more than a
// class: a class promises what a maker and a verification office once saw. The error
// is taken as growing with the load (the span of the scale) and is taken off; what
// the check leaves open goes with it. It speaks for loads up to twice the weight.
type CheckWeight struct {
	Grams   float64 `json:"grams"`         // the weight, g; 0 means no check was made
	Reading float64 `json:"reading_grams"` // what the scale showed, g; within a tenth of the weight
	// Standard is the standard uncertainty of the error found, g: of the weight and the
	// reading. 0 means that of one reading, the weight being exact beside it.
	Standard float64 `json:"standard_grams,omitzero"`
}

// corrected returns the mass of a load that was read, and the standard uncertainty of
// the scale's own error, which is common to all weighings on it.
func (s Scale) corrected(load float64) (grams, common float64, err error) {
	if s.Check == (CheckWeight{}) {
		mpe, err := s.MaxError(load)
		return load, mpe / math.Sqrt(3), err
	}
	e, err := s.Evidence(load)
	return load * e.Factor, load * e.Factor * e.Relative, err
}

// Evidence is what readings of a scale carry, for sums and differences of them.
type Evidence struct {
	Reading  float64 `json:"reading_variance_g2"` // variance of one reading, g2: rounding, repeatability, line
	Relative float64 `json:"relative_standard"`   // standard uncertainty common to all, as a fraction of the load
	Factor   float64 `json:"factor"`              // true grams for one gram shown
}

// Evidence returns what readings up to the load carry: by the check weight if there is
// one, else by the class. By the class alone the scale's error may also bend within
// half a verification interval (no source: classes bound errors, not their shape).
// Errors: those of [Scale.MaxError]; [honestplate.InputError] for the check weight.
func (s Scale) Evidence(load float64) (Evidence, error) {
	mpe, err := s.MaxError(load)
	if err != nil {
		return Evidence{}, err
	}
	s, _ = s.checked() // MaxError found it in order
	e := Evidence{Reading: float64(s.StepGrams*s.StepGrams)/12 + float64(s.Repeat*s.Repeat), Factor: 1}
	c := s.Check
	if c == (CheckWeight{}) {
		e.Reading += float64(s.VerifyGrams*s.VerifyGrams) / 12
		if load > 0 {
			e.Relative = mpe / (math.Sqrt(3) * load)
		}
		return e, nil
	}
	if err := c.check(load); err != nil {
		return Evidence{}, honestplate.In("Check", err)
	}
	standard := c.Standard
	if standard == 0 {
		standard = math.Sqrt(2 * e.Reading)
	}
	e.Factor, e.Relative = c.Grams/c.Reading, standard/c.Grams
	return e, nil
}

func (c CheckWeight) check(load float64) error {
	err := cmp.Or(honestplate.Positive("Grams", c.Grams, "g"), honestplate.NotNegative("Standard", c.Standard, "g"),
		honestplate.InRange("Reading", c.Reading, 0.9*c.Grams, 1.1*c.Grams, "g",
			"further off it was another weight, or the scale is broken"))
	if err == nil && load > 2*c.Grams*(1+1e-12) {
		return check.Input("Grams", fmt.Sprintf("%g g under a load of %.6g g", c.Grams, load), "",
			"a check weight of at least half the load")
	}
	return err
}
