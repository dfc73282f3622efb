package thermal

import "time"

// A Softening is a piece of chocolate, butter or cream under the lamps: when does
// its skin lose its look?
//
// It is computed by the enthalpy solver of Body, from the room (convection,
// radiation, dew) and the light absorbed at the surface, with the melting spread
// over its range. The skin counts as soft, or as running, when it is so to
// SkinDepth.
type Softening struct {
	Food SoftFood // what it is made of
	// Form is SphereForm (the zero value: a truffle, a curl, a dollop, on its lit
	// side) or SlabForm (a bar, a slice: lies flat, its underside takes no heat).
	Form Form
	// Thickness of the slab or diameter of the ball, m, 0.003..0.3.
	Thickness float64
	// Across is the slab's width, m, 0.01..2; 0 means 0.08. A ball ignores it.
	Across float64
	// StartC is its temperature when it comes out, degC, -40..60.
	StartC float64
	// SkinDepth, m: 0 to a third of the Thickness, default 1 mm (0.5..2), of a piece
	// thinner than 6 mm a sixth of it. Engineering estimate.
	SkinDepth Threshold
	// Horizon is how long to look; later is Never. 0 means 2 h; at most 24 h.
	Horizon time.Duration
}

// A SoftClock says when what happens to a Softening.
type SoftClock struct {
	Softens Window // gloss and edges go
	Runs    Window // it flows
	// Decides ranks the inputs by their share in the spread of Softens.
	Decides []Sensitivity
	// Series is the likely course until it runs, or to the horizon.
	Series []SoftMoment
}

// A SoftMoment is a piece at one time of its likely course.
type SoftMoment struct {
	Time                   time.Duration // since it came out
	SurfaceC, MeanC, CoreC float64       // degC
}

// The uncertain inputs of a softening, in the order of the study.
const (
	softAirC = iota
	softRH
	softSpeed
	softConvection
	softLight
	softAbsorbs
	softSlope
	softK
	softHeat
	softStart
	softSoftC
	softRunC
	softDepth
	softInputs
)

// Clock computes the softening in the air a under the lamps, which burn from the
// start. The 95 % bands are over the room (see Cheese), the lamps' LightBand,
// absorptance (x/:1.25), the slope of the surface to the light (0.5..1), conductivity
// (x/:1.25), heat capacity (x/:1.1), the start (+-1 K), both temperatures and the
// depth. What the food is made of decides as much as the room: try a piece.
//
// Errors: *InputError and *RangeError for what makes no sense.
func (s Softening) Clock(a Air, lamps ...Lamp) (SoftClock, error) {
	m, err := s.model(a, lamps)
	if err != nil {
		return SoftClock{}, err
	}
	study := m.study(lamps)
	out, err := study.Run()
	if err != nil {
		return SoftClock{}, err
	}
	series, err := m.series(study)
	if err != nil {
		return SoftClock{}, err
	}
	return SoftClock{Softens: out[0].Window, Runs: out[1].Window, Decides: out[0].Decides, Series: series}, nil
}

// A softModel is a checked Softening with what does not change between samples.
type softModel struct {
	s     Softening
	air   Air
	light float64 // absorbed, square to the lamps, W/m2
	curve Curve
}

func (s Softening) model(a Air, lamps []Lamp) (*softModel, error) {
	thin := min(1, s.Thickness/0.006) // the widest default is a third of 6 mm
	s.SkinDepth = s.SkinDepth.or(0.0005*thin, 0.001*thin, 0.002*thin)
	if s.Across == 0 {
		s.Across = 0.08
	}
	if s.Horizon == 0 {
		s.Horizon = 2 * time.Hour
	}
	if err := a.Validate(); err != nil {
		return nil, err
	}
	if err := within("air temperature", a.TempC, -20, 50, "degC", "softening clock"); err != nil {
		return nil, err
	}
	if err := s.Food.Validate(); err != nil {
		return nil, err
	}
	if s.Form != SphereForm && s.Form != SlabForm {
		return nil, &InputError{"form", float64(s.Form), "", "SphereForm or SlabForm"}
	}
	for _, v := range [...]struct {
		name, unit       string
		value, low, high float64
	}{
		{"thickness", "m", s.Thickness, 0.003, 0.3}, {"width", "m", s.Across, 0.01, 2},
		{"starting temperature", "degC", s.StartC, -40, 60}, {"horizon", "s", s.Horizon.Seconds(), 1, 86400},
	} {
		if err := within(v.name, v.value, v.low, v.high, v.unit, "softening clock"); err != nil {
			return nil, err
		}
	}
	if err := s.SkinDepth.check("depth of the skin", 0, s.Thickness/3, "m"); err != nil {
		return nil, err
	}
	light, err := s.Food.Absorptance.Absorbed(lamps...)
	if err != nil {
		return nil, err
	}
	return &softModel{s, a, light, s.Food.curve()}, within("absorbed light", light, 0, 3000, "W/m2", "softening clock")
}

