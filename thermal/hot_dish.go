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

// A HotDish is hot food or drink in an open vessel: soup, coffee, mash.
type HotDish struct {
	Grams    float64 `json:"grams,omitzero"`      // of food, g; taken as 1000 kg/m3 and 4190 J/(kg K) as water
	Diameter float64 `json:"diameter_m,omitzero"` // of its open surface, m, 0.02..1
	StartC   float64 `json:"start_c,omitzero"`    // temperature of the food as it is poured, deg C, 1 to just below boiling (98 at sea level)
	// LimitC is the temperature of interest on the way down, deg C, -20..99; not given,
	// it is 60. What food codes ask for hot holding is local.
	LimitC honestplate.Optional `json:"limit_c,omitzero"`
	// Solid food, such as mash, only conducts (0.5 W/(m K)); otherwise it mixes.
	Solid bool `json:"solid,omitzero"`
	// Activity is the water activity of what is wet of the surface, 0..1; 0 means 1:
	// soup, coffee. The band is down to 0.97 of it.
	Activity float64 `json:"activity,omitzero"`
	// Covered is the share of the surface, 0..1, under fat, foam or a skin: it gives no
	// steam. The band is +-0.15 (estimate), but all is all.
	Covered float64 `json:"covered,omitzero"`
	// VisibleGM3 is from how much droplets steam counts as seen, g/m3, 0.01..10: default
	// 1 (0.3..2), an engineering estimate, no published threshold was found. Against a
	// dark ground with light from behind it is at the lower end.
	VisibleGM3 honestplate.Estimate `json:"visible_g_m3,omitzero"`
	// VesselGrams is the mass of bowl or mug, ceramic or glass (850 J/(kg K)), g. 0
	// means that of 5 mm of stoneware around the food, divided or multiplied by 1.5;
	// for none give a gram.
	VesselGrams float64 `json:"vessel_grams,omitzero"`
	// VesselC is the temperature of the vessel as it is filled, deg C, -30..100. Not
	// given, it comes from the shelf at the room's. A warmed one, or food measured in
	// the vessel it stands in, has StartC.
	VesselC honestplate.Optional `json:"vessel_c,omitzero"`
	// SideH is the heat transfer coefficient from the vessel's side to the room,
	// W/(m2 K), 0.1..100, and half of it from the base. 0 means that of a bare
	// cylinder by convection and radiation, 8 to 13 by size and temperature.
	SideH float64 `json:"side_h_w_m2k,omitzero"`
	// Absorptance for the lamps, which are taken to fall square on the surface; the zero
	// value means PaleFood.
	Absorptance light.Absorptance `json:"absorptance,omitzero"`
}

// A HotClock says how long a HotDish stays hot.
type HotClock struct {
	Limit     Event       `json:"limit"`      // when its mean temperature falls to LimitC; never if the lamps hold it
	SteamEnds Event       `json:"steam_ends"` // when its steam carries less than VisibleGM3; 0 if it never does
	SteamC    float64     `json:"steam_c"`    // the temperature of the surface at which steam ends, deg C; 100 if it never steams
	Series    []HotPoint  `json:"series"`     // the likely course
	Balance   HeatBalance `json:"balance"`    // J/m2 of open surface
	// Kept are the runs that the windows were read from; they go over no wire.
	Kept Runs `json:"-"`
}

// surfaceFilm is the heat transfer coefficient from a mixed hot liquid to its own
// surface, W/(m2 K): natural convection of water under 2..5 kW/m2 (0.15 Ra^(1/3)).
const surfaceFilm = 600.0

const drinkRho = 1000.0 // kg/m3

// insideFilm is the coefficient from a mixed hot liquid to the wall of its vessel,
// W/(m2 K): natural convection of water, and the wall's own 3 W/(m2 K) over 5 mm.
const insideFilm = 300.0

