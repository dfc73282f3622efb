package thermal

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
)

// An IcedDrink is a drink with pieces of real ice just put in, in a glass of soda-lime.
// Unlike Glass, which looks at the outside and takes drink and ice as one, it follows
// how fast the pieces give up their cold: how long they last by shape and size, how cold
// the drink gets and how much it is diluted. The heat from the room is that of the
// Glass of the same measures; since the drink is a little warmer than its ice, it takes
// up less and keeps some, and its ice lasts longer than the Glass says: in a tumbler by a
// tenth for chips of 5 mm, a fifth for cubes of 3 cm and two fifths for one large ball.
type IcedDrink struct {
	DrinkGrams float64 `json:"drink_grams,omitzero"` // the liquid, g, water-like; 1..1e5
	// DrinkC is the temperature as poured, degC, 0..95; it must be given.
	DrinkC   honestplate.Optional `json:"drink_c,omitzero"`
	Shape    IceShape             `json:"shape,omitzero"`     // of every piece
	Size     float64              `json:"size_m,omitzero"`    // of a piece, m, 0.001..0.2
	IceGrams float64              `json:"ice_grams,omitzero"` // all of it, g, above 0, at most 1e5
	IceC     float64              `json:"ice_c,omitzero"`     // degC as it goes in, -40..0
	// Diameter of the glass, outside, m, 0.02..0.5.
	Diameter float64 `json:"diameter_m,omitzero"`
	// Height of the glass, outside, m, up to 1; 0 means a fifth more than the liquid's.
	Height float64 `json:"height_m,omitzero"`
	// WallC is the temperature of the glass as it is filled, degC, 0..95; not given,
	// it is the room's: from the shelf.
	WallC honestplate.Optional `json:"wall_c,omitzero"`
	// WallThickness of the glass, m, 0.0001..0.02; 0 means 3 mm of soda-lime glass.
	WallThickness float64 `json:"wall_thickness_m,omitzero"`
	// IceH is the heat transfer coefficient between drink and ice, W/(m2 K): 20..10000,
	// default 400 (150..1200). Nusselt numbers of a sphere in water (Churchill, see
	// [heat.Surface.FreeNusselt]) give 300 to 500 for pieces of 2 to 5 cm; near 4 degC, where water
	// hardly rises or sinks, less; stirred, much more. Engineering estimate.
	IceH honestplate.Estimate `json:"ice_h_w_m2k,omitzero"`
	// DilutionShare is the melt, as a share of the drink as poured, at which the drink
	// counts as watered: 0.005..10, default 0.10 (0.08..0.12). Engineering estimate.
	DilutionShare honestplate.Estimate `json:"dilution_share,omitzero"`
	// Absorptance of the drink; zero means water as wide as the bore.
	Absorptance Absorptance `json:"absorptance,omitzero"`
	// Horizon is how long to look; later is Never. 0 means 3 h; at most 24 h.
	Horizon time.Duration `json:"horizon_ns,omitzero"`
}

// An IcedDrinkClock says how an iced drink goes.
type IcedDrinkClock struct {
	// Cold is when the drink has come within 1 K of the coldest it gets.
	Cold Event `json:"cold"`
	// Watered is when the melt reaches the DilutionShare.
	Watered Event `json:"watered"`
	// IceHalf and IceGone are when half and 99 % of the ice has melted. It does not
	// count that a little of the drink may freeze onto very cold ice first.
	IceHalf Event `json:"ice_half"`
	IceGone Event `json:"ice_gone"`
	// ColdestC is the lowest temperature of the drink on its likely course, degC.
	ColdestC float64          `json:"coldest_c"`
	Series   []IcedDrinkPoint `json:"series"` // the likely course
	// Kept are the runs that the windows were read from.
	Kept Runs `json:"kept,omitzero"`
}

// An IcedDrinkPoint is an iced drink at one time.
type IcedDrinkPoint struct {
	Time      time.Duration `json:"time_ns"`    // since the ice went in
	DrinkC    float64       `json:"drink_c"`    // degC
	IceGrams  float64       `json:"ice_grams"`  // ice left
	MeltGrams float64       `json:"melt_grams"` // dilution so far, g; below 0 while drink freezes onto the ice
}

