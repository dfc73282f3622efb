package thermal

import (
	"math"
	"time"
)

// The events of a scoop, in the order of the study.
const (
	softens = iota
	drips
	puddles
	slumps
	scoopEvents
)

// The uncertain inputs of a scoop, in the order of the study.
const (
	scoopAirC = iota
	scoopRH
	scoopSpeed
	scoopWind
	scoopLight
	scoopAbsorbs
	scoopSlope
	scoopK
	scoopDensity
	scoopStart
	scoopContact
	scoopSoft
	scoopDepth
	scoopFlow
	scoopCling
	scoopSlump
	scoopInputs
)

// A scoopModel is a checked Scoop with what does not change from sample to sample.
type scoopModel struct {
	s       Scoop
	air     Air
	light   float64 // absorbed on a side square to the lamps, W/m2
	lightLo float64 // band of the lamps, as factors
	lightHi float64
	curve   Curve // likely
	cells   int
	tol     float64
}

// scoopHorizon is the default of Horizon.
const scoopHorizon = 2 * time.Hour

func (s Scoop) model(a Air, lamps []Lamp) (*scoopModel, error) {
	s.SoftFrozen = s.SoftFrozen.or(0.60, 0.65, 0.70)
	small := min(1, s.Diameter/0.02) // the deepest default is a quarter of 20 mm
	s.SoftDepth = s.SoftDepth.or(0.002*small, 0.003*small, 0.005*small)
	s.FlowFrozen = s.FlowFrozen.or(0, 0.08, 0.2)
	s.ClingGrams = s.ClingGrams.or(80, 200, 450)
	s.SlumpShare = s.SlumpShare.or(0.06, 0.10, 0.18)
	if s.Absorptance == (Absorptance{}) {
		s.Absorptance = WhiteFood()
	}
	if s.Horizon == 0 {
		s.Horizon = scoopHorizon
	}
	if err := a.Validate(); err != nil {
		return nil, err
	}
	if err := within("air temperature", a.TempC, -20, 50, "degC", "scoop clock"); err != nil {
		return nil, err
	}
	if err := s.check(); err != nil {
		return nil, err
	}
	m := &scoopModel{s: s, air: a, cells: 40, tol: 3e-4}
	var err error
	if m.light, err = s.Absorptance.Absorbed(lamps...); err != nil {
		return nil, err
	}
	if err := within("absorbed light", m.light, 0, 5000, "W/m2", "scoop clock: five times the sun"); err != nil {
		return nil, err
	}
	m.lightLo, m.lightHi = LightBand(lamps...)
	full, err := s.Mix.Curve()
	if err != nil {
		return nil, err
	}
	m.curve = full.forSolver(48)
	// Straight on, for the moment before hot melt drips under a lamp much stronger than
	// thought.
	p, q := m.curve[len(m.curve)-2], m.curve[len(m.curve)-1]
	m.curve = append(m.curve, CurvePoint{300, q.Enthalpy + (q.Enthalpy-p.Enthalpy)/(q.TempC-p.TempC)*(300-q.TempC), q.Conductivity})
	return m, nil
}

func (s Scoop) check() error {
	if err := s.Mix.Validate(); err != nil {
		return err
	}
	if err := within("scoop diameter", s.Diameter, 0.01, 0.3, "m", "scoop clock"); err != nil {
		return err
	}
	if s.Rest < OnPlate || s.Rest > OnNothing {
		return &InputError{"scoop's rest", float64(s.Rest), "", "OnPlate, OnChilledPlate, OnCone or OnNothing"}
	}
	if s.Rest == OnChilledPlate {
		if err := within("plate temperature", s.PlateC, -60, 20, "degC", "scoop clock"); err != nil {
			return err
		}
	}
	for _, t := range []struct {
		t         Threshold
		name      string
		low, high float64
		unit      string
	}{
		{s.SoftFrozen, "share frozen when soft", 0, 0.95, ""},
		{s.SoftDepth, "depth of softening", 0, s.Diameter / 4, "m"},
		{s.FlowFrozen, "share frozen when it flows", 0, 0.5, ""},
		{s.ClingGrams, "melt that clings", 5, 2000, "g/m2"},
		{s.SlumpShare, "share melted at the loss of shape", 0.01, 0.5, ""},
	} {
		if err := t.t.check(t.name, t.low, t.high, t.unit); err != nil {
			return err
		}
	}
	flows, err := s.Mix.FrozenAtC(s.FlowFrozen.High)
	if err != nil {
		return err
	}
	if err := within("scoop's start", s.StartC, -60, flows-0.5, "degC", "scoop clock: half a kelvin below where the mix flows"); err != nil {
		return err
	}
	if err := within("horizon", s.Horizon.Seconds(), 1, 86400, "s", "scoop clock"); err != nil {
		return err
	}
	return nil
}

