package thermal

import (
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
)

const wallCells = 4

// A glassRun is one computation of a glass: a stack of the drink (cell 0) and the
// wall under its outer surface, per square metre of outside, and what lies on it.
type glassRun struct {
	solve.Stack
	out, wet       heat.Exchanger // dry surface; with dew or frost on it
	area           float64        // outside, m2
	empty, iced    bool           // nothing in it; ice in the drink to begin with
	energy         float64        // of drink and ice, J/m2, 0 = water at 0 degC
	dew, frost     float64        // g/m2
	stages         FogStages
	airC, dewC     float64 // of the room; dewC is -100 where there is none
	horizon, scale float64 // s; scale shortens the steps for convergence tests

	time    float64              // s
	rate    float64              // of dew or frost in the last step, kg/(m2 s)
	coldest float64              // surface, deg C
	at      [glassEvents]float64 // s
	balance HeatBalance
	series  []GlassPoint // appended to if not nil
}

// start prepares a run of a complete glass.
func (g Glass) start(a Air, light, convection float64) (glassRun, error) {
	surface := g.outside()
	surface.ConvectionFactor = convection
	dry, err := surface.In(heat.MoistAir(a))
	if err != nil {
		return glassRun{}, err
	}
	surface.Activity = 1
	wet, err := surface.In(heat.MoistAir(a))
	if err != nil {
		return glassRun{}, err
	}
	r := glassRun{
		out: dry, wet: wet,
		area:  g.side(),
		empty: g.DrinkGrams == 0, iced: g.IceGrams > 0,
		stages: g.Stages, airC: a.TempC, dewC: -100,
		horizon: g.Horizon.Seconds(), scale: 1, coldest: g.WallC.Value,
	}
	if dew, err := heat.MoistAir(a).DewPointC(); err == nil {
		r.dewC = dew
	}
	for i := range r.at {
		r.at[i] = never
	}
	cell := g.WallThickness / wallCells
	r.Top = 2 * g.Wall.Conductivity / cell
	r.Surface, r.BelowC = g.WallC.Value, a.TempC
	inside := 1 / (1/g.InsideH + 1/r.Top)
	if r.empty {
		r.Below = inside
	} else {
		r.Cells, r.Link[0] = 1, inside
		r.Heat[0] = (g.DrinkGrams + g.IceGrams) / 1000 * drinkHeat / r.area
		r.energy = g.energy() / r.area
		r.Below = g.endsConductance() / r.area
		r.Source = light / math.Pi // the upright section is 1/pi of the side
		r.settle()
		if r.iced && !r.Held {
			r.at[eventIceGone] = 0
		}
	}
	for range wallCells {
		r.TempC[r.Cells] = g.WallC.Value
		r.Heat[r.Cells] = g.Wall.Density * g.Wall.SpecificHeat * cell
		r.Link[r.Cells] = g.Wall.Conductivity / cell
		r.Cells++
	}
	return r, nil
}

// settle gives the drink the temperature of its heat: 0 degC while there is ice.
func (r *glassRun) settle() {
	if r.empty {
		return
	}
	r.Held = r.energy < 0
	r.TempC[0] = max(0, r.energy) / r.Heat[0]
}

// run carries the glass to its horizon, or to where nothing more can happen.
func (r *glassRun) run() error {
	start := r.content()
	for r.time < r.horizon {
		dt := min(max(0.25, 0.08*r.time), 180)
		if r.frost > 0 {
			dt = min(dt, 4) // thawing is done between the steps
		}
		if film := (r.dew + r.frost) / 1000; film > 0 && r.rate < 0 {
			dt = min(dt, max(5, film/-r.rate)) // to where it is dry
		}
		dt *= r.scale
		if err := r.step(min(dt, r.horizon-r.time)); err != nil {
			return err
		}
		if r.series == nil && r.settled() {
			break
		}
	}
	r.balance.Stored = r.content() - start
	return nil
}

// content is the heat in wall, drink and ice, J.
func (r *glassRun) content() float64 {
	sum := r.Stored()
	if !r.empty {
		sum += r.energy - r.Heat[0]*r.TempC[0]
	}
	return sum * r.area
}

// step advances by dt.
func (r *glassRun) step(dt float64) error {
	x := &r.out
	if r.dew > 0 || r.frost > 0 {
		x = &r.wet
	}
	f, err := x.At(r.Surface, 0)
	if err != nil {
		return err
	}
	before := *r
	flow := r.Advance(dt, f.Total(), f.Slope)
	rate := f.VapourRate + f.VapourSlope*(flow.Surface-before.Surface)
	// A film cannot dry by more than there is: the last of it goes evenly.
	if film := (r.dew + r.frost) / 1000; film+rate*dt < 0 {
		latent, err := heat.LatentHeat(before.Surface)
		if err != nil {
			return err
		}
		*r = before
		rate = -film / dt
		f.Slope -= f.VapourSlope * latent
		f.Latent = rate * latent
		flow = r.Advance(dt, f.Total(), f.Slope)
	}
	r.time += dt
	r.rate = rate
	if !r.empty {
		r.energy += flow.First * dt
		r.settle()
	}
	r.balance.Air += flow.Heat * dt * r.area
	r.balance.Ends += flow.Below * dt * r.area
	r.balance.Light += r.Source * dt * r.area
	r.gather(rate*dt*1000, before.Surface)
	r.thaw()
	r.mark(&before, dt)
	if r.series != nil {
		p := GlassPoint{
			Time:   seconds(r.time),
			DrinkC: r.TempC[0], SurfaceC: r.Surface, DewGM2: r.dew, FrostGM2: r.frost,
			HeatFlux: flow.Heat, DewGM2Min: rate * 6e4,
		}
		if r.Held {
			p.IceGrams = -r.energy / heat.Fusion * 1000 * r.area
		}
		r.series = append(r.series, p)
	}
	return nil
}
