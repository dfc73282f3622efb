package thermal

import (
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/study"
)

// A Glass is a drinking glass, mug or can set out in the air of the room.
//
//   - With a cold drink, and ice or none: DrinkGrams, DrinkC, IceGrams.
//   - Chilled and empty, or frosted: DrinkGrams 0 and WallC.
//   - A warm glass filled with a cold drink: WallC above DrinkC.
//
// Mind the shock of filling a hot glass cold or a frozen one hot: see [Ware.Shock].
type Glass struct {
	Diameter float64 `json:"diameter_m,omitzero"` // outside, m, 0.01..1
	Height   float64 `json:"height_m,omitzero"`   // outside, m, 0.01..1; 0 means a fifth more than the liquid's
	// WallThickness, m, 0.0001..0.02; 0 means 3 mm.
	WallThickness float64 `json:"wall_thickness_m,omitzero"`
	// DrinkGrams is the liquid alone, g, water-like: 4180 J/(kg K), 1000 kg/m3.
	DrinkGrams float64 `json:"drink_grams,omitzero"`
	IceGrams   float64 `json:"ice_grams,omitzero"` // ice in the drink, g
	// DrinkC is the temperature of the drink as it is poured, deg C, 0..100; it must be
	// given where there is a drink.
	DrinkC honestplate.Optional `json:"drink_c,omitzero"`
	// IceC is the temperature of the ice as it goes in, deg C, -40..0; 0 is wet,
	// melting ice.
	IceC float64 `json:"ice_c,omitzero"`
	// WallC is the temperature of the glass as it is filled or set out, deg C,
	// -60..100. Not given, it is the drink's, a glass chilled with its drink, or the
	// room's where there is no drink.
	WallC honestplate.Optional `json:"wall_c,omitzero"`
	// Wall is the material; the zero value means SodaLime.
	Wall heat.Material `json:"wall,omitzero"`
	// Emissivity of the outside, 0..1; 0 means 0.94. A bare metal can
	// has 0.05..0.1.
	Emissivity float64 `json:"emissivity,omitzero"`
	// InsideH is the heat transfer coefficient between drink and wall, W/(m2 K); 0
	// means 150 with a band of 50..500 (engineering estimate: a drink at rest to one
	// that ice stirs). Inside an empty glass it is 3 (1.5..6).
	InsideH float64 `json:"inside_h_w_m2k,omitzero"`
	// EndsH is the coefficient between the drink and the room through its surface and
	// the base, W/(m2 K); 0 means 6. Its band is EndsH divided and multiplied by 1.5
	// (engineering estimate: a table of cork to one of stone).
	EndsH float64 `json:"ends_h_w_m2k,omitzero"`
	// Absorptance of the drink for the lamps; the zero value means clear as water
	// over one diameter. An empty glass absorbs nothing.
	Absorptance Absorptance `json:"absorptance,omitzero"`
	// Stages are the amounts of dew that count; the zero value means DefaultStages.
	Stages FogStages `json:"stages,omitzero"`
	// Horizon is how far ahead to look, up to 48 h; 0 means 4 h. What comes later is
	// Never.
	Horizon time.Duration `json:"horizon_ns,omitzero"`
}

// A GlassClock says when the outside of a glass below the liquid line looks like
// what.
type GlassClock struct {
	// Haze, Opaque, Beads and Runs are when dew reaches the glass's Stages.
	Haze   Event `json:"haze"`
	Opaque Event `json:"opaque"`
	Beads  Event `json:"beads"`
	Runs   Event `json:"runs"`
	// Dry is when the glass has dried again so far that not even haze is left; Never
	// if it never had any.
	Dry Event `json:"dry"`
	// Thawed is when the last frost has melted, for a glass that starts below 0 degC.
	Thawed Event `json:"thawed"`
	// IceGone is when the ice in the drink has melted; Never without ice.
	IceGone Event `json:"ice_gone"`
	// DewPointC is the room's dew point, deg C: the glass fogs while it is colder. In
	// air so dry that it has none it is -100.
	DewPointC float64 `json:"dew_point_c"`
	// LiquidLine is the height of the liquid above the table, m; FogLine is how high
	// the fog can reach, creeping up the wall beyond it, m; 0 if nothing fogs. For an
	// empty glass both are its height.
	LiquidLine float64 `json:"liquid_line_m"`
	FogLine    float64 `json:"fog_line_m"`
	// Series is the likely course.
	Series []GlassPoint `json:"series"`
	// Balance is the heat account of the likely course.
	Balance HeatBalance `json:"balance"`
	// Kept are the runs that the windows were read from.
	Kept Runs `json:"kept,omitzero"`
}

