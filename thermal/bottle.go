package thermal

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/solution"
	"example.org/honestplate/thermal/internal/study"
)

// A Bottle is a closed vessel, bottle or can, put into the cold: a refrigerator, iced
// water, a freezer. How one warms and fogs on the set is asked of a [Glass].
type Bottle struct {
	DrinkGrams float64    `json:"drink_grams,omitzero"` // what is in it, g, 10..1e4
	Drink      food.Drink `json:"drink,omitzero"`       // what it is; the zero value is water
	Diameter   float64    `json:"diameter_m,omitzero"`  // outside, m, 0.02..0.3; at a bottle's body
	// Wall is the material, WallThickness its thickness, m, 0.00005..0.02. 0 means glass
	// of 3 mm. A can is [heat.Aluminium] of 0.0002 m.
	Wall          heat.Material `json:"wall,omitzero"`
	WallThickness float64       `json:"wall_thickness_m,omitzero"`
	// StartC is the temperature of bottle and drink as they go in, deg C, above where the
	// drink freezes, to 60; it must be given.
	StartC honestplate.Optional `json:"start_c,omitzero"`
	// TargetC is the temperature wanted of the drink, deg C: above the Medium's and above
	// where it freezes.
	TargetC float64     `json:"target_c,omitzero"`
	Medium  cold.Medium `json:"medium,omitzero"` // what it lies in; see [cold.Chillers], [cold.Freezers]
	// InsideH is the heat transfer coefficient between drink and wall, W/(m2 K); 0 means
	// 120 with a band of 60..300 (estimate: a drink that lies still; more if it is turned).
	InsideH float64 `json:"inside_h_w_m2k,omitzero"`
	// HeadspacePercent is the gas above the drink, of the drink's volume, 0.5..50; 0
	// means 4 (2.5..6, estimate).
	HeadspacePercent float64 `json:"headspace_percent,omitzero"`
}