func (m *softModel) study(lamps []Lamp) Study {
	s := m.s
	factor := func(name string, by float64) Uncertain {
		return Uncertain{Name: name, Likely: 1, Low: 1 / by, High: by, Scale: true}
	}
	in := make([]Uncertain, softInputs)
	in[softAirC], in[softRH], in[softSpeed], in[softConvection] = roomUncertain(m.air)
	low, high := LightBand(lamps...)
	in[softLight] = Uncertain{Name: "light", Likely: 1, Low: low, High: high, Scale: true}
	in[softAbsorbs] = factor("absorptance", 1)
	in[softSlope] = Uncertain{Name: "slope to the light", Likely: 0.8, Low: 0.8, High: 0.8}
	if m.light > 0 {
		in[softAbsorbs] = factor("absorptance", 1.25)
		in[softSlope] = Uncertain{Name: "slope to the light", Likely: 0.8, Low: 0.5, High: 1, Min: 0.3, Max: 1}
	}
	in[softK], in[softHeat] = factor("conductivity", 1.25), factor("heat capacity", 1.1)
	in[softStart] = Uncertain{Name: "start temperature", Likely: s.StartC, Low: s.StartC - 1, High: s.StartC + 1}
	in[softSoftC] = s.Food.SoftC.uncertain("softening temperature")
	in[softRunC] = s.Food.RunC.uncertain("running temperature")
	in[softDepth] = s.SkinDepth.uncertain("depth of the skin")
	in[softDepth].Min, in[softDepth].Max = 1e-5, s.Thickness/3
	return Study{Inputs: in, Events: 2, Model: func() func([]float64, []time.Duration) error {
		run := new(softRun)
		return func(x []float64, at []time.Duration) error { return run.times(m, x, at) }
	}}
}

// A softRun is the work space of one core, and the law of the surface.
type softRun struct {
	e     engine
	c     compiled
	curve Curve
	table fluxTable
	light float64
}

// at is the exchange law of the solver.
func (r *softRun) at(surfaceC, _ float64) (flux, slope float64) {
	flux, slope = r.table.at(surfaceC)
	return flux + r.light, slope
}

const (
	softCells     = 40
	softTolerance = 1e-4
)

func (r *softRun) begin(m *softModel, x []float64) error {
	air := m.air
	air.TempC, air.RH, air.Speed = x[softAirC], x[softRH], x[softSpeed]
	surface := Surface{Shape: Sphere, Length: m.s.Thickness, Activity: m.s.Food.Activity, ConvectionFactor: x[softConvection]}
	radius := m.s.Thickness / 2
	if m.s.Form == SlabForm {
		surface.Shape, surface.Length = PlateUp, m.s.Across/4
		radius = m.s.Thickness // its underside takes no heat
	}
	ex, err := surface.In(air)
	if err != nil {
		return err
	}
	r.table.reset(ex)
	r.light = m.light * x[softLight] * x[softAbsorbs] * x[softSlope]
	r.curve = append(r.curve[:0], m.curve...)
	for i := range r.curve {
		r.curve[i].Enthalpy *= x[softHeat]
		r.curve[i].Conductivity *= x[softK]
	}
	r.c.load(r.curve)
	r.e.build(m.s.Form, radius, softCells, usualGrade)
	r.e.begin(&r.c, x[softStart], softTolerance, r)
	r.e.expect(radius-x[softDepth], x[softSoftC])
	r.e.expect(radius-x[softDepth], max(x[softRunC], x[softSoftC]))
	return nil
}

func (r *softRun) times(m *softModel, x []float64, at []time.Duration) error {
	if err := r.begin(m, x); err != nil {
		return err
	}
	for end := m.s.Horizon.Seconds(); r.e.t < end && !r.e.allFired(); {
		if err := r.e.advance(end); err != nil {
			return err
		}
	}
	at[0], at[1] = r.e.firedAt(0), r.e.firedAt(1)
	return r.table.err
}

// softMoments is how many steps of time a series has.
const softMoments = 60

func (m *softModel) series(study Study) ([]SoftMoment, error) {
	x := make([]float64, softInputs)
	study.inputs(x, 0, nil)
	var r softRun
	var at [2]time.Duration
	if err := r.times(m, x, at[:]); err != nil {
		return nil, err
	}
	end := min(at[1], m.s.Horizon).Seconds()
	if err := r.begin(m, x); err != nil {
		return nil, err
	}
	out := make([]SoftMoment, 0, softMoments+1)
	for i := range softMoments + 1 {
		if err := r.e.runTo(end * float64(i) / softMoments); err != nil {
			return nil, err
		}
		s := r.e.state(seconds(r.e.t), m.s.StartC)
		out = append(out, SoftMoment{s.Time, s.SurfaceC, s.MeanC, s.CoreC})
	}
	return out, nil
}
