package rheology

import (
	"math"

	"example.org/honestplate"
)

// A Coil says how a thick stream piles up where it lands. Nothing here is a number to
// plan by: no published prefactor and no complete measured point was found, so
// Frequency and Radius are orders of magnitude and only the regime and the trends are
// meant to be used.
type Coil struct {
	// Regime of the coil, or NoCoil.
	Regime CoilRegime
	// Frequency of the turns, 1/s, to a factor of ten either way.
	Frequency honestplate.Estimate
	// Radius of the coil, m, to a factor of ten either way.
	Radius honestplate.Estimate
	// Height, Rate and Thickness say which way the frequency moves when the fall, the
	// flow or the viscosity rises a little, all else the same.
	Height, Rate, Thickness Trend
	// Reynolds number V D/nu of the thread where it lands, and Slender, the fall over
	// the thread's diameter: a coil wants less than 1.2 and more than about 10.
	Reynolds, Slender float64
}

// A CoilRegime names what balances the bending of a coiling thread.
type CoilRegime string

// The regimes, in the order in which a rising fall meets them.
const (
	// NoCoil: too thin, too fast or too short; the stream spreads or plunges.
	NoCoil CoilRegime = "no coil"
	// ViscousCoil: a short fall; the thread bends like a stick, slower from higher up.
	ViscousCoil CoilRegime = "viscous"
	// GravityCoil: the weight of the loop bends it; tight regular coils.
	GravityCoil CoilRegime = "gravitational"
	// GravityInertiaCoil: between; the thread swings like a pendulum of the fall, about
	// sqrt(g/H), and may jump between two rates.
	GravityInertiaCoil CoilRegime = "inertio-gravitational"
	// InertialCoil: a high fall; the thread is flung round, fast and small.
	InertialCoil CoilRegime = "inertial"
)

// A Trend says which way something moves.
type Trend int

// The trends.
const (
	// NoTrend: hardly moves.
	NoTrend Trend = iota
	// Faster: the frequency rises.
	Faster
	// Slower: the frequency falls.
	Slower
)

// String returns the trend in a word.
func (t Trend) String() string {
	switch t {
	case Faster:
		return "faster"
	case Slower:
		return "slower"
	}
	return "about the same"
}

const (
	coilReynolds = 1.2 // above it no coil (Cruickshank and Munson 1981, from memory)
	coilSlender  = 10  // below it no coil (same)
	coilFactor   = 10
)

// Coil judges the stream where it lands, from the scalings of the angular frequency
//
//	viscous        Q/(H a2)
//	gravitational  (g Q3/(nu a8))^(1/4)
//	inertial       (Q4/(nu a10))^(1/3)
//
// with the rate Q in m3/s, the fall H in m, the radius a of the thread where it lands
// and the kinematic viscosity nu. The largest governs, since they rise one above the
// other with the fall; within a factor of 2 of each other the last two make the
// inertio-gravitational regime (the choice by the largest is ours). Radius is V over
// the frequency. Range: Re below 1.2 and a fall of more than 10 diameters, NoCoil
// outside. Source: Ribe, Habibi and Bonn, "Liquid rope coiling" (scalings from memory,
// not seen; the pendulum rate sqrt(g/H) read in an abstract); onset from Cruickshank and Munson
// 1981 (from memory). A whole stream is wanted: a dripping or broken one is NoCoil.
// Errors: ErrNoStream for a Stream that no Pour made.
func (s Stream) Coil() (Coil, error) {
	if err := s.check(); err != nil {
		return Coil{}, err
	}
	if s.outlet == (Jet{}) {
		return Coil{}, noFlow("Pour")
	}
	nu := s.Viscosity / s.Density
	c := Coil{Regime: NoCoil, Reynolds: s.Speed * s.Diameter / nu, Slender: s.Drop / s.Diameter}
	if s.Broken || s.Drips || c.Reynolds > coilReynolds || c.Slender < coilSlender {
		return c, nil
	}
	here, regime := coilFrequency(s.outlet, s.Drop)
	c.Regime = regime
	c.Frequency = honestplate.Factor(here/(2*math.Pi), coilFactor)
	c.Radius = honestplate.Factor(s.Speed/here, coilFactor)
	trend := func(j Jet, drop float64) Trend {
		moved, _ := coilFrequency(j, drop)
		switch r := math.Log(moved / here); {
		case r > coilDead:
			return Faster
		case r < -coilDead:
			return Slower
		}
		return NoTrend
	}
	faster, thicker := s.outlet, s.outlet
	faster.Speed *= coilStep
	thicker.Viscosity *= coilStep
	c.Height = trend(s.outlet, s.Drop*coilStep)
	c.Rate = trend(faster, s.Drop)
	c.Thickness = trend(thicker, s.Drop)
	return c, nil
}

const (
	coilStep = 1.1   // the little that something rises for a trend
	coilDead = 0.005 // what counts as hardly moved, of a step of 10 %
)

// coilFrequency returns the angular frequency in 1/s of the governing regime.
func coilFrequency(j Jet, drop float64) (float64, CoilRegime) {
	q := math.Pi / 4 * j.Diameter * j.Diameter * j.Speed
	v := j.speed(drop)
	nu := j.Viscosity / j.Density
	// With the area pi a2 = Q/V.
	a2 := q / (math.Pi * v)
	viscous := q / (drop * a2)
	gravity := math.Sqrt(math.Sqrt(standardGravity*q*q*q/nu)) / a2
	inertial := math.Cbrt(q*q*q*q/nu) / math.Cbrt(a2*a2*a2*a2*a2)
	switch {
	case viscous >= gravity && viscous >= inertial:
		return viscous, ViscousCoil
	case inertial < gravity/2:
		return gravity, GravityCoil
	case inertial > gravity*2:
		return inertial, InertialCoil
	}
	return max(gravity, inertial), GravityInertiaCoil
}
