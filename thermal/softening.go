package thermal

import (
	"cmp"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
	"example.org/honestplate/thermal/ware"
)

// A Softening is a piece of chocolate, butter or cream under the lamps: when does
// its skin lose its look?
//
// It is computed by the enthalpy solver of Body, from the room (convection,
// radiation, dew) and the light absorbed at the surface, with the melting spread
// over its range. A slab also takes heat from the room at its edges and from what lies
// below it. The skin counts as soft, or as running, when it is so to SkinDepth.
//
// Nobody has published how butter, chocolate or cream of a stated size warms up: these
// times were compared with no measurement. Try a piece.
type Softening struct {
	Food food.SoftFood `json:"food,omitzero"` // what it is made of
	// Form is SphereForm (the zero value: a truffle, a curl, a dollop, on its lit
	// side) or SlabForm (a bar, a slice, a pat: lies flat on what is Below).
	Form heat.Form `json:"form,omitzero"`
	// Thickness of the slab or diameter of the ball, m, 0.003..0.3.
	Thickness float64 `json:"thickness_m,omitzero"`
	// Across is the slab's width, m, 0.01..2, of a square one; 0 means 0.08. A ball
	// ignores it.
	Across float64 `json:"across_m,omitzero"`
	// Below is what a slab lies on, at room temperature; the zero value is ceramic. A
	// ball touches it in a spot only, which is left out.
	Below ware.Tabletop `json:"below,omitzero"`
	// StartC is its temperature when it comes out, degC, -40..60; it must be given.
	StartC honestplate.Optional `json:"start_c,omitzero"`
	// SkinDepth, m: 0 to a third of the Thickness, default 1 mm (0.5..2), of a piece
	// thinner than 6 mm a sixth of it. Engineering estimate.
	SkinDepth honestplate.Estimate `json:"skin_depth_m,omitzero"`
	// Horizon is how long to look; later is Never. 0 means 2 h; at most 24 h.
	Horizon time.Duration `json:"horizon_ns,omitzero"`
}

