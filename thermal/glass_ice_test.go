package thermal

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solution"
)

// A glass from the shelf with cubes, as the tests of its ice use it.
func icedTumbler() Glass {
	return Glass{Diameter: 0.075, Height: 0.12, DrinkGrams: 250, DrinkC: honestplate.Some(22), IceGrams: 100, IceC: honestplate.Some(-10)}
}

// The fog answers to the temperature of the pour. The times are those of an independent
// model of the same glass, 3 cm cubes and 400 W/(m2 K), in still air, that was written
// for a review: minutes to 0.4, 4 and 20 g/m2. Taking drink and ice as one gives 1:17
// whatever the pour.
func TestFogAnswersToTheTemperatureOfThePour(t *testing.T) {
	for _, c := range []struct{ pour, haze, opaque, beads float64 }{{22, 3.75, 7.8, 20.5}, {15, 2.85, 6.5, 18.5}, {5, 1.74, 4.9, 16.4}} {
		g := icedTumbler()
		g.DrinkC, g.IceH = honestplate.Some(c.pour), honestplate.Exactly(400)
		k := mustLikely(t, g, Air{TempC: 23, RH: 0.5, Still: true})
		for name, v := range map[string][2]float64{"haze": {at(k.Haze.Likely).Minutes(), c.haze}, "opaque": {at(k.Opaque.Likely).Minutes(), c.opaque}, "beads": {at(k.Beads.Likely).Minutes(), c.beads}} {
			if math.Abs(v[0]/v[1]-1) > 0.04 {
				t.Errorf("%g degC: %s after %.2f min, the other model %.2f", c.pour, name, v[0], v[1])
			}
		}
	}
}

// The ice of a glass has one life: what melts has taken its heat from somewhere.
func TestMeltAccountsForTheHeat(t *testing.T) {
	g := icedTumbler()
	k := mustLikely(t, g, Air{TempC: 23, RH: 0.5})
	for i, p := range k.Series {
		if math.Abs(p.IceGrams+p.MeltGrams-100) > 1e-9 {
			t.Fatalf("%v: %g g of ice and %g g of melt", p.Time, p.IceGrams, p.MeltGrams)
		}
		if i > 0 && p.IceGrams > k.Series[i-1].IceGrams+1 && p.Time > time.Minute {
			t.Errorf("ice grows at %v", p.Time)
		}
	}
	if e := missing(k.Balance); e > 1e-6 {
		t.Errorf("%g of the heat is missing", e)
	}
	for _, w := range []Event{k.Watered, k.IceHalf, k.IceGone, k.Cold} {
		if !w.MayHappen() {
			t.Errorf("%+v", k)
		}
	}
	if k.ColdestC < 1 || k.ColdestC > 5 {
		t.Errorf("coldest %g", k.ColdestC)
	}
}

// Without a room and a wall worth the name, ice and drink come to the balance of their heat.
func TestIceInAnIsolatedDrinkComesToTheMixture(t *testing.T) {
	for _, ice := range []float64{20, 60, 150} {
		g := Glass{Diameter: 0.075, Height: 0.12, DrinkGrams: 250, DrinkC: honestplate.Some(20), IceGrams: ice, IceC: honestplate.Some(-15), WallC: honestplate.Some(20),
			IceH: honestplate.Exactly(3000), WallThickness: 1e-4, Wall: heat.Material{Conductivity: 0.01, Density: 1, SpecificHeat: 100}, InsideH: 0.01, EndsH: 0.01, Horizon: time.Hour}
		k := mustLikely(t, g, Air{TempC: 20, RH: 0.3})
		// Against water at 0 degC, J.
		held := 0.25*heat.WaterHeat*20 - ice/1000*(heat.Fusion+15*heat.Ice().SpecificHeat)
		left, tempC := max(0, -held/heat.Fusion*1000), max(0, held)/((0.25+ice/1000)*heat.WaterHeat)
		p := k.Series[len(k.Series)-1]
		if math.Abs(p.DrinkC-tempC) > 0.15 || math.Abs(p.IceGrams-left) > 0.6 {
			t.Errorf("%g g of ice: %.2f degC and %.1f g left, the balance says %.2f and %.1f", ice, p.DrinkC, p.IceGrams, tempC, left)
		}
	}
}

