package portion

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
)

// A Scale is a weighing instrument. A kitchen scale without a class plate promises
// nothing: treat it as class III with the step it shows and check it with a known
// weight. Scales used in trade are verified by local authorities.
type Scale struct {
	StepGrams   float64 // what it shows in, d, g; 0 means 1 g
	VerifyGrams float64 // verification scale interval e, g; 0 means the step
	MaxGrams    float64 // greatest load, g; 0 means the most its class allows
	Class       Class   // accuracy class; the zero value is III
	Repeat      float64 // standard deviation of repeated weighings, g; 0 means not known
	InService   bool    // errors in service are twice those at verification
	// Check is what the scale said of a weight that is known, the same day. It is better
	// evidence than any class; not given, the class is believed.
	Check CheckWeight
}

// MaxError returns the maximum permissible error at a load, in grams: 0.5 e, 1 e or
// 1.5 e by the load in e, twice that in service. The limits are 500, 2000 and
// 10 000 e for class III; 5000, 20 000, 100 000 for II; 50, 200, 1000 for IIII;
// 50 000 and 200 000 for I. The load is 0 or more; above the greatest: RangeError.
//
// Source: OIML R 76-1, table 6 (read); in service twice: UK SI 1995/1907 (read),
// whose table as made misprints the first class II limit as 20 000.
func (s Scale) MaxError(load float64) (float64, error) {
	s, err := s.checked()
	if err != nil {
		return 0, err
	}
	limits, err := s.Class.limits()
	if err != nil {
		return 0, err
	}
	if err := notNegative("load", load, "g"); err != nil {
		return 0, err
	}
	most := limits[2] * s.VerifyGrams
	if s.MaxGrams != 0 {
		most = min(most, s.MaxGrams)
	}
	if load > most*(1+1e-12) {
		return 0, &RangeError{"load", load, 0, most, "g", "OIML R 76-1, class " + s.Class.String() + ", or the scale's greatest load"}
	}
	e := 1.5 * s.VerifyGrams
	switch intervals := load / s.VerifyGrams * (1 - 1e-12); {
	case intervals <= limits[0]:
		e = 0.5 * s.VerifyGrams
	case intervals <= limits[1]:
		e = s.VerifyGrams
	}
	if s.InService {
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
	for _, c := range []struct {
		quantity string
		v        float64
	}{{"scale step (StepGrams)", s.StepGrams}, {"verification interval (VerifyGrams)", s.VerifyGrams}} {
		if err := positive(c.quantity, c.v, "g"); err != nil {
			return s, err
		}
		if err := within(c.quantity, c.v, leastStepGrams, mostStepGrams, "g", "limit of this package"); err != nil {
			return s, err
		}
	}
	if err := notNegative("greatest load (MaxGrams)", s.MaxGrams, "g"); err != nil {
		return s, err
	}
	if err := notNegative("repeatability (Repeat)", s.Repeat, "g"); err != nil {
		return s, err
	}
	return s, within("repeatability (Repeat)", s.Repeat, 0, mostGrams, "g", "limit of this package")
}

// A Weighing is a mass with its uncertainty.
type Weighing struct {
	Grams    float64 // the mass, g
	Standard float64 // combined standard uncertainty, g
	Expanded float64 // expanded uncertainty, coverage factor 2 (about 95 %), g
	Readings int     // how many readings it comes from
	// LeastGrams is the least load worth weighing on the scale, g: below it nothing agrees.
	// 0 if not known.
	LeastGrams float64
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
// load; mpe: MaxError, taken as equally likely anywhere within. Errors: InputError;
// RangeError beyond the scale or where readings of one load spread by more than
// its error limit and one step of rounding, which says the scale is unfit.
//
// Source: JCGM 100:2008 (GUM), 4.2 to 4.3, 5.1 (numbers from memory); spread:
// OIML R 76 as in the Indian General Rules, 10k (read).
func (s Scale) Weigh(readings ...float64) (Weighing, error) {
	if len(readings) == 0 {
		return Weighing{}, &InputError{"number of readings", 0, "", "at least 1"}
	}
	for _, r := range readings {
		if err := notNegative("reading", r, "g"); err != nil {
			return Weighing{}, err
		}
	}
	mean := stat.Mean(readings, nil)
	mpe, err := s.MaxError(mean)
	if err != nil {
		return Weighing{}, err
	}
	low, high := readings[0], readings[0]
	for _, r := range readings {
		low, high = min(low, r), max(high, r)
	}
	s, _ = s.checked() // MaxError found it in order
	if limit := mpe + s.StepGrams; high-low > limit*(1+1e-9) {
		return Weighing{}, &RangeError{"spread of the readings", high - low, 0, limit, "g", "OIML R 76, repeatability, and one step of rounding"}
	}
	deviation := s.Repeat
	if len(readings) > 1 {
		deviation = max(deviation, stat.StdDev(readings, nil))
	}
	w := Weighing{Grams: mean, Readings: len(readings)}
	common := mpe / math.Sqrt(3)
	if s.Check != (CheckWeight{}) {
		e, err := s.evidence(mean)
		if err != nil {
			return Weighing{}, err
		}
		w.Grams = mean * e.factor
		common = w.Grams * e.relative
	}
	w.Standard = math.Sqrt(deviation*deviation/float64(len(readings)) + s.StepGrams*s.StepGrams/6 + common*common)
	w.Expanded = 2 * w.Standard
	w.LeastGrams, err = s.LeastLoad()
	return w, err
}