// A SoftClock says when what happens to a Softening.
type SoftClock struct {
	Softens Event `json:"softens"` // gloss and edges go
	Runs    Event `json:"runs"`    // it flows
	// Series is the likely course until it runs, or to the horizon.
	Series []BodyPoint `json:"series"`
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// A BodyPoint is a piece of food at one time.
type BodyPoint struct {
	Time     time.Duration `json:"time_ns"`   // since the start
	SurfaceC float64       `json:"surface_c"` // degC
	MeanC    float64       `json:"mean_c"`    // at the mean enthalpy: what it would even out to, degC
	CoreC    float64       `json:"core_c"`    // degC
}

// Clock computes the softening in the air a under the lamps, which burn from the
// start. The 95 % bands are over the room (see Cheese), the lamps' band,
// absorptance (x/:1.25), the slope of the surface to the light (0.5..1), conductivity
// (x/:1.25), heat capacity (x/:1.1), the start (+-1 K), contact (x/:2), what the table
// brings (x/:1.5), both temperatures and the depth. What the food is made of decides as much as the room: try a piece.
//
// Errors: [honestplate.InputError] and [honestplate.RangeError] for what makes no sense.
func (s Softening) Clock(a Air, lamps ...light.Lamp) (SoftClock, error) {
	return clockOf[SoftClock](s.frame(a, lamps)).knowing(Lesson{})
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides.
func (s Softening) Likely(a Air, lamps ...light.Lamp) (SoftClock, error) {
	return clockOf[SoftClock](s.frame(a, lamps)).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (s Softening) Knowing(l Lesson, a Air, lamps ...light.Lamp) (SoftClock, error) {
	return clockOf[SoftClock](s.frame(a, lamps)).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (s Softening) Observe(l Lesson, seen []Seen, a Air, lamps ...light.Lamp) (SoftClock, Lesson, error) {
	return clockOf[SoftClock](s.frame(a, lamps)).observed(l, seen)
}

func (m softModel) words(r Runs) SoftClock {
	return SoftClock{Kept: r, Softens: r.at(0), Runs: r.at(1), Series: m.course}
}

// A softModel is a checked Softening with what does not change between samples, and
// its uncertain factors; its light is that square to the lamps.
type softModel struct {
	lit
	s                    Softening
	curve                heat.Curve
	heat, contact, table float64 // factors
	cells                int
	tol                  float64
	work                 softRun
	course               []BodyPoint
}

func (s Softening) frame(a Air, lamps []light.Lamp) (frame[softModel], error) {
	m, err := s.model(a, lamps)
	return frame[softModel]{kind: "soft", model: m, inputs: (*softModel).inputs, run: (*softModel).run,
		events: []string{"softens", "runs"}, doubt: doubtFrozen,
		readings: readingsOf(func(m *softModel) []BodyPoint { return m.course })}, err
}

func (s Softening) model(a Air, lamps []light.Lamp) (softModel, error) {
	thin := min(1, s.Thickness/0.006) // the widest default is a third of 6 mm
	s.SkinDepth = cmp.Or(s.SkinDepth, band(0.0005*thin, 0.001*thin, 0.002*thin))
	s.Across = cmp.Or(s.Across, 0.08)
	s.Horizon = cmp.Or(s.Horizon, 2*time.Hour)
	if s.Form != heat.SphereForm && s.Form != heat.SlabForm {
		return softModel{}, &honestplate.InputError{Field: "Form", Got: s.Form.String(), Want: "sphere or slab"}
	}
	const source = "pieces of food in a room"
	light, lightErr := s.Food.Absorptance.Absorbed(lamps...)
	curve, foodErr := s.Food.Curve()
	return softModel{s: s, lit: litBy(settingOf(a, light)), curve: curve, heat: 1, contact: 1, table: 1, cells: softCells, tol: softTolerance},
		cmp.Or(given("StartC", s.StartC, "the temperature as it comes out"), inRoom(a, -20, 50, source),
			honestplate.In("Food", foodErr), check.Word("Below", s.Below),
			check.Fields(source,
				check.Number("Thickness", s.Thickness, 0.003, 0.3, "m"), check.Number("Across", s.Across, 0.01, 2, "m"),
				check.Number("StartC", s.StartC.Value, -40, 60, "degC"), check.Number("Horizon", s.Horizon.Seconds(), 1, 86400, "s")),
			check.Band("SkinDepth", s.SkinDepth, 0, s.Thickness/3, "m", source),
			lightErr, honestplate.InRange("Lamps", light.Likely, 0, 3000, "W/m2", "three times the sun"))
}

func (m *softModel) inputs() []study.Input {
	s, slab := &m.s, m.s.Form == heat.SlabForm
	_, known, _ := s.Below.Material() // checked
	return append(m.lit.inputs(),
		bound(&m.heat, ofProduct(factor("product.heat", "heat capacity", 1/1.1, 1.1))),
		bound(&s.StartC.Value, around("unit.start_c", "start temperature", s.StartC.Value, 1)),
		bound(&s.Food.SoftC.Likely, ofProduct(judged("product.soft_c", "softening temperature", s.Food.SoftC))),
		bound(&s.Food.RunC.Likely, ofProduct(judged("product.run_c", "running temperature", s.Food.RunC))),
		bound(&s.SkinDepth.Likely, within(judged("crew.skin_depth_m", "depth of the skin", s.SkinDepth), 1e-5, s.Thickness/3)),
		bound(&m.contact, where(slab, factor("unit.contact", "contact with the table", 0.5, 2))),
		bound(&m.table, where(slab, ofRoom(factor("room.table", "what the table brings", 1/known, known)))))
}

// A softRun is the work space of one core.
type softRun struct {
	e     solve.Engine
	c     solve.Compiled
	table fluxTable
	top   restingSurface // only the air and the light: see slabFlank for the rest
	slab  slabFlank
}

const (
	softCells     = 40
	softTolerance = 1e-4
	skinCells     = 4 // at least so many cells in the skin
)

func (r *softRun) begin(m *softModel) error {
	surface := heat.Surface{Shape: heat.Sphere, Length: m.s.Thickness, Activity: m.s.Food.Activity, ConvectionFactor: m.convection}
	radius := m.s.Thickness / 2
	flat := m.s.Form == heat.SlabForm
	if flat {
		surface.Shape, surface.Length = heat.PlateUp, m.s.Across/4
		radius = m.s.Thickness
	}
	ex, err := surface.In(m.air.moist())
	if err != nil {
		return err
	}
	r.table.reset(ex)
	r.top = restingSurface{air: &r.table, light: m.absorbed() * m.absorbs * m.slope}
	solve.Load(&r.c, m.curve, m.heat, m.k)
	r.e.Build(int(m.s.Form), radius, m.cells, solve.GradeFor(m.cells, m.s.SkinDepth.Likely/skinCells/radius))
	if flat {
		if err := r.slab.prepare(m, r.e.Faces); err != nil {
			return err
		}
		r.e.Flank = r.slab.at
	}
	r.e.Begin(&r.c, m.s.StartC.Value, m.tol, &r.top)
	r.e.Expect(radius-m.s.SkinDepth.Likely, m.s.Food.SoftC.Likely)
	r.e.Expect(radius-m.s.SkinDepth.Likely, max(m.s.Food.RunC.Likely, m.s.Food.SoftC.Likely))
	return nil
}

// run computes the events; the course goes until it runs.
func (m *softModel) run(at []float64, course float64) error {
	r := &m.work
	m.course = m.course[:0]
	if err := r.begin(m); err != nil {
		return err
	}
	note := func() {
		if course >= 0 {
			m.course = append(m.course, bodyPoint(&r.e))
		}
	}
	note()
	for end := m.s.Horizon.Seconds(); r.e.Time < end && !r.e.AllFired(); note() {
		if err := r.e.Advance(end); err != nil {
			return err
		}
	}
	at[0], at[1] = r.e.FiredAt(0), r.e.FiredAt(1)
	return cmp.Or(r.table.err, r.slab.edge.err)
}

// bodyPoint is what a computation has come to.
func bodyPoint(e *solve.Engine) BodyPoint {
	s := e.State(e.SurfaceC())
	return BodyPoint{Time: seconds(e.Time), SurfaceC: s.SurfaceC, MeanC: s.MeanC, CoreC: s.CoreC}
}