// A BottleClock says when a bottle is cold, and when it is time that it came out.
type BottleClock struct {
	Cold Event `json:"cold"` // the drink, shaken, comes to TargetC
	// Freezes is when it reaches its freezing point. A drink at rest may stay liquid
	// some kelvins below it, and then sets when it is moved.
	Freezes Event `json:"freezes"`
	// Bursts is when the ice that has formed fills the headspace: a can opens, a glass
	// bottle may break and throw pieces. Take it out by Bursts.Earliest at the latest.
	Bursts Event `json:"bursts"`
	// FreezesC is the drink's freezing point, deg C.
	FreezesC float64       `json:"freezes_c"`
	Series   []BottlePoint `json:"series"` // the likely course
	Balance  HeatBalance   `json:"balance"`
	// Caution is what to mind, a sentence or two; empty where nothing freezes.
	Caution string `json:"caution,omitzero"`
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// A BottlePoint is a bottle at one time.
type BottlePoint struct {
	Time     time.Duration `json:"time_ns"`   // since it went in
	DrinkC   float64       `json:"drink_c"`   // mean of the drink, deg C
	IceShare float64       `json:"ice_share"` // of the drink's mass that is ice, 0..1
}

// The events of a bottle.
const (
	bottleCold = iota
	bottleFreezes
	bottleBursts
)

const (
	bottleHorizon = 24 * 3600.0 // s
	// iceGrows is how much more room a kilogram takes as ice, m3: 1/917 - 1/1000.
	iceGrows      = 9.05e-5
	bottleCaution = "Glass that freezes full breaks and throws pieces, a can opens: set an alarm, do not touch a cracked or bulging one with bare hands, " +
		"open none that has frozen before it has thawed in a closed box."
)

// Clock computes the bottle in its medium:
//
//	(c m + wall) dT/dt = U A (T_medium - T), 1/U = 1/H + wall/k + 1/InsideH
//
// with A the side and both ends of a cylinder that holds the drink. Below the freezing
// point water freezes out as the drink that is left allows, D = D_0 W_0/W, and takes its
// heat of fusion along. The medium stays at its temperature.
//
// The band spans the medium's coefficient (its own limits) and temperature (+-1.5 K), the
// start (+-1 K), the mass of the drink (+-2 %), InsideH and the headspace. Iced water is
// iced water as long as there is ice in it.
func (b Bottle) Clock() (BottleClock, error) {
	return clockOf[BottleClock](b.frame()).knowing(Lesson{})
}

// Likely computes the likely course alone, without bands.
func (b Bottle) Likely() (BottleClock, error) {
	return clockOf[BottleClock](b.frame()).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (b Bottle) Knowing(l Lesson) (BottleClock, error) {
	return clockOf[BottleClock](b.frame()).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (b Bottle) Observe(l Lesson, seen []Seen) (BottleClock, Lesson, error) {
	return clockOf[BottleClock](b.frame()).observed(l, seen)
}

func (m bottleModel) words(r Runs) BottleClock {
	k := BottleClock{Kept: r, Cold: r.at(bottleCold), Freezes: r.at(bottleFreezes), Bursts: r.at(bottleBursts),
		FreezesC: m.b.liquid().FreezesC(0), Series: m.series, Balance: m.balance}
	if k.Freezes.MayHappen() {
		k.Caution = bottleCaution
	}
	return k
}

// A bottleModel is a checked bottle.
type bottleModel struct {
	b       Bottle
	gas     honestplate.Estimate // headspace, percent
	series  []BottlePoint
	balance HeatBalance
}

func (b Bottle) frame() (frame[bottleModel], error) {
	m := bottleModel{gas: honestplate.Factor(b.HeadspacePercent, 1.2)}
	if b.HeadspacePercent == 0 {
		b.HeadspacePercent, m.gas = 4, band(2.5, 4, 6)
	}
	b.Wall = cmp.Or(b.Wall, heat.SodaLime())
	b.WallThickness = cmp.Or(b.WallThickness, 0.003)
	b.InsideH = cmp.Or(b.InsideH, 120)
	m.b = b
	return frame[bottleModel]{kind: "bottle", model: m, inputs: (*bottleModel).inputs, run: (*bottleModel).run,
		events: []string{"cold", "freezes", "bursts"}, doubt: doubtCold,
		readings: readingsOf(func(m *bottleModel) []BottlePoint { return m.series })}, b.check()
}

func (b Bottle) check() error {
	freezes, drinkErr := b.Drink.FreezesC()
	const source = "bottles and cans that are carried"
	if err := cmp.Or(given("StartC", b.StartC, "the temperature of bottle and drink as they go in"),
		honestplate.In("Drink", drinkErr), mediumCheck(b.Medium), check.Fields(source,
			check.Number("DrinkGrams", b.DrinkGrams, 10, 1e4, "g"),
			check.Number("Diameter", b.Diameter, 0.02, 0.3, "m"),
			check.Number("WallThickness", b.WallThickness, 5e-5, 0.02, "m"),
			check.Number("InsideH", b.InsideH, 1, 1e5, "W/(m2 K)"),
			check.Number("HeadspacePercent", b.HeadspacePercent, 0.5, 50, "%"),
		), wallCheck(b.Wall, source), check.Not(b.bore() < 0.01, "Diameter", b.Diameter, "m", "10 mm more than two walls")); err != nil {
		return err
	}
	perMetre := b.DrinkGrams / b.length()
	return cmp.Or(honestplate.InRange("DrinkGrams", b.DrinkGrams, 0.02*perMetre, perMetre, "g", "a length of 20 mm to 1 m in the Diameter"),
		honestplate.InRange("StartC", b.StartC.Value, freezes, 60, "degC", "a closed drink that is neither freezing nor hot"),
		honestplate.InRange("TargetC", b.TargetC, max(freezes, b.Medium.TempC+0.2), b.StartC.Value, "degC",
			"the drink's freezing point, the medium and the start"))
}

func (b Bottle) liquid() solution.Drink { return solution.Drink(b.Drink) }

func (b Bottle) bore() float64 { return b.Diameter - 2*b.WallThickness }

// length of the cylinder that holds the drink, m.
func (b Bottle) length() float64 {
	return b.DrinkGrams / 1000 / b.liquid().Density() / (math.Pi / 4 * b.bore() * b.bore())
}

// area of its side and ends, m2.
func (b Bottle) area() float64 {
	return math.Pi * b.Diameter * (b.length() + b.Diameter/2)
}

func (m *bottleModel) inputs() []study.Input {
	b := &m.b
	return append(mediumInputs(&b.Medium, "room.chiller", "what the cold takes", "temperature of the cold"),
		bound(&b.StartC.Value, within(around("unit.start_c", "start temperature", b.StartC.Value, 1), b.TargetC+1e-3, 70)),
		bound(&b.DrinkGrams, study.Input{Key: "unit.drink_grams", Name: "mass of the drink", Band: honestplate.Factor(b.DrinkGrams, 1.02), Factor: true}),
		bound(&b.InsideH, study.Input{Key: "unit.inside_h", Name: "heat transfer inside", Band: band(b.InsideH/2, b.InsideH, b.InsideH*2.5), Factor: true}),
		bound(&b.HeadspacePercent, ofProduct(study.Input{Key: "product.headspace", Name: "headspace", Band: m.gas, Factor: true})))
}

// A bottleStore is the heat of a bottle against its freezing point, and its temperature.
type bottleStore struct {
	capacity             float64 // of drink and wall, J/K
	water, freezes, down float64 // kg of water; deg C; depression, K
}

// tempC is the temperature for a heat of e J above the drink at its freezing point, and
// the ice in it, kg.
func (s *bottleStore) tempC(e float64) (tempC, ice float64) {
	if e >= 0 {
		return s.freezes + e/s.capacity, 0
	}
	latent := heat.Fusion * s.water
	if s.down < 0.01 { // water: at one temperature until all is ice
		ice = min(-e/heat.Fusion, s.water)
		return s.freezes + (e+ice*heat.Fusion)/s.capacity, ice
	}
	// With x below 0 degC: capacity (x - D) + L W (1 - D/x) = -e.
	b := latent - s.capacity*s.down + e
	x := (-b + math.Sqrt(b*b+4*s.capacity*latent*s.down)) / (2 * s.capacity)
	return -x, s.water * (1 - s.down/x)
}

func (m *bottleModel) run(at []float64, course float64) error {
	b := m.b
	kg := b.DrinkGrams / 1000
	wall := b.area() * b.WallThickness * b.Wall.Density * b.Wall.SpecificHeat
	s := bottleStore{capacity: kg*b.liquid().SpecificHeat() + wall, water: kg * b.liquid().WaterShare(), freezes: b.liquid().FreezesC(0)}
	s.down = -s.freezes
	u := b.area() / (1/b.Medium.H.Likely + b.WallThickness/b.Wall.Conductivity + 1/b.InsideH)
	full := b.HeadspacePercent / 100 * kg / b.liquid().Density() / iceGrows // kg of ice that fill the headspace
	nothing(at)
	m.series, m.balance = m.series[:0], HeatBalance{}
	e := s.capacity * (b.StartC.Value - s.freezes)
	start, time, tempC, ice := e, 0.0, b.StartC.Value, 0.0
	if course >= 0 {
		m.series = append(m.series, BottlePoint{0, tempC, 0})
	}
	tau := s.capacity / u
	for time < bottleHorizon {
		// Heun's rule in the heat: steps of a two-hundredth of the time constant, less than
		// what the drink takes to its next phase.
		dt := min(tau/200, 600, bottleHorizon-time)
		q := u * (b.Medium.TempC - tempC)
		there, _ := s.tempC(e + q*dt)
		q = (q + u*(b.Medium.TempC-there)) / 2
		was, before, frozen := e, tempC, ice
		e += q * dt
		tempC, ice = s.tempC(e)
		crossed(&at[bottleCold], time, dt, -before, -tempC, -b.TargetC)
		crossed(&at[bottleFreezes], time, dt, -was, -e, 0)
		crossed(&at[bottleBursts], time, dt, frozen, ice, full)
		m.balance.Air += q * dt
		time += dt
		if course >= 0 {
			m.series = append(m.series, BottlePoint{seconds(time), tempC, ice / kg})
		}
		if at[bottleBursts] != never || b.Medium.TempC > s.freezes && at[bottleCold] != never && tempC-b.Medium.TempC < 0.1 {
			break
		}
	}
	m.balance.Stored = e - start
	if b.Medium.TempC >= s.freezes {
		at[bottleFreezes], at[bottleBursts] = never, never
	}
	return nil
}
