package pour

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/law"
)

// A Coil says how a thick stream piles up where it lands. Nothing here is a number to
// plan by: no published prefactor and no complete measured point was found, so
// Frequency and Radius are orders of magnitude and only the regime and the trends are
// meant to be used.
type Coil struct {
	// Coils reports that the thread does.
	Coils bool `json:"coils"`
	// Regime of the coil, in the order in which a rising fall meets them: "no coil",
	// "viscous", "gravitational", "inertio-gravitational", "inertial".
	Regime string `json:"regime"`
	// Frequency of the turns, 1/s, to a factor of ten either way; none is faster than the
	// thread laid in a ring of its own radius, V/(2 pi a).
	Frequency honestplate.Estimate `json:"frequency_per_s"`
	// Radius of the ring, of the thread's middle, m, to a factor of ten either way; never
	// less than the radius of the thread.
	Radius honestplate.Estimate `json:"radius_m"`
	// Height, Rate and Thickness say which way the frequency moves when the fall, the
	// flow or the viscosity rises a little, all else the same: "faster", "slower", "about the
	// same".
	Height    string `json:"height_trend"`
	Rate      string `json:"rate_trend"`
	Thickness string `json:"thickness_trend"`
	// Reynolds number V D/nu of the thread where it lands, and Slender, the fall over
	// the thread's diameter: a coil wants less than 1.2 and more than about 10.
	Reynolds float64 `json:"reynolds"`
	Slender  float64 `json:"slender"`
}

// The regimes, in the order in which a rising fall meets them.
const (
	noCoil             = "no coil"               // too thin, too fast or too short; the stream spreads or plunges
	viscousCoil        = "viscous"               // a short fall; the thread bends like a stick, slower from higher up
	gravityCoil        = "gravitational"         // the weight of the loop bends it; tight regular coils
	gravityInertiaCoil = "inertio-gravitational" // between; the thread swings like a pendulum of the fall, about sqrt(g/H), and may jump between two rates
	inertialCoil       = "inertial"              // a high fall; the thread is flung round, fast and small
)

// The trends of a frequency.
const faster, slower, steady = "faster", "slower", "about the same"

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
// the frequency, and at least a, since a ring is not smaller than its thread: the
// frequency is at most V/(2 pi a). Without prefactors the scalings pass that bound for
// most kitchen threads; honey from 10 cm is seen to turn several times a second in rings
// of 5 to 10 mm (common practice, no source), near the low end of the band. Range: Re below 1.2 and a fall of more than 10 diameters, "no coil"
// outside. Source: Ribe, Habibi and Bonn, "Liquid rope coiling" (scalings from memory,
// not seen; the pendulum rate sqrt(g/H) read in an abstract); onset from Cruickshank and Munson
// 1981 (from memory). A whole stream is wanted: a dripping or broken one does not.
// Errors: InputError for a Stream that no Pour made.
func (s Stream) Coil() (Coil, error) {
	if err := s.check(); err != nil {
		return Coil{}, err
	}
	if s.Outlet == (law.Jet{}) {
		return Coil{}, check.Missing("Stream", "the result of Pour.Stream")
	}
	nu := s.Viscosity / s.Density
	c := Coil{Regime: noCoil, Height: steady, Rate: steady, Thickness: steady, Reynolds: s.Speed * s.Diameter / nu, Slender: s.Drop / s.Diameter}
	if s.Broken || s.Drips || c.Reynolds > coilReynolds || c.Slender < coilSlender {
		return c, nil
	}
	here, regime, err := coilFrequency(s.Outlet, s.Drop)
	if err != nil {
		return Coil{}, err
	}
	c.Coils, c.Regime = true, regime
	thread := s.Diameter / 2
	c.Frequency = honestplate.Factor(here/(2*math.Pi), coilFactor)
	c.Frequency.High = min(c.Frequency.High, s.Speed/(2*math.Pi*thread))
	c.Frequency.Likely = min(c.Frequency.Likely, c.Frequency.High)
	c.Radius = honestplate.Factor(s.Speed/here, coilFactor)
	c.Radius.Low = max(c.Radius.Low, thread)
	c.Radius.Likely, c.Radius.High = max(c.Radius.Likely, c.Radius.Low), max(c.Radius.High, c.Radius.Low)
	trend := func(j law.Jet, drop float64) string {
		moved, _, err2 := coilFrequency(j, drop)
		err = cmp.Or(err, err2)
		switch r := math.Log(moved / here); {
		case r > coilDead:
			return faster
		case r < -coilDead:
			return slower
		}
		return steady
	}
	faster, thicker := s.Outlet, s.Outlet
	faster.Speed *= coilStep
	thicker.Viscosity *= coilStep
	c.Height = trend(s.Outlet, s.Drop*coilStep)
	c.Rate = trend(faster, s.Drop)
	c.Thickness = trend(thicker, s.Drop)
	return c, err
}

const (
	coilStep = 1.1   // the little that something rises for a trend
	coilDead = 0.005 // what counts as hardly moved, of a step of 10 %
)

// coilFrequency returns the angular frequency in 1/s of the governing regime.
func coilFrequency(j law.Jet, drop float64) (float64, string, error) {
	q := math.Pi / 4 * j.Diameter * j.Diameter * j.Speed
	landed, err := j.Fall(min(drop, physics.LongestFall))
	if err != nil {
		return 0, "", err
	}
	v := landed.Speed
	nu := j.Viscosity / j.Density
	// With the area pi a2 = Q/V.
	a2 := q / (math.Pi * v)
	viscous := q / (drop * a2)
	gravity := math.Sqrt(math.Sqrt(physics.Gravity*q*q*q/nu)) / a2
	inertial := math.Cbrt(q*q*q*q/nu) / math.Cbrt(a2*a2*a2*a2*a2)
	tightest := v / math.Sqrt(a2) // a ring as small as its thread
	switch {
	case viscous >= gravity && viscous >= inertial:
		return min(viscous, tightest), viscousCoil, nil
	case inertial < gravity/2:
		return min(gravity, tightest), gravityCoil, nil
	case inertial > gravity*2:
		return min(inertial, tightest), inertialCoil, nil
	}
	return min(max(gravity, inertial), tightest), gravityInertiaCoil, nil
}
