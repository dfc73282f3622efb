package thermal

import (
	"example.org/honestplate/thermal/internal/solve"
)

// A column is a part of a ball, computed as if the whole were like it: the side to the
// lamps or the rest. It sheds what has melted and does not cling.
type column struct {
	e       solve.Engine
	surface restingSurface
	dipped  float64 // flux of the dipper's heat, W/m2, for the first dipSeconds
	part    float64 // of the ball, 0..1
	p       scoopSample
	flowU   float64 // potential at which it flows

	time, was, is float64 // the step before began at time; shares run off then and now
	empty         bool
}

// dipSeconds is how long the dipper's heat takes to come in, s: the time of a scoop.
const dipSeconds = 5.0

// At is the law of the solver.
func (c *column) At(surfaceC, seconds float64) (flux, slope float64) {
	flux, slope = c.surface.At(surfaceC, seconds)
	if seconds <= dipSeconds {
		flux += c.dipped
	}
	return flux, slope
}

func (c *column) begin(r *scoopRun, m *scoopModel, p scoopSample) {
	c.p = p
	c.e.Build(sphereForm, p.radius, m.cells, solve.GradeFor(m.cells, min(p.film/2, m.s.SoftDepth.Likely/4)/p.radius))
	c.e.Begin(&r.c, p.startC, m.tol, c)
	if c.dipped == 0 {
		c.e.CareFrom(scoopFrom)
	}
	c.flowU = c.e.Curve.PotentialAt(p.flowC)
	c.time, c.was, c.is, c.empty = 0, 0, 0, false
}

// gone reports that hardly anything solid of the column is left, or that there is none.
func (c *column) gone() bool { return c.empty || c.part == 0 }

// advance takes a step and notes what has run off.
func (c *column) advance(limit float64) error {
	if c.e.Time < dipSeconds {
		limit = min(limit, dipSeconds)
	}
	c.time, c.was = c.e.Time, c.is
	if err := c.e.AdvanceShedding(limit, c.p.flowC, c.p.film); err != nil {
		return err
	}
	solid := c.e.Content(c.solid()) / c.e.Content(c.p.radius)
	c.is = max(c.is, c.p.drips-solid)
	c.empty = solid < 0.01
	return nil
}

// runTo takes steps to a time, s, unless hardly anything is left.
func (c *column) runTo(t float64) error {
	for c.reached() < t {
		if err := c.advance(t); err != nil {
			return err
		}
	}
	return nil
}

// solid is the radius of what has not melted.
func (c *column) solid() float64 {
	return c.e.Faces[c.e.Shells] - c.e.FilmFrom(c.flowU, c.e.Shells)
}

// at is the share run off at a time within the last step, s.
func (c *column) at(t float64) float64 {
	if c.gone() || t >= c.e.Time {
		return c.is
	}
	return c.was + (c.is-c.was)*max(0, t-c.time)/(c.e.Time-c.time)
}

// reached is until when the column is known, s.
func (c *column) reached() float64 {
	if c.gone() {
		return never
	}
	return c.e.Time
}
