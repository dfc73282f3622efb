package portion

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/stat"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// A Scale is a weighing instrument. A kitchen scale without a class plate promises
// nothing: give it a Check. Without one it is taken for a scale of class III with the
// step it shows, in service. Masses are as weighed in air, which is how trade declares
// them: buoyancy (0.1 % of what is like water, 0.5 % of bread) is in both and left alone.
// Scales used in trade are verified by local authorities.
type Scale struct {
	StepGrams   float64 `json:"step_grams,omitzero"`   // what it shows in, d, g; 0 means 1 g
	VerifyGrams float64 `json:"verify_grams,omitzero"` // verification scale interval e, g; 0 means the step
	MaxGrams    float64 `json:"max_grams,omitzero"`    // greatest load, g; 0 means the most its class allows
	Class       Class   `json:"class,omitzero"`        // accuracy class; the zero value is III
	Repeat      float64 `json:"repeat_grams,omitzero"` // standard deviation of repeated weighings, g; 0 means not known
	// Verified says that it was verified just now: errors in service, which are the
	// default, may be twice as large.
	Verified bool `json:"verified,omitzero"`
	// Check is what the scale showed for a weight that is known, the same day: better
	// evidence than any class. Not given, the class is believed.
	Check CheckWeight `json:"check,omitzero"`
}

// MaxError returns the maximum permissible error at a load, in grams: 0.5 e, 1 e or
// 1.5 e by the load in e, twice that unless it is just Verified. The limits are 500, 2000 and
// 10 000 e for class III; 5000, 20 000, 100 000 for II; 50, 200, 1000 for IIII;
// 50 000 and 200 000 for I. The load is 0 or more; above the greatest: [honestplate.RangeError].
//
// Source: OIML R 76-1, table 6 (read); in service twice: UK SI 1995/1907 (read),
// whose table as made misprints the first class II limit as 20 000.
func (s Scale) MaxError(load float64) (float64, error) {
	s, err := s.checked()
	if err != nil {
		return 0, err
	}
	if err := honestplate.NotNegative("Load", load, "g"); err != nil {
		return 0, err
	}
	limits, _ := s.Class.limits() // checked
	most := limits[2] * s.VerifyGrams
	if s.MaxGrams != 0 {
		most = min(most, s.MaxGrams)
	}
	if load > most*(1+1e-12) {
		return 0, &honestplate.RangeError{Field: "Load", Value: load, High: most, Unit: "g",
			Source: "OIML R 76-1, class " + s.Class.String() + ", or the scale's greatest load"}
	}
	e := 1.5 * s.VerifyGrams
	switch intervals := load / s.VerifyGrams * (1 - 1e-12); {
	case intervals <= limits[0]:
		e = 0.5 * s.VerifyGrams
	case intervals <= limits[1]:
		e = s.VerifyGrams
	}
	if !s.Verified {
		e *= 2
	}
	return e, nil
}

// checked returns the scale with its zero values filled in.
func (s Scale) checked() (Scale, error) {
	if s.StepGrams == 0 {
		s.StepGrams = 1
	}
	if s.VerifyGrams == 0 {
		s.VerifyGrams = s.StepGrams
	}
	_, err := s.Class.limits()
	return s, cmp.Or(checkStep("StepGrams", s.StepGrams), checkStep("VerifyGrams", s.VerifyGrams),
		honestplate.NotNegative("MaxGrams", s.MaxGrams, "g"), checkMass("Repeat", s.Repeat), err)
}

// A Weighing is a mass with its uncertainty.
type Weighing struct {
	Grams    float64 `json:"grams"`          // the mass, g
	Standard float64 `json:"standard_grams"` // combined standard uncertainty, g
	Expanded float64 `json:"expanded_grams"` // expanded uncertainty, coverage factor 2 (about 95 %), g
	Readings int     `json:"readings"`       // how many readings it comes from
	// LeastGrams is the least load worth weighing on the scale, g: below it nothing
	// agrees. 0 if not known.
	LeastGrams float64 `json:"least_grams,omitzero"`
}

// String writes a weighing with two digits of uncertainty: "62.0 +- 1.2 g".
func (w Weighing) String() string {
	if !(w.Expanded > 0) {
		return fmt.Sprintf("%g g", w.Grams)
	}
	places := max(0, 1-int(math.Floor(math.Log10(w.Expanded))))
	return fmt.Sprintf("%.*f +- %.*f g", places, w.Grams, places, w.Expanded)
}

// Weigh returns the mean of repeated readings of one load, with the uncertainty
//
//	u^2 = s^2/n + 2 d^2/12 + mpe^2/3
//
// s: standard deviation of the readings, or Repeat if that is larger (one reading
// tells no s); n: their number; d: the step, rounded twice, at zero and at the
// load; mpe: [Scale.MaxError], taken as equally likely anywhere within. With a Check
// the error that it found is taken off, and what it leaves open stands for mpe^2/3.
// Errors: [honestplate.InputError]; [honestplate.RangeError] beyond the scale or where
// readings of one load spread by more than its error limit and one step of rounding,
// which says the scale is unfit.
//
// Source: JCGM 100:2008 (GUM), 4.2 to 4.3, 5.1 (numbers from memory); spread:
// OIML R 76 as in the Indian General Rules, 10k (read).
func (s Scale) Weigh(readings ...float64) (Weighing, error) {
	if len(readings) == 0 {
		return Weighing{}, check.Input("Readings", "empty", "", "at least one")
	}
	for i, r := range readings {
		if err := honestplate.NotNegative(fmt.Sprintf("Readings[%d]", i), r, "g"); err != nil {
			return Weighing{}, err
		}
	}
	mean := stat.Mean(readings, nil)
	mpe, err := s.MaxError(mean)
	if err != nil {
		return Weighing{}, check.Rename(err, "Load", "Readings")
	}
	low, high := slices.Min(readings), slices.Max(readings)
	s, _ = s.checked() // MaxError found it in order
	if limit := mpe + s.StepGrams; high-low > limit*(1+1e-9) {
		return Weighing{}, check.Beyond("Readings", high-low, limit, "g apart", "OIML R 76, repeatability, and one step of rounding: settle the load and weigh again")
	}
	deviation := s.Repeat
	if len(readings) > 1 {
		deviation = max(deviation, stat.StdDev(readings, nil))
	}
	w := Weighing{Readings: len(readings)}
	grams, common, err := s.corrected(mean)
	if err != nil {
		return Weighing{}, err
	}
	w.Grams = grams
	w.Standard = math.Sqrt(float64(deviation*deviation)/float64(len(readings)) + float64(s.StepGrams*s.StepGrams)/6 + float64(common*common))
	w.Expanded = 2 * w.Standard
	w.LeastGrams, err = s.LeastLoad()
	return w, err
}
