package thermal

import (
	"math"
	"time"
)

// A Solid is a piece of food or ware without change of phase that starts at one
// temperature and exchanges heat with surroundings at another.
type Solid struct {
	Material
	Size
	H        float64 // heat transfer coefficient, W/(m2 K); +Inf: the surface is held
	StartC   float64 // degC
	AmbientC float64 // of the surroundings, degC
}

// Transient prepares the exact solution: the series of one direction, or for a
// short cylinder, bar or brick the product of two or three (Newman's rule):
//
//	theta = theta_1 theta_2 theta_3,  Q/Qmax = 1 - (1-f1)(1-f2)(1-f3)
//
// Sizes that make no shape, properties not above 0 and equal temperatures are an
// *InputError; a Biot number outside 1e-6..1e6 a *RangeError. Source: Carslaw &
// Jaeger (from memory); checked on published examples. Properties are constant.
func (s Solid) Transient() (*Transient, error) {
	if err := s.Material.Validate(); err != nil {
		return nil, err
	}
	if !(s.H > 0) {
		return nil, &InputError{"heat transfer coefficient", s.H, "W/(m2 K)", "above 0"}
	}
	for _, c := range [...]float64{s.StartC, s.AmbientC} {
		if err := temperature("temperature", c); err != nil {
			return nil, err
		}
	}
	if s.StartC == s.AmbientC {
		return nil, &InputError{"starting temperature", s.StartC, "degC", "different from the surroundings"}
	}
	axes, err := s.axes()
	if err != nil {
		return nil, err
	}
	t := &Transient{solid: s}
	slowest := math.Inf(1)
	for _, a := range axes {
		series, err := NewSeries(a.form, s.H*a.half/s.Conductivity)
		if err != nil {
			return nil, err
		}
		rate := s.diffusivity() / (a.half * a.half) // Fourier number a second
		t.parts = append(t.parts, transientPart{axis: a, series: series, rate: rate})
		slowest = min(slowest, rate)
	}
	for _, p := range t.parts {
		t.decay += p.series.terms[0].z2 * p.rate
	}
	return t, nil
}

// A Transient is a Solid's solution made ready; it does not change and may be
// shared. The zero value answers with an *InputError.
type Transient struct {
	solid Solid
	parts []transientPart
	decay float64 // rate of the slowest exponential, 1/s
}

type transientPart struct {
	axis
	series *Series
	rate   float64
}

func (t *Transient) made() error {
	if t == nil || len(t.parts) == 0 {
		return unmade("transient", "Solid.Transient")
	}
	return nil
}

func (t *Transient) theta(p Place, seconds float64) float64 {
	out := 1.0
	for _, part := range t.parts {
		out *= part.series.theta(part.at(p), part.rate*seconds)
	}
	return out
}

// TempC returns the temperature, degC, at a place after a time. A place outside
// 0..1 is a *RangeError, a negative time an *InputError.
func (t *Transient) TempC(p Place, after time.Duration) (float64, error) {
	if err := t.made(); err != nil {
		return 0, err
	}
	for _, part := range t.parts {
		if err := checkPlace(part.at(p), after.Seconds()); err != nil {
			return 0, err
		}
	}
	return t.temp(t.theta(p, after.Seconds())), nil
}

func (t *Transient) temp(theta float64) float64 {
	return t.solid.AmbientC + theta*(t.solid.StartC-t.solid.AmbientC)
}

// Heat returns the share of all the heat that will ever be exchanged that has been
// after a time. A negative time is an *InputError.
func (t *Transient) Heat(after time.Duration) (float64, error) {
	if err := t.made(); err != nil {
		return 0, err
	}
	if err := notNegative("time", after.Seconds(), "s"); err != nil {
		return 0, err
	}
	return t.heat(after.Seconds()), nil
}

func (t *Transient) heat(seconds float64) float64 {
	f := 0.0 // f1 + f2 (1 - f1) + ..., which does not cancel early
	for _, part := range t.parts {
		f += part.series.heat(part.rate*seconds) * (1 - f)
	}
	return f
}

// MeanC returns the temperature, degC, averaged over the volume after a time: what
// it settles to if then left alone. A negative time is an *InputError.
func (t *Transient) MeanC(after time.Duration) (float64, error) {
	f, err := t.Heat(after)
	if err != nil {
		return 0, err
	}
	return t.temp(1 - f), nil
}

// TimeTo returns when a place reaches a temperature. One that is not between start
// (included) and surroundings, or so near these that it is never told apart, is a
// *RangeError.
func (t *Transient) TimeTo(p Place, tempC float64) (time.Duration, error) {
	if err := t.made(); err != nil {
		return 0, err
	}
	for _, part := range t.parts {
		if err := checkPlace(part.at(p), 0); err != nil {
			return 0, err
		}
	}
	return t.fall(func(s float64) float64 { return t.theta(p, s) }, tempC)
}

// MeanTimeTo is TimeTo for the mean temperature.
func (t *Transient) MeanTimeTo(tempC float64) (time.Duration, error) {
	if err := t.made(); err != nil {
		return 0, err
	}
	return t.fall(func(s float64) float64 { return 1 - t.heat(s) }, tempC)
}

func (t *Transient) fall(f func(seconds float64) float64, tempC float64) (time.Duration, error) {
	s := t.solid
	low, high := min(s.StartC, s.AmbientC), max(s.StartC, s.AmbientC)
	if err := within("wanted temperature", tempC, low, high, "degC", "start and surroundings"); err != nil {
		return 0, err
	}
	theta := (tempC - s.AmbientC) / (s.StartC - s.AmbientC)
	if theta < 1e-12 {
		return 0, &RangeError{"wanted temperature", tempC, low, high, "degC", "the surroundings are only approached"}
	}
	if theta == 1 {
		return 0, nil
	}
	// fallTo works in multiples of the slowest time constant.
	return seconds(fallTo(func(v float64) float64 { return f(v / t.decay) }, theta, 1) / t.decay), nil
}
