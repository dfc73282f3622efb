package thermal

import (
	"cmp"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solution"
	"example.org/honestplate/thermal/internal/study"
	"example.org/honestplate/thermal/light"
)

// A Glass is a drinking glass, mug or can set out in the air of the room: drink, ice,
// wall and what settles on it are one model.
//
//   - With a cold drink, and ice or none: DrinkGrams, DrinkC, IceGrams.
//   - Chilled and empty, or frosted: DrinkGrams 0 and WallC.
//   - A glass from the shelf filled with a cold drink: WallC above DrinkC.
//
// Mind the shock of filling a hot glass cold or a frozen one hot: see [ware.Ware.Shock].
type Glass struct {
	Diameter float64 `json:"diameter_m,omitzero"` // outside, m, 0.01..1
	Height   float64 `json:"height_m,omitzero"`   // outside, m, 0.01..1; 0 means a fifth more than the liquid's
	// WallThickness, m, 0.0001..0.02; 0 means 3 mm.
	WallThickness float64 `json:"wall_thickness_m,omitzero"`
	// DrinkGrams is the liquid alone, g, without ice.
	DrinkGrams float64    `json:"drink_grams,omitzero"`
	Drink      food.Drink `json:"drink,omitzero"` // what it is; the zero value is water, tea, coffee
	// DrinkC is the temperature of the drink as it is poured, deg C, from where it
	// freezes to 100; it must be given where there is a drink.
	DrinkC honestplate.Optional `json:"drink_c,omitzero"`
	// IceGrams is the ice in the drink, g, at most five times the drink; IceShape and
	// IceSize, m, are those of every piece. 0 means cubes of 3 cm, or one smaller cube
	// where there is not as much ice.
	IceGrams float64  `json:"ice_grams,omitzero"`
	IceShape IceShape `json:"ice_shape,omitzero"`
	IceSize  float64  `json:"ice_size_m,omitzero"`
	// IceC is the temperature of the ice as it goes in, deg C, -40..0. Not given, it is
	// -6 (-18..0): out of a freezer and some minutes in a bucket (estimate).
	IceC honestplate.Optional `json:"ice_c,omitzero"`
	// IceH is the heat transfer coefficient between drink and ice, W/(m2 K), 5..20000.
	// Not given, it follows the temperature and the size of the pieces as in still
	// water (see [heat.Surface.InWater]), times 0.45 to 2.5 for crowding and stirring: an ice
	// cylinder hung in a tank took 0.55 of it, cubes in a beaker 2.2 (measured courses,
	// sizes partly assumed); under meltwater that floats on a sugared drink and
	// insulates it is 0.3 (0.13..1) of that from some 5 Brix on. Ice lasts 5 to 7 times
	// longer in milk, cola and juice than in water (a school's tests, read), but not at
	// all in a tank of salt water, where the melt gets away (measured courses); stirred
	// all the time, give IceH.
	IceH honestplate.Estimate `json:"ice_h_w_m2k,omitzero"`
	// DilutionShare is the melt, as a share of the drink as poured, at which the drink
	// counts as watered: 0.005..10, default 0.10 (0.08..0.12). Engineering estimate.
	DilutionShare honestplate.Estimate `json:"dilution_share,omitzero"`
	// WallC is the temperature of the glass as it is filled or set out, deg C,
	// -60..100. Not given, it is the room's: from the shelf. A glass chilled with its
	// drink has the drink's.
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
	Absorptance light.Absorptance `json:"absorptance,omitzero"`
	// Stages are the amounts of dew that count; the zero value means DefaultStages.
	Stages FogStages `json:"stages,omitzero"`
	// Horizon is how far ahead to look, up to 48 h; 0 means 4 h. What comes later is
	// Never.
	Horizon time.Duration `json:"horizon_ns,omitzero"`
}

// A GlassClock says when the outside of a glass below the liquid line looks like
// what, and how its drink and ice go.
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
	// Cold is when an iced drink has come within 1 K of the coldest it gets; Watered
	// when the melt reaches the DilutionShare; IceHalf and IceGone when half and 99 %
	// of the ice have melted. Never without ice.
	Cold    Event `json:"cold"`
	Watered Event `json:"watered"`
	IceHalf Event `json:"ice_half"`
	IceGone Event `json:"ice_gone"`
	// ColdestC is the lowest temperature of the drink on its likely course, deg C; of
	// the inner wall if empty.
	ColdestC float64 `json:"coldest_c"`
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
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// A GlassPoint is a glass at one time.
type GlassPoint struct {
	Time      time.Duration `json:"time_ns"`    // since filling, or setting out
	DrinkC    float64       `json:"drink_c"`    // temperature of the drink, deg C; of the inner wall if empty
	SurfaceC  float64       `json:"surface_c"`  // temperature of the outside, deg C
	DewGM2    float64       `json:"dew_g_m2"`   // water on the outside, g/m2
	FrostGM2  float64       `json:"frost_g_m2"` // frost on the outside, g/m2
	IceGrams  float64       `json:"ice_grams"`  // ice left in the drink, g
	MeltGrams float64       `json:"melt_grams"` // dilution so far, g; below 0 while drink freezes onto the ice
}

// The events of a glass, in the order of its times.
const (
	eventHaze = iota
	eventOpaque
	eventBeads
	eventRuns
	eventDry
	eventThawed
	eventCold
	eventWatered
	eventIceHalf
	eventIceGone
	glassEvents
)

