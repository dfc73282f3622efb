package thermal

import (
	"cmp"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/root"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/internal/study"
)

// A DeepFreeze is a portion of frozen dessert put into a freezer to come out hard.
// Scoops that must last under lamps are hardened a second time, in a deeper freezer
// than they were served from (common practice, no source).
//
// It is computed by the enthalpy solver of Body with the mix's own freezing curve;
// the portion starts at one temperature throughout and keeps its shape.
type DeepFreeze struct {
	// Mix is the recipe; see [food.Recipes].
	Mix food.FrozenMix `json:"mix,omitzero"`
	// Form of the portion; the zero value is a ball. A filled tray is a SlabForm
	// cooled on both faces, a narrow tub a CylinderForm.
	Form heat.Form `json:"form,omitzero"`
	// Diameter of the ball or cylinder, or thickness of the slab, m, 0.005..0.5.
	Diameter float64 `json:"diameter_m,omitzero"`
	// StartC is its temperature when it goes in, degC, -60..30; it must be given.
	StartC honestplate.Optional `json:"start_c,omitzero"`
	// TargetC is the temperature wanted, degC: below StartC and at least 0.2 K above
	// that of the Medium.
	TargetC float64 `json:"target_c,omitzero"`
	// Medium is the freezer.
	Medium cold.Medium `json:"medium,omitzero"`
}

