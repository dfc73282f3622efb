package pour

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/law"
)

// A Stream is the liquid of a pour after its fall, where it lands.
type Stream struct {
	// Drop is the fall from the outlet, m.
	Drop float64 `json:"drop_m"`
	// Diameter in m where it lands: of the stream while it holds together, of its
	// drops once it has broken (Broken) or where it only drips (Drips).
	Diameter float64 `json:"diameter_m"`
	// Width is Diameter with its band: the root of the rate's, and 5 % for what the fall
	// leaves out (see [law.Jet.Fall]).
	Width honestplate.Estimate `json:"width_m"`
	// Speed where it lands, m/s.
	Speed float64 `json:"speed_m_per_s"`
	// BreakUp is the fall after which the stream is drops, m, good to a factor of
	// 1.6; the sheet of a lip is not round, swings and carries the hand's noise, so that its
	// low end is a third (practice has milk from a jug ragged from 20 to 40 cm, no
	// source). 0 where it drips and where it is Unbroken.
	BreakUp honestplate.Estimate `json:"break_up_m"`
	// Broken reports that the fall exceeds the likely BreakUp; MayBreak that it
	// exceeds the shortest.
	Broken   bool `json:"broken"`
	MayBreak bool `json:"may_break"`
	// Unbroken reports that even the shortest break-up lies beyond 3 m, the longest fall
	// here: a thick stream, which does not break on a set.
	Unbroken bool `json:"unbroken"`
	// Drips reports that the flow is too slow for a stream: drops fall from the
	// outlet one by one.
	Drips bool `json:"drips"`
	// Weber rho V2 D/sigma, Reynolds rho V D/eta and Ohnesorge eta/sqrt(rho sigma D)
	// of Diameter and Speed where it lands.
	Weber     float64 `json:"weber"`
	Reynolds  float64 `json:"reynolds"`
	Ohnesorge float64 `json:"ohnesorge"`
	// Rate of the flow, m3/s.
	Rate float64 `json:"rate_m3_per_s"`
	// Fluid is the liquid at the viscosity of the Pour.
	law.Fluid
	// Outlet is the jet as it left; it has no speed where no Pour made the Stream.
	Outlet law.Jet `json:"outlet,omitzero"`
}

// Stream returns the pour's stream at its start after a fall of drop metres, up to
// 3 m (RangeError beyond: the air's drag is not in it; InputError below 0).
//
// How it falls and thins is [law.Jet.Fall]'s. It breaks into drops after BreakUp (see
// [law.Jet.BreakUp], whose turbulent line is taken for a turbulent lip as well; above
// rho_air V2 d/sigma of about 0.4 the air shortens it, which is left out and, on a set, is
// not reached), or drips from the start where the Weber number at the outlet is
// below [law.Fluid.DrippingWeber]. That criterion is used up to an Ohnesorge number of 1 at the
// outlet: thicker liquids run as a thread at rates far below it (common practice, no
// source), and are not judged by it. A sauce with a yield stress falls in lumps
// rather than drops; where, no criterion was found.
func (p Pour) Stream(drop float64) (Stream, error) {
	if err := cmp.Or(p.check(), honestplate.Positive("Drop", drop, "m"),
		honestplate.InRange("Drop", drop, 0, physics.LongestFall, "m", "free fall without the air's drag")); err != nil {
		return Stream{}, err
	}
	q, fluid := p.Rate.Likely, p.fluid(p.Viscosity.Likely)
	s := Stream{Drop: drop, Rate: q, Fluid: fluid}
	s.Outlet = law.Jet{
		Fluid: fluid, Diameter: p.Diameter, Speed: p.Speed,
		Turbulent: p.turbulentJet(),
	}
	critical, err := fluid.DrippingWeber(p.Diameter, p.outside())
	if err != nil {
		return Stream{}, err
	}
	thin := s.Viscosity < math.Sqrt(s.Density*s.SurfaceTension*p.Diameter)
	if s.Drips = thin && s.Density*p.Speed*p.Speed*p.Diameter/s.SurfaceTension < critical; s.Drips {
		err = s.drop(p.outside(), p.Speed)
	} else {
		err = s.fall(p.out.width > 0)
	}
	if err != nil {
		return Stream{}, err
	}
	low, high := 1-math.Sqrt(p.Rate.Low/q), math.Sqrt(p.Rate.High/q)-1
	s.Width = honestplate.Estimate{
		Low: s.Diameter / (1 + math.Hypot(low/(1-low), 0.05)), Likely: s.Diameter, High: s.Diameter * (1 + math.Hypot(high, 0.05)),
	}
	s.numbers()
	return s, nil
}

