package thermal

import (
	"math"
	"time"
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
	Grams float64
	// Diameter of the round that the cheese covers, m, 0.02..1.
	Diameter float64
	// StartC is the temperature of cheese and bread as the clock starts, deg C,
	// from 20 to a degree or two below the boiling point in the air (98 at sea level); 0
	// means 90, as it leaves the oven, or that limit where it is lower.
	StartC float64
	// BreadThickness below the cheese, m, 0.001..0.1; 0 means 8 mm.
	BreadThickness float64
	// UndersideH is the heat transfer coefficient from the bread to what it lies on,
	// W/(m2 K), 0.1..1000; 0 means 8, a wooden board (estimate). A rack has about 6, a
	// cold metal or stone slab 50..200.
	UndersideH float64
	// UndersideRiseC is how much warmer than the room that is, K, -40..200; a hot
	// stone keeps the pull alive.
	UndersideRiseC float64
	// Activity is the water activity of the open surface, 0..1; 0 means 0.9. Fresh
	// cheese has 0.98, a coat of free fat slows drying: the band is 0.5..0.98.
	Activity float64
	// RunnyC is the temperature above which it runs rather than strings, deg C, 30..120;
	// zero means 85 (79..91).
	RunnyC Threshold
	// SetC is the temperature below which it tears rather than strings, deg C, 20..110;
	// zero means 55 (45..65).
	SetC Threshold
	// Absorptance for the lamps, which are taken to fall square on; the zero value
	// means PaleFood.
	Absorptance Absorptance
}

// Properties of the layers: typical values (engineering estimates near published
// ones): part-skim mozzarella and baked flatbread.
const (
	cheeseRho, cheeseHeat, cheeseK = 1070.0, 3000.0, 0.36 // kg/m3, J/(kg K), W/(m K)
	breadRho, breadHeat, breadK    = 400.0, 2300.0, 0.12
	cheeseCells, breadCells        = 3, 4
)

// A CheeseClock says when the pull is on.
type CheeseClock struct {
	// Opens is when the cheese has cooled enough to string: 0 if it strings at once,
	// Never if it was too cold from the start.
	Opens Window
	// Closes is when its mean temperature falls below the stretch limit: Never under
	// lamps or on a stone that keep it above.
	Closes Window
	// Decides ranks the inputs that the closing time hangs on.
	Decides []Sensitivity
	// Series is the likely course, per square metre.
	Series []HotPoint
	// Balance is the heat account of the likely course.
	Balance HeatBalance
}

// A HotPoint is a hot thing at one time.
type HotPoint struct {
	Time     time.Duration // since the start
	MeanC    float64       // of the food, deg C
	SurfaceC float64       // of its surface, deg C
	HeatFlux float64       // through the surface, W/m2; negative while it cools
	DryGrams float64       // water lost by evaporation so far, g/m2
}

// The uncertain inputs of a Cheese.
const (
	cheeseTemp = iota
	cheeseRH
	cheeseSpeed
	cheeseConvection
	cheeseActivity
	cheeseStart
	cheeseUnderside
	cheeseLight
	cheeseRunny
	cheeseSet
	cheeseInputs
)

// Clock computes the stretch window of the cheese in the air a under the lamps.
//
// Cheese and bread are resolved through their thickness (three and four cells); the
// top exchanges heat and vapour as every Surface does, facing up; the pull is judged
// by the mean temperature of the cheese. The edge is left out. The band spans: room
// +-1.5 K and +-6 % RH; air speed divided and multiplied by 2, or 0..0.6 m/s where
// none is given; convection +-20 %; activity; the start +-3 K; the underside's
// coefficient divided and multiplied by 2; the lamps' LightBand; both limits.
//
// Food that has stood warm for the camera is not eaten: follow local food codes.
func (c Cheese) Clock(a Air, lamps ...Lamp) (CheeseClock, error) {
	c, light, err := c.complete(a, lamps)
	if err != nil {
		return CheeseClock{}, err
	}
	clock, err := c.likely(a, light)
	if err != nil {
		return CheeseClock{}, err
	}
	study := Study{
		Inputs: c.uncertain(a, lamps),
		Events: 2,
		Model: func() func([]float64, []time.Duration) error {
			return func(x []float64, at []time.Duration) error { return c.sample(a, light, x, at) }
		},
	}
	out, err := study.Run()
	if err != nil {
		return CheeseClock{}, err
	}
	clock.Opens, clock.Closes, clock.Decides = out[0].Window, out[1].Window, out[1].Decides
	return clock, nil
}

// Likely computes the likely course alone, without bands: each Window has three
// equal times, and Decides is empty.
func (c Cheese) Likely(a Air, lamps ...Lamp) (CheeseClock, error) {
	c, light, err := c.complete(a, lamps)
	if err != nil {
		return CheeseClock{}, err
	}
	return c.likely(a, light)
}

func (c Cheese) likely(a Air, light float64) (CheeseClock, error) {
	r, err := c.start(a, light)
	if err != nil {
		return CheeseClock{}, err
	}
	r.series = make([]HotPoint, 0, 256)
	if err := r.run(); err != nil {
		return CheeseClock{}, err
	}
	return CheeseClock{
		Opens: Window{r.at[0], r.at[0], r.at[0]}, Closes: Window{r.at[1], r.at[1], r.at[1]},
		Series: r.series, Balance: r.balance,
	}, nil
}

