package thermal

import (
	"math"

	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/root"
	"example.org/honestplate/thermal/internal/solve"
)

// An icedRun is the work space of one core.
type icedRun struct {
	table fluxTable
	gain  [gainPoints]float64 // W into the drink, at temperatures gainStep apart
	path  []drinkPoint

	wall   float64 // J/K that the wall adds to the drink
	excess float64 // J that the drink gets of what the wall holds at the start beyond its steady state
	tau    float64 // s in which the wall gives that up

	in, imbalance float64 // heat from outside and a warm wall, and what of it is unaccounted for, J
}

type drinkPoint struct{ t, tempC float64 }

const (
	gainPoints = 27
	gainStep   = 4.0 // K, from -4 degC
	gainLow    = -4.0
)

// reckon tabulates what comes in against the temperature of the drink: through the wall,
// whose outside is where the air's flux is the wall's, and the ends of the glass.
func (r *icedRun) reckon(g Glass, air Air, wind float64) error {
	surface := g.outside()
	surface.ConvectionFactor = wind
	ex, err := surface.In(heat.MoistAir(air))
	if err != nil {
		return err
	}
	r.table.reset(ex)
	wall := 1 / (1/g.InsideH + g.WallThickness/g.Wall.Conductivity)
	side, ends := g.side(), g.endsConductance()
	// The middle of the wall, per kelvin from the drink to the outside.
	middle := wall * (1/g.InsideH + g.WallThickness/g.Wall.Conductivity/2)
	var mean [gainPoints]float64 // temperature of the wall
	for i := range r.gain {
		t := gainLow + gainStep*float64(i)
		outside := root.Rising(func(s float64) float64 {
			q, _ := r.table.at(s)
			return wall*(s-t) - q
		}, min(t, air.TempC)-5, max(t, air.TempC)+5)
		r.gain[i] = wall*(outside-t)*side + ends*(air.TempC-t)
		mean[i] = t + middle*(outside-t)
	}
	heat := g.Wall.Density * g.Wall.SpecificHeat * g.WallThickness * side
	const zero, twenty = 1, 6 // degC in the table
	rise := mean[twenty] - mean[zero]
	r.wall = heat * rise / 20
	// Its excess goes to the drink and, the less, to the room; W/K each.
	toDrink := wall / middle * side
	toRoom := (r.gain[zero] - r.gain[twenty] - 20*ends) / rise
	share := toDrink / (toDrink + toRoom)
	r.excess = share * (heat*(g.WallC.Value-mean[zero]) - r.wall*g.DrinkC.Value)
	r.tau = heat / (toDrink + toRoom)
	return r.table.err
}

func (r *icedRun) at(tempC float64) float64 {
	x := (tempC - gainLow) / gainStep
	i := min(max(int(x), 0), gainPoints-2)
	return r.gain[i] + (x-float64(i))*(r.gain[i+1]-r.gain[i])
}

// The state. Heats are counted so that their sum is what came in, whatever the
// step: drink and the wall that follows it against 0 degC, ice against ice at 0 degC.
const (
	stateDrink = iota // heat of the drink, J
	stateIce          // mass of ice, kg
	stateCold         // heat of the ice, J, 0 or less
	stateIn           // heat from outside and from a warm wall so far, J
)

// iceEven is how near to 0 degC ice counts as at it, K: what is missing is then
// taken as a little more ice.
const iceEven = 0.02

// drinkTemp is the temperature of the drink in a state, degC.
func (r *icedRun) drinkTemp(y [4]float64, all float64) float64 {
	return y[stateDrink] / ((all-max(y[stateIce], 0))*heat.WaterHeat + r.wall)
}