const (
	// turbulentLengths is the bore, in diameters, from which a turbulent bore makes
	// a turbulent jet (estimated, no source).
	turbulentLengths = 10
	// lipBreakUp divides the likely break-up of a lip's stream for its low end (estimated
	// from practice, no source): the lengths are those of a polished round capillary.
	lipBreakUp = 3.0
)

// turbulentJet reports that the flow leaves its outlet turbulent: a long bore, or any lip
// whose film is.
func (p *Pour) turbulentJet() bool {
	return p.Regime == turbulent && (p.out.width > 0 || p.out.length > turbulentLengths*p.out.bore)
}

// fall lets the stream fall as a jet, whole or broken.
func (s *Stream) fall(lip bool) (err error) {
	if s.BreakUp, err = s.Outlet.BreakUp(); err != nil {
		return err
	}
	if lip {
		s.BreakUp.Low = s.BreakUp.Likely / lipBreakUp
	}
	if s.Unbroken = s.BreakUp.Low > physics.LongestFall; s.Unbroken {
		s.BreakUp = honestplate.Estimate{}
	} else {
		s.Broken, s.MayBreak = s.Drop > s.BreakUp.Likely, s.Drop > s.BreakUp.Low
	}
	landed, err := s.Outlet.Fall(s.Drop)
	if err != nil {
		return err
	}
	s.Speed, s.Diameter = landed.Speed, landed.Diameter
	if s.Broken {
		thread, err := s.Outlet.Fall(s.BreakUp.Likely)
		if err != nil {
			return err
		}
		s.Diameter = law.RayleighDrop * thread.Diameter
	}
	return nil
}

// drop lets a drop fall that hangs from a width, or from 15 mm of a wider edge, with the drag that gives it its terminal
// speed, taken as square in the speed: the drops of a dripping spout are 3 to 8 mm, where
// it nearly is. Beyond the sizes of [law.TerminalSpeed] the nearest end is taken: large
// drops fall at the same 9 m/s.
func (s *Stream) drop(width, v0 float64) (err error) {
	if s.Diameter, err = s.PendantDrop(min(width, 0.015)); err != nil {
		return err
	}
	t, err := law.TerminalSpeed(min(max(s.Diameter, 0.6e-3), 5.8e-3))
	s.Speed = math.Sqrt(t*t + (v0*v0-t*t)*math.Exp(-2*physics.Gravity*s.Drop/(t*t)))
	return err
}

// outside is the width from which drops hang, m: the bore, whose wall is taken
// as thin, or the sheet of a lip gathered to a round stream.
func (p *Pour) outside() float64 {
	if p.out.bore > 0 {
		return p.out.bore
	}
	return p.Diameter
}

// numbers fills in the dimensionless numbers.
func (s *Stream) numbers() {
	s.Weber = s.Density * s.Speed * s.Speed * s.Diameter / s.SurfaceTension
	s.Reynolds = s.Density * s.Speed * s.Diameter / s.Viscosity
	s.Ohnesorge = s.Viscosity / math.Sqrt(s.Density*s.SurfaceTension*s.Diameter)
}

// check returns an error unless the stream carries numbers that a criterion can
// use.
func (s Stream) check() error {
	if s == (Stream{}) {
		return check.Missing("Stream", "the result of Pour.Stream")
	}
	return cmp.Or(s.Fluid.Check(),
		honestplate.InRange("Diameter", s.Diameter, 1e-6, 10, "m", "from mist to a weir"),
		honestplate.InRange("Speed", s.Speed, 1e-9, 1e3, "m/s", "from creeping to the speed of sound"),
		honestplate.InRange("Rate", s.Rate, 0, 10, "m3/s", "a river"))
}