func (c Cheese) uncertain(a Air, lamps []Lamp) []Uncertain {
	in := make([]Uncertain, cheeseInputs)
	in[cheeseTemp], in[cheeseRH], in[cheeseSpeed], in[cheeseConvection] = roomUncertain(a)
	in[cheeseActivity] = Uncertain{Name: "wetness of the surface", Likely: c.Activity, Low: min(0.5, c.Activity), High: max(0.98, c.Activity), Min: 0, Max: 1}
	in[cheeseStart] = Uncertain{Name: "start temperature", Likely: c.StartC, Low: c.StartC - 3, High: min(c.StartC+3, simmering(a)), Min: -40, Max: simmering(a)}
	in[cheeseUnderside] = Uncertain{Name: "board", Likely: c.UndersideH, Low: c.UndersideH / 2, High: c.UndersideH * 2, Scale: true}
	low, high := LightBand(lamps...)
	in[cheeseLight] = Uncertain{Name: "light", Likely: 1, Low: low, High: high, Scale: true}
	in[cheeseRunny] = c.RunnyC.uncertain("runny limit")
	in[cheeseSet] = c.SetC.uncertain("stretch limit")
	return in
}

func (c Cheese) sample(a Air, light float64, x []float64, at []time.Duration) error {
	a.TempC, a.RH, a.Speed = x[cheeseTemp], x[cheeseRH], x[cheeseSpeed]
	c.Activity, c.StartC, c.UndersideH = x[cheeseActivity], x[cheeseStart], x[cheeseUnderside]
	c.RunnyC.Likely, c.SetC.Likely = x[cheeseRunny], x[cheeseSet]
	r, err := c.start(a, light*x[cheeseLight])
	if err != nil {
		return err
	}
	r.x.factor *= x[cheeseConvection]
	if err := r.run(); err != nil {
		return err
	}
	at[0], at[1] = r.at[0], r.at[1]
	return nil
}

// complete checks the cheese, fills in its defaults and returns the light that it
// absorbs, W/m2.
func (c Cheese) complete(a Air, lamps []Lamp) (Cheese, float64, error) {
	if err := roomCheck(a); err != nil {
		return c, 0, err
	}
	for _, d := range [...]struct {
		v         *float64
		or        float64
		name      string
		low, high float64
		unit      string
	}{
		{&c.Diameter, 0, "diameter of the round", 0.02, 1, "m"},
		{&c.StartC, min(90, simmering(a)), "start temperature", 20, simmering(a), "degC"},
		{&c.BreadThickness, 0.008, "bread thickness", 0.001, 0.1, "m"},
		{&c.UndersideH, 8, "heat transfer coefficient of the underside", 0.1, 1000, "W/(m2 K)"},
		{&c.UndersideRiseC, 0, "rise of the underside", -40, 200, "K"},
		{&c.Activity, 0.9, "water activity", 0, 1, ""},
	} {
		if *d.v == 0 {
			*d.v = d.or
		}
		if err := within(d.name, *d.v, d.low, d.high, d.unit, "this package"); err != nil {
			return c, 0, err
		}
	}
	if err := positive("cheese mass", c.Grams, "g"); err != nil {
		return c, 0, err
	}
	if err := within("thickness of the cheese", c.thickness(), 2e-4, 0.05, "m", "this package"); err != nil {
		return c, 0, err
	}
	c.RunnyC, c.SetC = c.RunnyC.or(79, 85, 91), c.SetC.or(45, 55, 65)
	if err := c.RunnyC.check("runny limit", 30, 120, "degC"); err != nil {
		return c, 0, err
	}
	if err := c.SetC.check("stretch limit", 20, 110, "degC"); err != nil {
		return c, 0, err
	}
	if c.SetC.Likely >= c.RunnyC.Likely {
		return c, 0, &InputError{"stretch limit", c.SetC.Likely, "degC", "below the runny limit"}
	}
	if c.Absorptance == (Absorptance{}) {
		c.Absorptance = PaleFood()
	}
	light, err := c.Absorptance.Absorbed(lamps...)
	return c, light, err
}

// thickness of the cheese, m.
func (c Cheese) thickness() float64 {
	return c.Grams / 1000 / cheeseRho / (math.Pi / 4 * c.Diameter * c.Diameter)
}

// start prepares a run of a complete cheese.
func (c Cheese) start(a Air, light float64) (hotRun, error) {
	s := Surface{Shape: PlateUp, Length: c.Diameter / 4, Activity: c.Activity}
	r, err := newHotRun(s, a, c.StartC)
	if err != nil {
		return r, err
	}
	r.light = light
	r.layer(c.BreadThickness, breadCells, breadRho*breadHeat, breadK)
	r.layer(c.thickness(), cheeseCells, cheeseRho*cheeseHeat, cheeseK)
	r.food = cheeseCells
	r.below = 1 / (1/c.UndersideH + c.BreadThickness/breadCells/2/breadK)
	r.belowC = a.TempC + c.UndersideRiseC
	// It strings below one limit and until the other.
	r.limits, r.limitCount = [maxLimits]float64{c.RunnyC.Likely, c.SetC.Likely}, 2
	r.begin()
	if r.at[1] == 0 {
		r.at[0] = Never
		r.at[1] = Never
	}
	return r, nil
}
