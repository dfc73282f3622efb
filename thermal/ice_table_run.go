package thermal

import (
	"math"
)

// An iceRun is the work space of one core.
type iceRun struct {
	e       engine
	table   fluxTable
	surface restingSurface
}

const (
	iceCells     = 48
	iceTolerance = 1e-3
	// The air's flow around a piece is reckoned anew whenever it is a tenth smaller.
	iceReckon = 0.9
)

// times computes the events and, if asked, the course in even steps.
func (r *iceRun) times(m *iceModel, at []float64, series *[]IcePoint, every float64) error {
	air := m.air
	p := m.i.Shape.piece(m.i.Size * m.size)
	film := m.i.ClingGM2.Likely / 1000 / IceDensity
	reckon := func(radius float64) error {
		ex, err := Surface{Shape: Sphere, Length: 2 * radius, Activity: 1, ConvectionFactor: m.convection}.In(MoistAir(air))
		if err != nil {
			return err
		}
		r.table.reset(ex)
		r.surface.light = m.light(radius) * m.brightness * m.absorbs
		return nil
	}
	r.surface = restingSurface{air: &r.table, share: p.table, contact: contact{
		film: plateFilm * m.contact, effuse: plateEffusivity, behind: plateBehind, startC: air.TempC, roomC: air.TempC}}
	if err := reckon(p.radius); err != nil {
		return err
	}
	e := &r.e
	e.build(int(SphereForm), p.radius, iceCells, 0)
	e.begin(m.c, m.i.StartC, iceTolerance, &r.surface)
	e.careFrom(10)
	shines := e.expect(p.radius, -icePure/2)
	whole := e.content(p.radius)
	scale := p.grams / (1000 * IceDensity * whole)
	at[iceHalf], at[iceGone] = never, never
	note := func(t, left float64) {
		if series == nil {
			return
		}
		*series = append(*series, IcePoint{Time: seconds(t), IceGrams: left * p.grams,
			PuddleGrams: 1000 * IceDensity * scale * (whole - e.content(e.face[e.n])), SurfaceC: min(e.surfaceC(), 0)})
	}
	note(0, 1)
	horizon := m.i.Horizon.Seconds()
	reckoned, left, next := p.radius, 1.0, every
	for e.t < horizon && at[iceGone] == never {
		limit := horizon
		if series != nil {
			limit = min(limit, next)
		}
		t, before := e.t, left
		if err := e.advanceShedding(limit, icePure/2, film); err != nil {
			return err
		}
		left = r.solid(m.c) / whole
		cross := func(share float64) float64 {
			return t + (e.t-t)*(before-share)/(before-left)
		}
		if before > 0.5 && left <= 0.5 {
			at[iceHalf] = cross(0.5)
		}
		if before > 0.01 && left <= 0.01 {
			at[iceGone] = cross(0.01)
		}
		if outer := e.face[e.n]; outer < iceReckon*reckoned {
			reckoned = outer
			if err := reckon(outer); err != nil {
				return err
			}
		}
		if series != nil && e.t >= next-1e-9 {
			note(e.t, left)
			next += every
		}
	}
	at[iceShines] = e.firedAt(shines)
	return r.table.err
}

// solid is the volume that is still ice.
func (r *iceRun) solid(c *compiled) float64 {
	full, none := c.enthalpyAt(icePure/2), c.enthalpyAt(-icePure/2)
	sum := 0.0
	for i, h := range r.e.h[:r.e.n] {
		sum += r.e.vol[i] * min(max((full-h)/(full-none), 0), 1)
	}
	return math.Max(sum, 0)
}
