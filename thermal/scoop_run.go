package thermal

import (
	"cmp"
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
)

// A scoopRun is the work space of one core.
type scoopRun struct {
	e     solve.Engine
	c     solve.Compiled
	table fluxTable
	face  restingSurface
	foot  restingSurface
	ball  restingSurface
}

// times computes the four events for one set of inputs.
func (r *scoopRun) times(m *scoopModel, at []float64) error {
	p, err := r.prepare(m)
	if err != nil {
		return err
	}
	end := m.s.Horizon.Seconds()

	r.begin(m, &r.face, p)
	soft := r.e.Expect(p.radius-m.s.SoftDepth.Likely, p.softC)
	drip := r.e.Expect(p.dripRadius, p.flowC)
	if err := r.untilFired(end); err != nil {
		return err
	}
	at[softens], at[drips] = r.e.FiredAt(soft), r.e.FiredAt(drip)

	at[puddles] = never
	if m.s.Rest == OnPlate || m.s.Rest == OnChilledPlate {
		r.begin(m, &r.foot, p)
		wet := r.e.Expect(p.radius-p.film, p.flowC)
		if err := r.untilFired(end); err != nil {
			return err
		}
		at[puddles] = r.e.FiredAt(wet)
	}

	r.begin(m, &r.ball, p)
	slump := r.e.Expect(p.radius*math.Cbrt(1-m.s.SlumpShare.Likely), p.flowC)
	for r.e.Time < end && !r.e.AllFired() {
		if err := r.e.AdvanceShedding(end, p.flowC, p.film); err != nil {
			return err
		}
	}
	at[slumps] = r.e.FiredAt(slump)
	return r.table.err
}

func (r *scoopRun) untilFired(end float64) error {
	for r.e.Time < end && !r.e.AllFired() {
		if err := r.e.Advance(end); err != nil {
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

func (r *scoopRun) prepare(m *scoopModel) (scoopSample, error) {
	s := m.s
	air := m.air
	surface := heat.Surface{Shape: heat.Sphere, Length: s.Diameter, Activity: 1, ConvectionFactor: m.convection}
	ex, err := surface.In(heat.MoistAir(air))
	if err != nil {
		return scoopSample{}, err
	}
	r.table.reset(ex)
	solve.Load(&r.c, m.curve, m.density, m.k)

	light := m.light * m.brightness * m.absorbs
	held := contact{film: plateFilm * m.contact, effuse: plateEffusivity, behind: plateBehind, startC: air.TempC, roomC: air.TempC}
	share := footShare
	switch s.Rest {
	case OnChilledPlate:
		held.startC = s.PlateC.Value
	case OnCone:
		held = contact{film: coneFilm, roomC: air.TempC}
		share = coneShare
	case OnNothing:
		share = 0
	}
	r.face = restingSurface{air: &r.table, light: light * m.slope}
	r.foot = restingSurface{share: 1, contact: held}
	// A ball catches light on its cross-section and spreads it over four times that.
	r.ball = restingSurface{air: &r.table, light: light / 4, share: share, contact: held}

	density, err := s.Mix.Density()
	softC, softErr := s.Mix.FrozenAtC(s.SoftFrozen.Likely)
	flowC, flowErr := s.Mix.FrozenAtC(s.FlowFrozen.Likely)
	if err := cmp.Or(err, softErr, flowErr); err != nil {
		return scoopSample{}, err
	}
	density *= m.density
	radius := s.Diameter / 2
	film := s.ClingGM2.Likely / 1000 / density
	return scoopSample{
		radius: radius, startC: s.StartC, density: density, film: film,
		softC: softC, flowC: flowC,
		dripRadius: math.Cbrt(max(radius*radius*radius-3*radius*radius*film, radius*radius*radius/8)),
	}, nil
}

// scoopFrom is from when on a scoop's times are to be accurate, s: nobody takes a
// picture sooner.
const scoopFrom = 3

// begin starts one of the computations; the foot is a slab, whose heat does not
// come from all sides. Where a film is waited for, the shells divide it finely.
func (r *scoopRun) begin(m *scoopModel, x *restingSurface, p scoopSample) {
	form, cells, grade := heat.SphereForm, m.cells, solve.GradeFor(m.cells, p.film/6/p.radius)
	switch x {
	case &r.foot:
		form, cells = heat.SlabForm, 2*m.cells
	case &r.ball:
		grade = solve.UsualGrade
	}
	r.e.Build(int(form), p.radius, cells, grade)
	r.e.Begin(&r.c, p.startC, m.tol, x)
	r.e.CareFrom(scoopFrom)
}
