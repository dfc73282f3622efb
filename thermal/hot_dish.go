package thermal

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
	"example.org/honestplate/thermal/internal/study"
)

// A HotDish is hot food or drink in an open vessel: soup, coffee, mash.
type HotDish struct {
	Grams    float64 `json:"grams,omitzero"`      // of food, g; taken as 1000 kg/m3 and 4180 J/(kg K) as water
	Diameter float64 `json:"diameter_m,omitzero"` // of its open surface, m, 0.02..1
	StartC   float64 `json:"start_c,omitzero"`    // temperature of food and vessel, deg C, 1 to just below boiling (98 at sea level)
	// LimitC is the temperature of interest on the way down, deg C, -20..99; not given,
	// it is 60. What food codes ask for hot holding is local.
	LimitC honestplate.Optional `json:"limit_c,omitzero"`
	// Solid food, such as mash, only conducts (0.5 W/(m K)); otherwise it mixes.
	Solid bool `json:"solid,omitzero"`
	// Activity is the water activity of the surface, 0..1; 0 means 1: soup, coffee. A
	// film of fat lowers it; the band is down to 0.7 of it.
	Activity float64 `json:"activity,omitzero"`
	// VesselGrams of ceramic or glass (850 J/(kg K)) at the food's temperature, g.
	VesselGrams float64 `json:"vessel_grams,omitzero"`
	// SideH is the heat transfer coefficient from the vessel's side and base to the
	// room, W/(m2 K), 0.1..100; 0 means 8, bare ceramic (estimate).
	SideH float64 `json:"side_h_w_m2k,omitzero"`
	// Absorptance for the lamps, which are taken to fall square on the surface; the zero
	// value means PaleFood.
	Absorptance Absorptance `json:"absorptance,omitzero"`
}

// A HotClock says how long a HotDish stays hot.
type HotClock struct {
	Limit     Event       `json:"limit"`      // when its mean temperature falls to LimitC; never if the lamps hold it
	SteamEnds Event       `json:"steam_ends"` // when the surface is too cool for visible steam; 0 if it never steams
	SteamC    float64     `json:"steam_c"`    // the temperature of the surface at which steam ends, deg C; 100 if it never steams
	Series    []HotPoint  `json:"series"`     // the likely course
	Balance   HeatBalance `json:"balance"`    // J/m2 of open surface
	// Kept are the runs that the windows were read from.
	Kept Runs `json:"kept,omitzero"`
}

// surfaceFilm is the heat transfer coefficient from a mixed hot liquid to its own
// surface, W/(m2 K): natural convection of water under 2..5 kW/m2 (0.15 Ra^(1/3)).
const surfaceFilm = 600.0

// Clock computes the cooling of the dish in the air a under the lamps. The surface
// exchanges heat and vapour as every Surface does, facing up, with the room's air; side
// and base lose heat in proportion to the temperature. The band spans: room +-1.5 K and
// +-6 % RH; air speed divided and multiplied by 2, or 0..0.6 m/s where none is given;
// convection +-20 %; activity; the start +-2 K; the side's coefficient +-40 %; the lamps'
// the band of the lamps.
//
// Food that has stood warm for the camera is not eaten: follow local food codes.
func (d HotDish) Clock(a Air, lamps ...Lamp) (HotClock, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return HotClock{}, err
	}
	return hotClock(f.banded(Lesson{}))
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides.
func (d HotDish) Likely(a Air, lamps ...Lamp) (HotClock, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return HotClock{}, err
	}
	return hotClock(f.likely())
}

// A dishModel is a complete dish in its room.
type dishModel struct {
	hotModel
	d HotDish
}

func (d HotDish) frame(a Air, lamps []Lamp) (frame[dishModel], error) {
	d, light, err := d.complete(a, lamps)
	m := dishModel{d: d, hotModel: newHotModel(a, lamps, light)}
	return frame[dishModel]{kind: "dish", model: m, inputs: (*dishModel).inputs, run: (*dishModel).run,
		events: dishEventKeys, doubt: doubtHot}, err
}

func (m *dishModel) inputs() []study.Input {
	d, most := &m.d, simmering(m.air)
	start := around("unit.start_c", "start temperature", d.StartC, 2)
	start.Band.High = min(start.Band.High, most)
	return append(m.hotModel.inputs(),
		bound(&d.Activity, ofProduct(study.Input{Key: "product.activity", Name: "wetness of the surface",
			Band: band(0.7*d.Activity, d.Activity, d.Activity), Max: 1})),
		bound(&d.StartC, within(start, -1, most)),
		bound(&d.SideH, study.Input{Key: "unit.side_h", Name: "side of the vessel", Band: honestplate.Factor(d.SideH, 1.4), Factor: true}),
		lightInput(&m.brightness, d.Absorptance, m.lamps))
}