// study spreads the likely inputs.
func (m *scoopModel) study() Study {
	s := m.s
	lit := m.light > 0
	factor := func(name string, low, high float64) Uncertain {
		return Uncertain{Name: name, Likely: 1, Low: low, High: high, Scale: true}
	}
	in := make([]Uncertain, scoopInputs)
	in[scoopAirC], in[scoopRH], in[scoopSpeed], in[scoopWind] = roomUncertain(m.air)
	in[scoopLight] = factor("light", m.lightLo, m.lightHi)
	in[scoopAbsorbs] = factor("absorptance", 1, 1)
	in[scoopSlope] = Uncertain{Name: "slope to the light", Likely: 0.8, Low: 0.8, High: 0.8}
	if lit {
		in[scoopAbsorbs] = factor("absorptance", 0.8, 1.25)
		in[scoopSlope] = Uncertain{Name: "slope to the light", Likely: 0.8, Low: 0.5, High: 1, Min: 0.3, Max: 1}
	}
	in[scoopK] = factor("conductivity", 0.8, 1.25)
	in[scoopDensity] = factor("density", 1/1.05, 1.05)
	in[scoopStart] = Uncertain{Name: "start temperature", Likely: s.StartC, Low: s.StartC - 1, High: s.StartC + 1,
		Min: -70, Max: s.StartC + 1.2}
	in[scoopContact] = factor("contact with the plate", 0.5, 2)
	in[scoopSoft] = s.SoftFrozen.uncertain("share frozen when soft")
	in[scoopDepth] = s.SoftDepth.uncertain("depth of softening")
	in[scoopFlow] = s.FlowFrozen.uncertain("share frozen when it flows")
	in[scoopCling] = s.ClingGrams.uncertain("melt that clings")
	in[scoopSlump] = s.SlumpShare.uncertain("share melted at the loss of shape")
	// Samples stay inside what was checked: the tails of the bands do not.
	limit := func(i int, low, high float64) { in[i].Min, in[i].Max = low, high }
	limit(scoopSoft, 0, 0.95)
	limit(scoopDepth, 0, s.Diameter/4)
	limit(scoopFlow, 0, s.FlowFrozen.High)
	limit(scoopCling, 5, 2000)
	limit(scoopSlump, 0.01, 0.5)
	return Study{Inputs: in, Events: scoopEvents, Model: func() func([]float64, []time.Duration) error {
		run := new(scoopRun)
		return func(x []float64, at []time.Duration) error { return run.times(m, x, at) }
	}}
}

// likely returns the inputs at their likely values.
func (m *scoopModel) likely() []float64 {
	x := make([]float64, scoopInputs)
	m.study().inputs(x, 0, nil)
	return x
}

// forSolver thins the curve to points evenly spread in enthalpy, by volume, with
// the corner at the freezing point kept.
func (c *EnthalpyCurve) forSolver(frozen int) Curve {
	points := make(Curve, 0, frozen+12)
	add := func(tempC float64) {
		h := c.enthalpy(tempC)
		_, k := c.at(h)
		points = append(points, CurvePoint{tempC, h * c.density, k})
	}
	const deep = -40
	for _, t := range []float64{-89, -75, -60, -50} {
		add(t)
	}
	low, high := c.enthalpy(deep), c.freezeH
	last := math.Inf(-1)
	for i := range frozen {
		t := c.temp(low + (high-low)*float64(i)/float64(frozen))
		if t > last+1e-4 {
			add(t)
			last = t
		}
	}
	for _, t := range []float64{c.freezeC, 5, 20, 40, 65, 89} {
		if t == c.freezeC || t > c.freezeC+1 {
			add(t)
		}
	}
	return points
}