// Still water takes heat to ice as its density asks: an upright face of 165 mm shows
// some 300 W/(m2 K) at 18 degC and 115 at 5 (measured courses of an ice cylinder).
func TestStillWaterIsSlowNearFourDegrees(t *testing.T) {
	face := heat.Surface{Shape: heat.VerticalPlate, Length: 0.165}
	h := func(c float64) float64 {
		v, err := face.InWater(0, c)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	if a, b := h(17.8), h(5.1); math.Abs(a/300-1) > 0.2 || math.Abs(b/115-1) > 0.2 {
		t.Errorf("%.0f and %.0f W/(m2 K)", a, b)
	}
	for c := 7.0; c < 60; c++ {
		if h(c+1) <= h(c) {
			t.Errorf("falls from %g degC", c)
		}
	}
	if _, err := face.InWater(0, math.NaN()); err == nil {
		t.Error("NaN")
	}
	if _, err := (heat.Surface{}).InWater(0, 5); err == nil {
		t.Error("no length")
	}
}

// In a sweet drink the melt floats and insulates; a school found ice to last 5 to 7
// times as long in milk, cola and juice as in water (read; times alone were given).
func TestSugarKeepsIce(t *testing.T) {
	last := time.Duration(0)
	for _, brix := range []float64{0, 2, 5, 11} {
		g := icedTumbler()
		g.Drink.Brix = brix
		k := mustLikely(t, g, calmRoom)
		if at(k.IceHalf.Likely) <= last {
			t.Errorf("%g Brix: half gone after %v, before %v", brix, k.IceHalf, last)
		}
		last = at(k.IceHalf.Likely)
	}
	sweet := icedTumbler()
	sweet.Drink.Brix = 11
	stirred := sweet
	stirred.IceH = honestplate.Exactly(800)
	if a, b := mustLikely(t, sweet, calmRoom), mustLikely(t, stirred, calmRoom); at(b.IceHalf.Likely)*2 > at(a.IceHalf.Likely) {
		t.Errorf("stirred %v, not %v", b.IceHalf, a.IceHalf)
	}
	lo, hi := afloatIn(food.Drink{Brix: 11}).Low, afloatIn(food.Drink{Brix: 11}).High
	if 1/lo < 5 || hi != 1 {
		t.Errorf("band %g..%g does not hold the published tests", lo, hi)
	}
}

// Spirit on ice falls below 0 degC (whisky over small ice reached -5 degC, read), water never.
func TestSpiritGoesBelowZero(t *testing.T) {
	g := Glass{Diameter: 0.08, DrinkGrams: 90, DrinkC: honestplate.Some(20), IceGrams: 100, IceSize: 0.02, IceC: honestplate.Some(-10)}
	water := mustLikely(t, g, calmRoom)
	g.Drink.AlcoholPercent = 40
	spirit := mustLikely(t, g, calmRoom)
	if water.ColdestC < 0 || spirit.ColdestC > -2 || spirit.ColdestC < -12 {
		t.Errorf("water %g, spirit %g degC", water.ColdestC, spirit.ColdestC)
	}
	if e := missing(spirit.Balance); e > 1e-6 {
		t.Errorf("%g of the heat is missing", e)
	}
}

// The temperature given to the ice is used: colder ice cools more and waters less.
func TestTheIceTemperatureGivenIsUsed(t *testing.T) {
	wet, cold := icedTumbler(), icedTumbler()
	wet.IceC, cold.IceC = honestplate.Some(0), honestplate.Some(-30)
	a, b := mustLikely(t, wet, calmRoom), mustLikely(t, cold, calmRoom)
	if at(a.Watered.Likely) >= at(b.Watered.Likely) || at(a.IceGone.Likely) >= at(b.IceGone.Likely) {
		t.Errorf("wet: %v, %v; cold: %v, %v", a.Watered, a.IceGone, b.Watered, b.IceGone)
	}
	// Not given, it is a band.
	open := icedTumbler()
	open.IceC = honestplate.Optional{}
	k, err := open.Clock(calmRoom)
	if err != nil {
		t.Fatal(err)
	}
	six := icedTumbler()
	six.IceC = honestplate.Some(-6)
	if l := mustLikely(t, six, calmRoom); l.IceGone.Likely != k.IceGone.Likely {
		t.Errorf("not given %v, -6 degC %v", k.IceGone, l.IceGone)
	}
}

// The step is fine enough over the whole range, not only at the defaults.
func TestIcedGlassConvergesOverItsRange(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	n := 150
	if testing.Short() {
		n = 30
	}
	for i := range n {
		a := Air{TempC: between(-5, 40), RH: between(0.15, 0.95), Speed: between(0.01, 2)}
		g := Glass{Diameter: between(0.04, 0.15), WallThickness: between(0.0005, 0.008), DrinkGrams: between(60, 800),
			IceGrams: between(5, 400), IceShape: IceShape(r.IntN(3)), IceC: honestplate.Some(between(-40, 0)),
			Drink: food.Drink{Brix: max(0, between(-20, 40)), AlcoholPercent: max(0, between(-40, 45))},
			WallC: honestplate.Some(between(-20, 50)), InsideH: between(40, 600)}
		g.DrinkC = honestplate.Some(between(max(0, solution.Drink(g.Drink).FreezesC(0)), 60))
		if i%3 == 0 {
			g.IceH = honestplate.Exactly(math.Exp(between(math.Log(20), math.Log(10000))))
		}
		g, err := g.complete(a)
		if err != nil {
			continue
		}
		run := func(scale float64) (glassRun, [glassEvents]float64) {
			s, err := g.start(a, 0, 1)
			if err != nil {
				t.Fatal(err)
			}
			s.scale = scale
			if err := s.run(); err != nil {
				t.Fatal(err)
			}
			return s, s.at
		}
		cr, coarse := run(1)
		fr, fine := run(0.05)
		if d := math.Abs(cr.coldestDrink - fr.coldestDrink); d > 0.15 {
			t.Errorf("%+v in %+v: coldest %.2f, converged %.2f", g, a, cr.coldestDrink, fr.coldestDrink)
		}
		for _, e := range []int{eventHaze, eventOpaque, eventBeads, eventCold, eventWatered, eventIceHalf, eventIceGone} {
			if fine[e] == never || coarse[e] == never {
				continue // beside the horizon, or where the course just touches the level
			}
			limit := 0.02*fine[e] + 1.5
			if e == eventCold { // within 1 K of a flat minimum
				limit = 0.1*fine[e] + 5
				if a.TempC < 3 {
					continue
				}
			}
			if math.Abs(coarse[e]-fine[e]) > limit {
				t.Errorf("%s: event %d at %.1f s, converged %.1f", fmt.Sprintf("%+v in %+v", g, a), e, coarse[e], fine[e])
			}
		}
	}
}

// The fin: in the limits of a tight hold of the drink on the wall it is the plain fin
// from the drink's temperature; a loose hold and no rim bring nothing.
func TestRimOfAGlassIsAFin(t *testing.T) {
	g, err := tumbler(100).complete(calmRoom)
	if err != nil {
		t.Fatal(err)
	}
	rim := func(g Glass) float64 {
		return g.endsConductance() - 2*g.EndsH*math.Pi*g.bore()*g.bore()/4
	}
	plain := math.Pi * g.Diameter * g.fade() * (finOutside + finInside) * math.Tanh(g.rim()/g.fade())
	usual := rim(g)
	tight, loose, full := g, g, g
	tight.InsideH, loose.InsideH = 1e5, 0.01
	full.Height = g.WallThickness + g.depth()
	if got := rim(tight); got > plain || got < 0.95*plain {
		t.Errorf("tight: %g W/K, plain fin %g", got, plain)
	}
	if usual < 0.5*plain || usual > 0.85*plain {
		t.Errorf("%g W/K, plain fin %g", usual, plain)
	}
	if got := rim(loose); got > 1e-5*plain || got < 0 {
		t.Errorf("loose: %g W/K", got)
	}
	if got := rim(full); math.Abs(got) > 1e-9 {
		t.Errorf("full to the brim: %g W/K", got)
	}
}

func whisky() Glass {
	return Glass{DrinkGrams: 200, DrinkC: honestplate.Some(20), IceSize: 0.025, IceGrams: 100, IceC: honestplate.Some(-15), Diameter: 0.07}
}

func TestPiecesOfIceByShapeAndSize(t *testing.T) {
	clock := func(d Glass) GlassClock {
		t.Helper()
		c, err := d.Clock(studio)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	cubes := clock(whisky())
	one, chips, warm := whisky(), whisky(), whisky()
	one.IceShape, one.IceSize = IceBall, 0.055
	chips.IceShape, chips.IceSize = IceChip, 0.004
	warm.DrinkC = honestplate.Some(30)
	b, c, w := clock(one), clock(chips), clock(warm)
	if !(at(c.IceHalf.Likely) < at(cubes.IceHalf.Likely) && at(cubes.IceHalf.Likely) < at(b.IceHalf.Likely)) {
		t.Errorf("half gone: chips %v, cubes %v, one ball %v", c.IceHalf, cubes.IceHalf, b.IceHalf)
	}
	if !(c.ColdestC < cubes.ColdestC && cubes.ColdestC < b.ColdestC) {
		t.Errorf("coldest: chips %.2f, cubes %.2f, one ball %.2f", c.ColdestC, cubes.ColdestC, b.ColdestC)
	}
	if at(w.IceGone.Likely) >= at(cubes.IceGone.Likely) || at(w.Watered.Likely) >= at(cubes.Watered.Likely) {
		t.Errorf("warmer drink: gone %v, watered %v", w.IceGone, w.Watered)
	}
	if !(at(cubes.Cold.Likely) < at(cubes.IceGone.Likely)) || len(cubes.IceGone.Decides) == 0 {
		t.Errorf("cold %v, gone %v", cubes.Cold, cubes.IceGone)
	}
	last := cubes.Series[len(cubes.Series)-1]
	if math.Abs(last.MeltGrams-100) > 0.5 || last.DrinkC < 3 {
		t.Errorf("at the end %+v", last)
	}
	// Very cold ice first takes on some of a cold drink.
	frost := whisky()
	frost.DrinkC, frost.IceC, frost.WallC = honestplate.Some(1), honestplate.Some(-40), honestplate.Some(1)
	f := clock(frost)
	if f.Series[40].MeltGrams >= 0 {
		t.Errorf("nothing freezes on: %+v", f.Series[40])
	}
}

func TestIcedGlassRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	drink := func(f func(*Glass)) Glass { d := whisky(); f(&d); return d }
	for name, d := range map[string]Glass{
		"zero":          {},
		"shape":         drink(func(d *Glass) { d.IceShape = -1 }),
		"big piece":     drink(func(d *Glass) { d.IceSize = 0.09 }),
		"no drink":      drink(func(d *Glass) { d.DrinkGrams = 0 }),
		"freezing":      drink(func(d *Glass) { d.DrinkC = honestplate.Some(-3) }),
		"mostly ice":    drink(func(d *Glass) { d.IceGrams = 5000 }),
		"solid":         drink(func(d *Glass) { d.IceGrams, d.IceC, d.DrinkC = 900, honestplate.Some(-40), honestplate.Some(0) }),
		"narrow":        drink(func(d *Glass) { d.DrinkGrams, d.Diameter = 1e4, 0.02 }),
		"hot wall":      drink(func(d *Glass) { d.WallC = honestplate.Some(200) }),
		"honey":         drink(func(d *Glass) { d.Drink.Brix = 80 }),
		"fuel":          drink(func(d *Glass) { d.Drink.AlcoholPercent = 70 }),
		"overfull":      drink(func(d *Glass) { d.Height = 0.05 }),
		"no bore":       drink(func(d *Glass) { d.Diameter, d.WallThickness = 0.02, 0.02 }),
		"wall":          drink(func(d *Glass) { d.WallThickness = 1 }),
		"stirring":      drink(func(d *Glass) { d.IceH = honestplate.Exactly(-5) }),
		"share":         drink(func(d *Glass) { d.DilutionShare = honestplate.Exactly(nan) }),
		"horizon":       drink(func(d *Glass) { d.Horizon = 1000 * time.Hour }),
		"absorbs twice": drink(func(d *Glass) { d.Absorptance.Tungsten = 2 }),
	} {
		if _, err := d.Clock(studio, tungsten); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("iced drink, %s: %v", name, err)
		}
	}
}

