package thermal

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
)

// A Cheese is a layer of melted pizza-type cheese on a flatbread, out of the oven,
// and its pull: it strings while it is neither runny nor set.
//
// Published: the stretch of mozzarella is tested between 65 and 85 degC (a
// university's dairy laboratory), it is liquid-like above 40 and its yield stress is
// gone near 60 (dairy science). No table of stretch against temperature was found, so
// the limits below are engineering estimates inside those facts: change them to what
// your cheese does.
type Cheese struct {
	// Grams of cheese on the round, g.
	Grams float64 `json:"grams,omitzero"`
	// Diameter of the round that the cheese covers, m, 0.02..1.
	Diameter float64 `json:"diameter_m,omitzero"`
	// StartC is the temperature of the cheese as the clock starts, deg C,
	// from 20 to a degree or two below the boiling point in the air (98 at sea level); 0
	// means 90, as it leaves the oven, or that limit where it is lower.
	StartC float64 `json:"start_c,omitzero"`
	// SauceThickness of the wet sauce between cheese and bread, as hot as the cheese,
	// m, 0..0.01; not given, it is 1.5 mm. Some(0) is none.
	SauceThickness honestplate.Optional `json:"sauce_thickness_m,omitzero"`
	// BreadC is the temperature of the bread, deg C, in the limits of StartC; not given,
	// it is 7 K above the cheese: an oven's floor keeps a crust near boiling.
	BreadC honestplate.Optional `json:"bread_c,omitzero"`
	// BreadThickness below, m, 0.001..0.1; 0 means 8 mm.
	BreadThickness float64 `json:"bread_thickness_m,omitzero"`
	// UndersideH is the heat transfer coefficient from the bread to what it lies on,
	// W/(m2 K), 0.1..1000; 0 means 8, a wooden board (estimate). A rack has about 6, a
	// cold metal or stone slab 50..200.
	UndersideH float64 `json:"underside_h_w_m2k,omitzero"`
	// UndersideRiseC is how much warmer than the room that is, K, -40..200; a hot
	// stone keeps the pull alive.
	UndersideRiseC float64 `json:"underside_rise_c,omitzero"`
	// Activity is how wet the open surface is, as a water activity, 0..1; 0 means 0.75,
	// known to -0.35..+0.2. Fresh cheese has 0.98, but a coat of free fat covers part of
	// it and its own water comes up too slowly to keep it wet (engineering estimate).
	Activity float64 `json:"activity,omitzero"`
	// RunnyC is the temperature above which it runs rather than strings, deg C, 30..120;
	// zero means 85 (79..91).
	RunnyC honestplate.Estimate `json:"runny_c,omitzero"`
	// SetC is the temperature below which it tears rather than strings, deg C, 20..110;
	// zero means 55 (45..65).
	SetC honestplate.Estimate `json:"set_c,omitzero"`
	// Absorptance for the lamps, which are taken to fall square on; the zero value
	// means PaleFood.
	Absorptance light.Absorptance `json:"absorptance,omitzero"`
}

// Properties of the layers: typical values (engineering estimates near published
// ones): part-skim mozzarella, tomato sauce and baked flatbread.
const (
	cheeseRho, cheeseHeat, cheeseK = 1070.0, 3000.0, 0.36 // kg/m3, J/(kg K), W/(m K)
	sauceRho, sauceHeat, sauceK    = 1030.0, 3900.0, 0.5
	breadRho, breadHeat, breadK    = 400.0, 2300.0, 0.12
	// How finely the layers are divided, at their tops at the finest.
	cheeseCells, sauceCells, breadCells = 14, 7, 14
	cheeseFinest, breadFinest           = 4e-4, 5e-4 // m
	usualSauce, crustAbove              = 1.5e-3, 7.0
)

