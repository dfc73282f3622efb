package thermal

import (
	"math"
	"time"
)

// A Glass is a drinking glass, mug or can set out in the air of the room.
//
//   - With a cold drink, and ice or none: DrinkGrams, DrinkC, IceGrams.
//   - Chilled and empty, or frosted: DrinkGrams 0 and WallC.
//   - A warm glass filled with a cold drink: WallC above DrinkC.
//
// Mind the shock of filling a hot glass cold or a frozen one hot: see Ware.Shock.
type Glass struct {
	Diameter float64 // outside, m, 0.01..1
	Height   float64 // outside, m, 0.01..1; 0 means a fifth more than the liquid's
	// WallThickness, m, 0.0001..0.02; 0 means 3 mm.
	WallThickness float64
	// DrinkGrams is the liquid alone, g, water-like: 4180 J/(kg K), 1000 kg/m3.
	DrinkGrams float64
	IceGrams   float64 // ice in the drink, g
	// DrinkC is the temperature of the drink as it is poured, deg C, 0..100.
	DrinkC float64
	// IceC is the temperature of the ice as it goes in, deg C, -40..0; 0 is wet,
	// melting ice.
	IceC float64
	// WallC is the temperature of the glass as it is filled or set out, deg C,
	// -60..100: DrinkC for a glass chilled with its drink, the room's for a warm one.
	WallC float64
	// Wall is the material; the zero value means SodaLime.
	Wall Material
	// Emissivity of the outside, 0..1; 0 means DefaultEmissivity. A bare metal can
	// has 0.05..0.1.
	Emissivity float64
	// InsideH is the heat transfer coefficient between drink and wall, W/(m2 K); 0
	// means 150 with a band of 50..500 (engineering estimate: a drink at rest to one
	// that ice stirs). Inside an empty glass it is 3 (1.5..6).
	InsideH float64
	// EndsH is the coefficient between the drink and the room through its surface and
	// the base, W/(m2 K); 0 means 6. Its band is EndsH divided and multiplied by 1.5
	// (engineering estimate: a table of cork to one of stone).
	EndsH float64
	// Absorptance of the drink for the lamps; the zero value means clear as water
	// over one diameter. An empty glass absorbs nothing.
	Absorptance Absorptance
	// Stages are the amounts of dew that count; the zero value means DefaultStages.
	Stages FogStages
	// Horizon is how far ahead to look, up to 48 h; 0 means 4 h. What comes later is
	// Never.
	Horizon time.Duration
}

// A GlassClock says when the outside of a glass below the liquid line looks like
// what.
type GlassClock struct {
	// Haze, Opaque, Beads and Runs are when dew reaches the glass's Stages.
	Haze, Opaque, Beads, Runs Window
	// Dry is when the glass has dried again so far that not even haze is left; Never
	// if it never had any.
	Dry Window
	// Thawed is when the last frost has melted, for a glass that starts below 0 degC.
	Thawed Window
	// IceGone is when the ice in the drink has melted; Never without ice.
	IceGone Window
	// DewPointC is the room's dew point, deg C: the glass fogs while it is colder. In
	// air so dry that it has none it is -100.
	DewPointC float64
	// LiquidLine is the height of the liquid above the table, m; FogLine is how high
	// the fog can reach, creeping up the wall beyond it, m; 0 if nothing fogs. For an
	// empty glass both are its height.
	LiquidLine, FogLine float64
	// Decides ranks the inputs that the decisive time hangs on: that of the beads, or
	// of the haze where beads never come.
	Decides []Sensitivity
	// Series is the likely course.
	Series []GlassPoint
	// Balance is the heat account of the likely course.
	Balance HeatBalance
}

// A GlassPoint is a glass at one time.
type GlassPoint struct {
	Time       time.Duration // since filling, or setting out
	DrinkC     float64       // temperature of the drink, deg C; of the inner wall if empty
	SurfaceC   float64       // temperature of the outside, deg C
	DewGrams   float64       // water on the outside, g/m2
	FrostGrams float64       // frost on the outside, g/m2
	IceGrams   float64       // ice left in the drink, g
	HeatFlux   float64       // heat through the outside, W/m2
	DewPerMin  float64       // gain of dew or frost, g/(m2 min), negative for drying
}

