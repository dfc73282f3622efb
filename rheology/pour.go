package rheology

import "time"

// A Pour is what a spout or a lip does with a mass of liquid.
type Pour struct {
	// Duration from the first to the last of the grams.
	Duration DurationBand
	// Rate at the start and at the end, m3/s. They are equal where the head stays.
	Rate, EndRate Estimate
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
	Viscosity, Density, SurfaceTension Estimate
	// MayStay reports that the yield stress, at the high end of its band, would hold the
	// liquid in its outlet: the other figures are for one that runs.
	MayStay bool
	// Hydraulics is the uncertainty of the rate from the outlet alone, as a fraction.
	Hydraulics float64
	// Grams that leave the outlet, and LeftGrams that stay behind as a film on the
	// wall and in the bore: weigh in the sum.
	Grams     float64
	LeftGrams Estimate

	out          outlet
	first, last  float64  // heads that drive the flow at the start and the end, m
	surface      float64  // m2; 0: the head stays
	yield        Estimate // Pa; 0: none
	stuck        float64  // head that the yield stress holds, m
	startL, endL float64  // rates, m3/s, of the likely liquid
	share        float64  // of friction in the head at the start
}

// A DurationBand is a likely duration with its 95 % band.
type DurationBand struct {
	// Likely lies between Shortest and Longest, the ends of the band.
	Shortest, Likely, Longest time.Duration
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
		return p, &InputError{"number of liquids", 0, "", "one to pour"}
	}
	if err := finite("temperature", tempC, "degC"); err != nil {
		return p, err
	}
	if err := positive("mass to pour", grams, "g"); err != nil {
		return p, err
	}
	if err := within("mass to pour", grams, 1e-9, 1e9, "g", poured); err != nil {
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
	if err := p.Density.check("density", "kg/m3", 100, 3e4); err != nil {
		return p, err
	}
	if err := p.SurfaceTension.check("surface tension", "N/m", 1e-4, 10); err != nil {
		return p, err
	}
	if err := p.Viscosity.check("viscosity", "Pa s", 1e-6, 1e9); err != nil {
		return p, err
	}
	p.Grams = grams
	p.out = outlet{liquid: l, tempC: tempC, eta: p.Viscosity.Value, rho: p.Density.Value, scale: 1}
	p.out.thins, _ = l.(ShearDependent)
	return p, nil
}

// check returns an error unless the estimate is a band within sane limits: a user's own
// Liquid may answer anything.
func (e Estimate) check(quantity, unit string, low, high float64) error {
	for _, v := range [...]float64{e.Low, e.Value, e.High} {
		if err := within(quantity, v, low, high, unit, "a liquid that pours"); err != nil {
			return err
		}
	}
	if e.Low > e.Value || e.High < e.Value {
		return &InputError{quantity, e.Value, unit, "inside its own band"}
	}
	return nil
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
	if yield == (Estimate{}) {
		return nil
	}
	if err := yield.check("yield stress", "Pa", 1e-6, 1e6); err != nil {
		return err
	}
	p.yield, p.out.yield = yield, yield.Value
	p.stuck = p.out.standing(yield.Value)
	p.MayStay = p.out.standing(yield.High) >= head-tension
	if p.stuck >= head-tension {
		return &NoFlowError{Cause: "yield stress", Head: head, NeedHead: tension + p.stuck, Stress: stress, Yield: yield.Value}
	}
	return nil
}