// A CheeseClock says when the pull is on.
type CheeseClock struct {
	// Opens is when the cheese has cooled enough to string: 0 if it strings at once,
	// Never if it was too cold from the start.
	Opens Event `json:"opens"`
	// Closes is when its mean temperature falls below the stretch limit: Never under
	// lamps or on a stone that keep it above.
	Closes Event `json:"closes"`
	// Series is the likely course, per square metre.
	Series []HotPoint `json:"series"`
	// Balance is the heat account of the likely course.
	Balance HeatBalance `json:"balance"`
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// Clock computes the stretch window of the cheese in the air a under the lamps.
//
// Cheese, sauce and bread are resolved through their thickness, finer towards the top;
// the top exchanges heat and vapour as every Surface does, facing up; the pull is judged
// by the mean temperature of the cheese. The edge is left out. The band spans: the room
// (see Scoop); activity; the starts of cheese and bread +-3 K; the sauce x/:1.5; the
// underside's coefficient divided and multiplied by 2; the lamps' band; both limits.
//
// Nobody has published how melted cheese cools on a bread, or a stretch against its
// temperature: these times were compared with no measurement. Time one of your own.
//
// Food that has stood warm for the camera is not eaten: follow local food codes.
func (c Cheese) Clock(a Air, lamps ...light.Lamp) (CheeseClock, error) {
	return clockOf[CheeseClock](c.frame(a, lamps)).knowing(Lesson{})
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides.
func (c Cheese) Likely(a Air, lamps ...light.Lamp) (CheeseClock, error) {
	return clockOf[CheeseClock](c.frame(a, lamps)).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (c Cheese) Knowing(l Lesson, a Air, lamps ...light.Lamp) (CheeseClock, error) {
	return clockOf[CheeseClock](c.frame(a, lamps)).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (c Cheese) Observe(l Lesson, seen []Seen, a Air, lamps ...light.Lamp) (CheeseClock, Lesson, error) {
	return clockOf[CheeseClock](c.frame(a, lamps)).observed(l, seen)
}

// A cheeseModel is a complete cheese in its room.
type cheeseModel struct {
	hotModel
	c     Cheese
	sauce float64 // thickness, as a factor
	fine  int     // times as many cells; 1 but for tests of convergence
}

func (c Cheese) frame(a Air, lamps []light.Lamp) (frame[cheeseModel], error) {
	c, light, err := c.complete(a, lamps)
	m := cheeseModel{c: c, sauce: 1, fine: 1, hotModel: hotModel{setting: settingOf(a, light)}}
	return frame[cheeseModel]{kind: "cheese", model: m, inputs: (*cheeseModel).inputs, run: (*cheeseModel).run,
		events: []string{"opens", "closes"}, doubt: doubtHot, readings: readingsOf(func(m *cheeseModel) []HotPoint { return m.done.series })}, err
}

func (m *cheeseModel) inputs() []study.Input {
	c := &m.c
	return append(m.setting.inputs(),
		bound(&c.Activity, ofProduct(study.Input{Key: "product.activity", Name: "wetness of the surface",
			Band: band(max(0, c.Activity-0.35), c.Activity, min(1, c.Activity+0.2)), Max: 1})),
		m.hotStart(&c.StartC, "unit.start_c", "start temperature", 3, -40),
		m.hotStart(&c.BreadC.Value, "unit.bread_c", "temperature of the bread", 3, -40),
		bound(&m.sauce, factor("unit.sauce", "sauce", 1/1.5, 1.5)),
		bound(&c.UndersideH, study.Input{Key: "unit.underside_h", Name: "board", Band: honestplate.Factor(c.UndersideH, 2), Factor: true}),
		bound(&c.RunnyC.Likely, judged("crew.runny_c", "runny limit", c.RunnyC)),
		bound(&c.SetC.Likely, judged("crew.set_c", "stretch limit", c.SetC)))
}

func (m *cheeseModel) run(at []float64, course float64) error {
	r, err := m.start()
	if err != nil {
		return err
	}
	return m.finish(&r, at, course)
}

func (m cheeseModel) words(r Runs) CheeseClock {
	return CheeseClock{Kept: r, Opens: r.at(0), Closes: r.at(1), Series: m.done.series, Balance: m.done.balance}
}

// complete checks the cheese, fills in its defaults and returns the light that it
// absorbs, W/m2.
func (c Cheese) complete(a Air, lamps []light.Lamp) (Cheese, honestplate.Estimate, error) {
	hottest := simmering(a)
	c.StartC = cmp.Or(c.StartC, min(90, hottest))
	c.BreadThickness = cmp.Or(c.BreadThickness, 0.008)
	c.UndersideH = cmp.Or(c.UndersideH, 8)
	c.Activity = cmp.Or(c.Activity, 0.75)
	c.SauceThickness = some(c.SauceThickness, usualSauce)
	c.BreadC = some(c.BreadC, min(c.StartC+crustAbove, hottest))
	c.RunnyC, c.SetC = cmp.Or(c.RunnyC, band(79, 85, 91)), cmp.Or(c.SetC, band(45, 55, 65))
	c.Absorptance = cmp.Or(c.Absorptance, light.PaleFood())
	light, lightErr := c.Absorptance.Absorbed(lamps...)
	const source = "a soft cheese strings in between"
	if err := cmp.Or(inRoom(a, -30, 60, "rooms in which people work"), honestplate.Positive("Grams", c.Grams, "g"),
		check.Fields("cheese on flatbread: what an oven and a table hold",
			check.Number("Diameter", c.Diameter, 0.02, 1, "m"),
			check.Number("StartC", c.StartC, 20, hottest, "degC"),
			check.Number("SauceThickness", c.SauceThickness.Value, 0, 0.01, "m"),
			check.Number("BreadC", c.BreadC.Value, 20, hottest, "degC"),
			check.Number("BreadThickness", c.BreadThickness, 0.001, 0.1, "m"),
			check.Number("UndersideH", c.UndersideH, 0.1, 1000, "W/(m2 K)"),
			check.Number("UndersideRiseC", c.UndersideRiseC, -40, 200, "K"),
			check.Number("Activity", c.Activity, 0, 1, ""),
		), check.Band("RunnyC", c.RunnyC, 30, 120, "degC", source), check.Band("SetC", c.SetC, 20, 110, "degC", source), lightErr); err != nil {
		return c, light, err
	}
	perMM := c.Grams / c.thickness() / 1000
	return c, light, cmp.Or(honestplate.InRange("Grams", c.Grams, 0.2*perMM, 25*perMM, "g", "a layer of 0.2 to 25 mm over the Diameter"),
		check.Not(c.SetC.Likely >= c.RunnyC.Likely, "SetC.Likely", c.SetC.Likely, "degC", "a limit below RunnyC"))
}

// thickness of the cheese, m.
func (c Cheese) thickness() float64 {
	return c.Grams / 1000 / cheeseRho / (math.Pi / 4 * c.Diameter * c.Diameter)
}

// start prepares a run of a complete cheese.
func (m *cheeseModel) start() (hotRun, error) {
	c := &m.c
	s := heat.Surface{Shape: heat.PlateUp, Length: c.Diameter / 4, Activity: c.Activity, ConvectionFactor: m.convection}
	r, err := newHotRun(s, m.air, c.StartC)
	if err != nil {
		return r, err
	}
	r.light = m.absorbed()
	fine := float64(m.fine)
	r.layer(c.BreadThickness, c.BreadC.Value, m.fine*breadCells, breadFinest/fine, breadRho*breadHeat, breadK)
	if sauce := c.SauceThickness.Value * m.sauce; sauce > 0 {
		r.layer(sauce, c.StartC, m.fine*sauceCells, breadFinest/fine, sauceRho*sauceHeat, sauceK)
	}
	r.layer(c.thickness(), c.StartC, m.fine*cheeseCells, cheeseFinest/fine, cheeseRho*cheeseHeat, cheeseK)
	r.food = m.fine * cheeseCells
	r.Below = 1 / (1/c.UndersideH + 1/r.bottom)
	r.BelowC = m.air.TempC + c.UndersideRiseC
	// It strings below one limit and until the other.
	r.limits = [hotLimits]float64{c.RunnyC.Likely, c.SetC.Likely}
	r.begin()
	if r.at[1] == 0 {
		r.at[0], r.at[1] = never, never
	}
	return r, nil
}