// A HeatBalance is the account of a computation, J; what came in is what is stored
// but for rounding.
type HeatBalance struct {
	Air     float64 // by convection, radiation and vapour through the outer wall
	Ends    float64 // through the drink's surface, base and rim, or an empty glass's inside
	Light   float64 // absorbed
	Thawing float64 // taken by melting frost, negative
	Stored  float64 // gain of wall, drink and ice
}

// Error returns the imbalance as a share of all heat exchanged.
func (b HeatBalance) Error() float64 {
	all := math.Abs(b.Air) + math.Abs(b.Ends) + math.Abs(b.Light) + math.Abs(b.Thawing) + math.Abs(b.Stored)
	if all == 0 {
		return 0
	}
	return math.Abs(b.Air+b.Ends+b.Light+b.Thawing-b.Stored) / all
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
// and EndsH coefficients; the drink +-1 K; the lamps' LightBand; the stages. All are engineering
// estimates.
//
// A still-air model under-predicts the published warming of cans in humid air by
// about 3 (Durran and Frierson 2013): give the air speed if you know it.
//
// A drink with ice below 0 degC, ice so cold that it freezes all of the drink, or a
// level above the rim gives an *InputError.
//
// The base counts as a way of heat, not for the heat that a thick foot holds.
//
// The glass and its lamps stand on a wet set: keep mains and liquids apart.
func (g Glass) Clock(a Air, lamps ...Lamp) (GlassClock, error) {
	g, err := g.complete(a)
	if err != nil {
		return GlassClock{}, err
	}
	light, err := g.light(lamps)
	if err != nil {
		return GlassClock{}, err
	}
	var clock GlassClock
	if err := g.likely(a, light, &clock); err != nil {
		return GlassClock{}, err
	}
	study := Study{
		Inputs: g.uncertain(a, lamps),
		Events: glassEvents,
		Model: func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error { return g.sample(a, light, x, at) }
		},
	}
	out, err := study.Run()
	if err != nil {
		return GlassClock{}, err
	}
	clock.Haze, clock.Opaque = out[eventHaze].Window, out[eventOpaque].Window
	clock.Beads, clock.Runs = out[eventBeads].Window, out[eventRuns].Window
	clock.Dry, clock.Thawed = out[eventDry].Window, out[eventThawed].Window
	clock.IceGone = out[eventIceGone].Window
	clock.Decides = out[eventBeads].Decides
	if !clock.Beads.MayHappen() {
		clock.Decides = out[eventHaze].Decides
	}
	return clock, nil
}

// Likely computes the likely course alone, without bands: each Window has three
// equal times, and Decides is empty. It costs a few hundredths of a Clock.
func (g Glass) Likely(a Air, lamps ...Lamp) (GlassClock, error) {
	g, err := g.complete(a)
	if err != nil {
		return GlassClock{}, err
	}
	light, err := g.light(lamps)
	if err != nil {
		return GlassClock{}, err
	}
	var clock GlassClock
	if err := g.likely(a, light, &clock); err != nil {
		return GlassClock{}, err
	}
	return clock, nil
}

// likely runs once and fills the clock.
func (g Glass) likely(a Air, light float64, clock *GlassClock) error {
	r, err := g.start(a, light)
	if err != nil {
		return err
	}
	r.series = make([]GlassPoint, 0, 320)
	if err := r.run(); err != nil {
		return err
	}
	w := func(event int) Window { return Window{r.at[event], r.at[event], r.at[event]} }
	clock.Haze, clock.Opaque, clock.Beads, clock.Runs = w(eventHaze), w(eventOpaque), w(eventBeads), w(eventRuns)
	clock.Dry, clock.Thawed, clock.IceGone = w(eventDry), w(eventThawed), w(eventIceGone)
	clock.DewPointC = -100
	if dew, err := a.DewPointC(); err == nil {
		clock.DewPointC = dew
	}
	clock.LiquidLine, clock.FogLine = g.lines(a.TempC, clock.DewPointC, r.coldest)
	clock.Series, clock.Balance = r.series, r.balance
	return nil
}
