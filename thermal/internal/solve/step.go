package solve

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

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

// settle finds the surface potential from the state as it is, and the heat
// flows with it. It is needed at the start and when the outermost shell changes.
func (e *Engine) settle() {
	last := e.Shells - 1
	skin, area := e.skin[last], e.area[last]
	u, j := e.u[e.Shells], int(e.seg[e.Shells])
	for range 50 {
		q, dq := e.x.At(e.Curve.tempOn(j, u), e.Time)
		dq = min(dq, 0) / e.Curve.k[j]
		un := (skin*e.u[last] + area*(q-dq*u)) / (skin - area*dq)
		jn := e.Curve.walkU(j, un)
		done := math.Abs(un-u) <= 1e-12*(1+math.Abs(un))
		u, j = un, jn
		if done {
			break
		}
	}
	e.u[e.Shells], e.seg[e.Shells] = u, int32(j)
	e.Flow = skin * (u - e.u[last])
	e.flows(e.u, e.f)
}

// flows writes the heat into each shell.
func (e *Engine) flows(u, f []float64) {
	left := 0.0
	n := e.Shells
	link := e.link[:n]
	for i := range n - 1 {
		right := link[i] * (u[i+1] - u[i])
		f[i] = right - left
		left = right
	}
	f[n-1] = e.skin[n-1]*(u[n]-u[n-1]) - left
	if e.Flank != nil {
		for i := range n {
			f[i] += e.fq[i] - e.fg[i]*e.Curve.tempOn(int(e.seg[i]), u[i])
		}
	}
}

// flank takes the heat of the flanks as straight about the temperatures at the start of
// a step of dt.
func (e *Engine) flank(dt float64) {
	e.weight = trDiag * dt
	for i := range e.Shells {
		t := e.Curve.tempOn(int(e.seg[i]), e.u[i])
		q, dq := e.Flank(i, t, e.Time+dt/2)
		e.fg[i] = -min(dq, 0)
		e.fq[i] = q + e.fg[i]*t
		e.put(i, int(e.seg[i]))
	}
	e.flows(e.u, e.f)
}

// step advances by dt if the estimated error allows and returns the error as a
// multiple of what is allowed; above 1, or when no solution was found, the state
// is as before.
func (e *Engine) step(dt float64) float64 {
	n := e.Shells
	copy(e.segHold[:n+1], e.seg[:n+1])
	surface := e.u[n]
	e.before = e.tally
	w := trDiag * dt
	if e.Flank != nil {
		e.flank(dt)
	}
	h, vol, per, vg, f, f1 := e.Enthalpies[:n], e.Volumes[:n], e.per[:n], e.vg[:n], e.f[:n], e.f1[:n]
	for i := range h {
		vg[i] = vol[i]*h[i] + w*f[i]
	}
	for i, l := range e.link[:n-1] {
		e.wlink[i], e.square[i] = w*l, w*l*w*l
	}
	ok := e.solve(w, e.Time+trGamma*dt, e.un)
	q1 := 0.0
	if ok {
		e.flows(e.un, f1)
		q1 = e.skin[n-1] * (e.un[n] - e.un[n-1])
		e.u[n] = e.un[n]
		for i := range h {
			vg[i] = vol[i]*h[i] + trSide*dt*(f[i]+f1[i])
		}
		ok = e.solve(w, e.Time+dt, e.un)
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
		wrong += math.Abs(crossed) * (e.Faces[i+1] - e.Faces[i])
	}
	q2 := e.skin[n-1] * (e.un[n] - e.un[n-1])
	passed := dt * (trSide*(e.Flow+q1) + trDiag*q2)
	wrong = (wrong/e.Faces[n] + math.Abs(crossed)) * dt / (e.tolerance * (e.moved + e.least + math.Abs(passed)))
	if wrong > 1 {
		e.takeBack()
		e.u[n] = surface
		return wrong
	}
	e.Heat += passed
	e.moved += math.Abs(passed)
	if e.Flank != nil {
		beside := dt*(trSide*(floats.Sum(f)+floats.Sum(f1))+trDiag*floats.Sum(f2)) - passed
		e.Beside += beside
		e.moved += math.Abs(beside)
	}
	e.Flow = q2
	c := e.Curve
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
	e.Time, e.Span = e.Time+dt, dt
	e.steps++
	return wrong
}