// Clock computes when the glass hazes, beads and runs in the air a under the lamps,
// each as a Window.
//
// The wall is resolved through its thickness; outside it exchanges heat and vapour
// as every Surface does, inside with the drink, which is mixed. The ice in it melts at
// its surface, at the temperature T_s of water that the melt has diluted:
//
//	c m dT/dt       = wall + ends + light - h A (T - T_s)    the drink; melt joins at T_s
//	L dm_ice/dt     = G (T_s - T_ice) - h A (T - T_s)        at the ice's surface
//	T_s             = -D/(1 + 0.26/K (T - T_s))              D, the drink's own depression
//
// A is the surface of the pieces, balls of the same ratio of volume to surface, which
// shrinks as m_ice^(2/3); G = 5 k A/r leads into a ball. The third line balances the
// solute that comes to the face by convection against the melt that pushes it away (Le
// 100 to the 2/3): 0 degC in water, while a spirit may go far below it.
//
// The wall above the liquid feeds the drink as a fin with 10 outside and 6 W/(m2 K)
// inside (engineering estimates). Dew stays where it forms until it runs; a drying
// surface dries. The band spans: the room (see [Air]): +-1.5 K, dew point +-2 K, air
// speed, convection +-20 %; the inside and EndsH coefficients; the drink +-1 K; the
// ice's stirring, floating melt, temperature (+-2 K, if given) and mass (+-5 %); the
// lamps' band; the stages and the dilution that counts. All are engineering estimates.
// Nobody has published the dew on a glass against time. Outdoors in frost the course
// ends where half of the drink has become ice.
//
// A still-air model under-predicts the published warming of cans in humid air by
// about 3 (Durran and Frierson 2013): give the air speed if you know it.
//
// Ice so cold that it freezes half of the drink, more ice than five times the drink, or
// a level above the rim gives an [honestplate.InputError].
//
// The base counts as a way of heat, not for the heat that a thick foot holds.
//
// The glass and its lamps stand on a wet set: keep mains and liquids apart.
func (g Glass) Clock(a Air, lamps ...light.Lamp) (GlassClock, error) {
	return clockOf[GlassClock](g.frame(a, lamps)).knowing(Lesson{})
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides. It costs a few hundredths of a Clock.
func (g Glass) Likely(a Air, lamps ...light.Lamp) (GlassClock, error) {
	return clockOf[GlassClock](g.frame(a, lamps)).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (g Glass) Knowing(l Lesson, a Air, lamps ...light.Lamp) (GlassClock, error) {
	return clockOf[GlassClock](g.frame(a, lamps)).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (g Glass) Observe(l Lesson, seen []Seen, a Air, lamps ...light.Lamp) (GlassClock, Lesson, error) {
	return clockOf[GlassClock](g.frame(a, lamps)).observed(l, seen)
}

// glassClock puts the answer of the frame into words.
// A glassModel is a complete glass in its room; its light is that of a square metre of
// the upright section.
type glassModel struct {
	setting
	g    Glass
	ice  iceFactors
	done glassRun
}

func (g Glass) frame(a Air, lamps []light.Lamp) (frame[glassModel], error) {
	g, err := g.complete(a)
	light, lightErr := g.light(lamps)
	m := glassModel{g: g, setting: settingOf(a, light), ice: usualIceFactors(g.Drink)}
	return frame[glassModel]{kind: "glass", model: m, inputs: (*glassModel).inputs, run: (*glassModel).run,
		events: []string{"haze", "opaque", "beads", "runs", "dry", "thawed", "cold", "watered", "ice half", "ice gone"}, doubt: doubtCold,
		readings: readingsOf(func(m *glassModel) []GlassPoint { return m.done.series })}, cmp.Or(err, lightErr)
}

func (m *glassModel) inputs() []study.Input {
	g := &m.g
	inside := band(g.InsideH/3, g.InsideH, g.InsideH*10/3)
	if g.DrinkGrams == 0 {
		inside = honestplate.Factor(g.InsideH, 2)
	}
	in := append(m.setting.inputs(),
		bound(&g.InsideH, study.Input{Key: "unit.inside_h", Name: "heat transfer inside", Band: inside, Factor: true}),
		bound(&g.EndsH, study.Input{Key: "unit.ends_h", Name: "drink's surface and base", Band: honestplate.Factor(g.EndsH, 1.5), Factor: true}))
	in = append(in, g.Stages.inputs()...)
	if g.DrinkGrams > 0 {
		freezes := solution.Drink(g.Drink).FreezesC(0)
		in = append(in, bound(&g.DrinkC.Value, within(around("unit.drink_c", "drink temperature", g.DrinkC.Value, 1), freezes, 100)))
	}
	if g.IceGrams > 0 {
		in = append(in, g.iceInputs(&m.ice)...)
	}
	return in
}

func (m *glassModel) run(at []float64, course float64) error {
	r, err := m.g.start(m.air, m.absorbed(), m.convection)
	if err != nil {
		return err
	}
	r.ice.factors, r.path = m.ice, m.done.path[:0]
	r.course, r.series = course >= 0, m.done.series[:0]
	err = r.run()
	copy(at, r.at[:])
	m.done = r
	return err
}

func (m glassModel) words(r Runs) GlassClock {
	clock := GlassClock{
		Kept: r,
		Haze: r.at(eventHaze), Opaque: r.at(eventOpaque), Beads: r.at(eventBeads), Runs: r.at(eventRuns),
		Dry: r.at(eventDry), Thawed: r.at(eventThawed),
		Cold: r.at(eventCold), Watered: r.at(eventWatered), IceHalf: r.at(eventIceHalf), IceGone: r.at(eventIceGone),
		ColdestC: m.done.coldestDrink, DewPointC: m.done.dewC, Series: m.done.series, Balance: m.done.balance,
	}
	clock.LiquidLine, clock.FogLine = m.g.lines(m.air.TempC, m.done.dewC, m.done.coldest)
	return clock
}
