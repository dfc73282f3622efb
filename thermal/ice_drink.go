package thermal

import (
	"math"
	"time"
)

// An IcedDrink is a drink with pieces of real ice just put in, in a glass of soda-lime.
// Unlike Glass, which looks at the outside and takes drink and ice as one, it follows
// how fast the pieces give up their cold: how long they last by shape and size, how cold
// the drink gets and how much it is diluted. The heat from the room is that of the
// Glass of the same measures; since the drink is a little warmer than its ice, it takes
// up less and keeps some, and its ice lasts longer than the Glass says: in a tumbler by a
// tenth for chips of 5 mm, a fifth for cubes of 3 cm and two fifths for one large ball.
type IcedDrink struct {
	DrinkGrams float64  // the liquid, g, water-like; 1..1e5
	DrinkC     float64  // degC as poured, 0..95
	Shape      IceShape // of every piece
	Size       float64  // of a piece, m, 0.001..0.2
	IceGrams   float64  // all of it, g, above 0, at most 1e5
	IceC       float64  // degC as it goes in, -40..0
	// Diameter of the glass, outside, m, 0.02..0.5.
	Diameter float64
	// Height of the glass, outside, m, up to 1; 0 means a fifth more than the liquid's.
	Height float64
	// WallC is the temperature of the glass as it is filled, degC, 0..95: the room's
	// from the shelf.
	WallC float64
	// WallThickness of the glass, m, 0.0001..0.02; 0 means 3 mm of soda-lime glass.
	WallThickness float64
	// IceH is the heat transfer coefficient between drink and ice, W/(m2 K): 20..10000,
	// default 400 (150..1200). Nusselt numbers of a sphere in water (Churchill, see
	// NusseltSphere) give 300 to 500 for pieces of 2 to 5 cm; near 4 degC, where water
	// hardly rises or sinks, less; stirred, much more. Engineering estimate.
	IceH Threshold
	// DilutionShare is the melt, as a share of the drink as poured, at which the drink
	// counts as watered: 0.005..10, default 0.10 (0.08..0.12). Engineering estimate.
	DilutionShare Threshold
	// Absorptance of the drink; zero means water as wide as the bore.
	Absorptance Absorptance
	// Horizon is how long to look; later is Never. 0 means 3 h; at most 24 h.
	Horizon time.Duration
}

// An IcedDrinkClock says how an iced drink goes.
type IcedDrinkClock struct {
	// Cold is when the drink has come within 1 K of the coldest it gets.
	Cold Window
	// Watered is when the melt reaches the DilutionShare.
	Watered Window
	// IceHalf and IceGone are when half and 99 % of the ice has melted. It does not
	// count that a little of the drink may freeze onto very cold ice first.
	IceHalf, IceGone Window
	// ColdestC is the lowest temperature of the drink on its likely course, degC.
	ColdestC float64
	// Decides ranks the inputs by their share in the spread of IceGone, or of Watered
	// if the ice stays.
	Decides []Sensitivity
	Series  []IcedDrinkMoment // the likely course
}

// An IcedDrinkMoment is an iced drink at one time.
type IcedDrinkMoment struct {
	Time      time.Duration // since the ice went in
	DrinkC    float64       // degC
	IceGrams  float64       // ice left
	MeltGrams float64       // dilution so far, g; below 0 while drink freezes onto the ice
}

const (
	drinkCold = iota
	drinkWatered
	drinkHalf
	drinkGone
	drinkEvents
)

const (
	drinkAirC = iota
	drinkRH
	drinkSpeed
	drinkWind
	drinkLight
	drinkIceH
	drinkInside
	drinkEnds
	drinkStart
	drinkIceC
	drinkIceGrams
	drinkShare
	drinkInputs
)

type icedModel struct {
	d       IcedDrink
	glass   Glass // that it stands in, complete
	air     Air
	light   float64 // W, absorbed
	lightLo float64
	lightHi float64
}

// Clock computes the drink in the air a under the lamps:
//
//	d(m_d c T)/dt     = gain from the room - h A T    the drink; melt joins at 0 degC
//	L dm_i/dt         = G (0 - T_i) - h A T           melting at the ice's surface
//	d(m_i c_i T_i)/dt = G (0 - T_i)                   the ice below 0 degC
//
// A is the surface of the pieces, balls of the same ratio of volume to surface,
// which shrinks as m_i^(2/3); G = 5 k A/r is the conductance into a ball. The melt
// joins the drink. The room reaches the drink as in Glass: through the wall, by
// convection, radiation and dew (see Surface), through surface and base (EndsH) and down
// the wall above the liquid. What the wall holds beyond its steady state as it is filled
// goes as exp(-t/tau), most of it into the drink, within a minute or two for glass; then
// the wall follows the drink.
//
// The windows are 95 % bands over the room (as for a Scoop), light (LightBand),
// IceH, the heat transfer to the wall, surface and base (as for a Glass), the drink's (+-1 K) and the ice's temperature (+-2 K), the mass of ice
// (+-5 %) and the dilution that counts. Errors: *InputError and *RangeError, among
// them ice so cold and much that it freezes half the drink.
func (d IcedDrink) Clock(a Air, lamps ...Lamp) (IcedDrinkClock, error) {
	m, err := d.model(a, lamps)
	if err != nil {
		return IcedDrinkClock{}, err
	}
	study := m.study()
	out, err := study.Run()
	if err != nil {
		return IcedDrinkClock{}, err
	}
	c := IcedDrinkClock{Cold: out[drinkCold].Window, Watered: out[drinkWatered].Window,
		IceHalf: out[drinkHalf].Window, IceGone: out[drinkGone].Window, Decides: out[drinkGone].Decides}
	if !c.IceGone.MayHappen() {
		c.Decides = out[drinkWatered].Decides
	}
	x := make([]float64, drinkInputs)
	study.inputs(x, 0, nil)
	end := m.d.Horizon.Seconds()
	if c.IceGone.Likely != Never {
		end = min(end, 1.2*c.IceGone.Likely.Seconds())
	}
	var at [drinkEvents]time.Duration
	coldest, err := new(icedRun).times(m, x, at[:], &c.Series, end/60)
	c.ColdestC = coldest
	return c, err
}