// A GlassPoint is a glass at one time.
type GlassPoint struct {
	Time      time.Duration `json:"time_ns"`        // since filling, or setting out
	DrinkC    float64       `json:"drink_c"`        // temperature of the drink, deg C; of the inner wall if empty
	SurfaceC  float64       `json:"surface_c"`      // temperature of the outside, deg C
	DewGM2    float64       `json:"dew_g_m2"`       // water on the outside, g/m2
	FrostGM2  float64       `json:"frost_g_m2"`     // frost on the outside, g/m2
	IceGrams  float64       `json:"ice_grams"`      // ice left in the drink, g
	HeatFlux  float64       `json:"heat_flux_w_m2"` // heat through the outside, W/m2
	DewGM2Min float64       `json:"dew_g_m2_min"`   // gain of dew or frost, g/(m2 min), negative for drying
}

// The events of a glass, in the order of its times.
const (
	eventHaze = iota
	eventOpaque
	eventBeads
	eventRuns
	eventDry
	eventThawed
	eventIceGone
	glassEvents
)

// Clock computes when the glass hazes, beads and runs in the air a under the lamps,
// each as a Window.
//
// The wall is resolved through its thickness; outside it exchanges heat and vapour
// as every Surface does, inside with the drink, which is mixed and stays at 0 degC
// while there is ice (IcedDrink, with the same heat from the room, lets it be warmer
// than its ice). The wall above the liquid feeds the drink as a fin with 10 outside and
// 6 W/(m2 K) inside (engineering estimates). Dew stays where it forms until it runs; a drying surface dries.
// The band spans: room +-1.5 K and +-6 % RH; air speed divided and multiplied by 2,
// or 0..0.6 m/s where none is given (Speed 0); convection +-20 %; the inside
// and EndsH coefficients; the drink +-1 K; the lamps' band; the stages. All are engineering
// estimates.
//
// A still-air model under-predicts the published warming of cans in humid air by
// about 3 (Durran and Frierson 2013): give the air speed if you know it.
//
// A drink with ice below 0 degC, ice so cold that it freezes all of the drink, or a
// level above the rim gives an [honestplate.InputError].
//
// The base counts as a way of heat, not for the heat that a thick foot holds.
//
// The glass and its lamps stand on a wet set: keep mains and liquids apart.
func (g Glass) Clock(a Air, lamps ...Lamp) (GlassClock, error) {
	f, err := g.frame(a, lamps)
	if err != nil {
		return GlassClock{}, err
	}
	return glassClock(f.banded(Lesson{}))
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides. It costs a few hundredths of a Clock.
func (g Glass) Likely(a Air, lamps ...Lamp) (GlassClock, error) {
	f, err := g.frame(a, lamps)
	if err != nil {
		return GlassClock{}, err
	}
	return glassClock(f.likely())
}

// A glassModel is a complete glass in its room.
type glassModel struct {
	g          Glass
	air        Air
	lamps      []Lamp
	light      float64 // absorbed per square metre of the upright section, W/m2
	brightness float64 // of the lamps, as a factor
	convection float64 // as a factor
	done       glassRun
}

func (g Glass) frame(a Air, lamps []Lamp) (frame[glassModel], error) {
	g, err := g.complete(a)
	if err != nil {
		return frame[glassModel]{}, err
	}
	light, err := g.light(lamps)
	m := glassModel{g: g, air: a, lamps: lamps, light: light, brightness: 1, convection: 1}
	return frame[glassModel]{kind: "glass", model: m, inputs: (*glassModel).inputs, run: (*glassModel).run,
		events: glassEventKeys, doubt: doubtCold, readings: glassReadings()}, err
}

func (m *glassModel) inputs() []study.Input {
	in := append(roomInputs(&m.air, &m.convection), m.g.intakeInputs()...)
	return append(in,
		bound(&m.g.DrinkC.Value, within(around("unit.drink_c", "drink temperature", m.g.DrinkC.Value, 1), 0, 100)),
		lightInput(&m.brightness, m.g.Absorptance, m.lamps),
		m.g.Stages.input(&m.g.Stages.Haze, 0), m.g.Stages.input(&m.g.Stages.Opaque, 1),
		m.g.Stages.input(&m.g.Stages.Beads, 2), m.g.Stages.input(&m.g.Stages.Runs, 3))
}

// intakeInputs is how well the ways of the heat into the drink are known.
func (g *Glass) intakeInputs() []study.Input {
	low, high := 1.0/3, 10.0/3
	if g.DrinkGrams == 0 {
		low, high = 0.5, 2
	}
	times := func(key, name string, v *float64, low, high float64) study.Input {
		return study.Input{Key: key, Name: name, Band: band(*v*low, *v, *v*high), Factor: true, To: v}
	}
	return []study.Input{
		times("unit.inside_h", "heat transfer inside", &g.InsideH, low, high),
		times("unit.ends_h", "drink's surface and base", &g.EndsH, 1/1.5, 1.5),
	}
}

func (m *glassModel) run(at []float64, course bool) error {
	r, err := m.g.start(m.air, m.light*m.brightness, m.convection)
	if err != nil {
		return err
	}
	if course {
		if r.series = m.done.series[:0]; r.series == nil {
			r.series = make([]GlassPoint, 0, 320)
		}
	}
	err = r.run()
	copy(at, r.at[:])
	m.done = r
	return err
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (g Glass) Knowing(l Lesson, a Air, lamps ...Lamp) (GlassClock, error) {
	f, err := g.frame(a, lamps)
	if err != nil {
		return GlassClock{}, err
	}
	return glassClock(f.banded(l))
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (g Glass) Observe(l Lesson, seen []Seen, a Air, lamps ...Lamp) (GlassClock, Lesson, error) {
	f, err := g.frame(a, lamps)
	if err != nil {
		return GlassClock{}, l, err
	}
	m, r, after, err := f.observed(l, seen)
	if err != nil {
		return GlassClock{}, l, err
	}
	clock, err := glassClock(m, r, nil)
	return clock, after, err
}

// glassClock puts the answer of the frame into words.
func glassClock(m glassModel, r Runs, err error) (GlassClock, error) {
	if err != nil {
		return GlassClock{}, err
	}
	clock := GlassClock{
		Kept: r,
		Haze: r.at(eventHaze), Opaque: r.at(eventOpaque), Beads: r.at(eventBeads), Runs: r.at(eventRuns),
		Dry: r.at(eventDry), Thawed: r.at(eventThawed), IceGone: r.at(eventIceGone),
		DewPointC: m.done.dewC, Series: m.done.series, Balance: m.done.balance,
	}
	clock.LiquidLine, clock.FogLine = m.g.lines(m.air.TempC, m.done.dewC, m.done.coldest)
	return clock, nil
}

// glassEventKeys are the keys of the events, in the order of a run.
var glassEventKeys = []string{"haze", "opaque", "beads", "runs", "dry", "thawed", "ice gone"}

// glassReadings are those of the course.
func glassReadings() []reading[glassModel] {
	return readingsOf(func(m *glassModel) []GlassPoint { return m.done.series }, func(p *GlassPoint) time.Duration { return p.Time },
		named[GlassPoint]{"drink_c", func(p *GlassPoint) float64 { return p.DrinkC }},
		named[GlassPoint]{"surface_c", func(p *GlassPoint) float64 { return p.SurfaceC }},
		named[GlassPoint]{"dew_g_m2", func(p *GlassPoint) float64 { return p.DewGM2 }},
		named[GlassPoint]{"frost_g_m2", func(p *GlassPoint) float64 { return p.FrostGM2 }},
		named[GlassPoint]{"ice_grams", func(p *GlassPoint) float64 { return p.IceGrams }})
}
