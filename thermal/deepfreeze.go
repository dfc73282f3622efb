package thermal

import (
	"math"
	"time"
)

// A DeepFreeze is a portion of frozen dessert put into a freezer to come out hard.
// Scoops that must last under lamps are hardened a second time, in a deeper freezer
// than they were served from (common practice, no source).
//
// It is computed by the enthalpy solver of Body with the mix's own freezing curve;
// the portion starts at one temperature throughout and keeps its shape.
type DeepFreeze struct {
	// Mix is the recipe; see VanillaIceCream and the others.
	Mix FrozenMix
	// Form of the portion; the zero value is a ball. A filled tray is a SlabForm
	// cooled on both faces, a narrow tub a CylinderForm.
	Form Form
	// Diameter of the ball or cylinder, or thickness of the slab, m, 0.005..0.5.
	Diameter float64
	// StartC is its temperature when it goes in, degC, -60..30.
	StartC float64
	// TargetC is the temperature wanted, degC: below StartC and at least 0.2 K above
	// that of the Medium.
	TargetC float64
	// Medium is the freezer.
	Medium Medium
}

// A FreezeClock says when the target is reached, from the time it goes in.
type FreezeClock struct {
	Surface Window // at the surface
	Mean    Window // at the temperature it would even out to: what counts on set
	Core    Window // at the centre: the safe one
	// Decides ranks the inputs by their share in the spread of Core.
	Decides []Sensitivity
}

// freezeHorizon is beyond what anybody waits: what takes longer is Never.
const freezeHorizon = 14 * 24 * time.Hour

// The uncertain inputs of a deep freeze.
const (
	freezeH = iota
	freezeMediumC
	freezeStart
	freezeK
	freezeDensity
	freezeInputs
)

// The events of a deep freeze.
const (
	freezeSurface = iota
	freezeMean
	freezeCore
	freezeEvents
)

// Time returns when the core reaches the target. It is Times without the rest.
func (d DeepFreeze) Time() (Window, error) {
	c, err := d.Times()
	return c.Core, err
}

// Times returns when surface, mean and core reach the target. The 95 % bands are
// over the medium's heat transfer coefficient (its own limits), its temperature
// (+-1.5 K), the start (+-1 K), conductivity (x/:1.25) and density (x/:1.05). Where
// a freezer a little too warm never gets there, Latest is Never.
//
// Errors: *InputError and *RangeError for what makes no sense, among them a target
// that the medium cannot reach. Mind the medium's Caution: bare skin sticks to deep
// cold, and dry ice suffocates.
func (d DeepFreeze) Times() (FreezeClock, error) {
	m, err := d.model()
	if err != nil {
		return FreezeClock{}, err
	}
	low, high := d.Medium.limits()
	around := func(name string, v, by float64) Uncertain {
		return Uncertain{Name: name, Likely: v, Low: v - by, High: v + by}
	}
	study := Study{
		Events: freezeEvents,
		Inputs: []Uncertain{
			freezeH:       {Name: "air movement in the freezer", Likely: d.Medium.H, Low: low, High: high, Scale: true},
			freezeMediumC: around("freezer temperature", d.Medium.TempC, 1.5),
			freezeStart:   around("start temperature", d.StartC, 1),
			freezeK:       {Name: "conductivity", Likely: 1, Low: 0.8, High: 1.25, Scale: true},
			freezeDensity: {Name: "density", Likely: 1, Low: 1 / 1.05, High: 1.05, Scale: true},
		},
		Model: func() func([]float64, []time.Duration) error {
			run := new(freezeRun)
			return func(x []float64, at []time.Duration) error { return run.times(m, x, at) }
		},
	}
	// The tails of the bands stay inside the curve.
	study.Inputs[freezeMediumC].Min, study.Inputs[freezeMediumC].Max = curveLow+2, 40
	study.Inputs[freezeStart].Min, study.Inputs[freezeStart].Max = d.TargetC+1e-3, 40
	out, err := study.Run()
	if err != nil {
		return FreezeClock{}, err
	}
	return FreezeClock{
		Surface: out[freezeSurface].Window, Mean: out[freezeMean].Window, Core: out[freezeCore].Window,
		Decides: out[freezeCore].Decides,
	}, nil
}