// Clock computes the cooling of the dish in the air a under the lamps. The surface
// exchanges heat and vapour as every Surface does, facing up, with the room's air. The
// food warms its vessel, which loses heat by its side and base.
//
// SteamEnds is when no mixture of the air at the surface with the room's carries
// VisibleGM3 of droplets any more: long before the last mixture is over-saturated.
//
// The band spans the room (see [Air]): +-1.5 K, dew point +-2 K, air speed, convection
// +-20 %; activity and what is covered; the start +-2 K; the vessel's mass, if not given,
// and temperature (+-5 K); its side, times 0.45 (as a logged mug under oil suggests) to
// 1.4; the lamps' band; what counts as steam. Nobody has published how steam fades over a bowl.
//
// Dishes of one product share their vessels' mass, side and temperature: one set, from one
// shelf. Each has its own start. So one test dish tells when the steam of the next ends,
// to a fifth of the window, and when a mug of it has cooled, to half; a wide bowl is at
// its limit within minutes and hangs on its own start, to eight tenths: take the
// temperature of each as it is poured.
//
// Food that has stood warm for the camera is not eaten: follow local food codes.
func (d HotDish) Clock(a Air, lamps ...light.Lamp) (HotClock, error) {
	return clockOf[HotClock](d.frame(a, lamps)).knowing(Lesson{})
}

// Likely computes the likely course alone, without bands: each window has three
// equal times and nothing decides.
func (d HotDish) Likely(a Air, lamps ...light.Lamp) (HotClock, error) {
	return clockOf[HotClock](d.frame(a, lamps)).likely()
}

// Knowing computes the clock of another unit with what a lesson taught of what units
// share; 4,096 runs once it teaches anything.
func (d HotDish) Knowing(l Lesson, a Air, lamps ...light.Lamp) (HotClock, error) {
	return clockOf[HotClock](d.frame(a, lamps)).knowing(l)
}

// Observe computes the clock of a unit of which something was seen or read, and what
// that teaches of what it shares with others: see [Seen].
func (d HotDish) Observe(l Lesson, seen []Seen, a Air, lamps ...light.Lamp) (HotClock, Lesson, error) {
	return clockOf[HotClock](d.frame(a, lamps)).observed(l, seen)
}

// A dishModel is a complete dish in its room.
type dishModel struct {
	hotModel
	d      HotDish
	side   float64 // of what the vessel's side loses, as a factor
	vessel float64 // how well its mass is known, as a factor
}

func (d HotDish) frame(a Air, lamps []light.Lamp) (frame[dishModel], error) {
	known := 1.5
	if d.VesselGrams > 0 {
		known = 1
	}
	d, light, err := d.complete(a, lamps)
	m := dishModel{d: d, side: 1, vessel: known, hotModel: hotModel{setting: settingOf(a, light)}}
	return frame[dishModel]{kind: "dish", model: m, inputs: (*dishModel).inputs, run: (*dishModel).run,
		events: []string{"cool", "steam ends"}, doubt: doubtHot, readings: readingsOf(func(m *dishModel) []HotPoint { return m.done.series })}, err
}

func (m *dishModel) inputs() []study.Input {
	d := &m.d
	covered := band(max(0, d.Covered-0.15), d.Covered, min(1, d.Covered+0.15))
	return append(m.setting.inputs(),
		bound(&d.Activity, ofProduct(study.Input{Key: "product.activity", Name: "water activity",
			Band: band(0.97*d.Activity, d.Activity, d.Activity), Max: 1})),
		bound(&d.Covered, ofProduct(where(d.Covered < 1, within(study.Input{Key: "product.covered", Name: "fat or skin on the surface", Band: covered}, 0, 1)))),
		m.hotStart(&d.StartC, "unit.start_c", "start temperature", 2, -1),
		bound(&d.VesselGrams, ofProduct(study.Input{Key: "product.vessel_grams", Name: "mass of the vessel", Band: honestplate.Factor(d.VesselGrams, m.vessel), Factor: true})),
		bound(&d.VesselC.Value, ofProduct(within(around("product.vessel_c", "temperature of the vessel", d.VesselC.Value, 5), -40, simmering(m.air)))),
		bound(&m.side, ofProduct(factor("product.side_h", "side of the vessel", 0.45, 1.4))),
		bound(&d.VisibleGM3.Likely, study.Input{Key: "crew.steam_g_m3", Name: "what counts as steam", Shared: study.Crew, Band: d.VisibleGM3, Factor: true}))
}

func (m *dishModel) run(at []float64, course float64) error {
	r, err := m.d.start(m.air, m.absorbed(), m.convection, m.side)
	if err != nil {
		return err
	}
	return m.finish(&r, at, course)
}

func (m dishModel) words(r Runs) HotClock {
	return HotClock{Kept: r, Limit: r.at(0), SteamEnds: r.at(1), SteamC: m.done.limits[1], Series: m.done.series, Balance: m.done.balance}
}

