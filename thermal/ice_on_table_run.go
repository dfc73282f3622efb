package thermal

import (
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/ware"
)

// An iceRun is the work space of one core.
type iceRun struct {
	e       solve.Engine
	table   fluxTable
	surface restingSurface
	box     iceBox // at the start
	course  bool   // it is noted
}

const (
	iceCells     = 48
	iceTolerance = 1e-3
	iceStep      = 0.01
	// The air's flow around a piece is reckoned anew whenever it has shrunk by so many
	// steps.
	iceReckon = 5
	// Ice lies on a film of its own melt, through which heat passes well (engineering
	// estimate, x/:2; a tenth of a millimetre of water would pass 5700).
	iceFilm = 1000.0
)

// after is the box a little later: sides and top recede alike, the base by what the table
// brings.
func (b iceBox) after(dt, air, table float64) iceBox {
	b.width -= 2 * air * dt
	b.height -= (air + table) * dt
	return b
}

// run computes the events and, where it is asked for, the course.
func (m *iceModel) run(at []float64, course float64) error {
	r := &m.work
	r.box, r.course, m.series = m.i.Shape.box(m.i.Size*m.size), course >= 0, m.series[:0]
	if err := r.reckon(m, r.box.length()); err != nil {
		return err
	}
	nothing(at)
	left, err := r.warm(m, at) // J/m3 still to melt it
	if err != nil || at[iceShines] == never {
		return err
	}
	return r.melt(m, left, at)
}

// note puts a point to the course.
func (m *iceModel) note(t float64, b iceBox, surfaceC float64) {
	if !m.work.course {
		return
	}
	whole, left, surface := m.work.box.grams(), b.grams(), 6*b.volume()/b.length()
	m.series = append(m.series, IcePoint{Time: seconds(t), IceGrams: left, SurfaceC: min(surfaceC, 0),
		PuddleGrams: max(0, whole-left-m.i.ClingGM2.Likely*surface)})
}

// reckon prepares the air and the light of a piece of a length.
func (r *iceRun) reckon(m *iceModel, length float64) error {
	ex, err := heat.Surface{Shape: heat.Sphere, Length: max(length, 1e-4), Activity: 1, ConvectionFactor: m.convection}.In(m.air.moist())
	r.table.reset(ex)
	r.surface.air = &r.table
	r.surface.light = m.lightAt(length / 2)
	return err
}

// warm carries the piece, as a ball, until its surface is at 0 degC. The base warms it
// through half its height of ice.
func (r *iceRun) warm(m *iceModel, at []float64) (float64, error) {
	r.surface.share, r.surface.contact = 0, contact{}
	if m.i.Below != ware.WireRack {
		r.surface.share = r.box.lies
		r.surface.contact = m.beneath(r.box)
		r.surface.contact.film = 1 / (1/r.surface.contact.film + r.box.height/2/heat.Ice().Conductivity)
	}
	e := &r.e
	radius := r.box.length() / 2
	e.Build(int(heat.SphereForm), radius, m.cells, 0)
	e.Begin(m.c, m.i.StartC, m.tol, &r.surface)
	e.CareFrom(10)
	shines := e.Expect(radius, -icePure/2)
	horizon := m.i.Horizon.Seconds()
	m.note(0, r.box, e.SurfaceC())
	for e.Time < horizon && !e.AllFired() {
		if err := e.Advance(horizon); err != nil {
			return 0, err
		}
		if !e.AllFired() {
			m.note(e.Time, r.box, e.SurfaceC())
		}
	}
	at[iceShines] = e.FiredAt(shines)
	full := m.c.EnthalpyAt(icePure/2) - e.StartH
	return full - e.Heat/e.Content(radius), r.table.err
}

// beneath is the table as a piece feels it.
func (m *iceModel) beneath(b iceBox) contact {
	return under(m.i.Below, m.table, iceFilm*m.contact, b.width/math.Sqrt(math.Pi), m.air.TempC)
}

// melt carries the piece at 0 degC until it is gone. Heun's rule in steps that take away
// a small share of what is left of its width or height.
func (r *iceRun) melt(m *iceModel, left float64, at []float64) error {
	t, b, horizon := at[iceShines], r.box, m.i.Horizon.Seconds()
	reckoned, whole := b.length(), b.volume()
	speeds := func(t float64, b iceBox) (air, table float64) {
		q, _ := r.table.at(0)
		air = max(0, q+r.surface.light) / left
		if m.i.Below == ware.WireRack {
			return air, air
		}
		held := m.beneath(b)
		h, tableC := held.at(t)
		return air, (h*tableC + r.surface.light) / left
	}
	for t < horizon && at[iceGone] == never {
		air, table := speeds(t, b)
		dt := m.step * min(b.width/(2*air+1e-12), b.height/(air+table+1e-12))
		dt = min(dt, 5*m.step*(t+1), horizon-t)
		air2, table2 := speeds(t+dt, b.after(dt, air, table))
		next := b.after(dt, (air+air2)/2, (table+table2)/2)
		before, now := b.volume()/whole, next.volume()/whole
		crossed(&at[iceHalf], t, dt, -before, -now, -0.5)
		crossed(&at[iceGone], t, dt, -before, -now, -0.01)
		t, b = t+dt, next
		m.note(t, b, 0)
		if b.length() < (1-iceReckon*m.step)*reckoned {
			reckoned = b.length()
			if err := r.reckon(m, reckoned); err != nil {
				return err
			}
		}
	}
	return r.table.err
}
