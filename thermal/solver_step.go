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
	maxSolves = 40   // in one stage
	slack     = 0.05 // unsolved heat allowed in a stage, in units of the step error
)

func (e *engine) begin(c *compiled, startC, tolerance float64, x exchange) {
	e.c, e.x = c, x
	u, h := c.potentialAt(startC), c.enthalpyAt(startC)
	j := int32(c.piece(c.h, h))
	volume := 0.0
	for i := range e.n {
		e.h[i], e.u[i], e.seg[i] = h, u, j
		volume += e.vol[i]
	}
	e.u[e.n], e.seg[e.n] = u, j
	e.t, e.heat, e.law, e.lost, e.startH = 0, 0, 0, 0, h
	e.probes = e.probes[:0]
	e.steps, e.solves = 0, 0
	e.scale = tolerance * volume * (c.h[len(c.h)-1] - c.h[0])
	e.restart()
}

// restart takes up a changed law at the surface. The first step is about a tenth
// of the time that heat needs through the outermost shell.
func (e *engine) restart() {
	e.settle()
	last := e.n - 1
	e.dt = 0.3 * e.vol[last] * e.c.slope[e.seg[last]] / e.skin[last]
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

// solve finds the potentials u with V (H(u) - g) = w * heat in at time t, by
// solving the linear system of the current pieces of the curve until no shell
// leaves its piece, or the heat misplaced by those that do is negligible.
func (e *engine) solve(w, t float64, u []float64) bool {
	n, c := e.n, e.c
	last := n - 1
	allowed := slack * e.scale
	skin, area := e.skin[last], e.area[last]
	us, js := e.u[n], int(e.seg[n])
	vol, link, seg := e.vol[:n], e.link[:n], e.seg[:n]
	g, d, r := e.g[:n], e.d[:n], e.r[:n]
	slope, base := c.slope, c.base
	q, dq := e.x.at(c.tempOn(js, us), t)
	for range maxSolves {
		e.solves++
		dq = min(dq, 0) / c.k[js]
		// Elimination from the centre outwards; the matrix is symmetric.
		left, below, carry := 0.0, 0.0, 0.0
		for i := range n {
			right := w * skin
			if i < last {
				right = w * link[i]
			}
			j := seg[i]
			diag := vol[i]*slope[j] + left + right - left*below
			rhs := vol[i]*(g[i]-base[j]) + left*carry
			inv := 1 / diag
			below, carry = right*inv, rhs*inv
			d[i], r[i] = below, carry
			left = right
		}
		us = (area*(q-dq*us) + skin*carry) / (skin*(1-below) - area*dq)
		js = c.walkU(js, us)
		u[n] = us
		wrong := 0.0
		v := us
		for i := last; i >= 0; i-- {
			v = r[i] + d[i]*v
			u[i] = v
			j := int(seg[i])
			if (v <= c.u[j+1] || j == len(slope)-1) && (v >= c.u[j] || j == 0) {
				continue
			}
			hl := base[j] + slope[j]*v
			ju, jh := c.walkU(j, v), c.walkH(j, hl)
			wrong += vol[i] * math.Abs(base[ju]+slope[ju]*v-hl)
			// The nearer piece: going by u through a change of phase, or by h
			// out of one, would overshoot and swing.
			if abs(jh-j) < abs(ju-j) {
				ju = jh
			}
			seg[i] = int32(ju)
		}
		// The law is not linear in the surface temperature: repeat while it moves.
		q, dq = e.x.at(c.tempOn(js, us), t)
		miss := math.Abs(area*q-skin*(us-u[last])) * w
		if wrong+miss <= allowed {
			e.seg[n] = int32(js)
			e.ql = area * q
			return true
		}
		if math.IsNaN(wrong + miss) {
			return false
		}
	}
	return false
}

func abs(i int) int {
	if i < 0 {
		return -i
	}
	return i
}

// step advances by dt if the estimated error allows and returns the error as a
// multiple of what is allowed; above 1, or when no solution was found, the state
// is as before.
func (e *engine) step(dt float64) float64 {
	n := e.n
	copy(e.segHold[:n+1], e.seg[:n+1])
	surface := e.u[n]
	w := trDiag * dt
	h, vol, g, f, f1 := e.h[:n], e.vol[:n], e.g[:n], e.f[:n], e.f1[:n]
	for i := range h {
		g[i] = h[i] + w*f[i]/vol[i]
	}
	ok := e.solve(w, e.t+trGamma*dt, e.un)
	q1, ql1 := 0.0, 0.0
	if ok {
		e.flows(e.un, f1)
		q1, ql1 = e.skin[n-1]*(e.un[n]-e.un[n-1]), e.ql
		e.u[n] = e.un[n]
		for i := range h {
			g[i] = h[i] + trSide*dt*(f[i]+f1[i])/vol[i]
		}
		ok = e.solve(w, e.t+dt, e.un)
	}
	if !ok {
		copy(e.seg[:n+1], e.segHold[:n+1])
		e.u[n] = surface
		return math.Inf(1)
	}
	f2 := e.d[:n]
	e.flows(e.un, f2)
	wrong := 0.0
	for i := range h {
		wrong += math.Abs(est0*f[i] + est1*f1[i] + est2*f2[i])
	}
	wrong *= dt / e.scale
	if wrong > 1 {
		copy(e.seg[:n+1], e.segHold[:n+1])
		e.u[n] = surface
		return wrong
	}
	q2 := e.skin[n-1] * (e.un[n] - e.un[n-1])
	e.heat += dt * (trSide*(e.q+q1) + trDiag*q2)
	e.q = q2
	e.law += dt * (trSide*(e.qlaw+ql1) + trDiag*e.ql)
	e.qlaw = e.ql
	c := e.c
	for i := range h {
		e.h0[i], e.f0[i] = h[i], f[i]
		h[i] += dt * (trSide*(f[i]+f1[i]) + trDiag*f2[i]) / vol[i]
		f[i] = f2[i]
		j := c.walkH(int(e.seg[i]), h[i])
		e.seg[i] = int32(j)
		e.u[i] = (h[i] - c.base[j]) / c.slope[j]
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
