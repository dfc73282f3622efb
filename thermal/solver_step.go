package thermal

import (
	"fmt"
	"math"
	"time"
)

// An exchange is the law of the surface: the heat flux into it, W/m2, and its
// slope by surface temperature, W/(m2 K).
type exchange interface {
	at(surfaceC, seconds float64) (flux, slope float64)
}

// funcExchange takes the slope of a user's law by a central difference.
type funcExchange func(surfaceC float64, at time.Duration) float64

func (f funcExchange) at(surfaceC, seconds float64) (float64, float64) {
	const d = 1e-3
	t := time.Duration(math.Round(seconds * 1e9))
	return f(surfaceC, t), (f(surfaceC+d, t) - f(surfaceC-d, t)) / (2 * d)
}

// A SolverError says that a computation did not come to an end, and why.
type SolverError struct {
	Reason string        // in words
	At     time.Duration // time reached in the computation
}

func (e *SolverError) Error() string {
	return fmt.Sprintf("thermal: computation stopped at %v: %s", e.At, e.Reason)
}

// The TR-BDF2 rule with gamma = 2 - sqrt 2, for which both stages have the same
// implicit weight.
const (
	trGamma = 2 - math.Sqrt2
	trDiag  = trGamma / 2
	trSide  = math.Sqrt2 / 4
)

// The embedded estimate (Hosea and Shampine 1996): 2 k dt (f0/gamma - f1/(gamma
// (1-gamma)) + f2/(1-gamma)).
const (
	trK  = (-3*trGamma*trGamma + 4*trGamma - 2) / (12 * (2 - trGamma))
	est0 = 2 * trK / trGamma
	est1 = -2 * trK / (trGamma * (1 - trGamma))
	est2 = 2 * trK / (1 - trGamma)
)

const (
	maxSteps  = 200000
	maxSolves = 40 // in one stage
	slack     = 1  // unsolved heat allowed in a stage, in units of the step error
)

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
func (e *engine) careFrom(t float64) { e.least += 0.1 * math.Abs(e.q) * t }

// restart takes up a changed law at the surface. The first step is about a tenth
// of the time that heat needs through the outermost shell.
func (e *engine) restart() {
	e.settle()
	last := e.n - 1
	e.dt = 0.3 * e.vol[last] * e.c.piece[e.seg[last]].slope / e.skin[last]
}

// settle finds the surface potential from the state as it is, and the heat
// flows with it. It is needed at the start and when the outermost shell changes.
func (e *engine) settle() {
	last := e.n - 1
	skin, area := e.skin[last], e.area[last]
	u, j := e.u[e.n], int(e.seg[e.n])
	for range 50 {
		q, dq := e.x.at(e.c.tempOn(j, u), e.t)
		dq = min(dq, 0) / e.c.k[j]
		un := (skin*e.u[last] + area*(q-dq*u)) / (skin - area*dq)
		jn := e.c.walkU(j, un)
		done := math.Abs(un-u) <= 1e-12*(1+math.Abs(un))
		u, j = un, jn
		if done {
			break
		}
	}
	e.u[e.n], e.seg[e.n] = u, int32(j)
	e.q = skin * (u - e.u[last])
	e.qlaw = e.q
	e.flows(e.u, e.f)
}

// flows writes the heat into each shell.
func (e *engine) flows(u, f []float64) {
	left := 0.0
	n := e.n
	link := e.link[:n]
	for i := range n - 1 {
		right := link[i] * (u[i+1] - u[i])
		f[i] = right - left
		left = right
	}
	f[n-1] = e.skin[n-1]*(u[n]-u[n-1]) - left
}

// step advances by dt if the estimated error allows and returns the error as a
// multiple of what is allowed; above 1, or when no solution was found, the state
// is as before.
func (e *engine) step(dt float64) float64 {
	n := e.n
	copy(e.segHold[:n+1], e.seg[:n+1])
	surface := e.u[n]
	e.before = tally{e.t, e.q, e.heat, e.moved, e.law, e.qlaw}
	w := trDiag * dt
	h, vol, per, vg, f, f1 := e.h[:n], e.vol[:n], e.per[:n], e.vg[:n], e.f[:n], e.f1[:n]
	for i := range h {
		vg[i] = vol[i]*h[i] + w*f[i]
	}
	for i, l := range e.link[:n-1] {
		e.wlink[i], e.square[i] = w*l, w*l*w*l
	}
	ok := e.solve(w, e.t+trGamma*dt, e.un)
	q1, ql1 := 0.0, 0.0
	if ok {
		e.flows(e.un, f1)
		q1, ql1 = e.skin[n-1]*(e.un[n]-e.un[n-1]), e.ql
		e.u[n] = e.un[n]
		for i := range h {
			vg[i] = vol[i]*h[i] + trSide*dt*(f[i]+f1[i])
		}
		ok = e.solve(w, e.t+dt, e.un)
	}
	if !ok {
		e.takeBack()
		e.u[n] = surface
		return math.Inf(1)
	}
	f2 := e.d[:n]
	e.flows(e.un, f2)
	// The error of a step is taken in the heat that crossed each face, averaged over
	// the faces, and in the heat that crossed the surface: a front that moves from one
	// shell to the next is no error.
	crossed, wrong := 0.0, 0.0
	for i := range h {
		crossed += est0*f[i] + est1*f1[i] + est2*f2[i]
		wrong += math.Abs(crossed) * (e.face[i+1] - e.face[i])
	}
	q2 := e.skin[n-1] * (e.un[n] - e.un[n-1])
	passed := dt * (trSide*(e.q+q1) + trDiag*q2)
	wrong = (wrong/e.face[n] + math.Abs(crossed)) * dt / (e.tolerance * (e.moved + e.least + math.Abs(passed)))
	if wrong > 1 {
		e.takeBack()
		e.u[n] = surface
		return wrong
	}
	e.heat += passed
	e.moved += math.Abs(passed)
	e.q = q2
	e.law += dt * (trSide*(e.qlaw+ql1) + trDiag*e.ql)
	e.qlaw = e.ql
	c := e.c
	for i := range h {
		e.h0[i], e.f0[i] = h[i], f[i]
		h[i] += dt * (trSide*(f[i]+f1[i]) + trDiag*f2[i]) * per[i]
		f[i] = f2[i]
		p := &c.piece[e.seg[i]]
		u := (h[i] - p.base) * p.perSlope
		if u < p.low || u > p.high {
			j := c.walkH(int(e.seg[i]), h[i])
			e.put(i, j)
			u = (h[i] - c.piece[j].base) * c.piece[j].perSlope
		}
		e.u[i] = u
	}
	e.us0, e.u[n] = surface, e.un[n]
	e.t, e.span = e.t+dt, dt
	e.steps++
	return wrong
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
			return &SolverError{"no step is small enough; is the heat flux finite?", time.Duration(e.t * 1e9)}
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
		return &SolverError{"too many steps", time.Duration(e.t * 1e9)}
	}
	return e.c.holds(e.surfaceC())
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