// complete checks the dish, fills in its defaults and returns the light that it
// absorbs, W/m2.
func (d HotDish) complete(a Air, lamps []light.Lamp) (HotDish, honestplate.Estimate, error) {
	d.LimitC = some(d.LimitC, 60)
	d.Activity = cmp.Or(d.Activity, 1)
	d.VisibleGM3 = cmp.Or(d.VisibleGM3, band(0.3, 1, 2))
	d.VesselC = some(d.VesselC, a.TempC)
	d.Absorptance = cmp.Or(d.Absorptance, light.PaleFood())
	light, lightErr := d.Absorptance.Absorbed(lamps...)
	if err := cmp.Or(inRoom(a, -30, 60, "rooms in which people work"), check.Fields("dishes, bowls and mugs",
		check.Number("Grams", d.Grams, 1, 1e5, "g"),
		check.Number("Diameter", d.Diameter, 0.02, 1, "m"),
		check.Number("StartC", d.StartC, 1, simmering(a), "degC"),
		check.Number("LimitC", d.LimitC.Value, -20, 99, "degC"),
		check.Number("Activity", d.Activity, 0, 1, ""),
		check.Number("VesselGrams", d.VesselGrams, 0, 1e5, "g"),
		check.Number("Covered", d.Covered, 0, 1, ""),
		check.Number("VesselC", d.VesselC.Value, -30, 100, "degC"),
		check.Number("SideH", cmp.Or(d.SideH, 1), 0.1, 100, "W/(m2 K)"),
	), check.Band("VisibleGM3", d.VisibleGM3, 0.01, 10, "g/m3", "clouds of droplets"), lightErr); err != nil {
		return d, light, err
	}
	const wall, density = 5.0, 2300.0 // mm; kg/m3, stoneware (from memory)
	d.VesselGrams = cmp.Or(d.VesselGrams, wall*density*d.face()*(1+1.2*d.sides()))
	perMetre := d.Grams / d.depth()
	return d, light, honestplate.InRange("Grams", d.Grams, 1e-3*perMetre, perMetre, "g", "a depth of 1 mm to 1 m in the Diameter")
}

func (d HotDish) face() float64  { return math.Pi / 4 * d.Diameter * d.Diameter }
func (d HotDish) depth() float64 { return d.Grams / 1000 / drinkRho / d.face() }

// sides is the wet side of the vessel over its open area.
func (d HotDish) sides() float64 { return 4 * d.depth() / d.Diameter }

// start prepares a run of a complete dish.
func (d HotDish) start(a Air, light, convection, side float64) (hotRun, error) {
	s := heat.Surface{Shape: heat.PlateUp, Length: d.Diameter / 4, Activity: d.Activity, Covered: d.Covered, ConvectionFactor: convection}
	r, err := newHotRun(s, a, d.StartC)
	if err != nil {
		return r, err
	}
	r.light = light
	// The vessel is the lowest cell.
	r.Cells, r.TempC[0], r.Heat[0] = 1, d.VesselC.Value, max(d.VesselGrams, 1e-3)/1000*850/d.face()
	depth, cells, k := d.depth(), 1, 1.0
	inside := insideFilm * (1 + d.sides())
	r.Top = inside
	if d.Solid {
		cells, k = 8, 0.5
	}
	r.layer(depth, d.StartC, cells, depth/float64(cells), drinkRho*heat.WaterHeat, k)
	if !d.Solid {
		r.Link[0], r.Top = inside, surfaceFilm
	}
	r.food = cells
	const ofBase = 0.5
	if d.SideH > 0 {
		r.Below = d.SideH * side * (ofBase + d.sides())
	} else {
		r.around.area = side * (ofBase + d.sides())
		r.around.x, err = heat.Surface{Shape: heat.VerticalCylinder, Length: max(depth, 0.01), Diameter: d.Diameter, ConvectionFactor: convection}.In(a.moist())
		if err != nil {
			return r, err
		}
	}
	r.BelowC = a.TempC
	steamC, err := a.moist().SteamFromC(d.VisibleGM3.Likely, d.Activity)
	if err != nil {
		return r, err
	}
	if d.Covered == 1 {
		steamC = 100 // nothing is open
	}
	r.limits = [hotLimits]float64{d.LimitC.Value, steamC}
	r.ofSurface[1] = true
	r.begin()
	return r, nil
}