// A FreezeClock says when the target is reached, from the time it goes in.
type FreezeClock struct {
	Surface Event `json:"surface"` // at the surface
	Mean    Event `json:"mean"`    // at the temperature it would even out to: what counts on set
	Core    Event `json:"core"`    // at the centre: the safe one
	// Series is the likely course.
	Series []BodyPoint `json:"series"`
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// freezeHorizon is beyond what anybody waits: what takes longer is never.
const freezeHorizon = 14 * 24 * time.Hour

// The events of a deep freeze.
const (
	freezeSurface = iota
	freezeMean
	freezeCore
	freezeEvents
)

// Clock returns when surface, mean and core reach the target. The 95 % bands are
// over the medium's heat transfer coefficient (its own limits), its temperature
// (+-1.5 K), the start (+-1 K), conductivity (x/:1.25) and density (x/:1.05). Where
// a freezer a little too warm never gets there, Latest is Never.
//
// Errors: [honestplate.InputError] and [honestplate.RangeError] for what makes no sense, among them a target
// that the medium cannot reach. Mind the medium's Caution: bare skin sticks to deep
// cold, and dry ice suffocates.
func (d DeepFreeze) Clock() (FreezeClock, error) {
	return clockOf[FreezeClock](d.frame()).knowing(Lesson{})
}

// Likely computes the likely times alone, without bands.
func (d DeepFreeze) Likely() (FreezeClock, error) {
	return clockOf[FreezeClock](d.frame()).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (d DeepFreeze) Knowing(l Lesson) (FreezeClock, error) {
	return clockOf[FreezeClock](d.frame()).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (d DeepFreeze) Observe(l Lesson, seen []Seen) (FreezeClock, Lesson, error) {
	return clockOf[FreezeClock](d.frame()).observed(l, seen)
}

func (m freezeModel) words(r Runs) FreezeClock {
	return FreezeClock{Kept: r, Series: m.course, Surface: r.at(freezeSurface), Mean: r.at(freezeMean), Core: r.at(freezeCore)}
}

func (d DeepFreeze) frame() (frame[freezeModel], error) {
	m, err := d.model()
	return frame[freezeModel]{kind: "freeze", model: m, inputs: (*freezeModel).inputs, run: (*freezeModel).run,
		events: []string{"surface", "mean", "core"}, doubt: doubtFreeze,
		readings: readingsOf(func(m *freezeModel) []BodyPoint { return m.course })}, err
}

func (m *freezeModel) inputs() []study.Input {
	d := &m.d
	return append(mediumInputs(&d.Medium, "room.freezer", "air movement in the freezer", "freezer temperature"),
		bound(&d.StartC.Value, within(around("unit.start_c", "start temperature", d.StartC.Value, 1), d.TargetC+1e-3, 40)),
		bound(&m.k, ofProduct(factor("product.conductivity", "conductivity", 0.8, 1.25))),
		bound(&m.density, ofProduct(factor("product.density", "density", 1/1.05, 1.05))))
}

const (
	freezeCells     = 40
	freezeTolerance = 3e-4
)

// A freezeModel is a checked DeepFreeze, its curve and its uncertain factors.
type freezeModel struct {
	d          DeepFreeze
	curve      heat.Curve
	k, density float64
	work       freezeRun
	course     []BodyPoint
}

// material checks what After needs.
func (d DeepFreeze) material() (freezeModel, error) {
	curve, err := d.Mix.Curve()
	_, formErr := d.Form.MarshalText()
	if err := cmp.Or(given("StartC", d.StartC, "the temperature as it goes in"), formErr, check.Fields("portions of frozen dessert",
		check.Number("Diameter", d.Diameter, 0.005, 0.5, "m"), check.Number("StartC", d.StartC.Value, -60, 30, "degC")),
		honestplate.In("Mix", err)); err != nil {
		return freezeModel{}, err
	}
	return freezeModel{d: d, curve: curve, k: 1, density: 1}, nil
}

func (d DeepFreeze) model() (freezeModel, error) {
	m, err := d.material()
	return m, cmp.Or(err, mediumCheck(d.Medium), honestplate.Finite("TargetC", d.TargetC, "degC"),
		check.Not(d.TargetC >= d.StartC.Value, "TargetC", d.TargetC, "degC", "a temperature below the start"),
		honestplate.InRange("TargetC", d.TargetC, max(d.Medium.TempC+0.2, check.ColdestC+2), d.StartC.Value, "degC",
			"the freezer: at least 0.2 K above its temperature"))
}

// A newtonLaw is a constant coefficient to a constant temperature.
type newtonLaw struct{ h, tempC float64 }

func (l *newtonLaw) At(surfaceC, _ float64) (flux, slope float64) {
	return l.h * (l.tempC - surfaceC), -l.h
}

// A freezeRun is the work space of one core.
type freezeRun struct {
	e   solve.Engine
	c   solve.Compiled
	law newtonLaw
}

func (m *freezeModel) run(at []float64, course float64) error {
	r := &m.work
	m.course = m.course[:0]
	solve.Load(&r.c, m.curve, m.density, m.k)
	e := &r.e
	e.Build(int(m.d.Form), m.d.Diameter/2, freezeCells, solve.UsualGrade)
	r.law = newtonLaw{m.d.Medium.H.Likely, m.d.Medium.TempC}
	e.Begin(&r.c, m.d.StartC.Value, freezeTolerance, &r.law)
	e.CareFrom(30)
	surface := e.ExpectCold(m.d.Diameter/2, m.d.TargetC)
	core := e.ExpectCold(0, m.d.TargetC)
	want := e.Content(m.d.Diameter/2) * (r.c.EnthalpyAt(m.d.TargetC) - e.StartH)
	at[freezeMean] = never
	end := freezeHorizon.Seconds()
	if m.d.Medium.TempC >= m.d.TargetC {
		end = 0 // never
	}
	note := func() {
		if course >= 0 {
			m.course = append(m.course, bodyPoint(e))
		}
	}
	note()
	for e.Time < end && !e.AllFired() {
		heat, q := e.Heat, e.Flow
		if err := e.Advance(end); err != nil {
			return err
		}
		if at[freezeMean] == never && e.Heat <= want {
			passed := root.Rising(func(share float64) float64 {
				return -root.Cubic(share, heat-want, e.Heat-want, q*e.Span, e.Flow*e.Span)
			}, 0, 1)
			at[freezeMean] = e.Time - e.Span*(1-passed)
		}
		note()
	}
	for until := min(max(1.1*e.Time, course), longest); course >= 0 && e.Time < until; note() { // goes on a little
		if err := e.Advance(until); err != nil {
			return err
		}
	}
	at[freezeSurface], at[freezeCore] = e.FiredAt(surface), e.FiredAt(core)
	return nil
}