// slopes returns the equations for one set of inputs.
func (r *icedRun) slopes(m *icedModel, ice0, all float64) func(float64, [4]float64) [4]float64 {
	light, h := m.light*m.brightness, m.d.IceH.Likely
	radius0 := m.d.Shape.piece(m.d.Size).radius
	return func(t float64, y [4]float64) (dy [4]float64) {
		ice := max(y[stateIce], 0)
		temp := r.drinkTemp(y, all)
		radius := max(radius0*math.Cbrt(ice/ice0), 1e-6)
		area := 3 * ice / (heat.Ice().Density * radius) // of all pieces: 3 V/r
		in := h * area * max(temp, 0)
		inner := 0.0
		if y[stateCold] < 0 && ice > 0 {
			inner = 5 * heat.Ice().Conductivity / radius * area * -y[stateCold] / (ice * heat.Ice().SpecificHeat)
		}
		outside := r.at(temp) + light
		if r.tau > 0 {
			outside += r.excess / r.tau * math.Exp(-t/r.tau)
		}
		dy[stateDrink] = outside - in // melt joins at 0 degC, without heat
		dy[stateIce] = (inner - in) / heat.Fusion
		dy[stateCold] = inner
		dy[stateIn] = outside
		return dy
	}
}

// integrate computes the events, the coldest temperature and, if asked, the course.
func (r *icedRun) integrate(m *icedModel, at []float64, series *[]IcedDrinkPoint, every float64) float64 {
	d := m.d
	ice0 := d.IceGrams / 1000 * m.iceFactor
	all := d.DrinkGrams/1000 + ice0
	kelvin := all * heat.WaterHeat // J
	ode := solve.Rk23{Slope: r.slopes(m, ice0, all), Tol: 2e-4, Dt: 0.1,
		Scale: [4]float64{kelvin, ice0, 5 * ice0 * heat.Ice().SpecificHeat, 100 * kelvin}}
	y := [4]float64{d.DrinkGrams/1000*heat.WaterHeat*d.DrinkC.Value + r.wall*d.DrinkC.Value, ice0, ice0 * heat.Ice().SpecificHeat * d.IceC}
	content := func() float64 { return y[stateDrink] + y[stateCold] - y[stateIce]*heat.Fusion }
	before := content()
	for i := range at {
		at[i] = never
	}
	watered := ice0 - d.DilutionShare.Likely*d.DrinkGrams/1000
	note := func(t float64) {
		if series != nil {
			ice := max(y[stateIce], 0)
			*series = append(*series, IcedDrinkPoint{Time: seconds(t), DrinkC: r.drinkTemp(y, all), IceGrams: 1000 * ice, MeltGrams: 1000 * (ice0 - ice)})
		}
	}
	note(0)
	r.path = append(r.path[:0], drinkPoint{0, r.drinkTemp(y, all)})
	horizon, next := d.Horizon.Seconds(), every
	if series != nil {
		horizon = min(horizon, 60*every)
	}
	for t := 0.0; t < horizon-1e-6; {
		limit := horizon - t
		if series != nil {
			limit = min(limit, next-t)
		}
		t1, z := ode.Step(t, y, limit)
		cross := func(e int, level float64) {
			before, after := y[stateIce], z[stateIce]
			if at[e] == never && before > level && after <= level {
				at[e] = t + (t1-t)*(before-level)/(before-after)
			}
		}
		cross(drinkHalf, 0.5*ice0)
		cross(drinkGone, 0.01*ice0)
		cross(drinkWatered, watered)
		t, y = t1, z
		if c := y[stateCold]; c != 0 && c > -iceEven*heat.Ice().SpecificHeat*max(y[stateIce], 0) {
			y[stateIce] -= c / heat.Fusion
			y[stateCold] = 0
			ode.Primed = false
		}
		r.path = append(r.path, drinkPoint{t, r.drinkTemp(y, all)})
		if series != nil && t >= next-1e-6 {
			note(t)
			next += every
		}
		if series == nil && at[drinkGone] != never {
			break
		}
	}
	r.imbalance, r.in = content()-before-y[stateIn], y[stateIn]
	coldest := r.drinkTemp(y, all)
	for _, p := range r.path {
		coldest = min(coldest, p.tempC)
	}
	for i, p := range r.path {
		if p.tempC > coldest+1 {
			continue
		}
		at[drinkCold] = p.t
		if i > 0 {
			b := r.path[i-1]
			at[drinkCold] = b.t + (p.t-b.t)*(b.tempC-coldest-1)/(b.tempC-p.tempC)
		}
		break
	}
	return coldest
}