func FuzzIcedGlass(f *testing.F) {
	f.Add(200.0, 20.0, 0, 0.025, 100.0, -15.0, 0.07, 24.0, 0.5, 400.0)
	f.Add(1.0, 95.0, 1, 0.2, 5.0, -60.0, 0.02, 50.0, 1.0, 10000.0)
	f.Add(1e5, 0.0, 2, 0.001, 0.1, 0.0, 0.5, 3.0, 0.0, 20.0)
	f.Fuzz(func(t *testing.T, grams, temp float64, shape int, size, ice, iceC, diameter, air, rh, h float64) {
		d := Glass{DrinkGrams: grams, DrinkC: honestplate.Some(temp), IceShape: IceShape(shape), IceSize: size, IceGrams: ice, IceC: honestplate.Some(iceC),
			Diameter: diameter, IceH: honestplate.Exactly(h), Horizon: 20 * time.Minute}
		c, err := d.Clock(Air{TempC: air, RH: rh})
		if err != nil {
			return
		}
		if math.IsNaN(c.ColdestC) || min(at(c.Cold.Earliest), at(c.Watered.Earliest), at(c.IceHalf.Earliest), at(c.IceGone.Earliest)) < 0 {
			t.Fatal(c)
		}
		for _, p := range c.Series {
			if math.IsNaN(p.DrinkC) || math.IsNaN(p.MeltGrams) || p.IceGrams < 0 {
				t.Fatalf("%+v", p)
			}
		}
	})
}

