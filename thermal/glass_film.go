package thermal

import (
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
)

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

// frostHolds makes a cell that frost keeps at 0 degC take up so many times the heat.
const frostHolds = 1e9

// advance is a step of the stack in which frost that thaws keeps the outermost cell at
// 0 degC: the cell ends as warm as the heat it took would make it without frost.
func (r *glassRun) advance(dt, flux, slope float64) solve.Flow {
	last := r.Cells - 1
	own := r.Heat[last]
	holds := r.frost > 0 && r.TempC[last] == 0
	if holds {
		r.Heat[last] *= frostHolds
	}
	flow := r.Advance(dt, flux, slope)
	if holds {
		r.Heat[last], r.TempC[last] = own, r.TempC[last]*frostHolds
	}
	return flow
}

// thaw melts frost with the heat that the outermost cell took above 0 degC in a step, so
// that the cell is at 0 until the frost is gone.
func (r *glassRun) thaw(dt float64) {
	last := r.Cells - 1
	if r.frost == 0 || r.TempC[last] <= 0 {
		return
	}
	most := 1000 * r.TempC[last] * r.Heat[last] / heat.Fusion
	melted := min(r.frost, most)
	r.thawed = r.time - dt*(1-melted/most)
	r.frost -= melted
	r.dew += melted
	r.TempC[last] -= melted / 1000 * heat.Fusion / r.Heat[last]
	if r.frost > 0 {
		r.TempC[last] = 0 // up to rounding, so that the frost holds it
	}
	r.balance.Thawing -= melted / 1000 * heat.Fusion * r.area
}

// mark notes the events of a step, interpolated within it.
func (r *glassRun) mark(before *glassRun, dt float64) {
	note := func(event int, was, is, level float64) {
		crossed(&r.at[event], before.time, dt, was, is, level)
	}
	old, now := before.dew+before.frost, r.dew+r.frost
	note(eventHaze, old, now, r.stages.Haze.Likely)
	note(eventOpaque, old, now, r.stages.Opaque.Likely)
	note(eventBeads, before.dew, r.dew, r.stages.Beads.Likely)
	note(eventRuns, before.dew, r.dew, r.stages.Runs.Likely)
	if r.at[eventHaze] != never {
		note(eventDry, -old, -now, -r.stages.Haze.Likely)
	}
	if before.frost > 0 && r.frost == 0 && r.at[eventThawed] == never {
		r.at[eventThawed] = max(r.thawed, before.time)
	}
	if r.iced {
		note(eventWatered, before.ice.melt(), r.ice.melt(), r.watered)
		was, is := before.ice.kg+before.ice.slush, r.ice.kg+r.ice.slush
		note(eventIceHalf, -was, -is, -0.5*r.ice.start)
		note(eventIceGone, -was, -is, -0.01*r.ice.start)
		r.path = append(r.path, drinkPoint{r.time, r.TempC[0]})
	}
	r.coldest = min(r.coldest, r.Surface)
}

// settled reports that no further event can come: no ice, nothing on the glass, and
// drink and surface above the dew point in a room that warms them.
func (r *glassRun) settled() bool {
	const margin = 0.5 // K
	if r.dew+r.frost > 0 || r.ice.kg+r.ice.slush > 0 {
		return false
	}
	clear := r.dewC + margin
	return min(r.Surface, r.TempC[0]) > clear && r.airC > clear
}
