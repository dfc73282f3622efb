package rheology

import (
	"math"

	"example.org/honestplate"
)

// A Stream is the liquid of a pour after its fall, where it lands.
type Stream struct {
	// Drop is the fall from the outlet, m.
	Drop float64
	// Diameter in m where it lands: of the stream while it holds together, of its
	// drops once it has broken (Broken) or where it only drips (Drips).
	Diameter float64
	// Width is Diameter with its band: the root of the rate's, and 5 % for what the fall
	// leaves out (see Jet.Fall).
	Width honestplate.Estimate
	// Speed where it lands, m/s.
	Speed float64
	// BreakUp is the fall after which the stream is drops, m, good to a factor of
	// 1.6. 0 where it drips.
	BreakUp honestplate.Estimate
	// Broken reports that the fall exceeds the likely BreakUp; MayBreak that it
	// exceeds the shortest.
	Broken, MayBreak bool
	// Drips reports that the flow is too slow for a stream: drops fall from the
	// outlet one by one.
	Drips bool
	// CriticalWeber is the Weber number at the outlet below which it drips, and
	// ExitWeber the one it has.
	CriticalWeber, ExitWeber float64
	// Weber rho V2 D/sigma, Reynolds rho V D/eta and Ohnesorge eta/sqrt(rho sigma D)
	// of Diameter and Speed where it lands.
	Weber, Reynolds, Ohnesorge float64
	// Rate of the flow, m3/s.
	Rate float64
	// Viscosity in Pa s, Density in kg/m3 and SurfaceTension in N/m as in the Pour.
	Viscosity, Density, SurfaceTension float64

	outlet Jet // as it left
}

// longestFall is the fall up to which the drag of the air on a stream is left out.
const longestFall = 3.0

// Stream returns the pour's stream at its start after a fall of drop metres, up to
// 3 m (RangeError beyond: the air's drag is not in it; InputError below 0).
//
// How it falls and thins is Jet.Fall's. It breaks into drops after BreakUp (see
// Jet.FallingBreakUp), or drips from the start where the Weber number at the outlet is
// below DrippingWeber. That criterion is used up to an Ohnesorge number of 1 at the
// outlet: thicker liquids run as a thread at rates far below it (common practice, no
// source), and CriticalWeber is 0 for them. A sauce with a yield stress falls in lumps
// rather than drops; where, no criterion was found.
func (p Pour) Stream(drop float64) (Stream, error) {
	q := p.startL
	if !(q > 0) {
		return Stream{}, noFlow("Pour")
	}
	if err := honestplate.Positive("fall", drop, "m"); err != nil {
		return Stream{}, err
	}
	if err := honestplate.InRange("fall", drop, 0, longestFall, "m", "free fall without the air's drag"); err != nil {
		return Stream{}, err
	}
	s := Stream{
		Drop: drop, Rate: q,
		Viscosity: p.Viscosity.Likely, Density: p.Density.Likely, SurfaceTension: p.SurfaceTension.Likely,
	}
	jet := Jet{p.Diameter, p.Speed, s.Viscosity, s.Density, s.SurfaceTension}
	s.outlet = jet
	s.ExitWeber = s.Density * p.Speed * p.Speed * p.Diameter / s.SurfaceTension
	if s.Viscosity < math.Sqrt(s.Density*s.SurfaceTension*p.Diameter) {
		s.CriticalWeber = drippingWeber(p.Diameter, p.outside(), s.Density, s.SurfaceTension)
	}
	if s.ExitWeber < s.CriticalWeber {
		s.Drips = true
		s.Diameter = pendantDrop(p.outside(), s.Density, s.SurfaceTension)
		s.Speed = dropSpeed(s.Diameter, drop, p.Speed)
	} else {
		turbulent := p.Regime == TurbulentFlow && p.out.bore > 0 && p.out.length > turbulentLengths*p.out.bore
		s.BreakUp = honestplate.Factor(jet.breakUp(turbulent), breakUpFactor)
		s.Broken, s.MayBreak = drop > s.BreakUp.Likely, drop > s.BreakUp.Low
		s.Speed = jet.speed(drop)
		s.Diameter = math.Sqrt(4 * q / (math.Pi * s.Speed))
		if s.Broken {
			at := jet.speed(s.BreakUp.Likely)
			s.Diameter = RayleighDrop * math.Sqrt(4*q/(math.Pi*at))
		}
	}
	low, high := 1-math.Sqrt(p.Rate.Low/q), math.Sqrt(p.Rate.High/q)-1
	s.Width = honestplate.Estimate{Low: s.Diameter / (1 + math.Hypot(low/(1-low), 0.05)), Likely: s.Diameter, High: s.Diameter * (1 + math.Hypot(high, 0.05))}
	s.numbers()
	return s, nil
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
		return noFlow("Stream")
	}
	if err := positiveAll(s.Viscosity, s.Density, s.SurfaceTension); err != nil {
		return err
	}
	if err := honestplate.InRange("stream diameter", s.Diameter, 1e-6, 10, "m", "a stream"); err != nil {
		return err
	}
	if err := honestplate.InRange("stream speed", s.Speed, 1e-9, 1e3, "m/s", "a stream"); err != nil {
		return err
	}
	return honestplate.InRange("flow", s.Rate, 0, 10, "m3/s", "a stream")
}