// What lies on the glass is what came: to 1e-6, with frost and while it dries.
func TestDewIsAccountedFor(t *testing.T) {
	for name, g := range map[string]Glass{"iced": icedTumbler(), "frosted": frostedMug(), "dries": tumbler(0), "warm": warmTumbler()} {
		g, err := g.complete(Air{TempC: 23, RH: 0.45})
		if err != nil {
			t.Fatal(err)
		}
		r, err := g.start(Air{TempC: 23, RH: 0.45}, 0, 1)
		if err != nil {
			t.Fatal(err)
		}
		r.ice.factors = usualIceFactors(g.Drink)
		came := 0.0
		for r.time < 3600 && r.dew < 100 { // soon it runs
			before := r.time
			if err := r.step(1); err != nil {
				t.Fatal(err)
			}
			came += 1000 * r.rate * (r.time - before)
			if on := r.dew + r.frost; math.Abs(came-on) > 1e-6*max(on, 1) {
				t.Fatalf("%s, %g s: %.9g g/m2 came, %.9g are there", name, r.time, came, on)
			}
		}
		if came < -1e-9 {
			t.Errorf("%s: %g", name, came)
		}
	}
}

// The face of ice in a drink is as cold as the melt that dilutes it allows: the balance
// holds, water's is at 0 degC, and in balance it is the drink's own freezing point.
func TestFaceOfTheIce(t *testing.T) {
	s := iceStore{drink: solution.Drink{AlcoholPercent: 40}, poured: 0.1}
	d := -s.freezesC()
	for _, c := range []struct{ tempC, faceC float64 }{{20, -3.27}, {0, -7.6}, {-10, -12.9}} {
		above, slope := s.atFace(c.tempC)
		face := c.tempC - above
		if math.Abs(face+d/(1+4190/333600.0*21*above)) > 1e-9 || math.Abs(face-c.faceC) > 0.4 {
			t.Errorf("%g degC: face %g", c.tempC, face)
		}
		more, _ := s.atFace(c.tempC + 1e-5)
		if math.Abs((more-above)/1e-5-slope) > 1e-4 {
			t.Errorf("%g degC: slope %g, want %g", c.tempC, slope, (more-above)/1e-5)
		}
	}
	if above, _ := s.atFace(-d); math.Abs(above) > 1e-9 {
		t.Errorf("in balance %g K", above)
	}
	water := iceStore{poured: 0.1}
	if above, slope := water.atFace(7); above != 7 || slope != 1 {
		t.Errorf("water %g, %g", above, slope)
	}
}
