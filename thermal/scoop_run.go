package thermal

import (
	"math"
	"time"
)

// A scoopRun is the work space of one core.
type scoopRun struct {
	e     engine
	c     compiled
	curve Curve
	table fluxTable
	face  scoopSurface
	foot  scoopSurface
	ball  scoopSurface
}

// A scoopSurface is the exchange law of one of the three computations.
type scoopSurface struct {
	air     *fluxTable // nil for the foot
	light   float64    // absorbed, W/m2 of this surface
	share   float64    // of the surface that is on the plate or in the cone
	contact contact
}

// A contact is the plate or cone as the dessert feels it: a film of poor contact in
// series with what the material can bring up, and its own warming.
type contact struct {
	film   float64 // W/(m2 K)
	effuse float64 // sqrt(k rho c), W s^0.5/(m2 K); 0 for a cone
	behind float64 // what comes through from the room behind, W/(m2 K)
	startC float64
	roomC  float64
}

const (
	// A glazed stoneware plate: k 1.5 W/(m K), rho c 2.1e6 J/(m3 K) (textbook values
	// for stoneware, from memory), 7 mm thick: once chilled it warms in the room, both
	// faces taking 10 W/(m2 K), with a time constant of rho c d/20 = 735 s.
	plateEffusivity = 1775.0
	plateBehind     = 8.0
	plateWarms      = 735.0
	// Frozen dessert on a plate touches in spots and then through its own melt
	// (engineering estimate, x/:2).
	plateFilm = 300.0
	// Nobody takes a picture in the first seconds.
	scoopFrom = 3
	// A wafer 3 mm thick of 0.1 W/(m K) in still air.
	coneFilm = 8.0
	// The foot is a disc of 0.6 of the diameter: 0.3^2 of the ball's surface. A cone
	// holds a quarter of it.
	footShare = 0.09
	coneShare = 0.25
)

func (s *scoopSurface) at(surfaceC, seconds float64) (flux, slope float64) {
	if s.air != nil {
		flux, slope = s.air.at(surfaceC)
		flux, slope = (1-s.share)*flux+s.light, (1-s.share)*slope
	}
	if s.share > 0 {
		h, t := s.contact.at(seconds)
		flux += s.share * h * (t - surfaceC)
		slope -= s.share * h
	}
	return flux, slope
}

func (c *contact) at(seconds float64) (h, tempC float64) {
	if c.effuse == 0 {
		return c.film, c.roomC
	}
	tempC = c.startC
	if c.startC != c.roomC {
		tempC = c.roomC + (c.startC-c.roomC)*math.Exp(-seconds/plateWarms)
	}
	return 1 / (1/c.film + 1/(c.behind+c.effuse/math.Sqrt(math.Pi*(seconds+1e-3)))), tempC
}

// times computes the four events for one set of inputs.
func (r *scoopRun) times(m *scoopModel, x []float64, at []time.Duration) error {
	p, err := r.prepare(m, x)
	if err != nil {
		return err
	}
	end := m.s.Horizon.Seconds()

	r.begin(m, &r.face, p)
	soft := r.e.expect(p.radius-x[scoopDepth], p.softC)
	drip := r.e.expect(p.dripRadius, p.flowC)
	if err := r.untilFired(end); err != nil {
		return err
	}
	at[softens], at[drips] = r.e.firedAt(soft), r.e.firedAt(drip)

	at[puddles] = Never
	if m.s.Rest == OnPlate || m.s.Rest == OnChilledPlate {
		r.begin(m, &r.foot, p)
		wet := r.e.expect(p.radius-p.film, p.flowC)
		if err := r.untilFired(end); err != nil {
			return err
		}
		at[puddles] = r.e.firedAt(wet)
	}

	r.begin(m, &r.ball, p)
	slump := r.e.expect(p.radius*math.Cbrt(1-x[scoopSlump]), p.flowC)
	for r.e.t < end && !r.e.allFired() {
		if err := r.e.advanceShedding(end, p.flowC, p.film); err != nil {
			return err
		}
	}
	at[slumps] = r.e.firedAt(slump)
	return r.table.err
}

func (r *scoopRun) untilFired(end float64) error {
	for r.e.t < end && !r.e.allFired() {
		if err := r.e.advance(end); err != nil {
			return err
		}
	}
	return nil
}

// A scoopSample is what follows from one set of inputs.
type scoopSample struct {
	radius, startC, softC, flowC float64
	density                      float64 // kg/m3
	film                         float64 // thickness of the melt that clings, m
	dripRadius                   float64
}

