package thermal

import (
	"math"
	"time"
)

// A HotDish is hot food or drink in an open vessel: soup, coffee, mash.
type HotDish struct {
	Grams    float64 // of food, g; taken as 1000 kg/m3 and 4180 J/(kg K) as water
	Diameter float64 // of its open surface, m, 0.02..1
	StartC   float64 // temperature of food and vessel, deg C, 0 to just below boiling (98 at sea level)
	// LimitC is the temperature of interest on the way down, deg C; 0 means 60. What
	// food codes ask for hot holding is local.
	LimitC float64
	// Solid food, such as mash, only conducts (0.5 W/(m K)); otherwise it mixes.
	Solid bool
	// Activity is the water activity of the surface, 0..1; 0 means 1: soup, coffee. A
	// film of fat lowers it; the band is down to 0.7 of it.
	Activity float64
	// VesselGrams of ceramic or glass (850 J/(kg K)) at the food's temperature, g.
	VesselGrams float64
	// SideH is the heat transfer coefficient from the vessel's side and base to the
	// room, W/(m2 K), 0.1..100; 0 means 8, bare ceramic (estimate).
	SideH float64
	// Absorptance for the lamps, which are taken to fall square on the surface; the zero
	// value means PaleFood.
	Absorptance Absorptance
}

// A HotClock says how long a HotDish stays hot.
type HotClock struct {
	Limit     Window        // when its mean temperature falls to LimitC; Never if the lamps hold it
	SteamEnds Window        // when the surface is too cool for visible steam; 0 if it never steams
	SteamC    float64       // the temperature of the surface at which steam ends, deg C; 100 if it never steams
	Decides   []Sensitivity // of Limit
	Series    []HotPoint    // the likely course
	Balance   HeatBalance   // J/m2 of open surface
}

// The uncertain inputs of a HotDish.
const (
	dishTemp = iota
	dishRH
	dishSpeed
	dishConvection
	dishActivity
	dishStart
	dishSide
	dishLight
	dishInputs
)

// surfaceFilm is the heat transfer coefficient from a mixed hot liquid to its own
// surface, W/(m2 K): natural convection of water under 2..5 kW/m2 (0.15 Ra^(1/3)).
const surfaceFilm = 600.0

// Clock computes the cooling of the dish in the air a under the lamps. The surface
// exchanges heat and vapour as every Surface does, facing up, with the room's air; side
// and base lose heat in proportion to the temperature. The band spans: room +-1.5 K and
// +-6 % RH; air speed divided and multiplied by 2, or 0..0.6 m/s where none is given;
// convection +-20 %; activity; the start +-2 K; the side's coefficient +-40 %; the lamps'
// LightBand.
//
// Food that has stood warm for the camera is not eaten: follow local food codes.
func (d HotDish) Clock(a Air, lamps ...Lamp) (HotClock, error) {
	d, light, err := d.complete(a, lamps)
	if err != nil {
		return HotClock{}, err
	}
	clock, err := d.likely(a, light)
	if err != nil {
		return HotClock{}, err
	}
	study := Study{
		Inputs: d.uncertain(a, lamps),
		Events: 2,
		Model: func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error { return d.sample(a, light, x, at) }
		},
	}
	out, err := study.Run()
	if err != nil {
		return HotClock{}, err
	}
	clock.Limit, clock.SteamEnds, clock.Decides = out[0].Window, out[1].Window, out[0].Decides
	return clock, nil
}

// Likely computes the likely course alone, without bands: each Window has three
// equal times, and Decides is empty.
func (d HotDish) Likely(a Air, lamps ...Lamp) (HotClock, error) {
	d, light, err := d.complete(a, lamps)
	if err != nil {
		return HotClock{}, err
	}
	return d.likely(a, light)
}