const (
	drinkCold = iota
	drinkWatered
	drinkHalf
	drinkGone
	drinkEvents
)

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
// The windows are 95 % bands over the room (as for a Scoop), light (see [Lamp.Irradiance]),
// IceH, the heat transfer to the wall, surface and base (as for a Glass), the drink's (+-1 K) and the ice's temperature (+-2 K), the mass of ice
// (+-5 %) and the dilution that counts. Errors: [honestplate.InputError] and [honestplate.RangeError], among
// them ice so cold and much that it freezes half the drink.
func (d IcedDrink) Clock(a Air, lamps ...Lamp) (IcedDrinkClock, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return IcedDrinkClock{}, err
	}
	return icedDrinkClock(f.banded(Lesson{}))
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides.
func (d IcedDrink) Likely(a Air, lamps ...Lamp) (IcedDrinkClock, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return IcedDrinkClock{}, err
	}
	return icedDrinkClock(f.likely())
}

// An icedModel is a checked drink in its glass and room.
type icedModel struct {
	d          IcedDrink
	glass      Glass // that it stands in, complete
	air        Air
	lamps      []Lamp
	light      float64 // W, absorbed
	brightness float64 // of the lamps, as a factor
	convection float64 // as a factor
	iceFactor  float64 // of the mass of ice
	work       *icedRun
	series     []IcedDrinkPoint
	coldestC   float64
}

func (m *icedModel) inputs() []study.Input {
	d := &m.d
	iceH := judged("unit.ice_h", "stirring", d.IceH)
	iceH.Factor, iceH.Shared = true, study.Unit
	in := append(roomInputs(&m.air, &m.convection), lightInput(&m.brightness, d.Absorptance, m.lamps), bound(&d.IceH.Likely, iceH))
	in = append(in, m.glass.intakeInputs()...)
	return append(in,
		bound(&d.DrinkC.Value, within(around("unit.drink_c", "drink's temperature", d.DrinkC.Value, 1), 0, 97)),
		bound(&d.IceC, within(around("unit.ice_c", "ice's temperature", d.IceC, 2), -70, 0)),
		bound(&m.iceFactor, factor("unit.ice_grams", "mass of ice", 1/1.05, 1.05)),
		bound(&d.DilutionShare.Likely, within(judged("crew.dilution", "dilution that counts", d.DilutionShare), 1e-3, 20)))
}

// run computes the events; the course, in sixty steps, goes on to a little beyond the
// last of the ice.
func (m *icedModel) run(at []float64, course bool) error {
	if m.work == nil {
		m.work = new(icedRun)
	}
	m.glass.DrinkC = m.d.DrinkC
	r := m.work
	if err := r.reckon(m.glass, m.air, m.convection); err != nil {
		return err
	}
	m.coldestC = r.integrate(m, at, nil, 0)
	if course {
		m.series = m.series[:0]
		every := min(m.d.Horizon.Seconds(), 1.2*at[drinkGone]) / 60
		m.coldestC = r.integrate(m, make([]float64, drinkEvents), &m.series, every)
	}
	return nil
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (d IcedDrink) Knowing(l Lesson, a Air, lamps ...Lamp) (IcedDrinkClock, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return IcedDrinkClock{}, err
	}
	return icedDrinkClock(f.banded(l))
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (d IcedDrink) Observe(l Lesson, seen []Seen, a Air, lamps ...Lamp) (IcedDrinkClock, Lesson, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return IcedDrinkClock{}, l, err
	}
	m, r, after, err := f.observed(l, seen)
	if err != nil {
		return IcedDrinkClock{}, l, err
	}
	clock, err := icedDrinkClock(m, r, nil)
	return clock, after, err
}

func icedDrinkClock(m icedModel, r Runs, err error) (IcedDrinkClock, error) {
	if err != nil {
		return IcedDrinkClock{}, err
	}
	return IcedDrinkClock{Kept: r, Cold: r.at(drinkCold), Watered: r.at(drinkWatered), IceHalf: r.at(drinkHalf), IceGone: r.at(drinkGone),
		ColdestC: m.coldestC, Series: m.series}, nil
}