func (d IcedDrink) model(a Air, lamps []Lamp) (*icedModel, error) {
	d.IceH = d.IceH.or(150, 400, 1200)
	d.DilutionShare = d.DilutionShare.or(0.08, 0.10, 0.12)
	if d.Horizon == 0 {
		d.Horizon = 3 * time.Hour
	}
	if d.WallThickness == 0 {
		d.WallThickness = 0.003
	}
	if err := a.Validate(); err != nil {
		return nil, err
	}
	if err := d.Shape.check(d.Size); err != nil {
		return nil, err
	}
	for _, v := range []struct {
		name      string
		v         float64
		low, high float64
		unit      string
	}{
		{"air temperature", a.TempC, 3, 50, "degC"},
		{"mass of the drink", d.DrinkGrams, 1, 1e5, "g"},
		{"temperature of the drink", d.DrinkC, 0, 95, "degC"},
		{"mass of ice", d.IceGrams, 0.1, 1e5, "g"},
		{"temperature of the ice", d.IceC, -40, 0, "degC"},
		{"diameter of the glass", d.Diameter, 0.02, 0.5, "m"},
		{"temperature of the wall", d.WallC, 0, 95, "degC"},
		{"thickness of the wall", d.WallThickness, 1e-4, 0.02, "m"},
		{"horizon", d.Horizon.Seconds(), 1, 86400, "s"},
	} {
		if err := within(v.name, v.v, v.low, v.high, v.unit, "iced drink clock"); err != nil {
			return nil, err
		}
	}
	if d.IceGrams > 5*d.DrinkGrams {
		return nil, &InputError{"mass of ice", d.IceGrams, "g", "at most five times the drink: more is ice with a little drink"}
	}
	glass, err := Glass{
		Diameter: d.Diameter, Height: d.Height, WallThickness: d.WallThickness,
		DrinkGrams: d.DrinkGrams, DrinkC: d.DrinkC, IceGrams: d.IceGrams, IceC: d.IceC,
		WallC: d.WallC, Absorptance: d.Absorptance,
	}.complete(a)
	if err != nil {
		return nil, err
	}
	if frozen := -d.IceGrams*iceSpecificHeat*(d.IceC-4)/fusion - d.DrinkGrams*meltSpecificHeat*d.DrinkC/fusion; frozen > d.DrinkGrams/2 {
		return nil, &InputError{"temperature of the ice", d.IceC, "degC", "not so cold that it freezes half the drink"}
	}
	if err := d.IceH.check("heat transfer to the ice", 20, 10000, "W/(m2 K)"); err != nil {
		return nil, err
	}
	if err := d.DilutionShare.check("share that waters the drink", 0.005, 10, ""); err != nil {
		return nil, err
	}
	m := &icedModel{d: d, glass: glass, air: a}
	m.lightLo, m.lightHi = LightBand(lamps...)
	light, err := glass.light(lamps)
	if err != nil {
		return nil, err
	}
	if err := within("absorbed light", light, 0, 20000, "W/m2", "iced drink clock"); err != nil {
		return nil, err
	}
	m.light = light * glass.side() / math.Pi // on the upright section
	return m, nil
}

func (m *icedModel) study() Study {
	d := m.d
	in := make([]Uncertain, drinkInputs)
	in[drinkAirC], in[drinkRH], in[drinkSpeed], in[drinkWind] = roomUncertain(m.air)
	in[drinkLight] = Uncertain{Name: "light", Likely: 1, Low: m.lightLo, High: m.lightHi, Scale: true}
	in[drinkIceH] = d.IceH.uncertain("stirring")
	in[drinkIceH].Scale = true
	in[drinkInside], in[drinkEnds] = m.glass.intakeUncertain()
	in[drinkStart] = Uncertain{Name: "drink's temperature", Likely: d.DrinkC, Low: d.DrinkC - 1, High: d.DrinkC + 1, Min: 0, Max: 97}
	in[drinkIceC] = Uncertain{Name: "ice's temperature", Likely: d.IceC, Low: d.IceC - 2, High: d.IceC + 2, Min: -70, Max: 0}
	in[drinkIceGrams] = Uncertain{Name: "mass of ice", Likely: 1, Low: 1 / 1.05, High: 1.05, Scale: true}
	in[drinkShare] = d.DilutionShare.uncertain("dilution that counts")
	in[drinkShare].Min, in[drinkShare].Max = 1e-3, 20
	return Study{Inputs: in, Events: drinkEvents, Model: func() func([]float64, []time.Duration) error {
		run := new(icedRun)
		return func(x []float64, at []time.Duration) error {
			_, err := run.times(m, x, at, nil, 0)
			return err
		}
	}}
}
