package solve

import (
	"math"
)

// maxSteps ends a computation that does not get on.
const maxSteps = 200000

// begin sets the whole body to startC under a law; tolerance is the error allowed
// in a step as a share of the heat moved so far.
func (e *Engine) Begin(c *Compiled, startC, tolerance float64, x exchange) {
	e.Curve, e.x = c, x
	u, h := c.PotentialAt(startC), c.EnthalpyAt(startC)
	j := int32(c.find(c.h, h))
	volume := 0.0
	for i := range e.Shells {
		e.Enthalpies[i], e.u[i] = h, u
		e.put(i, int(j))
		volume += e.Volumes[i]
	}
	e.u[e.Shells], e.seg[e.Shells] = u, j
	e.tally, e.StartH = tally{}, h
	e.probes = e.probes[:0]
	e.steps = 0
	e.tolerance = tolerance
	e.least = 1e-7 * volume * (c.h[len(c.h)-1] - c.h[0])
	e.Restart()
}

// careFrom says that what happens long before the time t, s, need not be accurate;
// it follows begin.
func (e *Engine) CareFrom(t float64) {
	heat := math.Abs(e.Flow) * t
	// No more passes than brings the body to where the law, taken as straight, ends.
	q, dq := e.x.At(e.SurfaceC(), e.Time)
	if dq < 0 {
		end := min(max(e.SurfaceC()-q/dq, e.Curve.temp[0]), e.Curve.temp[len(e.Curve.temp)-1])
		heat = min(heat, math.Abs(e.Curve.EnthalpyAt(end)-e.StartH)*e.Content(e.Faces[e.Shells]))
	}
	e.least += 0.1 * heat
}

// restart takes up a changed law at the surface. The first step is about a tenth
// of the time that heat needs through the outermost shell.
func (e *Engine) Restart() {
	e.settle()
	last := e.Shells - 1
	e.dt = 0.3 * e.Volumes[last] * e.Curve.piece[e.seg[last]].slope / e.skin[last]
}

// advance takes one step of the controller's own size, not beyond the limit.
func (e *Engine) Advance(limit float64) error {
	for {
		dt := min(e.dt, limit-e.Time)
		last := dt == limit-e.Time
		wrong := e.step(dt)
		if wrong <= 1 {
			if last {
				e.Time = limit
			}
			if grown := dt * min(5, 0.9/math.Cbrt(max(wrong, 1e-3))); !last || grown > e.dt {
				e.dt = grown
			}
			if e.overstepped() {
				e.undo()
				e.dt = max(dt/4, 0.9*resolve*e.Time)
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
		if !(e.dt > 1e-9*(1+e.Time)) {
			return stopped(e.Time, "a heat flux that is finite and falls as the surface warms: no step is small enough")
		}
	}
}

// takeBack lays the shells on the pieces on which they were before the step.
func (e *Engine) takeBack() {
	for i, j := range e.segHold[:e.Shells] {
		if e.seg[i] != j {
			e.put(i, int(j))
		}
	}
	e.seg[e.Shells] = e.segHold[e.Shells]
}

// undo takes the last step back.
func (e *Engine) undo() {
	n, c := e.Shells, e.Curve
	copy(e.Enthalpies[:n], e.h0[:n])
	copy(e.f[:n], e.f0[:n])
	e.takeBack()
	for i, j := range e.seg[:n] {
		e.u[i] = (e.Enthalpies[i] - c.piece[j].base) * c.piece[j].perSlope
	}
	e.u[n] = e.us0
	e.tally = e.before
}

// sound checks that the step ended with numbers inside the curve.
func (e *Engine) sound() error {
	if e.steps > maxSteps {
		return stopped(e.Time, "fewer or later times: too many steps")
	}
	return e.Curve.Holds("SurfaceC", e.SurfaceC())
}

func (e *Engine) SurfaceC() float64 { return e.Curve.tempOn(int(e.seg[e.Shells]), e.u[e.Shells]) }

func (e *Engine) RunTo(t float64) error {
	for e.Time < t {
		if err := e.Advance(t); err != nil {
			return err
		}
	}
	return nil
}