func (d IcedDrink) frame(a Air, lamps []Lamp) (frame[icedModel], error) {
	m, err := d.model(a, lamps)
	return frame[icedModel]{kind: "iced", model: m, inputs: (*icedModel).inputs, run: (*icedModel).run,
		events: icedEventKeys, doubt: doubtIce, readings: icedReadings()}, err
}

func (d IcedDrink) model(a Air, lamps []Lamp) (icedModel, error) {
	d.IceH = orBand(d.IceH, 150, 400, 1200)
	d.DilutionShare = orBand(d.DilutionShare, 0.08, 0.10, 0.12)
	if d.Horizon == 0 {
		d.Horizon = 3 * time.Hour
	}
	setDefault(&d.WallThickness, 0.003)
	if !d.DrinkC.Given {
		return icedModel{}, &honestplate.InputError{Field: "DrinkC", Got: "not given", Want: "the temperature of the drink as it is poured"}
	}
	d.WallC = honestplate.Some(d.WallC.Or(a.TempC))
	if err := cmp.Or(honestplate.In("Air", a.Validate()), d.Shape.check(d.Size), check.Fields("drinks in a room",
		check.Number("Air.TempC", a.TempC, 3, 50, "degC"),
		check.Number("DrinkGrams", d.DrinkGrams, 1, 1e5, "g"),
		check.Number("DrinkC", d.DrinkC.Value, 0, 95, "degC"),
		check.Number("IceGrams", d.IceGrams, 0.1, 1e5, "g"),
		check.Number("IceC", d.IceC, -40, 0, "degC"),
		check.Number("Diameter", d.Diameter, 0.02, 0.5, "m"),
		check.Number("WallC", d.WallC.Value, 0, 95, "degC"),
		check.Number("WallThickness", d.WallThickness, 1e-4, 0.02, "m"),
		check.Number("Horizon", d.Horizon.Seconds(), 1, 86400, "s"),
	)); err != nil {
		return icedModel{}, err
	}
	if d.IceGrams > 5*d.DrinkGrams {
		return icedModel{}, check.Input("IceGrams", d.IceGrams, "g", "at most five times the drink: more is ice with a little drink")
	}
	glass, err := Glass{
		Diameter: d.Diameter, Height: d.Height, WallThickness: d.WallThickness,
		DrinkGrams: d.DrinkGrams, DrinkC: d.DrinkC, IceGrams: d.IceGrams, IceC: d.IceC,
		WallC: d.WallC, Absorptance: d.Absorptance,
	}.complete(a)
	if err != nil {
		return icedModel{}, err
	}
	if frozen := -d.IceGrams*heat.Ice().SpecificHeat*(d.IceC-4)/heat.Fusion - d.DrinkGrams*heat.WaterHeat*d.DrinkC.Value/heat.Fusion; frozen > d.DrinkGrams/2 {
		return icedModel{}, check.Input("IceC", d.IceC, "degC", "not so cold that it freezes half the drink")
	}
	light, err := glass.light(lamps)
	if err := cmp.Or(
		check.Band("IceH", d.IceH, 20, 10000, "W/(m2 K)", "water at rest to water that boils"),
		check.Band("DilutionShare", d.DilutionShare, 0.005, 10, "", "below, nobody sees it; above, it is water"),
		err, honestplate.InRange("Lamps", light, 0, 20000, "W/m2", "light that a drink absorbs without boiling")); err != nil {
		return icedModel{}, err
	}
	return icedModel{d: d, glass: glass, air: a, lamps: lamps, light: light * glass.side() / math.Pi, // on the upright section
		brightness: 1, convection: 1, iceFactor: 1}, nil
}

// icedEventKeys are the keys of the events, in the order of a run.
var icedEventKeys = []string{"cold", "watered", "ice half", "ice gone"}

// icedReadings are those of the course.
func icedReadings() []reading[icedModel] {
	return readingsOf(func(m *icedModel) []IcedDrinkPoint { return m.series }, func(p *IcedDrinkPoint) time.Duration { return p.Time },
		named[IcedDrinkPoint]{"drink_c", func(p *IcedDrinkPoint) float64 { return p.DrinkC }},
		named[IcedDrinkPoint]{"ice_grams", func(p *IcedDrinkPoint) float64 { return p.IceGrams }},
		named[IcedDrinkPoint]{"melt_grams", func(p *IcedDrinkPoint) float64 { return p.MeltGrams }})
}
