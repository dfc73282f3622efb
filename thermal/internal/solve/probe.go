package solve

import (
	"slices"

	"example.org/honestplate/thermal/internal/root"
)

// A probe waits for a temperature, as a potential, at a radius.
type probe struct {
	r, u  float64
	sign  float64 // 1 waits for warming, -1 for cooling
	from  int     // the node inside it
	share float64 // of the way to the next node, or to the surface
	fired float64 // s; never until it happens
}

// expect adds a probe for warming to tempC at radius r and returns its number.
// What is so from the start fires at 0.
func (e *Engine) Expect(r, tempC float64) int { return e.addProbe(r, tempC, 1) }

// expectCold adds a probe for cooling to tempC.
func (e *Engine) ExpectCold(r, tempC float64) int { return e.addProbe(r, tempC, -1) }

func (e *Engine) addProbe(r, tempC, sign float64) int {
	p := probe{r: r, u: e.Curve.PotentialAt(tempC), sign: sign, fired: never}
	e.place(&p)
	if e.passed(&p, 1) {
		p.fired = 0
	}
	e.probes = append(e.probes, p)
	return len(e.probes) - 1
}

func (e *Engine) passed(p *probe, share float64) bool {
	return p.sign*(e.reading(p, share)-p.u) >= 0
}

func (e *Engine) place(p *probe) {
	p.from = 0
	for p.from < e.Shells-1 && e.at[p.from+1] <= p.r {
		p.from++
	}
	a, b := e.at[p.from], e.Faces[e.Shells]
	if p.from < e.Shells-1 {
		b = e.at[p.from+1]
	}
	p.share = min(max((p.r-a)/(b-a), 0), 1)
}

// reading is the potential at the probe at a share of the last step, between the
// enthalpies at its ends by Hermite's cubic.
func (e *Engine) reading(p *probe, share float64) float64 {
	a := e.potentialWithin(p.from, share)
	b := e.us0 + share*(e.u[e.Shells]-e.us0)
	if p.from < e.Shells-1 {
		b = e.potentialWithin(p.from+1, share)
	}
	return a + p.share*(b-a)
}

func (e *Engine) potentialWithin(i int, s float64) float64 {
	if s == 1 {
		return e.u[i]
	}
	c, dt := e.Curve, e.Span
	h0, h1 := e.h0[i], e.Enthalpies[i]
	d0, d1 := e.f0[i]/e.Volumes[i]*dt, e.f[i]/e.Volumes[i]*dt
	h := root.Cubic(s, h0, h1, d0, d1)
	// Where a corner of the curve makes the cubic overshoot, stay between.
	h = min(max(h, min(h0, h1)), max(h0, h1))
	j := c.walkH(int(e.seg[i]), h)
	return (h - c.piece[j].base) * c.piece[j].perSlope
}

// resolve is how long the step in which a probe fires may be, as a share of the
// time until then.
const resolve = 0.03

// overstepped reports whether a probe fired in a step too long to say when.
func (e *Engine) overstepped() bool {
	if e.Span <= resolve*e.Time || e.Span < 1e-3 {
		return false
	}
	return slices.ContainsFunc(e.probes, func(p probe) bool { return p.fired == never && e.passed(&p, 1) })
}

// watch finds which probes fired in the last step, and when.
func (e *Engine) watch() {
	for k := range e.probes {
		p := &e.probes[k]
		if p.fired != never || !e.passed(p, 1) {
			continue
		}
		share := root.Rising(func(share float64) float64 { return p.sign * (e.reading(p, share) - p.u) }, 0, 1)
		p.fired = e.Time - e.Span*(1-share)
	}
}

// firedAt is when a probe fired, s, never if it did not.
func (e *Engine) FiredAt(k int) float64 { return e.probes[k].fired }

func (e *Engine) AllFired() bool {
	return !slices.ContainsFunc(e.probes, func(p probe) bool { return p.fired == never })
}

// advanceShedding is advance for a body that drips: what is warmer than tempC is
// melt, keep m of it cling and the rest goes, shell by shell, with the heat in it, so
// that keep is what is left on the average over a shell's melting.
// Steps are kept so short that about one shell goes at a time. At least three
// shells stay.
func (e *Engine) AdvanceShedding(limit, tempC, keep float64) error {
	u := e.Curve.PotentialAt(tempC)
	melted := e.FilmFrom(u, e.Shells) - e.Faces[e.Shells]
	if err := e.Advance(limit); err != nil {
		return err
	}
	gone := false
	melted = e.FilmFrom(u, e.Shells) - e.Faces[e.Shells] - melted
	for e.Shells > 3 && e.u[e.Shells-1] >= u {
		thick := e.Faces[e.Shells] - e.Faces[e.Shells-1]
		if e.FilmFrom(u, e.Shells-1) < keep-thick/2 {
			break
		}
		e.Shells--
		e.u[e.Shells], e.seg[e.Shells] = e.u[e.Shells+1], e.seg[e.Shells+1]
		gone = true
	}
	if melted > 0 {
		e.dt = min(e.dt, e.Span*(e.Faces[e.Shells]-e.Faces[e.Shells-1])/melted)
	}
	if gone {
		e.settle()
		e.us0 = e.u[e.Shells]
		for k := range e.probes {
			e.place(&e.probes[k])
		}
	}
	return nil
}

// filmFrom is the thickness of what is warmer than the potential u in the first n
// shells, seen from the outside.
func (e *Engine) FilmFrom(u float64, n int) float64 {
	outer := e.Faces[n]
	if n == e.Shells && e.u[n] < u {
		return 0
	}
	above, r := e.u[n], outer
	for i := n - 1; i >= 0; i-- {
		if e.u[i] < u {
			return outer - (e.at[i] + (r-e.at[i])*(u-e.u[i])/max(above-e.u[i], u-e.u[i]))
		}
		above, r = e.u[i], e.at[i]
	}
	return outer
}