func (r *scoopRun) prepare(m *scoopModel, x []float64) (scoopSample, error) {
	s := m.s
	air := m.air
	air.TempC, air.RH, air.Speed = x[scoopAirC], x[scoopRH], x[scoopSpeed]
	surface := Surface{Shape: Sphere, Length: s.Diameter, Activity: 1, ConvectionFactor: x[scoopWind]}
	ex, err := surface.In(air)
	if err != nil {
		return scoopSample{}, err
	}
	r.table.reset(ex)
	r.curve = append(r.curve[:0], m.curve...)
	for i := range r.curve {
		r.curve[i].Enthalpy *= x[scoopDensity]
		r.curve[i].Conductivity *= x[scoopK]
	}
	r.c.load(r.curve)

	light := m.light * x[scoopLight] * x[scoopAbsorbs]
	held := contact{film: plateFilm * x[scoopContact], effuse: plateEffusivity, behind: plateBehind, startC: air.TempC, roomC: air.TempC}
	share := footShare
	switch s.Rest {
	case OnChilledPlate:
		held.startC = s.PlateC
	case OnCone:
		held = contact{film: coneFilm, roomC: air.TempC}
		share = coneShare
	case OnNothing:
		share = 0
	}
	r.face = scoopSurface{air: &r.table, light: light * x[scoopSlope]}
	r.foot = scoopSurface{share: 1, contact: held}
	// A ball catches light on its cross-section and spreads it over four times that.
	r.ball = scoopSurface{air: &r.table, light: light / 4, share: share, contact: held}

	density := s.Mix.mixDensity() / (1 + s.Mix.OverrunPercent/100) * x[scoopDensity]
	radius := s.Diameter / 2
	film := x[scoopCling] / 1000 / density
	return scoopSample{
		radius: radius, startC: x[scoopStart], density: density, film: film,
		softC:      s.Mix.thawC(x[scoopSoft]),
		flowC:      s.Mix.thawC(x[scoopFlow]),
		dripRadius: math.Cbrt(max(radius*radius*radius-3*radius*radius*film, radius*radius*radius/8)),
	}, nil
}

// begin starts one of the computations; the foot is a slab, whose heat does not
// come from all sides. Where a film is waited for, the shells divide it finely.
func (r *scoopRun) begin(m *scoopModel, x *scoopSurface, p scoopSample) {
	form, cells, grade := SphereForm, m.cells, gradeFor(m.cells, p.film/6/p.radius)
	switch x {
	case &r.foot:
		form, cells = SlabForm, 2*m.cells
	case &r.ball:
		grade = usualGrade
	}
	r.e.build(form, p.radius, cells, grade)
	r.e.begin(&r.c, p.startC, m.tol, x)
	r.e.careFrom(scoopFrom)
}

// scoopMoments is how many steps of time a series has.
const scoopMoments = 60

// series computes the likely course: to a little beyond the loss of shape, or to
// the horizon.
func (m *scoopModel) series() ([]ScoopMoment, error) {
	x := m.likely()
	var face, ball scoopRun
	p, err := face.prepare(m, x)
	if err != nil {
		return nil, err
	}
	if _, err := ball.prepare(m, x); err != nil {
		return nil, err
	}
	var at [scoopEvents]time.Duration
	if err := new(scoopRun).times(m, x, at[:]); err != nil {
		return nil, err
	}
	end := m.s.Horizon.Seconds()
	if at[slumps] != Never {
		end = min(end, 1.25*at[slumps].Seconds())
	}
	face.begin(m, &face.face, p)
	ball.begin(m, &ball.ball, p)
	drip := face.e.expect(p.dripRadius, p.flowC)
	frost := 0.0
	moments := make([]ScoopMoment, 0, scoopMoments+1)
	for i := range scoopMoments + 1 {
		t := end * float64(i) / scoopMoments
		for ball.e.t < t {
			if err := ball.e.advanceShedding(t, p.flowC, p.film); err != nil {
				return nil, err
			}
		}
		for face.e.t < t && face.e.firedAt(drip) == Never {
			before := face.table.vapour(face.e.surfaceC())
			if err := face.e.advance(t); err != nil {
				return nil, err
			}
			frost += face.e.span * (before + face.table.vapour(face.e.surfaceC())) / 2 * 1000
		}
		moments = append(moments, ball.moment(t, p, face.e.surfaceC(), frost))
	}
	return moments, ball.table.err
}

func (r *scoopRun) moment(t float64, p scoopSample, surfaceC, frost float64) ScoopMoment {
	e := &r.e
	stored, volume := 0.0, 0.0
	for i := range e.n {
		stored += e.vol[i] * e.h[i]
		volume += e.vol[i]
	}
	outer := e.face[e.n]
	solid := outer - e.filmFrom(e.c.potentialAt(p.flowC), e.n)
	whole := e.content(p.radius)
	return ScoopMoment{
		Time:         seconds(t),
		SurfaceC:     surfaceC,
		MeanC:        e.c.tempOfEnthalpy(stored / volume),
		CoreC:        e.c.tempOfEnthalpy(e.h[0]),
		SoftMM:       1000 * (p.radius - outer + e.filmFrom(e.c.potentialAt(p.softC), e.n)),
		MeltedShare:  1 - e.content(solid)/whole,
		DrippedGrams: 1000 * p.density * (whole - e.content(outer)),
		FrostGrams:   frost,
	}
}
