package thermal

import (
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/testkit"
)

func pull() Cheese { return Cheese{Grams: 150, Diameter: 0.28} }

func mustPull(t *testing.T, c Cheese, a Air, lamps ...Lamp) CheeseClock {
	t.Helper()
	k, err := c.Likely(a, lamps...)
	if err != nil {
		t.Fatalf("%+v: %v", c, err)
	}
	return k
}

func TestPullOpensBeforeItCloses(t *testing.T) {
	k, err := pull().Clock(calmRoom)
	if err != nil {
		t.Fatal(err)
	}
	if at(k.Opens.Likely) >= at(k.Closes.Likely) || at(k.Closes.Likely) == neverAt {
		t.Errorf("opens %v, closes %v", k.Opens, k.Closes)
	}
	if e := k.Balance.Error(); e > 1e-6 {
		t.Errorf("%g of the heat is missing: %+v", e, k.Balance)
	}
	if len(k.Closes.Decides) == 0 || at(k.Closes.Earliest) >= at(k.Closes.Likely) || at(k.Closes.Latest) <= at(k.Closes.Likely) {
		t.Errorf("closes %v by %v", k.Closes, k.Closes.Decides)
	}
}

func TestPullLastsLongerThickerWarmerStiller(t *testing.T) {
	base := mustPull(t, pull(), calmRoom)
	for name, c := range map[string]CheeseClock{
		"thicker":   mustPull(t, Cheese{Grams: 250, Diameter: 0.28}, calmRoom),
		"oilier":    mustPull(t, Cheese{Grams: 150, Diameter: 0.28, Activity: 0.5}, calmRoom),
		"hot stone": mustPull(t, Cheese{Grams: 150, Diameter: 0.28, UndersideRiseC: 120, UndersideH: 100}, calmRoom),
		"lit":       mustPull(t, pull(), calmRoom, Lamp{Watts: 650, Distance: 1.2, BeamDegrees: 40}),
		"warmer":    mustPull(t, pull(), Air{TempC: 33, RH: 0.5}),
		"tougher":   mustPull(t, Cheese{Grams: 150, Diameter: 0.28, SetC: honestplate.Exactly(45)}, calmRoom),
	} {
		if at(c.Closes.Likely) <= at(base.Closes.Likely) {
			t.Errorf("%s closes at %v, plain at %v", name, at(c.Closes.Likely), at(base.Closes.Likely))
		}
	}
	if d := mustPull(t, pull(), Air{TempC: 23, RH: 0.5, Speed: 1}); at(d.Closes.Likely) >= at(base.Closes.Likely) {
		t.Errorf("in a draught %v, still %v", at(d.Closes.Likely), at(base.Closes.Likely))
	}
}

func TestPullUnderStrongTungstenOnAHotStoneNeverCloses(t *testing.T) {
	c := Cheese{Grams: 150, Diameter: 0.28, UndersideRiseC: 160, UndersideH: 200, Activity: 0.3}
	k := mustPull(t, c, calmRoom, Lamp{Watts: 2000, Distance: 0.8, BeamDegrees: 40})
	if at(k.Closes.Likely) != neverAt {
		t.Errorf("closes %v", k.Closes)
	}
}

func TestPullOfCheeseThatIsTooCold(t *testing.T) {
	k := mustPull(t, Cheese{Grams: 150, Diameter: 0.28, StartC: 45}, calmRoom)
	if k.Opens.MayHappen() || k.Closes.MayHappen() {
		t.Errorf("opens %v, closes %v", k.Opens, k.Closes)
	}
	at70 := mustPull(t, Cheese{Grams: 150, Diameter: 0.28, StartC: 70}, calmRoom)
	if at(at70.Opens.Likely) != 0 || at(at70.Closes.Likely) <= 0 {
		t.Errorf("from 70 degC it strings at once: %v, %v", at70.Opens, at70.Closes)
	}
}

// Against the lumped body of the same mean flux: cheese on an insulating board without
// evaporation or radiation cools as exp(-h t/(rho c d)) within the Biot number's share.
func TestThinCheeseIsNearlyLumped(t *testing.T) {
	c, _, err := Cheese{Grams: 120, Diameter: 0.28, BreadThickness: 0.001, UndersideH: 0.1, Activity: 1e-9, SetC: honestplate.Exactly(50)}.complete(calmRoom, nil)
	if err != nil {
		t.Fatal(err)
	}
	r, err := c.start(Air{TempC: 23, RH: 0, Speed: 3}, 0, 1)
	if err != nil {
		t.Fatal(err)
	}
	surface := heat.Surface{Shape: heat.PlateUp, Length: c.Diameter / 4, Activity: c.Activity, Emissivity: 1e-12}
	if r.x, err = surface.In(heat.MoistAir{TempC: 23, Speed: 3}); err != nil {
		t.Fatal(err)
	}
	capacity := cheeseRho*cheeseHeat*c.thickness() + breadRho*breadHeat*0.001
	f, err := r.x.At(65, 0)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.run(); err != nil {
		t.Fatal(err)
	}
	want := capacity / (f.H + 0.1) * math.Log((90.0-23)/(50-23))
	if got := r.at[1]; math.Abs(got-want) > 0.06*want {
		t.Errorf("%g s, lumped %g s (Bi %g)", got, want, f.H*c.thickness()/cheeseK)
	}
}

