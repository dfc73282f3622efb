package thermal

import (
	"cmp"
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
	ice            iceStore
	ends           float64 // conductance of the drink to the room by its surface and base, W/(m2 K)
	watered        float64 // kg of melt that counts
	dew, frost     float64 // g/m2
	stages         FogStages
	airC, dewC     float64 // of the room; dewC is -100 where there is none
	horizon, scale float64 // s; scale shortens the steps for convergence tests

	time    float64      // s
	rate    float64      // of dew or frost in the last step, kg/(m2 s)
	thawed  float64      // when the last frost melted, s
	coldest float64      // surface, deg C
	path    []drinkPoint // of an iced drink
	// coldestDrink is that of the drink, deg C, or of the inner wall.
	coldestDrink float64
	at           [glassEvents]float64 // s
	balance      HeatBalance
	course       bool // its points are noted
	series       []GlassPoint
}

// start prepares a run of a complete glass.
func (g Glass) start(a Air, light, convection float64) (glassRun, error) {
	surface := g.outside()
	surface.ConvectionFactor = convection
	dry, err := surface.In(a.moist())
	surface.Activity = 1
	wet, wetErr := surface.In(a.moist())
	if err := cmp.Or(err, wetErr); err != nil {
		return glassRun{}, err
	}
	r := glassRun{
		out: dry, wet: wet,
		area:  g.side(),
		empty: g.DrinkGrams == 0, iced: g.IceGrams > 0,
		stages: g.Stages, airC: a.TempC, dewC: -100,
		horizon: g.Horizon.Seconds(), scale: 1, coldest: g.WallC.Value,
	}
	if dew, err := a.moist().DewPointC(); err == nil {
		r.dewC = dew
	}
	nothing(r.at[:])
	cell := g.WallThickness / wallCells
	r.Top = 2 * g.Wall.Conductivity / cell
	r.Surface, r.BelowC = g.WallC.Value, a.TempC
	inside := 1 / (1/g.InsideH + 1/r.Top)
	if r.empty {
		r.Below = inside
	} else {
		r.Cells, r.Link[0] = 1, inside
		r.ice = g.store()
		r.TempC[0], r.Heat[0] = g.DrinkC.Value, r.ice.heatOf()/r.area
		r.ends = g.endsConductance() / r.area
		r.Below = r.ends
		r.watered = g.DilutionShare.Likely * g.DrinkGrams / 1000
		r.Source = light / math.Pi // the upright section is 1/pi of the side
	}
	for range wallCells {
		r.TempC[r.Cells] = g.WallC.Value
		r.Heat[r.Cells] = g.Wall.Density * g.Wall.SpecificHeat * cell
		r.Link[r.Cells] = g.Wall.Conductivity / cell
		r.Cells++
	}
	return r, nil
}

// A drinkPoint is the temperature of a drink at one time.
type drinkPoint struct{ t, tempC float64 }

// run carries the glass to its horizon, or to where nothing more can happen.
func (r *glassRun) run() error {
	start := r.content()
	if r.iced {
		r.path = append(r.path, drinkPoint{0, r.TempC[0]})
	}
	for r.time < r.horizon {
		dt := min(max(0.25, 0.08*r.time), 180)
		if r.frost > 0 {
			dt = min(dt, 2) // the wall cools and warms within seconds of the frost's coming and going
		}
		if film := (r.dew + r.frost) / 1000; film > 0 && r.rate < 0 {
			dt = min(dt, max(5, film/-r.rate)) // to where it is dry
		}
		if r.iced {
			dt = min(dt, r.ice.longest())
		}
		dt *= r.scale
		if err := r.step(min(dt, r.horizon-r.time)); err != nil {
			return err
		}
		if !r.course && r.settled() || r.frozen() {
			break
		}
	}
	r.balance.Stored = r.content() - start
	r.cold()
	return nil
}

// content is the heat in wall, drink and ice, J.
func (r *glassRun) content() float64 { return r.Stored()*r.area + r.ice.content() }

