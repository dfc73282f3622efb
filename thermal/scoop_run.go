package thermal

import (
	"cmp"
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
)

const sphereForm = int(heat.SphereForm)

// A scoopRun is the work space of one core: the columns of a ball and its foot.
type scoopRun struct {
	c     solve.Compiled
	table fluxTable
	face  column // to the lamps
	shade column // the rest; without lamps the face is all
	foot  solve.Engine
	stand restingSurface // under the foot
}

// times computes the events for one set of inputs.
func (r *scoopRun) times(m *scoopModel, at []float64) error {
	p, err := r.prepare(m)
	if err != nil {
		return err
	}
	end := m.s.Horizon.Seconds()
	shine := r.face.e.Expect(p.radius, p.flowC)
	soft := r.face.e.Expect(p.radius-m.s.SoftDepth.Likely, p.softC)
	drip := r.face.e.Expect(p.dripRadius, p.flowC)
	at[slumps] = never
	before, t := 0.0, 0.0
	for t < end {
		if at[slumps] != never && r.face.e.AllFired() {
			break
		}
		if err := r.advance(end); err != nil {
			return err
		}
		last := t
		t = min(r.face.reached(), r.shade.reached(), end)
		now := r.runOff(t)
		crossed(&at[slumps], last, t-last, before, now, m.s.SlumpShare.Likely)
		before = now
		if r.face.gone() && r.shade.gone() {
			break
		}
	}
	at[shines], at[softens], at[drips] = r.face.e.FiredAt(shine), r.face.e.FiredAt(soft), r.face.e.FiredAt(drip)
	if p.drips == 0 {
		at[drips] = never
	}
	at[slumps] = max(at[slumps], at[drips])
	at[puddles] = never
	if m.s.Rest == OnPlate || m.s.Rest == OnChilledPlate {
		wet, err := r.wets(m, p, min(end, at[drips]))
		if err != nil {
			return err
		}
		at[puddles] = min(wet, at[drips])
	}
	if t := r.fringeDrips(m, p); t <= end {
		at[drips] = min(at[drips], t) // a drop is no puddle
	}
	return r.table.err
}

// advance takes a step with the column that lags behind.
func (r *scoopRun) advance(limit float64) error {
	if r.face.reached() <= r.shade.reached() {
		return r.face.advance(limit)
	}
	return r.shade.advance(limit)
}

// runOff is the share of the ball that has run off at a time that both columns have
// reached.
func (r *scoopRun) runOff(t float64) float64 {
	return r.face.part*r.face.at(t) + r.shade.part*r.shade.at(t)
}

// footCling is the most melt that stays under a foot, g/m2: the ball's weight squeezes
// out what a face would hold (engineering estimate).
const footCling = 200.0

// wets computes when the foot wets the plate, up to a time: a slab, whose heat does not
// come from all sides.
func (r *scoopRun) wets(m *scoopModel, p scoopSample, end float64) (float64, error) {
	cells := m.cells
	r.foot.Build(int(heat.SlabForm), p.radius, cells, solve.GradeFor(cells, p.film/6/p.radius))
	r.foot.Begin(&r.c, p.startC, m.tol, &r.stand)
	r.foot.CareFrom(scoopFrom)
	film := min(p.film, footCling/1000/p.density, p.radius/2)
	wet := r.foot.Expect(p.radius-film, p.flowC)
	for r.foot.Time < end && !r.foot.AllFired() {
		if err := r.foot.Advance(end); err != nil {
			return never, err
		}
	}
	return r.foot.FiredAt(wet), nil
}

// A scoopSample is what follows from one set of inputs.
type scoopSample struct {
	radius, startC, softC, flowC float64
	density                      float64 // kg/m3
	film                         float64 // thickness of the melt that clings, m
	drips                        float64 // solid share of the ball when melt begins to run; 0 if it never does
	dripRadius                   float64 // and its radius
}

func (r *scoopRun) prepare(m *scoopModel) (scoopSample, error) {
	s := m.s
	air := m.air
	surface := heat.Surface{Shape: heat.Sphere, Length: s.Diameter, Activity: 1, ConvectionFactor: m.convection}
	ex, err := surface.In(air.moist())
	if err != nil {
		return scoopSample{}, err
	}
	r.table.reset(ex)
	solve.Load(&r.c, m.curve, m.density, m.k)

	held := contact{film: plateFilm * m.contact, effuse: plateEffusivity, behind: plateBehind, startC: air.TempC, roomC: air.TempC}
	if s.Rest == OnChilledPlate {
		held.startC = s.PlateC.Value
	}
	r.stand = restingSurface{share: 1, contact: held}
	// A ball catches light on its cross-section, a quarter of its surface: all of it falls
	// on the face, square on but for its slope.
	light := m.absorbed() * m.absorbs
	dipped := s.DipperJM2.Value * m.dipper / dipSeconds
	r.face.surface, r.face.dipped, r.face.part = restingSurface{air: &r.table, light: light * m.slope}, dipped, 1
	r.shade.surface, r.shade.dipped, r.shade.part = restingSurface{air: &r.table}, dipped, 0
	if light > 0 {
		r.face.part = 0.25 / m.slope
		r.shade.part = 1 - r.face.part
	}

	density, err := s.Mix.Density()
	softC, softErr := s.Mix.FrozenAtC(s.SoftFrozen.Likely)
	flowC, flowErr := s.Mix.FrozenAtC(s.FlowFrozen.Likely)
	if err := cmp.Or(err, softErr, flowErr); err != nil {
		return scoopSample{}, err
	}
	density *= m.density
	radius := s.Diameter / 2
	film := s.ClingGM2.Likely / 1000 / density
	drips := 1 - 3*film/radius
	if drips < 0.1 {
		drips = 0 // all of it clings
	}
	p := scoopSample{radius: radius, startC: s.StartC, density: density, film: film,
		softC: softC, flowC: flowC, drips: drips, dripRadius: radius * math.Cbrt(drips)}
	r.face.begin(r, m, p)
	r.shade.begin(r, m, p)
	return p, nil
}

// scoopFrom is from when on a scoop's times are to be accurate, s: nobody takes a
// picture sooner.
const scoopFrom = 3
