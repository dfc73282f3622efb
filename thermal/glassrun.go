package thermal

import (
	"math"
	"time"
)

const wallCells = 4

// A glassRun is one computation of a glass. Per square metre of outside the wall
// is a row of cells from the drink (0) to the air; the surface itself holds no
// heat. Each step is a linearly implicit trapezoid: the flux outside is linearised
// about the surface's last temperature, and the cells and the drink are solved
// together, so that what the account says flowed is exactly what the cells gained.
type glassRun struct {
	out, wet       Exchanger // dry surface; with dew or frost on it
	area           float64   // outside, m2
	cell           float64   // heat capacity of a cell, J/(m2 K)
	between, half  float64   // conductance between cells, and cell to surface, W/(m2 K)
	inside         float64   // from the first cell to drink or inner air, W/(m2 K)
	drink          float64   // heat capacity of the drink, J/(m2 K); 0 if empty
	ends           float64   // to the room, W/(m2 K) of outside
	light          float64   // into the drink, W/m2 of outside
	airC, dewC     float64   // of the room; dewC is -100 where there is none
	stages         FogStages
	horizon, scale float64 // s; scale shortens the steps for convergence tests

	wall       [wallCells]float64 // deg C
	energy     float64            // of drink and ice, J/m2, 0 = water at 0 degC
	surface    float64            // deg C
	dew, frost float64            // g/m2
	time       float64            // s
	coldest    float64            // surface, deg C
	at         [glassEvents]time.Duration
	balance    HeatBalance
	series     []GlassPoint // appended to if not nil
}

// start prepares a run of a complete glass.
func (g Glass) start(a Air, light float64) (glassRun, error) {
	length := g.Height
	if g.DrinkGrams > 0 {
		length = g.depth()
	}
	s := Surface{Shape: VerticalCylinder, Length: length, Diameter: g.Diameter, Emissivity: g.Emissivity}
	dry, err := s.In(a)
	if err != nil {
		return glassRun{}, err
	}
	wet := dry
	wet.activity = 1
	cell := g.WallThickness / wallCells
	r := glassRun{
		out: dry, wet: wet,
		area:    math.Pi * g.Diameter * length,
		cell:    g.Wall.Density * g.Wall.SpecificHeat * cell,
		between: g.Wall.Conductivity / cell,
		half:    2 * g.Wall.Conductivity / cell,
		airC:    a.TempC, stages: g.Stages, horizon: g.Horizon.Seconds(), scale: 1,
		surface: g.WallC, coldest: g.WallC, dewC: -100,
	}
	if dew, err := a.DewPointC(); err == nil {
		r.dewC = dew
	}
	r.inside = 1 / (1/g.InsideH + 1/r.half)
	for i := range r.wall {
		r.wall[i] = g.WallC
	}
	for i := range r.at {
		r.at[i] = Never
	}
	if g.DrinkGrams > 0 {
		r.drink = (g.DrinkGrams + g.IceGrams) / 1000 * drinkHeat / r.area
		r.energy = g.energy() / r.area
		r.ends = g.endsConductance() / r.area
		r.light = light / math.Pi // the upright section is 1/pi of the side
	}
	if g.IceGrams > 0 && r.energy >= 0 {
		r.at[eventIceGone] = 0
	}
	return r, nil
}

// drinkC is the drink's temperature: 0 while there is ice.
func (r *glassRun) drinkC() float64 {
	if r.drink == 0 {
		return r.airC
	}
	return max(0, r.energy) / r.drink
}

// run carries the glass to its horizon, or to where nothing more can happen.
func (r *glassRun) run() error {
	start := r.stored()
	for r.time < r.horizon {
		dt := r.scale * min(max(0.25, 0.05*r.time), 120)
		dt = min(dt, r.horizon-r.time)
		if err := r.step(dt); err != nil {
			return err
		}
		if r.series == nil && r.settled() {
			break
		}
	}
	r.balance.Stored = r.stored() - start
	return nil
}

// stored is the heat in wall, drink and ice, J.
func (r *glassRun) stored() float64 {
	sum := r.energy
	for _, t := range r.wall {
		sum += r.cell * t
	}
	return sum * r.area
}

// flux is what the outside exchanges at its present temperature.
func (r *glassRun) flux() (Flux, error) {
	x := &r.out
	if r.dew > 0 || r.frost > 0 {
		x = &r.wet
	}
	return x.At(r.surface, 0)
}

// step advances by dt.
func (r *glassRun) step(dt float64) error {
	f, err := r.flux()
	if err != nil {
		return err
	}
	latent := latentHeat(r.surface)
	before := *r
	mean, heat := r.advance(dt, f)
	rate := f.VapourRate + f.VapourSlope*(mean-before.surface)
	// A film cannot dry by more than there is: the last of it goes evenly.
	if film := (r.dew + r.frost) / 1000; film+rate*dt < 0 {
		*r = before
		rate = -film / dt
		f.Slope -= f.VapourSlope * latent
		f.Latent = rate * latent
		mean, heat = r.advance(dt, f)
	}
	r.time += dt
	r.gather(rate*dt*1000, before.surface)
	r.thaw()
	r.mark(&before, dt)
	if r.series != nil {
		r.series = append(r.series, GlassPoint{
			Time:   time.Duration(r.time * float64(time.Second)),
			DrinkC: r.innerC(), SurfaceC: r.surface, DewGrams: r.dew, Frost: r.frost,
			IceGrams: max(0, -r.energy) / fusionHeat * 1000 * r.area,
			HeatFlux: heat, DewPerMin: rate * 6e4,
		})
	}
	return nil
}

func (r *glassRun) innerC() float64 {
	if r.drink == 0 {
		return r.wall[0]
	}
	return r.drinkC()
}
