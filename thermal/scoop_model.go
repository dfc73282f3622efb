package thermal

import (
	"cmp"
	"time"

	"example.org/honestplate"
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
// and its uncertain factors; its light is that on a side square to the lamps.
type scoopModel struct {
	lit
	s                                Scoop
	curve                            heat.Curve // likely
	cells                            int
	tol                              float64
	density, contact, dipper, fringe float64 // factors
	work                             scoopRun
	course                           []ScoopPoint
}

const (
	scoopHorizon = 2 * time.Hour // the default of Horizon
	dipperHeat   = 4000.0        // J/m2; see Scoop.DipperJM2
)

func (s Scoop) frame(a Air, lamps []light.Lamp) (frame[scoopModel], error) {
	m, err := s.model(a, lamps)
	return frame[scoopModel]{kind: "scoop", model: m, inputs: (*scoopModel).inputs, run: (*scoopModel).run,
		events: []string{"shines", "softens", "drips", "puddle", "slumps"}, doubt: doubtFrozen,
		readings: readingsOf(func(m *scoopModel) []ScoopPoint { return m.course })}, err
}

func (s Scoop) model(a Air, lamps []light.Lamp) (scoopModel, error) {
	s.SoftFrozen = cmp.Or(s.SoftFrozen, band(0.60, 0.65, 0.70))
	small := min(1, s.Diameter/0.02) // the deepest default is a quarter of 20 mm
	s.SoftDepth = cmp.Or(s.SoftDepth, band(0.002*small, 0.003*small, 0.005*small))
	s.FlowFrozen = cmp.Or(s.FlowFrozen, band(0, 0.08, 0.2))
	if err := check.Word("Structure", s.Structure); err != nil {
		return scoopModel{}, err
	}
	held := held(s.Structure, s.Mix.OverrunPercent)
	s.ClingGM2 = cmp.Or(s.ClingGM2, held.cling)
	s.SlumpShare = cmp.Or(s.SlumpShare, held.slump)
	s.Fringe = some(s.Fringe, min(held.fringe, s.Diameter/10))
	s.DipperJM2 = some(s.DipperJM2, dipperHeat*min(max((s.StartC+20)/4, 0), 1))
	s.Absorptance = cmp.Or(s.Absorptance, light.WhiteFood())
	s.Horizon = cmp.Or(s.Horizon, scoopHorizon)
	light, lightErr := s.Absorptance.Absorbed(lamps...)
	curve, mixErr := s.Mix.Curve()
	m := scoopModel{s: s, lit: litBy(settingOf(a, light)), curve: curve, cells: scoopCells(s.Diameter), tol: 3e-4, density: 1, contact: 1, dipper: 1, fringe: 1}
	if err := cmp.Or(inRoom(a, -20, 50, "scoops in a room"), honestplate.In("Mix", mixErr), s.check(), lightErr,
		honestplate.InRange("Lamps", light.Likely, 0, 5000, "W/m2", "five times the sun: food burns")); err != nil {
		return m, err
	}
	// Straight on, for the moment before hot melt drips under a lamp much stronger than
	// thought.
	p, q := m.curve[len(m.curve)-2], m.curve[len(m.curve)-1]
	m.curve = append(m.curve, heat.CurvePoint{TempC: 300, Enthalpy: q.Enthalpy + (q.Enthalpy-p.Enthalpy)/(q.TempC-p.TempC)*(300-q.TempC), Conductivity: q.Conductivity})
	return m, nil
}

func (s Scoop) check() error {
	if s.Rest == OnChilledPlate {
		if err := cmp.Or(given("PlateC", s.PlateC, "the temperature of the chilled plate"),
			honestplate.InRange("PlateC", s.PlateC.Value, -60, 20, "degC", "chilled plates")); err != nil {
			return err
		}
	}
	const source = "frozen dessert as it softens"
	flows, flowErr := s.Mix.FrozenAtC(min(max(s.FlowFrozen.High, 0), 0.5))
	return cmp.Or(
		honestplate.InRange("Diameter", s.Diameter, 0.01, 0.12, "m", "scoops in a room"),
		check.One("Rest", int(s.Rest), rests[:]),
		check.Band("SoftFrozen", s.SoftFrozen, 0, 0.95, "", source),
		check.Band("SoftDepth", s.SoftDepth, 0, s.Diameter/4, "m", source),
		check.Band("FlowFrozen", s.FlowFrozen, 0, 0.5, "", source),
		check.Band("ClingGM2", s.ClingGM2, 5, mostCling, "g/m2", source),
		check.Band("SlumpShare", s.SlumpShare, 0.01, mostSlump, "", source),
		honestplate.In("Mix", flowErr),
		honestplate.InRange("StartC", s.StartC, -60, flows-0.5, "degC", "half a kelvin below where the mix flows: warmer, it is no scoop"),
		honestplate.InRange("DipperJM2", s.DipperJM2.Value, 0, 200e3, "J/m2", "warm wet dippers"),
		honestplate.InRange("Fringe", s.Fringe.Value, 0, 0.02, "m", "edges of scoops"),
		honestplate.InRange("Horizon", s.Horizon.Seconds(), 1, 86400, "s", "a day"))
}

func (m *scoopModel) inputs() []study.Input {
	s := &m.s
	threshold := func(key, name string, e *honestplate.Estimate, low, high float64) study.Input {
		// Samples stay inside what was checked: the tails of the bands do not.
		return bound(&e.Likely, within(judged(key, name, *e), low, high))
	}
	cling := ofProduct(threshold("product.cling_g_m2", "melt that clings", &s.ClingGM2, 5, mostCling))
	cling.Factor = true
	return append(m.lit.inputs(),
		bound(&m.density, ofProduct(factor("product.density", "density", 1/1.05, 1.05))),
		bound(&s.StartC, within(around("unit.start_c", "start temperature", s.StartC, 1), -70, s.StartC+1.2)),
		bound(&m.contact, factor("unit.contact", "contact with the plate", 0.5, 2)),
		threshold("crew.soft_frozen", "share frozen when soft", &s.SoftFrozen, 0, 0.95),
		threshold("crew.soft_depth_m", "depth of softening", &s.SoftDepth, 0, s.Diameter/4),
		ofProduct(threshold("product.flow_frozen", "share frozen when it flows", &s.FlowFrozen, 0, s.FlowFrozen.High)),
		cling,
		ofProduct(threshold("product.slump_share", "share run off at the loss of shape", &s.SlumpShare, 0.01, mostSlump)),
		bound(&m.dipper, where(s.DipperJM2.Value > 0, factor("unit.dipper", "warmth of the dipper", 0.5, 2))),
		bound(&m.fringe, where(s.Fringe.Value > 0, factor("unit.fringe", "thickness of the fringe", 0.4, 2.5))))
}

func (m *scoopModel) run(at []float64, course float64) error {
	err := m.work.times(m, at)
	if err == nil && course >= 0 {
		m.course, err = m.work.series(m, at[slumps], course)
	}
	return err
}

// scoopCells divides a ball: a large one more finely, since its skin is as thin.
func scoopCells(diameter float64) int {
	return int(48 * min(max(diameter/0.06, 1), 2))
}
