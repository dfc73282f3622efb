package rheology

import (
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
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
	// Regime of the flow at the start.
	Regime PourRegime
	// ShearRate at which the viscosity was read, 1/s.
	ShearRate float64
	// Viscosity in Pa s at that rate, Density in kg/m3, SurfaceTension in N/m: the
	// liquid's, with their bands.
	Viscosity, Density, SurfaceTension honestplate.Estimate
	// MayStay reports that the yield stress, at the high end of its band, would hold the
	// liquid in its outlet: the other figures are for one that runs.
	MayStay bool
	// Hydraulics is the uncertainty of the rate from the outlet alone, as a fraction.
	Hydraulics float64
	// Grams that leave the outlet, and LeftGrams that stay behind as a film on the
	// wall and in the bore: weigh in the sum.
	Grams     float64
	LeftGrams honestplate.Estimate

	out          outlet
	first, last  float64              // heads that drive the flow at the start and the end, m
	surface      float64              // m2; 0: the head stays
	yield        honestplate.Estimate // Pa; 0: none
	stuck        float64              // head that the yield stress holds, m
	startL, endL float64              // rates, m3/s, of the likely liquid
	share        float64              // of friction in the head at the start
}

// A PourRegime names what holds a flow back.
type PourRegime string

// The regimes of a pour.
const (
	// FrictionFlow is laminar, held back by friction: thick liquids, narrow bores.
	// The rate goes with one over the viscosity.
	FrictionFlow PourRegime = "laminar, held by friction"
	// InertialFlow is laminar, held back by its own velocity: thin liquids, short
	// spouts. The rate hardly knows the viscosity.
	InertialFlow PourRegime = "laminar, held by inertia"
	// TransitionalFlow lies between Re 2000 and 4000, where it can be either.
	TransitionalFlow PourRegime = "between laminar and turbulent"
	// TurbulentFlow lies above Re 4000.
	TurbulentFlow PourRegime = "turbulent"
)

// longestPour ends what counts as a pour.
const longestPour = 7 * 24 * time.Hour

// newPour checks the liquid and reads its properties.
func newPour(l Liquid, tempC, grams float64) (Pour, error) {
	var p Pour
	if l == nil {
		return p, check.Input("number of liquids", 0, "", "one to pour")
	}
	if err := honestplate.Finite("temperature", tempC, "degC"); err != nil {
		return p, err
	}
	if err := honestplate.Positive("mass to pour", grams, "g"); err != nil {
		return p, err
	}
	if err := honestplate.InRange("mass to pour", grams, 1e-9, 1e9, "g", poured); err != nil {
		return p, err
	}
	var err error
	if p.Density, err = l.Density(tempC); err != nil {
		return p, err
	}
	if p.SurfaceTension, err = l.SurfaceTension(tempC); err != nil {
		return p, err
	}
	if p.Viscosity, err = l.Viscosity(tempC); err != nil {
		return p, err
	}
	if err := check.Band("density", p.Density, 100, 3e4, "kg/m3", "a liquid that pours"); err != nil {
		return p, err
	}
	if err := check.Band("surface tension", p.SurfaceTension, 1e-4, 10, "N/m", "a liquid that pours"); err != nil {
		return p, err
	}
	if err := check.Band("viscosity", p.Viscosity, 1e-6, 1e9, "Pa s", "a liquid that pours"); err != nil {
		return p, err
	}
	p.Grams = grams
	p.out = outlet{liquid: l, tempC: tempC, eta: p.Viscosity.Likely, rho: p.Density.Likely, scale: 1}
	p.out.thins, _ = l.(ShearDependent)
	return p, nil
}

// yields keeps the liquid's yield stress, if it has one, and the head that it holds, and
// returns a NoFlowError if that is not less than the head there is, of which surface tension
// holds another part. stress is the one at the wall.
func (p *Pour) yields(l Liquid, stress, head, tension float64) error {
	y, ok := l.(Yielding)
	if !ok {
		return nil
	}
	yield, err := y.YieldStress(p.out.tempC)
	if err != nil {
		return err
	}
	if yield == (honestplate.Estimate{}) {
		return nil
	}
	if err := check.Band("yield stress", yield, 1e-6, 1e6, "Pa", "a liquid that pours"); err != nil {
		return err
	}
	p.yield, p.out.yield = yield, yield.Likely
	p.stuck = p.out.standing(yield.Likely)
	p.MayStay = p.out.standing(yield.High) >= head-tension
	if p.stuck >= head-tension {
		return held("yield stress", head, tension+p.stuck)
	}
	return nil
}