const (
	freezeCells     = 40
	freezeTolerance = 3e-4
)

// A freezeModel is a checked DeepFreeze and its curve.
type freezeModel struct {
	d     DeepFreeze
	curve Curve
}

// material checks what After needs.
func (d DeepFreeze) material() (*freezeModel, error) {
	if d.Form < SphereForm || d.Form > SlabForm {
		return nil, &InputError{"form", float64(d.Form), "", "SphereForm, CylinderForm or SlabForm"}
	}
	if err := within("portion's diameter", d.Diameter, 0.005, 0.5, "m", "deep freeze"); err != nil {
		return nil, err
	}
	if err := within("start temperature", d.StartC, -60, 30, "degC", "deep freeze"); err != nil {
		return nil, err
	}
	full, err := d.Mix.Curve()
	if err != nil {
		return nil, err
	}
	return &freezeModel{d, full.forSolver(48)}, nil
}

func (d DeepFreeze) model() (*freezeModel, error) {
	m, err := d.material()
	if err != nil {
		return nil, err
	}
	if err := d.Medium.Validate(); err != nil {
		return nil, err
	}
	if err := finite("target temperature", d.TargetC, "degC"); err != nil {
		return nil, err
	}
	if d.TargetC >= d.StartC {
		return nil, &InputError{"target temperature", d.TargetC, "degC", "below the start"}
	}
	return m, within("target temperature", d.TargetC, max(d.Medium.TempC+0.2, curveLow+2), d.StartC, "degC",
		"the freezer: at least 0.2 K above its temperature")
}

// A newtonLaw is a constant coefficient to a constant temperature.
type newtonLaw struct{ h, tempC float64 }

func (l *newtonLaw) at(surfaceC, _ float64) (flux, slope float64) {
	return l.h * (l.tempC - surfaceC), -l.h
}

// A freezeRun is the work space of one core.
type freezeRun struct {
	e     engine
	c     compiled
	curve Curve
	law   newtonLaw
}

func (r *freezeRun) times(m *freezeModel, x []float64, at []time.Duration) error {
	r.curve = append(r.curve[:0], m.curve...)
	for i := range r.curve {
		r.curve[i].Enthalpy *= x[freezeDensity]
		r.curve[i].Conductivity *= x[freezeK]
	}
	r.c.load(r.curve)
	e := &r.e
	e.build(m.d.Form, m.d.Diameter/2, freezeCells, usualGrade)
	r.law = newtonLaw{x[freezeH], x[freezeMediumC]}
	e.begin(&r.c, x[freezeStart], freezeTolerance, &r.law)
	e.careFrom(30)
	surface := e.expectCold(m.d.Diameter/2, m.d.TargetC)
	core := e.expectCold(0, m.d.TargetC)
	want := e.content(m.d.Diameter/2) * (r.c.enthalpyAt(m.d.TargetC) - e.startH)
	mean := math.NaN()
	end := freezeHorizon.Seconds()
	if x[freezeMediumC] >= m.d.TargetC {
		end = 0 // never
	}
	for e.t < end && !e.allFired() {
		heat, q := e.heat, e.q
		if err := e.advance(end); err != nil {
			return err
		}
		if math.IsNaN(mean) && e.heat <= want {
			mean = e.t - e.span*(1-hermiteRoot(heat-want, e.heat-want, q*e.span, e.q*e.span))
		}
	}
	at[freezeSurface], at[freezeCore], at[freezeMean] = e.firedAt(surface), e.firedAt(core), Never
	if !math.IsNaN(mean) {
		at[freezeMean] = seconds(mean)
	}
	return nil
}

// hermiteRoot returns where in 0..1 the cubic with the given values and slopes at
// the ends passes zero from above.
func hermiteRoot(v0, v1, d0, d1 float64) float64 {
	low, high := 0.0, 1.0
	for range 40 {
		s := (low + high) / 2
		if v0+s*(d0+s*(3*(v1-v0)-2*d0-d1+s*(d0+d1-2*(v1-v0)))) > 0 {
			low = s
		} else {
			high = s
		}
	}
	return high
}