func (m *dishModel) run(at []float64, course bool) error {
	r, err := m.d.start(m.air, m.absorbed(), m.convection)
	if err != nil {
		return err
	}
	return m.finish(&r, at, course)
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (d HotDish) Knowing(l Lesson, a Air, lamps ...Lamp) (HotClock, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return HotClock{}, err
	}
	return hotClock(f.banded(l))
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (d HotDish) Observe(l Lesson, seen []Seen, a Air, lamps ...Lamp) (HotClock, Lesson, error) {
	f, err := d.frame(a, lamps)
	if err != nil {
		return HotClock{}, l, err
	}
	m, r, after, err := f.observed(l, seen)
	if err != nil {
		return HotClock{}, l, err
	}
	clock, err := hotClock(m, r, nil)
	return clock, after, err
}

func hotClock(m dishModel, r Runs, err error) (HotClock, error) {
	if err != nil {
		return HotClock{}, err
	}
	return HotClock{Kept: r, Limit: r.at(0), SteamEnds: r.at(1), SteamC: m.done.limits[1], Series: m.done.series, Balance: m.done.balance}, nil
}

// complete checks the dish, fills in its defaults and returns the light that it
// absorbs, W/m2.
func (d HotDish) complete(a Air, lamps []Lamp) (HotDish, float64, error) {
	if err := roomCheck(a); err != nil {
		return d, 0, err
	}
	d.LimitC = honestplate.Some(d.LimitC.Or(60))
	setDefault(&d.Activity, 1)
	setDefault(&d.SideH, 8)
	const source = "dishes, bowls and mugs"
	if err := check.Fields(source,
		check.Number("Grams", d.Grams, 1, 1e5, "g"),
		check.Number("Diameter", d.Diameter, 0.02, 1, "m"),
		check.Number("StartC", d.StartC, 1, simmering(a), "degC"),
		check.Number("LimitC", d.LimitC.Value, -20, 99, "degC"),
		check.Number("Activity", d.Activity, 0, 1, ""),
		check.Number("VesselGrams", d.VesselGrams, 0, 1e5, "g"),
		check.Number("SideH", d.SideH, 0.1, 100, "W/(m2 K)"),
	); err != nil {
		return d, 0, err
	}
	if depth := d.depth(); depth < 1e-3 || depth > 1 {
		return d, 0, &honestplate.RangeError{Field: "Grams", Value: d.Grams, Low: d.Grams / depth / 1000, High: d.Grams / depth, Unit: "g",
			Source: "a depth of 1 mm to 1 m in the Diameter"}
	}
	if d.Absorptance == (Absorptance{}) {
		d.Absorptance = PaleFood()
	}
	light, err := d.Absorptance.Absorbed(lamps...)
	return d, light, err
}

func (d HotDish) face() float64  { return math.Pi / 4 * d.Diameter * d.Diameter }
func (d HotDish) depth() float64 { return d.Grams / 1000 / drinkRho / d.face() }

// start prepares a run of a complete dish.
func (d HotDish) start(a Air, light, convection float64) (hotRun, error) {
	s := heat.Surface{Shape: heat.PlateUp, Length: d.Diameter / 4, Activity: d.Activity, ConvectionFactor: convection}
	r, err := newHotRun(s, a, d.StartC)
	if err != nil {
		return r, err
	}
	r.light = light
	depth, vessel := d.depth(), d.VesselGrams/1000*850/d.face() // J/(m2 K)
	cells, k := 1, 1.0
	if d.Solid {
		cells, k = 8, 0.5
	}
	r.layer(depth, d.StartC, cells, depth/float64(cells), drinkRho*drinkHeat, k)
	if !d.Solid {
		r.Top = surfaceFilm
	}
	r.food = cells
	r.Heat[0] += vessel
	r.Below = d.SideH * (1 + 4*depth/d.Diameter) // base and side per open area
	r.BelowC = a.TempC
	steam, err := a.Steam(a.TempC, d.Activity)
	if err != nil {
		return r, err
	}
	r.limits, r.limitCount = [maxLimits]float64{d.LimitC.Value, steam.ThresholdC}, 2
	r.ofSurface[1] = true
	r.begin()
	return r, nil
}

// dishEventKeys are the keys of the events, in the order of a run.
var dishEventKeys = []string{"cool", "steam ends"}
