package thermal

import (
	"cmp"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
)

// The events of a scoop, in the order of the study.
const (
	shines = iota
	softens
	drips
	puddles
	slumps
	scoopEvents
)

// A scoopModel is a checked Scoop with what does not change from sample to sample,
// and its uncertain factors.
type scoopModel struct {
	s     Scoop
	air   Air
	lamps []light.Lamp
	light float64    // absorbed on a side square to the lamps, W/m2
	curve heat.Curve // likely
	cells int
	tol   float64

	convection, brightness, absorbs, k, density, contact, dipper, fringe float64 // factors
	slope                                                                float64 // of the lit side to the light, 1 is square on

	work   *scoopRun
	course []ScoopPoint
}

const (
	scoopHorizon = 2 * time.Hour // the default of Horizon
	dipperHeat   = 4000.0        // J/m2; see Scoop.DipperJM2
)

func (s Scoop) frame(a Air, lamps []light.Lamp) (frame[scoopModel], error) {
	m, err := s.model(a, lamps)
	return frame[scoopModel]{kind: "scoop", model: m, inputs: (*scoopModel).inputs, run: (*scoopModel).run,
		events: scoopEventKeys, doubt: doubtFrozen, readings: scoopReadings()}, err
}

func (s Scoop) model(a Air, lamps []light.Lamp) (scoopModel, error) {
	s.SoftFrozen = orBand(s.SoftFrozen, 0.60, 0.65, 0.70)
	small := min(1, s.Diameter/0.02) // the deepest default is a quarter of 20 mm
	s.SoftDepth = orBand(s.SoftDepth, 0.002*small, 0.003*small, 0.005*small)
	s.FlowFrozen = orBand(s.FlowFrozen, 0, 0.08, 0.2)
	cling, slump, fringe, _ := s.Structure.Holds(s.Mix.OverrunPercent) // check says what is wrong
	if s.ClingGM2 == (honestplate.Estimate{}) {
		s.ClingGM2 = cling
	}
	if s.SlumpShare == (honestplate.Estimate{}) {
		s.SlumpShare = slump
	}
	if !s.Fringe.Given {
		s.Fringe = honestplate.Some(min(fringe, s.Diameter/10))
	}
	if !s.DipperJM2.Given {
		s.DipperJM2 = honestplate.Some(dipperHeat * min(max((s.StartC+20)/4, 0), 1))
	}
	if s.Absorptance == (light.Absorptance{}) {
		s.Absorptance = light.WhiteFood()
	}
	if s.Horizon == 0 {
		s.Horizon = scoopHorizon
	}
	m := scoopModel{s: s, air: a, lamps: lamps, cells: scoopCells(s.Diameter), tol: 3e-4,
		convection: 1, brightness: 1, absorbs: 1, k: 1, density: 1, contact: 1, dipper: 1, fringe: 1, slope: 0.8}
	var err error
	m.light, err = s.Absorptance.Absorbed(lamps...)
	if err := cmp.Or(honestplate.In("Air", a.Validate()),
		honestplate.InRange("Air.TempC", a.TempC, -20, 50, "degC", "scoops in a room"), s.check(), err,
		honestplate.InRange("Lamps", m.light, 0, 5000, "W/m2", "five times the sun: food burns")); err != nil {
		return m, err
	}
	full, err := s.Mix.Curve()
	if err != nil {
		return m, honestplate.In("Mix", err)
	}
	m.curve = full.Points()
	// Straight on, for the moment before hot melt drips under a lamp much stronger than
	// thought.
	p, q := m.curve[len(m.curve)-2], m.curve[len(m.curve)-1]
	m.curve = append(m.curve, heat.CurvePoint{TempC: 300, Enthalpy: q.Enthalpy + (q.Enthalpy-p.Enthalpy)/(q.TempC-p.TempC)*(300-q.TempC), Conductivity: q.Conductivity})
	return m, nil
}

func (s Scoop) check() error {
	_, mixErr := s.Mix.FrozenAtC(0)
	if err := cmp.Or(honestplate.In("Mix", mixErr),
		honestplate.InRange("Diameter", s.Diameter, 0.01, 0.12, "m", "scoops in a room"),
		check.One("Rest", int(s.Rest), rests[:]), check.Word("Structure", s.Structure)); err != nil {
		return err
	}
	if s.Rest == OnChilledPlate {
		if !s.PlateC.Given {
			return &honestplate.InputError{Field: "PlateC", Got: "not given", Want: "the temperature of the chilled plate"}
		}
		if err := honestplate.InRange("PlateC", s.PlateC.Value, -60, 20, "degC", "chilled plates"); err != nil {
			return err
		}
	}
	const source = "frozen dessert as it softens"
	flows, err := s.Mix.FrozenAtC(min(max(s.FlowFrozen.High, 0), 0.5))
	return cmp.Or(
		check.Band("SoftFrozen", s.SoftFrozen, 0, 0.95, "", source),
		check.Band("SoftDepth", s.SoftDepth, 0, s.Diameter/4, "m", source),
		check.Band("FlowFrozen", s.FlowFrozen, 0, 0.5, "", source),
		check.Band("ClingGM2", s.ClingGM2, 5, food.MostClingGM2, "g/m2", source),
		check.Band("SlumpShare", s.SlumpShare, 0.01, food.MostSlumpShare, "", source),
		honestplate.In("Mix", err),
		honestplate.InRange("StartC", s.StartC, -60, flows-0.5, "degC", "half a kelvin below where the mix flows: warmer, it is no scoop"),
		honestplate.InRange("DipperJM2", s.DipperJM2.Value, 0, 200e3, "J/m2", "warm wet dippers"),
		honestplate.InRange("Fringe", s.Fringe.Value, 0, 0.02, "m", "edges of scoops"),
		honestplate.InRange("Horizon", s.Horizon.Seconds(), 1, 86400, "s", "a day"))
}