func TestCheeseTimesConvergeWithTheStep(t *testing.T) {
	c, _, err := pull().complete(calmRoom, nil)
	if err != nil {
		t.Fatal(err)
	}
	run := func(scale float64) float64 {
		r, err := c.start(calmRoom, 0, 1)
		if err != nil {
			t.Fatal(err)
		}
		r.scale = scale
		if err := r.run(); err != nil {
			t.Fatal(err)
		}
		return r.at[1]
	}
	if a, b := run(1), run(0.02); math.Abs(float64(a-b)) > 0.005*float64(b) {
		t.Errorf("%v, converged %v", a, b)
	}
}

func TestCheeseRefusesNonsense(t *testing.T) {
	change := func(f func(*Cheese)) Cheese {
		c := pull()
		f(&c)
		return c
	}
	for name, c := range map[string]Cheese{
		"nothing": {}, "NaN": change(func(c *Cheese) { c.Grams = math.NaN() }), "negative": change(func(c *Cheese) { c.Grams = -5 }),
		"a brick": change(func(c *Cheese) { c.Grams = 1e5 }), "a shaving": change(func(c *Cheese) { c.Grams = 1 }),
		"wide": change(func(c *Cheese) { c.Diameter = 5 }), "burning": change(func(c *Cheese) { c.StartC = 300 }),
		"bread": change(func(c *Cheese) { c.BreadThickness = 1 }), "board": change(func(c *Cheese) { c.UndersideH = -1 }),
		"stone": change(func(c *Cheese) { c.UndersideRiseC = 500 }), "wetter than wet": change(func(c *Cheese) { c.Activity = 1.5 }),
		"runny": change(func(c *Cheese) { c.RunnyC = honestplate.Exactly(200) }), "set above runny": change(func(c *Cheese) { c.RunnyC, c.SetC = honestplate.Exactly(60), honestplate.Exactly(70) }),
		"limits": change(func(c *Cheese) { c.SetC = honestplate.Exactly(5) }), "absorptance": change(func(c *Cheese) { c.Absorptance.Tungsten = -1 }),
	} {
		for m, f := range map[string]func(Air, ...Lamp) (CheeseClock, error){"Clock": c.Clock, "Likely": c.Likely} {
			if k, err := f(calmRoom, Lamp{Watts: 100, Distance: 1}); err == nil {
				t.Errorf("%s, %s: got %v", m, name, k.Closes)
			} else {
				testkit.Typed(t, err)
			}
		}
	}
	if _, err := pull().Clock(Air{TempC: 80}); err == nil {
		t.Error("an oven is no room")
	}
	if _, err := pull().Clock(Air{RH: -1}); err == nil {
		t.Error("bad air passes")
	}
	if _, err := pull().Clock(calmRoom, Lamp{Watts: 1e5, Distance: 0.06}); err == nil {
		t.Error("a furnace passes")
	} else {
		testkit.Typed(t, err)
	}
}

func FuzzCheese(f *testing.F) {
	f.Add(150.0, 0.28, 90.0, 0.008, 8.0, 0.0, 0.9, 85.0, 55.0, 23.0, 0.5, 0.0, 650.0)
	f.Fuzz(func(t *testing.T, grams, d, start, bread, under, rise, activity, runny, set, airC, rh, speed, watts float64) {
		c := Cheese{grams, d, start, bread, under, rise, activity, honestplate.Exactly(runny), honestplate.Exactly(set), Absorptance{}}
		for _, clock := range []func(Air, ...Lamp) (CheeseClock, error){c.Likely, c.Clock} {
			k, err := clock(Air{TempC: airC, RH: rh, Speed: speed}, Lamp{Watts: watts, Distance: 2})
			if err != nil {
				testkit.Typed(t, err)
				return
			}
			testkit.Finite(t, k)
			if e := k.Balance.Error(); e > 1e-6 {
				t.Errorf("%g of the heat is missing: %+v", e, k.Balance)
			}
		}
	})
}

func BenchmarkCheeseClock(b *testing.B) {
	for b.Loop() {
		if _, err := pull().Clock(calmRoom); err != nil {
			b.Fatal(err)
		}
	}
}