// cold notes when an iced drink came within 1 K of the coldest it gets, for the last time
// before it is that cold.
func (r *glassRun) cold() {
	r.coldestDrink = r.TempC[0]
	coldest := 0
	for i, p := range r.path {
		if p.tempC <= r.coldestDrink {
			r.coldestDrink, coldest = p.tempC, i
		}
	}
	if len(r.path) == 0 {
		return
	}
	level := r.coldestDrink + 1
	r.at[eventCold] = 0
	for i := coldest; i > 0; i-- {
		if a, b := r.path[i-1], r.path[i]; a.tempC > level {
			r.at[eventCold] = a.t + (b.t-a.t)*(a.tempC-level)/(a.tempC-b.tempC)
			break
		}
	}
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
	var iceK, sinkC, faceC, radius float64 // the ice's conductance, W/(m2 K), and where it leads
	if r.ice.kg > 0 {
		if iceK, sinkC, faceC, radius, err = r.ice.conductance(r.TempC[0], dt); err != nil {
			return err
		}
		iceK /= r.area
		r.Below = r.ends + iceK
		r.BelowC = (r.ends*r.airC + iceK*sinkC) / r.Below
	}
	before := *r
	flow := r.advance(dt, f.Total(), f.Slope)
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
		flow = r.advance(dt, f.Total(), f.Slope)
	}
	r.time += dt
	r.rate = rate
	toDrink := flow.Below // through the ends
	if before.ice.kg > 0 {
		drinkC := r.BelowC - flow.Below/r.Below // mean over the step
		toDrink = r.ends * (r.airC - drinkC)
		melted, left := r.ice.take(iceK*(drinkC-sinkC)*dt*r.area, faceC, radius, dt)
		r.join(melted, faceC, left)
		if r.ice.kg == 0 {
			r.Below, r.BelowC = r.ends, r.airC
		}
	}
	if !r.empty {
		r.freezeOut()
	}
	r.balance.Air += flow.Heat * dt * r.area
	r.balance.Ends += toDrink * dt * r.area
	r.balance.Light += r.Source * dt * r.area
	r.gather(rate*dt*1000, before.Surface)
	r.thaw(dt)
	r.mark(&before, dt)
	if r.course {
		r.series = append(r.series, GlassPoint{Time: seconds(r.time), DrinkC: r.TempC[0], SurfaceC: r.Surface,
			DewGM2: r.dew, FrostGM2: r.frost, IceGrams: 1000 * (r.ice.kg + r.ice.slush), MeltGrams: 1000 * r.ice.melt()})
	}
	return nil
}

// join mixes melt, kg, of a temperature into the drink, and heat, J.
func (r *glassRun) join(kg, tempC, joules float64) {
	held := r.Heat[0]*r.TempC[0]*r.area + kg*heat.WaterHeat*tempC + joules
	r.Heat[0] = r.ice.heatOf() / r.area
	r.TempC[0] = held / (r.Heat[0] * r.area)
}

// frozen reports that half of the drink's water has become ice: no drink any more.
func (r *glassRun) frozen() bool {
	return !r.empty && r.ice.melt() < -0.5*r.ice.poured*r.ice.drink.WaterShare()
}

// freezeOut lets water freeze out of a drink below its freezing point, and what has
// frozen out melt again.
func (r *glassRun) freezeOut() {
	short := r.ice.freezesC() - r.TempC[0]
	if short <= 0 && r.ice.slush == 0 {
		return
	}
	held := r.Heat[0] * r.TempC[0] * r.area
	frozen := r.Heat[0] * r.area * short / (heat.Fusion + heat.WaterHeat*r.ice.freezesC())
	frozen = max(frozen, -r.ice.slush)
	r.ice.slush += frozen
	r.Heat[0] = r.ice.heatOf() / r.area
	r.TempC[0] = (held + heat.Fusion*frozen) / (r.Heat[0] * r.area)
}