func (m *scoopModel) inputs() []study.Input {
	s := &m.s
	absorbs, slope := factor("product.absorptance", "absorptance", 1, 1), around("unit.slope", "slope to the light", 0.8, 0)
	if m.light > 0 {
		absorbs = factor("product.absorptance", "absorptance", 0.8, 1.25)
		slope.Band = band(0.5, 0.8, 1)
		slope = within(slope, 0.3, 1)
	}
	start := around("unit.start_c", "start temperature", s.StartC, 1)
	threshold := func(key, name string, e *honestplate.Estimate, low, high float64) study.Input {
		// Samples stay inside what was checked: the tails of the bands do not.
		return bound(&e.Likely, within(judged(key, name, *e), low, high))
	}
	cling := ofProduct(threshold("product.cling_g_m2", "melt that clings", &s.ClingGM2, 5, food.MostClingGM2))
	cling.Factor = true
	dipper := factor("unit.dipper", "warmth of the dipper", 1, 1)
	if s.DipperJM2.Value > 0 {
		dipper = factor("unit.dipper", "warmth of the dipper", 0.5, 2)
	}
	fringe := factor("unit.fringe", "thickness of the fringe", 1, 1)
	if s.Fringe.Value > 0 {
		fringe = factor("unit.fringe", "thickness of the fringe", 0.4, 2.5)
	}
	return append(roomInputs(&m.air, &m.convection),
		lightInput(&m.brightness, s.Absorptance, m.lamps),
		bound(&m.absorbs, ofProduct(absorbs)),
		bound(&m.slope, slope),
		bound(&m.k, ofProduct(factor("product.conductivity", "conductivity", 0.8, 1.25))),
		bound(&m.density, ofProduct(factor("product.density", "density", 1/1.05, 1.05))),
		bound(&s.StartC, within(start, -70, s.StartC+1.2)),
		bound(&m.contact, factor("unit.contact", "contact with the plate", 0.5, 2)),
		threshold("crew.soft_frozen", "share frozen when soft", &s.SoftFrozen, 0, 0.95),
		threshold("crew.soft_depth_m", "depth of softening", &s.SoftDepth, 0, s.Diameter/4),
		ofProduct(threshold("product.flow_frozen", "share frozen when it flows", &s.FlowFrozen, 0, s.FlowFrozen.High)),
		cling,
		ofProduct(threshold("product.slump_share", "share run off at the loss of shape", &s.SlumpShare, 0.01, food.MostSlumpShare)),
		bound(&m.dipper, dipper),
		bound(&m.fringe, fringe))
}

func (m *scoopModel) run(at []float64, course bool) error {
	if m.work == nil {
		m.work = new(scoopRun)
	}
	err := m.work.times(m, at)
	if err == nil && course {
		m.course, err = m.work.series(m, at[slumps])
	}
	return err
}

// scoopReadings are those of the course.
func scoopReadings() []reading[scoopModel] {
	return readingsOf(func(m *scoopModel) []ScoopPoint { return m.course }, func(p *ScoopPoint) time.Duration { return p.Time },
		named[ScoopPoint]{"surface_c", func(p *ScoopPoint) float64 { return p.SurfaceC }},
		named[ScoopPoint]{"mean_c", func(p *ScoopPoint) float64 { return p.MeanC }},
		named[ScoopPoint]{"core_c", func(p *ScoopPoint) float64 { return p.CoreC }},
		named[ScoopPoint]{"soft_mm", func(p *ScoopPoint) float64 { return p.SoftMM }},
		named[ScoopPoint]{"melted_share", func(p *ScoopPoint) float64 { return p.MeltedShare }},
		named[ScoopPoint]{"dripped_grams", func(p *ScoopPoint) float64 { return p.DrippedGrams }})
}

// scoopCells divides a ball: a large one more finely, since its skin is as thin.
func scoopCells(diameter float64) int {
	return int(48 * min(max(diameter/0.06, 1), 2))
}
