package thermal

import (
	"math"

	"example.org/honestplate/thermal/internal/study"
)

// A doubt is what a clock is worth beyond its inputs, as 95 % limits of a factor on its
// times: lean on all of them, for all units of a kind; unit on each event, from one unit
// to the next. It keeps what was seen of one unit from being taken for knowledge that
// the model has not.
type doubt struct{ lean, unit float64 }

// The doubts: engineering estimates. The lean is set beside that of the likely runs from
// the timed measurements of testdata, where a set asks for no vessel or fill to be
// guessed; how units differ from one to the next nobody has measured.
var (
	doubtHot    = doubt{1.10, 1.05} // course_water_80ml: 7 % late; course_foam_cups: 9 % early
	doubtCold   = doubt{1.15, 1.08} // course_ale_bottles: 4 % early; nothing timed for fog and beads
	doubtIce    = doubt{1.20, 1.10} // ice_on_surfaces: 8 % late on wood to 8 % early on the ground; its pieces also differ in form
	doubtFrozen = doubt{1.20, 1.10} // course_scoops: the first drip 10 % late, of five; nothing timed for butter
	doubtFreeze = doubt{1.15, 1.08} // nothing timed: as what is chilled
)

// sd is the standard deviation of the factor on one event.
func (d doubt) sd() float64 { return (d.unit - 1) * limitsToSD }

// inputs are those of the events: a factor each, on times that are known to the lean.
func (d doubt) inputs(events []string, to []float64) []study.Input {
	in := make([]study.Input, len(events))
	for i, e := range events {
		in[i] = bound(&to[i], within(around("unit.doubt_"+e, "what differs from one to the next", 1, d.unit-1), 0.1, 10))
	}
	return in
}

// A guess is what is thought of the doubt of one event in one run: normal, in standard
// deviations.
type guess struct{ mean, variance float64 }

// learn returns the guess after the event was seen, and the logarithm of the likelihood:
// the event comes at t times 1 + sd z, and is seen then with an error, both normal; t may
// itself scatter by a share.
func (g guess) learn(s Seen, t, sd, scatter float64) (guess, float64) {
	if math.IsInf(t, 1) {
		return g, impossible
	}
	slope, reading := t*sd, math.Hypot(s.timeSD(), scatter*(1+t))
	spread := float64(slope*slope*g.variance) + float64(reading*reading)
	off := s.At.Seconds() - t - slope*g.mean
	gain := slope * g.variance / spread
	after := guess{g.mean + gain*off, g.variance * reading * reading / spread}
	return after, -0.5*off*off/spread - 0.5*math.Log(spread)
}

// notYet is the logarithm of the chance that the event had not come when it was looked
// for.
func (g guess) notYet(s Seen, t, sd float64) float64 {
	if math.IsInf(t, 1) {
		return 0
	}
	slope, reading := t*sd, s.timeSD()
	off := (t + slope*g.mean - s.At.Seconds()) / math.Sqrt(slope*slope*g.variance+reading*reading)
	if off < -30 { // where the chance underflows, its asymptote
		return -0.5*off*off - math.Log(-off*math.Sqrt(2*math.Pi))
	}
	return math.Log(0.5 * math.Erfc(-off/math.Sqrt2))
}
