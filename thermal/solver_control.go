package thermal

import (
	"math"
)

// maxSteps ends a computation that does not get on.
const maxSteps = 200000

// begin sets the whole body to startC under a law; tolerance is the error allowed
// in a step as a share of the heat moved so far.
func (e *engine) begin(c *compiled, startC, tolerance float64, x exchange) {
	e.c, e.x = c, x
	u, h := c.potentialAt(startC), c.enthalpyAt(startC)
	j := int32(c.find(c.h, h))
	volume := 0.0
	for i := range e.n {
		e.h[i], e.u[i] = h, u
		e.put(i, int(j))
		volume += e.vol[i]
	}
	e.u[e.n], e.seg[e.n] = u, j
	e.tally, e.lost, e.startH = tally{}, 0, h
	e.probes = e.probes[:0]
	e.steps, e.solves = 0, 0
	e.tolerance = tolerance
	e.least = 1e-7 * volume * (c.h[len(c.h)-1] - c.h[0])
	e.restart()
}

// careFrom says that what happens long before the time t, s, need not be accurate;
// it follows begin.
func (e *engine) careFrom(t float64) {
	heat := math.Abs(e.q) * t
	// No more passes than brings the body to where the law, taken as straight, ends.
	q, dq := e.x.At(e.surfaceC(), e.t)
	if dq < 0 {
		end := min(max(e.surfaceC()-q/dq, e.c.temp[0]), e.c.temp[len(e.c.temp)-1])
		heat = min(heat, math.Abs(e.c.enthalpyAt(end)-e.startH)*e.content(e.face[e.n]))
	}
	e.least += 0.1 * heat
}

// restart takes up a changed law at the surface. The first step is about a tenth
// of the time that heat needs through the outermost shell.
func (e *engine) restart() {
	e.settle()
	last := e.n - 1
	e.dt = 0.3 * e.vol[last] * e.c.piece[e.seg[last]].slope / e.skin[last]
}

// advance takes one step of the controller's own size, not beyond the limit.
func (e *engine) advance(limit float64) error {
	for {
		dt := min(e.dt, limit-e.t)
		last := dt == limit-e.t
		wrong := e.step(dt)
		if wrong <= 1 {
			if last {
				e.t = limit
			}
			if grown := dt * min(5, 0.9/math.Cbrt(max(wrong, 1e-3))); !last || grown > e.dt {
				e.dt = grown
			}
			if e.overstepped() {
				e.undo()
				e.dt = max(dt/4, 0.9*resolve*e.t)
				continue
			}
			e.watch()
			return e.sound()
		}
		if math.IsInf(wrong, 1) {
			e.dt = dt / 4
		} else {
			e.dt = dt * max(0.2, 0.85/math.Cbrt(wrong))
		}
		if !(e.dt > 1e-9*(1+e.t)) {
			return stopped(e.t, "a heat flux that is finite and falls as the surface warms: no step is small enough")
		}
	}
}

// takeBack lays the shells on the pieces on which they were before the step.
func (e *engine) takeBack() {
	for i, j := range e.segHold[:e.n] {
		if e.seg[i] != j {
			e.put(i, int(j))
		}
	}
	e.seg[e.n] = e.segHold[e.n]
}

// undo takes the last step back.
func (e *engine) undo() {
	n, c := e.n, e.c
	copy(e.h[:n], e.h0[:n])
	copy(e.f[:n], e.f0[:n])
	e.takeBack()
	for i, j := range e.seg[:n] {
		e.u[i] = (e.h[i] - c.piece[j].base) * c.piece[j].perSlope
	}
	e.u[n] = e.us0
	e.tally = e.before
}

// sound checks that the step ended with numbers inside the curve.
func (e *engine) sound() error {
	if e.steps > maxSteps {
		return stopped(e.t, "fewer or later times: too many steps")
	}
	return e.c.holds("SurfaceC", e.surfaceC())
}

func (e *engine) surfaceC() float64 { return e.c.tempOn(int(e.seg[e.n]), e.u[e.n]) }

func (e *engine) runTo(t float64) error {
	for e.t < t {
		if err := e.advance(t); err != nil {
			return err
		}
	}
	return nil
}