func (d HotDish) likely(a Air, light float64) (HotClock, error) {
	r, err := d.start(a, light)
	if err != nil {
		return HotClock{}, err
	}
	r.series = make([]HotPoint, 0, 256)
	if err := r.run(); err != nil {
		return HotClock{}, err
	}
	return HotClock{
		Limit: Window{r.at[0], r.at[0], r.at[0]}, SteamEnds: Window{r.at[1], r.at[1], r.at[1]},
		SteamC: r.limits[1], Series: r.series, Balance: r.balance,
	}, nil
}

func (d HotDish) uncertain(a Air, lamps []Lamp) []Uncertain {
	in := make([]Uncertain, dishInputs)
	in[dishTemp], in[dishRH], in[dishSpeed], in[dishConvection] = roomUncertain(a)
	in[dishActivity] = Uncertain{Name: "wetness of the surface", Likely: d.Activity, Low: 0.7 * d.Activity, High: d.Activity, Min: 0, Max: 1}
	in[dishStart] = Uncertain{Name: "start temperature", Likely: d.StartC, Low: d.StartC - 2, High: min(d.StartC+2, simmering(a)), Min: -1, Max: simmering(a)}
	in[dishSide] = Uncertain{Name: "side of the vessel", Likely: d.SideH, Low: d.SideH / 1.4, High: d.SideH * 1.4, Scale: true}
	low, high := LightBand(lamps...)
	in[dishLight] = Uncertain{Name: "light", Likely: 1, Low: low, High: high, Scale: true}
	return in
}

func (d HotDish) sample(a Air, light float64, x []float64, at []time.Duration) error {
	a.TempC, a.RH, a.Speed = x[dishTemp], x[dishRH], x[dishSpeed]
	d.Activity, d.StartC, d.SideH = x[dishActivity], x[dishStart], x[dishSide]
	r, err := d.start(a, light*x[dishLight])
	if err != nil {
		return err
	}
	r.x.factor *= x[dishConvection]
	if err := r.run(); err != nil {
		return err
	}
	at[0], at[1] = r.at[0], r.at[1]
	return nil
}

// complete checks the dish, fills in its defaults and returns the light that it
// absorbs, W/m2.
func (d HotDish) complete(a Air, lamps []Lamp) (HotDish, float64, error) {
	if err := roomCheck(a); err != nil {
		return d, 0, err
	}
	for _, f := range [...]struct {
		v         *float64
		or        float64
		name      string
		low, high float64
		unit      string
	}{
		{&d.Grams, 0, "food mass", 1, 1e5, "g"},
		{&d.Diameter, 0, "diameter of the open surface", 0.02, 1, "m"},
		{&d.StartC, 0, "start temperature", 0, simmering(a), "degC"},
		{&d.LimitC, 60, "limit temperature", -20, 99, "degC"},
		{&d.Activity, 1, "water activity", 0, 1, ""},
		{&d.VesselGrams, 0, "vessel mass", 0, 1e5, "g"},
		{&d.SideH, 8, "heat transfer coefficient of the side", 0.1, 100, "W/(m2 K)"},
	} {
		if *f.v == 0 {
			*f.v = f.or
		}
		if err := within(f.name, *f.v, f.low, f.high, f.unit, "this package"); err != nil {
			return d, 0, err
		}
	}
	if err := within("depth of the food", d.depth(), 1e-3, 1, "m", "this package"); err != nil {
		return d, 0, err
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
func (d HotDish) start(a Air, light float64) (hotRun, error) {
	s := Surface{Shape: PlateUp, Length: d.Diameter / 4, Activity: d.Activity}
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
	r.layer(depth, cells, drinkRho*drinkHeat, k)
	if !d.Solid {
		r.top = surfaceFilm
	}
	r.food = cells
	r.heat[0] += vessel
	r.below = d.SideH * (1 + 4*depth/d.Diameter) // base and side per open area
	r.belowC = a.TempC
	r.limits, r.limitCount = [maxLimits]float64{d.LimitC, a.steamThreshold(d.Activity)}, 2
	r.ofSurface[1] = true
	r.begin()
	return r, nil
}
