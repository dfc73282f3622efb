package thermal

import (
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
)

// An iceRun is the work space of one core.
type iceRun struct {
	e       solve.Engine
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
	film := m.i.ClingGM2.Likely / 1000 / heat.Ice().Density
	reckon := func(radius float64) error {
		ex, err := heat.Surface{Shape: heat.Sphere, Length: 2 * radius, Activity: 1, ConvectionFactor: m.convection}.In(heat.MoistAir(air))
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
	e.Build(int(heat.SphereForm), p.radius, iceCells, 0)
	e.Begin(m.c, m.i.StartC, iceTolerance, &r.surface)
	e.CareFrom(10)
	shines := e.Expect(p.radius, -icePure/2)
	whole := e.Content(p.radius)
	scale := p.grams / (1000 * heat.Ice().Density * whole)
	at[iceHalf], at[iceGone] = never, never
	note := func(t, left float64) {
		if series == nil {
			return
		}
		*series = append(*series, IcePoint{Time: seconds(t), IceGrams: left * p.grams,
			PuddleGrams: 1000 * heat.Ice().Density * scale * (whole - e.Content(e.Faces[e.Shells])), SurfaceC: min(e.SurfaceC(), 0)})
	}
	note(0, 1)
	horizon := m.i.Horizon.Seconds()
	reckoned, left, next := p.radius, 1.0, every
	for e.Time < horizon && at[iceGone] == never {
		limit := horizon
		if series != nil {
			limit = min(limit, next)
		}
		t, before := e.Time, left
		if err := e.AdvanceShedding(limit, icePure/2, film); err != nil {
			return err
		}
		left = r.solid(m.c) / whole
		cross := func(share float64) float64 {
			return t + (e.Time-t)*(before-share)/(before-left)
		}
		if before > 0.5 && left <= 0.5 {
			at[iceHalf] = cross(0.5)
		}
		if before > 0.01 && left <= 0.01 {
			at[iceGone] = cross(0.01)
		}
		if outer := e.Faces[e.Shells]; outer < iceReckon*reckoned {
			reckoned = outer
			if err := reckon(outer); err != nil {
				return err
			}
		}
		if series != nil && e.Time >= next-1e-9 {
			note(e.Time, left)
			next += every
		}
	}
	at[iceShines] = e.FiredAt(shines)
	return r.table.err
}

// solid is the volume that is still ice.
func (r *iceRun) solid(c *solve.Compiled) float64 {
	full, none := c.EnthalpyAt(icePure/2), c.EnthalpyAt(-icePure/2)
	sum := 0.0
	for i, h := range r.e.Enthalpies[:r.e.Shells] {
		sum += r.e.Volumes[i] * min(max((full-h)/(full-none), 0), 1)
	}
	return math.Max(sum, 0)
}
