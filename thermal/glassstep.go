package thermal

import (
	"math"
	"time"
)

// advance solves wall and drink over dt with the flux f linearised about the
// surface's temperature. It returns the surface's mean temperature and the mean
// heat through it, W/m2.
//
// Unknown are the means over the step M = (old + new)/2, which turns the trapezoid
// into one tridiagonal system: 2c/dt (M - old) = fluxes(M).
func (r *glassRun) advance(dt float64, f Flux) (surface, heat float64) {
	// The surface holds no heat: half (Ts - M3) = q0 + s (Ts - Ts0).
	q0, s := f.Total()-f.Slope*r.surface, f.Slope
	a, b := r.half*q0/(r.half-s), r.half*s/(r.half-s)

	fixed, toDrink := r.drink == 0 || r.energy < 0, r.drinkC()
	c := 2 * r.cell / dt
	// diag and right-hand side; the first row is the drink.
	var diag, rhs [wallCells + 1]float64
	off := [wallCells + 1]float64{-r.inside} // between row i and i+1
	for i := 1; i < wallCells; i++ {
		off[i] = -r.between
	}
	if fixed {
		diag[0], rhs[0], off[0] = 1, toDrink, 0
	} else {
		cd := 2 * r.drink / dt
		diag[0] = cd + r.inside + r.ends
		rhs[0] = cd*toDrink + r.ends*r.airC + r.light
	}
	for i := range r.wall {
		diag[i+1] = c + 2*r.between
		rhs[i+1] = c * r.wall[i]
	}
	diag[1] += r.inside - r.between
	diag[wallCells] += -b - r.between
	rhs[wallCells] += a
	if fixed {
		rhs[1] += r.inside * toDrink
	}
	// Thomas's algorithm: the matrix is symmetric and diagonally dominant.
	for i := 1; i <= wallCells; i++ {
		m := off[i-1] / diag[i-1]
		diag[i] -= m * off[i-1]
		rhs[i] -= m * rhs[i-1]
	}
	rhs[wallCells] /= diag[wallCells]
	for i := wallCells - 1; i >= 0; i-- {
		rhs[i] = (rhs[i] - off[i]*rhs[i+1]) / diag[i]
	}

	drink, first, last := rhs[0], rhs[1], rhs[wallCells]
	heat = a + b*last
	surface = (q0 + r.half*last) / (r.half - s)
	for i := range r.wall {
		r.wall[i] = 2*rhs[i+1] - r.wall[i]
	}
	r.surface = (q0 + r.half*r.wall[wallCells-1]) / (r.half - s)
	ends := r.ends * (r.airC - drink)
	if r.drink == 0 {
		ends = r.inside * (r.airC - first)
	} else {
		r.energy += dt * (r.inside*(first-drink) + ends + r.light)
	}
	r.balance.Air += heat * dt * r.area
	r.balance.Ends += ends * dt * r.area
	r.balance.Light += r.light * dt * r.area
	return surface, heat
}

// gather adds grams per square metre to what lies on the surface, or takes them.
func (r *glassRun) gather(grams, surfaceC float64) {
	switch {
	case grams >= 0 && surfaceC < 0:
		r.frost += grams
	case grams >= 0:
		// What the glass cannot hold runs off.
		r.dew = min(r.dew+grams, max(r.dew, r.stages.Runs.Likely))
	default:
		rest := r.dew + grams
		r.dew = max(0, rest)
		r.frost = max(0, r.frost+min(0, rest))
		if r.dew+r.frost < 1e-9 {
			r.dew, r.frost = 0, 0
		}
	}
}

// thaw melts frost with the heat that the outermost cell has above 0 degC, so that
// the cell stays at 0 until the frost is gone.
func (r *glassRun) thaw() {
	last := &r.wall[wallCells-1]
	if r.frost == 0 || *last <= 0 {
		return
	}
	melted := min(r.frost, 1000**last*r.cell/fusionHeat)
	r.frost -= melted
	r.dew += melted
	*last -= melted / 1000 * fusionHeat / r.cell
	r.balance.Thawing -= melted / 1000 * fusionHeat * r.area
}

// mark notes the events of a step, interpolated within it.
func (r *glassRun) mark(before *glassRun, dt float64) {
	note := func(event int, old, now, level float64) {
		if r.at[event] == Never && old < level && now >= level {
			r.at[event] = time.Duration((before.time + dt*(level-old)/(now-old)) * float64(time.Second))
		}
	}
	old, now := before.dew+before.frost, r.dew+r.frost
	note(eventHaze, old, now, r.stages.Haze.Likely)
	note(eventOpaque, old, now, r.stages.Opaque.Likely)
	note(eventBeads, before.dew, r.dew, r.stages.Beads.Likely)
	note(eventRuns, before.dew, r.dew, r.stages.Runs.Likely)
	if r.at[eventHaze] != Never {
		note(eventDry, -old, -now, -r.stages.Haze.Likely)
	}
	if before.frost > 0 && r.frost == 0 && r.at[eventThawed] == Never {
		r.at[eventThawed] = time.Duration(r.time * float64(time.Second))
	}
	if r.drink > 0 {
		note(eventIceGone, before.energy, r.energy, 0)
	}
	r.coldest = min(r.coldest, r.surface)
}

// settled reports that no further event can come: no ice, nothing on the glass, and
// drink and surface above the dew point in a room that warms them.
func (r *glassRun) settled() bool {
	const margin = 0.5 // K
	if r.dew+r.frost > 0 || r.drink > 0 && r.energy < 0 {
		return false
	}
	clear := r.dewC + margin
	return math.Min(r.surface, r.innerC()) > clear && r.airC > clear
}
