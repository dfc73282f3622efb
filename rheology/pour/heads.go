package pour

import (
	"cmp"
	"errors"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/root"
)

// Ends of the heads of a lip and of a spout, m.
const (
	leastLipHead, mostLipHead     = 1e-5, 1.0
	leastSpoutHead, mostSpoutHead = 1e-6, 10.0
)

// calibrated is how well a rate is known once a lip was timed: the hand's own repeat, and
// what the law says of another liquid (estimated, no source).
const calibrated = 0.12

// ForDuration returns the lip with the Head that pours the grams of the liquid at tempC in
// the duration: the head that the hand keeps, or with a SurfaceArea begins with. Use it for
// what is known of a hand, "200 g in 5 s", and ask Pour for the rest.
//
// Errors: as for Pour; RangeError for a duration that no head of 0.01 mm to 1 m gives.
func (s Lip) ForDuration(l rheology.Liquid, tempC, grams float64, lasts time.Duration) (Lip, error) {
	h, err := headFor(leastLipHead, mostLipHead, lasts.Seconds(), "Duration", "s", false, func(head float64) (float64, error) {
		s.Head = head
		p, err := s.Pour(l, tempC, grams)
		return p.Duration.Likely.After.Seconds(), err
	})
	s.Head = h
	return s, err
}

// ForRate returns the lip with the Head at which the liquid at tempC starts with a rate in
// m3/s (1e-6 is 1 mL/s). Errors as for ForDuration.
func (s Lip) ForRate(l rheology.Liquid, tempC, rate float64) (Lip, error) {
	h, err := headFor(leastLipHead, mostLipHead, rate, "Rate", "m3/s", true, func(head float64) (float64, error) {
		s.Head = head
		p, err := s.Pour(l, tempC, onlyStart)
		return p.Rate.Likely, err
	})
	s.Head = h
	return s, err
}

// Calibrate returns the lip as one timed pour shows it: grams of a known liquid, best water,
// that the crew's hand poured in the time, with its Head fitted and its RateSpread from 25
// to 12 %. The same hand with the same jug then pours other liquids under that head. Time
// it more than once: what repeats worse than 12 % is not known better than that.
func (s Lip) Calibrate(l rheology.Liquid, tempC, grams float64, took time.Duration) (Lip, error) {
	s, err := s.ForDuration(l, tempC, grams, took)
	s.RateSpread = calibrated
	return s, err
}

// ForDuration is as [Lip.ForDuration], for heads of 1 um to 10 m.
func (s Spout) ForDuration(l rheology.Liquid, tempC, grams float64, lasts time.Duration) (Spout, error) {
	h, err := headFor(leastSpoutHead, mostSpoutHead, lasts.Seconds(), "Duration", "s", false, func(head float64) (float64, error) {
		s.Head = head
		p, err := s.Pour(l, tempC, grams)
		return p.Duration.Likely.After.Seconds(), err
	})
	s.Head = h
	return s, err
}

// ForRate is as [Lip.ForRate].
func (s Spout) ForRate(l rheology.Liquid, tempC, rate float64) (Spout, error) {
	h, err := headFor(leastSpoutHead, mostSpoutHead, rate, "Rate", "m3/s", true, func(head float64) (float64, error) {
		s.Head = head
		p, err := s.Pour(l, tempC, onlyStart)
		return p.Rate.Likely, err
	})
	s.Head = h
	return s, err
}

// onlyStart is a mass in g so small that any head moves it.
const onlyStart = 1e-9

// headFor returns the head in m between low and high that gives the wanted answer of a
// pour, which rises with the head or falls with it. A head that moves nothing, or not so
// many grams, or whose pour takes more than a week, is one too low; one that shears the
// liquid faster than its curve goes is one too high.
func headFor(low, high, want float64, field, unit string, rises bool, ask func(head float64) (float64, error)) (float64, error) {
	if err := honestplate.Positive(field, want, unit); err != nil {
		return 0, err
	}
	var got float64
	excess := func(x float64) (float64, error) {
		var err error
		if got, err = ask(min(max(math.Exp(x), low), high)); err != nil {
			if sign := headSign(err); sign != 0 {
				return math.Inf(sign), nil
			}
			return 0, err
		}
		if rises {
			return math.Log(got / want), nil
		}
		return math.Log(want / got), nil
	}
	a, b := math.Log(low), math.Log(high)
	if most, err := excess(b); err != nil || most < 0 {
		return 0, cmp.Or(err, outsideHeads(field, want, got, unit, rises))
	}
	if least, err := excess(a); err != nil || least > 0 {
		return 0, cmp.Or(err, outsideHeads(field, want, got, unit, !rises))
	}
	x, err := root.Bisect(excess, a, b, headDigits)
	if err != nil {
		return 0, err
	}
	off, err := excess(x)
	if math.IsInf(off, 0) {
		x += headDigits
		off, err = excess(x)
	}
	// What stands until it is shaken starts at once: no head gives what lies below that start.
	if err == nil && math.Abs(off) > 1e-3 {
		err = outsideHeads(field, want, got, unit, off > 0 != rises)
	}
	return math.Exp(x), err
}

// headDigits is how finely a head is found, in its logarithm.
const headDigits = 1e-9

// outsideHeads says that what is wanted lies beyond the answer got at one end of the heads:
// above it or below it.
func outsideHeads(field string, want, got float64, unit string, above bool) error {
	if above {
		return check.Outside(field, want, 0, got, unit, "what the heads of such an outlet give")
	}
	return check.Outside(field, want, got, math.MaxFloat64, unit, "what the heads of such an outlet give")
}

// headSign reads an error of a pour: -1 says that its head is too low, 1 too high, 0 that no
// other head would mend it.
func headSign(err error) int {
	var r *honestplate.RangeError
	switch {
	case errors.Is(err, honestplate.ErrNoFlow):
		return -1
	case !errors.As(err, &r):
		return 0
	case r.Field == "Grams" && r.Value > r.High, r.Field == "Duration", r.Field == "ShearRate" && r.Value < r.Low:
		return -1
	case r.Field == "ShearRate":
		return 1
	}
	return 0
}
