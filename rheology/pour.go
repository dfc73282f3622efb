package rheology

import (
	"math"
	"time"
)

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
}

// A DurationBand is a likely duration with its 95 % band.
type DurationBand struct {
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
	if err := within("mass to pour", grams, 0, 1e9, "g", poured); err != nil {
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

// run computes the pour under a driving head h in m.
func (p *Pour) run(h, surface, wall float64) error {
	volume := p.Grams / 1000 / p.Density.Value
	p.first, p.last, p.surface = h, h, surface
	if surface > 0 {
		p.last = h - volume/surface
		if least := max(h*leastHead, p.stuck+(h-p.stuck)*leastHead); p.last < least {
			most := (h - least) * surface * p.Density.Value * 1000
			return &RangeError{"mass to pour", p.Grams, 0, most, "g", "what the vessel's head can move"}
		}
	}
	seconds, err := p.time()
	if err != nil {
		return err
	}
	if err := p.start(); err != nil {
		return err
	}
	slow, fast := Estimate{}, Estimate{}
	for _, end := range []struct {
		scale float64
		to    *Estimate
	}{{p.Viscosity.High / p.Viscosity.Value, &slow}, {p.Viscosity.Low / p.Viscosity.Value, &fast}} {
		q := *p
		q.out.scale = end.scale
		t, err := q.time()
		if err != nil {
			return err
		}
		*end.to = Estimate{t / seconds, q.startL / p.startL, q.endL / p.endL}
	}
	// Quadrature of three independent parts, as fractions.
	density := max(p.Density.High/p.Density.Value-1, 1-p.Density.Low/p.Density.Value)
	down := func(ratio float64) float64 { return 1 / (1 + math.Hypot(1/ratio-1, p.Hydraulics)) }
	up := func(ratio float64) float64 { return 1 + math.Hypot(ratio-1, p.Hydraulics) }
	p.Rate = Estimate{p.startL, p.startL * down(slow.Low), p.startL * up(fast.Low)}
	p.EndRate = Estimate{p.endL, p.endL * down(slow.High), p.endL * up(fast.High)}
	longest := seconds * (1 + math.Hypot(up(slow.Value)-1, density))
	shortest := seconds / (1 + math.Hypot(1/down(fast.Value)-1, density))
	if longest > longestPour.Seconds() {
		return &RangeError{"duration of the pour", longest, 0, longestPour.Seconds(), "s", "one week"}
	}
	p.Duration = DurationBand{inSeconds(shortest), inSeconds(seconds), inSeconds(longest)}
	p.left(volume, seconds, wall)
	return nil
}

// leastHead is the share of the first driving head that must remain at the end: a
// laminar pour to nothing takes for ever.
const leastHead = 1e-6

func inSeconds(s float64) time.Duration { return time.Duration(math.Round(s * 1e9)) }

// time returns the likely duration in s and keeps the rates at both ends.
func (p *Pour) time() (float64, error) {
	o := &p.out
	var err error
	if p.startL, err = o.flow(p.first, p.startL); err != nil {
		return 0, err
	}
	if p.surface == 0 {
		p.endL = p.startL
		return p.Grams / 1000 / p.Density.Value / p.startL, nil
	}
	guess := p.endL
	if guess == 0 {
		guess = p.startL * p.last / p.first
	}
	if p.endL, err = o.flow(p.last, guess); err != nil {
		return 0, err
	}
	if _, _, err = o.effective(p.endL, true); err != nil {
		return 0, err
	}
	return p.between(p.last, p.endL)
}

// between returns the time in s from the start until the head is h2 and the flow q2.
//
// With the head as the known function F of the flow, integration by parts leaves
// an integral that needs no inverse:
//
//	integral dH/Q = F1/Q1 - F2/Q2 + integral F/Q d(ln Q)
func (p *Pour) between(h2, q2 float64) (float64, error) {
	q1 := p.startL
	sum := p.first/q1 - h2/q2
	span := math.Log(q1 / q2)
	panels := max(1, math.Ceil(span/2))
	step := span / panels
	for i := range int(panels) {
		low := math.Log(q2) + float64(i)*step
		for j, x := range gauss5 {
			q := math.Exp(low + step*x)
			f, err := p.out.head(q)
			if err != nil {
				return 0, err
			}
			sum += gauss5Weight[j] * step * f / q
		}
	}
	return p.surface * sum, nil
}

// The Gauss-Legendre rule of five points on 0..1. gonum's quad has the rule but
// builds it on the heap at every call.
var (
	gauss5       = [5]float64{0.046910077030668, 0.230765344947158, 0.5, 0.769234655052842, 0.953089922969332}
	gauss5Weight = [5]float64{0.118463442528095, 0.239314335249683, 0.284444444444444, 0.239314335249683, 0.118463442528095}
)

// start fills in what the stream looks like as it leaves.
func (p *Pour) start() error {
	o := &p.out
	q := p.startL
	e, rate, err := o.effective(q, true)
	if err != nil {
		return err
	}
	p.ShearRate = rate
	if o.thins != nil {
		p.Viscosity = e
	}
	nu := p.Viscosity.Value / p.Density.Value
	share := 0.0
	if o.width > 0 {
		p.Reynolds = 4 * q / o.width / nu
		depth := o.brink(q, nu)
		p.Speed = q / (o.width * depth)
		p.Diameter = math.Sqrt(4 * q / (math.Pi * p.Speed))
		share = lipFriction(q/o.width, nu, o.length)
		p.Hydraulics = lipSpread
	} else {
		v := q / o.boreArea()
		lod := o.length / o.bore
		p.Speed, p.Reynolds = v, v*o.bore/nu
		share = poiseuilleShare(p.Reynolds, lod)
		p.Hydraulics = 0.03 + 0.07*(1-share)
		if o.discharge > 0 {
			p.Hydraulics = 0.03
		}
		// Behind a hole the jet goes on narrowing for half a diameter.
		c := 1.0
		if lod < 2 {
			c = 1 - (1-contraction)*(1-lod/2)*min(edgeLoss(p.Reynolds, 0)/edgeHole, 1)
		}
		p.Diameter = o.bore * math.Sqrt(c)
		p.Speed = v / c
	}
	switch {
	case p.Reynolds >= 4000:
		p.Regime = TurbulentFlow
	case p.Reynolds > 2000:
		p.Regime = TransitionalFlow
	case share > 0.5:
		p.Regime = FrictionFlow
	default:
		p.Regime = InertialFlow
	}
	return nil
}
