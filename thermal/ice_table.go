package thermal

import (
	"time"
)

// IceOnTable is real ice lying in the air of the set: a cube, a ball or a chip on a
// plate-like table. Its melt runs off but for a film.
//
// Artificial ice neither melts nor, being as warm as the room, fogs: where real ice
// is not what is advertised it may stand in.
type IceOnTable struct {
	Shape IceShape // what Size measures
	// Size is the edge, diameter or thickness, m, 0.001..0.2.
	Size float64
	// StartC is its temperature as it comes out, degC, -60..-0.1. Ice put out below
	// about -16 degC may crack when wetted: clear ice is tempered first (King and
	// Fletcher 1976, J. Atmos. Sci. 33:97: median cracking temperature, read in the
	// abstract).
	StartC float64
	// Cloudy ice sends light on longer ways and absorbs twice as much.
	Cloudy bool
	// ClingGrams is the film of melt that stays, g/m2: 5..2000, default 100 (50..200).
	// Engineering estimate: water drains.
	ClingGrams Threshold
	// Horizon is how long to look; later is Never. 0 means 6 h; at most 24 h.
	Horizon time.Duration
}

// An IceClock says how ice on a table goes.
type IceClock struct {
	Shines  Window // the surface is at 0 degC: frost is gone, it is wet and glistens
	HalfOff Window // half the mass has melted
	Gone    Window // 99 % has melted
	// Decides ranks the inputs by their share in the spread of HalfOff, or of Shines
	// if that never comes.
	Decides []Sensitivity
	Series  []IceMoment // the likely course
}

// An IceMoment is a piece of ice at one time.
type IceMoment struct {
	Time     time.Duration // since it was set down
	IceGrams float64       // solid left, g
	// PuddleGrams is what has melted and run off, g.
	PuddleGrams float64
	SurfaceC    float64 // degC
}

const (
	iceShines = iota
	iceHalf
	iceGone
	iceEvents
)

const (
	iceAirC = iota
	iceRH
	iceSpeed
	iceWind
	iceLight
	iceAbsorbs
	iceSize
	iceStart
	iceContact
	iceCling
	iceInputs
)

// icePure is how far from 0 degC the latent heat is spread, K: see Sharp.
const icePure = 0.02

type iceModel struct {
	i       IceOnTable
	air     Air
	lamps   []Lamp
	lightLo float64
	lightHi float64
	c       *compiled
	lights  [iceLights + 1]float64 // absorbed over the surface, W/m2, by radius
	step    float64                // of the radius, m
}

// iceLights is in how many steps of radius the absorbed light is kept.
const iceLights = 24

// Clock computes the ice in the air a under the lamps. A piece is taken as the ball
// of the same ratio of volume to surface; light goes through clear ice and what the
// mean path absorbs is taken as heat at its surface.
//
// The windows are 95 % bands over the room (as for a Scoop), light (LightBand),
// absorptance (x0.7..1.4), size (+-5 %), start (+-2 K), contact with the table
// (x/:2) and the film. Errors: *InputError and *RangeError.
func (i IceOnTable) Clock(a Air, lamps ...Lamp) (IceClock, error) {
	m, err := i.model(a, lamps)
	if err != nil {
		return IceClock{}, err
	}
	study := m.study()
	out, err := study.Run()
	if err != nil {
		return IceClock{}, err
	}
	c := IceClock{Shines: out[iceShines].Window, HalfOff: out[iceHalf].Window, Gone: out[iceGone].Window, Decides: out[iceHalf].Decides}
	if !c.HalfOff.MayHappen() {
		c.Decides = out[iceShines].Decides
	}
	x := make([]float64, iceInputs)
	study.inputs(x, 0, nil)
	var at [iceEvents]time.Duration
	end := m.i.Horizon.Seconds()
	if c.Gone.Likely != Never {
		end = c.Gone.Likely.Seconds()
	}
	err = new(iceRun).times(m, x, at[:], &c.Series, end/60)
	return c, err
}

