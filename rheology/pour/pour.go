package pour

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/law"
)

// A Pour is what a spout or a lip does with a mass of liquid.
type Pour struct {
	// Duration from the first to the last of the grams.
	Duration honestplate.Window
	// Rate at the start and at the end, m3/s. They are equal where the head stays.
	Rate, EndRate honestplate.Estimate
	// Speed is the mean in the bore, or at the edge of a lip, at the start, m/s.
	Speed float64
	// Diameter of the stream where it leaves the outlet, m: that of the jet, which
	// behind a hole is narrower than the hole; for a lip, that of the circle of the
	// same section.
	Diameter float64
	// Reynolds number at the start: V D/nu in a bore, 4 q/nu of a lip's film (q in
	// m2/s, per width).
	Reynolds float64
	// Regime of the flow at the start: "laminar, held by friction", "laminar, held by
	// inertia", "between laminar and turbulent" or "turbulent"; of a closed bottle "glugs, held
	// by the air that must come in".
	Regime string
	// Friction is the share of the head at the start that goes with the viscosity, in the
	// outlet and at its entry, 0..1: near 1 the rate goes with one over the viscosity, near
	// 0 it hardly knows it.
	Friction float64
	// Ruled says what rules the band of the Duration: "liquid", what is not known of its
	// viscosity, which a test of it narrows; or "outlet", what is not known of the outlet, the
	// hand and the air, which a timed pour narrows (see [Lip.Calibrate]).
	Ruled string
	// ShearRate at which the viscosity was read, 1/s.
	ShearRate float64
	// Viscosity in Pa s at that rate, Density in kg/m3, SurfaceTension in N/m: the
	// liquid's, with their bands.
	Viscosity, Density, SurfaceTension honestplate.Estimate
	// MayStay reports that the yield stress, at the high end of its band, would hold the
	// liquid in its outlet. The slow ends of the other bands are then those of a yield stress that
	// holds nine tenths of the head: a liquid that stays in has no rate.
	MayStay bool
	// MayGush reports of a liquid with a yield stress that the band of its Duration spans
	// more than ten times, or that it MayStay: it may stay, it may gush, and no likely
	// value is worth planning by. Try it.
	MayGush bool
	// Hydraulics is the uncertainty of the rate from the outlet alone, as a fraction.
	Hydraulics float64
	// Grams that leave the outlet, and LeftGrams that stay behind as a film on the
	// wall and in the bore: weigh in the sum.
	Grams     float64
	LeftGrams honestplate.Estimate

	out         outlet
	first, last float64              // heads that drive the flow at the start and the end, m
	surface     float64              // m2; 0: the head stays
	yield       honestplate.Estimate // Pa; 0: none
	stuck       float64              // head that the yield stress holds, m
	glugs       bool                 // the air that comes in governs
	airBand     float64              // factor of its rate
}

// MarshalJSON refuses: send the outlet, the liquid and its grams, and pour there.
func (Pour) MarshalJSON() ([]byte, error) {
	return nil, &honestplate.InputError{Field: "Pour", Got: "a worked out pour",
		Want: "its Spout or Lip, the liquid and the grams on the wire"}
}

// The regimes of a pour.
const (
	// friction: laminar, held back by friction: thick liquids, narrow bores. The rate goes
	// with one over the viscosity.
	friction = "laminar, held by friction"
	// inertia: laminar, held back by its own velocity: thin liquids, short spouts. The rate
	// hardly knows the viscosity.
	inertia = "laminar, held by inertia"
	// transitional lies between Re 2000 and 4000, of a lip's film 1500 and 2000, where it can
	// be either.
	transitional = "between laminar and turbulent"
	// turbulent lies above.
	turbulent = "turbulent"
	// glugging: a closed bottle, see Spout.Closed.
	glugging = "glugs, held by the air that must come in"
)

// What rules the band of a pour.
const (
	ruledByLiquid = "liquid"
	ruledByOutlet = "outlet"
)

// gushes is the span of a band, longest over shortest, beyond which a liquid that stands
// may as well stay as gush.
const gushes = 10

// longestPour ends what counts as a pour.
const longestPour = 7 * 24 * time.Hour

// newPour checks the liquid and reads its properties.
func newPour(l rheology.Liquid, tempC, grams float64) (Pour, error) {
	var p Pour
	if check.IsNil(l) {
		return p, check.Missing("Liquid", "a liquid to pour")
	}
	if err := cmp.Or(honestplate.Finite("TempC", tempC, "degC"), honestplate.Positive("Grams", grams, "g"),
		honestplate.InRange("Grams", grams, 1e-9, 1e9, "g", "from a fine drop to a tanker")); err != nil {
		return p, err
	}
	var err1, err2, err3 error
	p.Density, err1 = l.Density(tempC)
	p.SurfaceTension, err2 = l.SurfaceTension(tempC)
	p.Viscosity, err3 = l.Viscosity(tempC)
	err := cmp.Or(err1, err2, err3, check.Band("Liquid.Density", p.Density, 100, 3e4, "kg/m3", "from foam to metal"),
		check.Band("Liquid.SurfaceTension", p.SurfaceTension, 1e-4, 10, "N/m", "from soap to metal"),
		check.Band("Liquid.Viscosity", p.Viscosity, 1e-6, 1e9, "Pa s", "from thin gases to pitch"))
	if err != nil {
		return p, err
	}
	p.Grams = grams
	p.out = outlet{tempC: tempC, eta: p.Viscosity.Likely, rho: p.Density.Likely, scale: 1, yieldScale: 1}
	p.out.reads(l)
	return p, nil
}

// yields keeps the liquid's yield stress, if it has one, and the head that it holds, and
// returns a RefusedError if that is not less than the head there is, of which surface tension
// holds another part. stress is the one at the wall.
func (p *Pour) yields(l rheology.Liquid, stress, head, tension float64, rested bool) error {
	yield, err := check.YieldStress(l, p.out.tempC)
	if err != nil || yield.Likely == 0 {
		return err
	}
	p.yield, p.out.yield = yield, yield.Likely
	p.stuck = p.out.standing(yield.Likely)
	start := yield
	if rested {
		if start, err = rheology.RestedYieldStress(l, p.out.tempC); err != nil {
			return err
		}
	}
	p.MayStay = p.out.standing(start.High) >= head-tension
	if need := p.out.standing(start.Likely); need >= head-tension {
		if rested && p.stuck < head-tension {
			return held("yield stress at rest, until a shake or a tap breaks it,", head, tension+need)
		}
		return held("yield stress", head, tension+need)
	}
	return nil
}

// fluid is the liquid of the pour at a viscosity, as the closed forms see it.
func (p *Pour) fluid(eta float64) law.Fluid {
	return law.Fluid{Viscosity: eta, Density: p.Density.Likely, SurfaceTension: p.SurfaceTension.Likely}
}

// check refuses the zero Pour.
func (p *Pour) check() error {
	if !(p.Rate.Likely > 0) {
		return check.Missing("Pour", "the result of Spout.Pour or Lip.Pour")
	}
	return nil
}

func inSeconds(s float64) time.Duration { return time.Duration(math.Round(s * 1e9)) }