func (i IceOnTable) model(a Air, lamps []Lamp) (*iceModel, error) {
	i.ClingGrams = i.ClingGrams.or(50, 100, 200)
	if i.Horizon == 0 {
		i.Horizon = 6 * time.Hour
	}
	if err := a.Validate(); err != nil {
		return nil, err
	}
	if err := within("air temperature", a.TempC, 3, 50, "degC", "ice clock: where ice melts"); err != nil {
		return nil, err
	}
	if err := i.Shape.check(i.Size); err != nil {
		return nil, err
	}
	if err := within("start temperature", i.StartC, -60, -0.1, "degC", "ice clock"); err != nil {
		return nil, err
	}
	if err := i.ClingGrams.check("melt that clings", 5, 2000, "g/m2"); err != nil {
		return nil, err
	}
	if err := within("horizon", i.Horizon.Seconds(), 1, 86400, "s", "ice clock"); err != nil {
		return nil, err
	}
	m := &iceModel{i: i, air: a, lamps: lamps}
	m.lightLo, m.lightHi = LightBand(lamps...)
	m.step = 1.15 * i.Shape.piece(i.Size).radius / iceLights // beyond the band of the size
	for k := range m.lights {
		var err error
		if m.lights[k], err = m.absorbed(float64(k) * m.step); err != nil {
			return nil, err
		}
	}
	if err := within("absorbed light", m.lights[iceLights], 0, 5000, "W/m2", "ice clock"); err != nil {
		return nil, err
	}
	var err error
	m.c, err = Sharp(0, icePure, iceDensity*iceSpecificHeat, iceDensity*meltSpecificHeat, iceDensity*fusion,
		iceConductivity, meltConductivity, -80, 95).compile()
	return m, err
}

// light is absorbed at a radius between the steps.
func (m *iceModel) light(radius float64) float64 {
	k := min(int(radius/m.step), iceLights-1)
	return m.lights[k] + (radius/m.step-float64(k))*(m.lights[k+1]-m.lights[k])
}

// absorbed is what a ball of the radius absorbs over its surface, W/m2: it catches
// light on a quarter of that, on paths of two thirds of the diameter.
func (m *iceModel) absorbed(radius float64) (float64, error) {
	a, err := ClearIce(4.0 / 3 * radius)
	if err != nil {
		return 0, err
	}
	light, err := a.Absorbed(m.lamps...)
	if m.i.Cloudy {
		light *= 2
	}
	return light / 4, err
}

func (m *iceModel) study() Study {
	factor := func(name string, low, high float64) Uncertain {
		return Uncertain{Name: name, Likely: 1, Low: low, High: high, Scale: true}
	}
	in := make([]Uncertain, iceInputs)
	in[iceAirC], in[iceRH], in[iceSpeed], in[iceWind] = roomUncertain(m.air)
	in[iceLight] = factor("light", m.lightLo, m.lightHi)
	in[iceAbsorbs] = factor("absorptance", 1, 1)
	if len(m.lamps) > 0 {
		in[iceAbsorbs] = factor("absorptance", 0.7, 1.4)
	}
	in[iceSize] = factor("size", 1/1.05, 1.05)
	in[iceStart] = Uncertain{Name: "start temperature", Likely: m.i.StartC, Low: m.i.StartC - 2, High: min(m.i.StartC+2, -0.05), Min: -75, Max: -0.05}
	in[iceContact] = factor("contact with the table", 0.5, 2)
	in[iceCling] = m.i.ClingGrams.uncertain("melt that clings")
	in[iceCling].Min, in[iceCling].Max = 1, 4000
	return Study{Inputs: in, Events: iceEvents, Model: func() func([]float64, []time.Duration) error {
		run := new(iceRun)
		return func(x []float64, at []time.Duration) error { return run.times(m, x, at, nil, 0) }
	}}
}
