package thermal

import (
	"errors"
	"math"
	"reflect"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/light"
)

var (
	studio   = Air{TempC: 24, RH: 0.5}
	tungsten = light.Lamp{Watts: 650, Source: light.Tungsten, Distance: 1.4, BeamDegrees: 40}
	packs    = light.Lamp{Source: light.Flash, Joules: 500, PopsPerMinute: 4, Distance: 1.4, BeamDegrees: 40}
)

func ball(startC float64) Scoop {
	return Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: startC, Fringe: honestplate.Some(0)}
}

func likely(t *testing.T, s Scoop, a Air, lamps ...light.Lamp) ScoopClock {
	t.Helper()
	c, err := s.Likely(a, lamps...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Common practice, no source: a scoop hardened a second time in a deeper freezer
// holds clearly longer under lamps than one from the serving cabinet.
func TestSecondFreezeHoldsLonger(t *testing.T) {
	cabinet, hard := likely(t, ball(-13), studio, tungsten), likely(t, ball(-30), studio, tungsten)
	for _, c := range []struct {
		name      string
		from, too honestplate.Window
		factor    float64
	}{
		{"softens", cabinet.Softens.Window, hard.Softens.Window, 2},
		{"drips", cabinet.FirstDrip.Window, hard.FirstDrip.Window, 1.6},
		{"puddles", cabinet.Puddles.Window, hard.Puddles.Window, 2},
		{"slumps", cabinet.Slumps.Window, hard.Slumps.Window, 1.4},
	} {
		if c.too.Likely.After.Seconds() < c.factor*c.from.Likely.After.Seconds() {
			t.Errorf("%s: %v from the cabinet, %v after the deep freezer, want %g times", c.name, c.from, c.too, c.factor)
		}
	}
}

// Common practice, no source: under strong continuous tungsten a scoop from the
// serving cabinet begins to go within seconds to a few minutes.
func TestStrongTungstenWithinMinutes(t *testing.T) {
	key := tungsten
	key.Distance = 0.8
	c := likely(t, ball(-13), studio, key, key)
	first := min(at(c.Softens.Likely), at(c.FirstDrip.Likely), at(c.Puddles.Likely))
	if first > 3*time.Minute || at(c.FirstDrip.Likely) > 3*time.Minute {
		t.Errorf("first sign after %v, drip after %v", honestplate.After(first), c.FirstDrip.Window)
	}
}

// Common practice, no source: flash alone hardly melts anything, its modelling lamp
// does.
func TestFlashAloneHardlyMelts(t *testing.T) {
	dark := likely(t, ball(-18), studio)
	flash := likely(t, ball(-18), studio, packs)
	modelling := packs
	modelling.ModellingWatts = 500
	lit := likely(t, ball(-18), studio, modelling)
	if r := flash.FirstDrip.Likely.After.Seconds() / dark.FirstDrip.Likely.After.Seconds(); r < 0.97 || r > 1 {
		t.Errorf("flash changes the first drip by a factor %.3f", r)
	}
	if r := lit.FirstDrip.Likely.After.Seconds() / dark.FirstDrip.Likely.After.Seconds(); r > 0.8 {
		t.Errorf("modelling lamp changes the first drip only by a factor %.3f", r)
	}
}

// From memory: laboratories see the first drip of 80 to 100 g at 20 to 25 degC
// after 10 to 30 min.
func TestFirstDripWithoutLampsIsAsInLaboratories(t *testing.T) {
	s := ball(-18)
	s.Diameter, s.Rest = 0.067, OnNothing // 90 g
	c, err := s.Clock(Air{TempC: 23, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if at(c.FirstDrip.Latest) < 10*time.Minute || at(c.FirstDrip.Earliest) > 30*time.Minute {
		t.Errorf("first drip %v", c.FirstDrip.Window)
	}
}

// A change for the worse never makes an event later (by more than the 1 % of the
// grid).
func TestScoopIsMonotone(t *testing.T) {
	base := likely(t, ball(-20), studio, tungsten)
	check := func(name string, worse ScoopClock) {
		t.Helper()
		for i, w := range [][2]honestplate.Window{
			{base.Softens.Window, worse.Softens.Window}, {base.FirstDrip.Window, worse.FirstDrip.Window},
			{base.Puddles.Window, worse.Puddles.Window}, {base.Slumps.Window, worse.Slumps.Window},
		} {
			if float64(at(w[1].Likely)) > 1.01*float64(at(w[0].Likely)) {
				t.Errorf("%s: event %d at %v, before %v", name, i, w[1], w[0])
			}
		}
	}
	check("warmer start", likely(t, ball(-15), studio, tungsten))
	check("second lamp", likely(t, ball(-20), studio, tungsten, tungsten))
	check("warmer room", likely(t, ball(-20), Air{TempC: 30, RH: 0.5}, tungsten))
	check("damper room", likely(t, ball(-20), Air{TempC: 24, RH: 0.8}, tungsten))
	check("draught", likely(t, ball(-20), Air{TempC: 24, RH: 0.5, Speed: 1}, tungsten))
	dark := ball(-20)
	dark.Absorptance = light.DarkFood()
	check("dark", likely(t, dark, studio, tungsten))
	small := ball(-20)
	small.Diameter = 0.04
	check("smaller", likely(t, small, studio, tungsten))
}

func TestChilledPlateHelpsTheFoot(t *testing.T) {
	warm, chilled, cone := ball(-18), ball(-18), ball(-18)
	chilled.Rest, chilled.PlateC = OnChilledPlate, honestplate.Some(-18)
	cone.Rest = OnCone
	w, c, k := likely(t, warm, studio), likely(t, chilled, studio), likely(t, cone, studio)
	if at(c.Puddles.Likely) < 5*at(w.Puddles.Likely) {
		t.Errorf("puddle after %v on a warm plate, %v on a chilled one", w.Puddles, c.Puddles.Window)
	}
	if at(c.Slumps.Likely) < at(w.Slumps.Likely) || at(k.Slumps.Likely) < at(w.Slumps.Likely) {
		t.Errorf("slumps after %v warm, %v chilled, %v in a cone", w.Slumps, c.Slumps.Window, k.Slumps)
	}
	if k.Puddles.MayHappen() {
		t.Errorf("a cone puddles at %v", k.Puddles)
	}
}

// Over the whole range of sizes, starts, rooms, films and lamps the likely times move by
// less than 8 % when the grid is doubled and the error allowed per step quartered; those
// of a usual ball by less than 3 %.
func TestScoopIsConvergedInGridAndStep(t *testing.T) {
	strong := tungsten
	strong.Distance = 0.7
	blazing := light.Lamp{Source: light.Tungsten, Lux: 100000}
	compare := func(s Scoop, a Air, lamps []light.Lamp, within float64) {
		t.Helper()
		f, err := s.frame(a, lamps)
		_, coarse := runOnce(t, f, err)
		f.model.cells *= 2
		f.model.tol /= 4
		f.model.work = scoopRun{}
		_, fine := runOnce(t, f, nil)
		for i := range coarse {
			if coarse[i] != fine[i] && !(math.Abs(coarse[i]-fine[i]) <= within*fine[i]+0.5) {
				t.Errorf("%g m from %g degC in %+v, %d lamps, cling %v, event %d: %v, doubled %v", s.Diameter, s.StartC, a, len(lamps), s.ClingGM2, i, coarse[i], fine[i])
			}
		}
	}
	for _, lamps := range [][]light.Lamp{nil, {tungsten}, {strong}} {
		for _, start := range []float64{-32, -20, -13} {
			compare(ball(start), studio, lamps, 0.03)
		}
	}
	for _, d := range []float64{0.01, 0.12} {
		for _, start := range []float64{-60, -6} {
			for _, a := range []Air{{TempC: 50, RH: 1, Speed: 2}, {TempC: 10, RH: 0.01}} {
				for _, lamps := range [][]light.Lamp{nil, {blazing}} {
					for _, cling := range []float64{0, 20, 2000} {
						s := ball(start)
						s.Diameter, s.Fringe, s.ClingGM2 = d, honestplate.Optional{}, honestplate.Exactly(cling)
						s.Horizon = 12 * time.Hour
						compare(s, a, lamps, 0.08)
					}
				}
			}
		}
	}
}

// With shells dripping off, what the law of the surface let in is what is stored and
// what was carried off, to 1e-6 of it.
func TestScoopEnergyBalance(t *testing.T) {
	for _, rest := range []Rest{OnPlate, OnChilledPlate, OnCone, OnNothing} {
		s := ball(-20)
		s.Rest, s.PlateC = rest, honestplate.Some(-10)
		m, err := s.model(studio, []light.Lamp{tungsten, tungsten})
		if err != nil {
			t.Fatal(err)
		}
		var r scoopRun
		if _, err := r.prepare(&m); err != nil {
			t.Fatal(err)
		}
		for name, c := range map[string]*column{"face": &r.face, "shade": &r.shade} {
			e, whole := &c.e, 0.0
			for i := range e.Shells {
				whole += e.Volumes[i]
			}
			cells := e.Shells
			for e.Time < 2400 {
				if err := c.advance(2400); err != nil {
					t.Fatal(err)
				}
				q, _ := c.At(e.SurfaceC(), e.Time)
				if law := 4 * math.Pi * e.Faces[e.Shells] * e.Faces[e.Shells] * q; e.Time != dipSeconds && math.Abs(law-e.Flow) > 1e-8*math.Abs(law) {
					t.Fatalf("%v, %s, at %g s %.9g W by the law, %.9g W flow", rest, name, e.Time, law, e.Flow)
				}
			}
			if e.Shells == cells {
				t.Error("nothing dripped")
			}
			stored := -whole * e.StartH
			for i := range cells { // what was shed keeps its last enthalpy
				stored += e.Volumes[i] * e.Enthalpies[i]
			}
			if math.Abs(stored-e.Heat) > 1e-6*e.Heat {
				t.Errorf("%v, %s: stored and lost %.9g J, taken up %.9g J", rest, name, stored, e.Heat)
			}
		}
	}
}

func TestSeriesTellsTheSameStory(t *testing.T) {
	c, err := ball(-18).Clock(studio, tungsten)
	if err != nil {
		t.Fatal(err)
	}
	if len(c.Series) < 20 || len(c.FirstDrip.Decides) == 0 || len(c.Slumps.Decides) == 0 {
		t.Fatalf("%d moments, %d and %d sensitivities", len(c.Series), len(c.FirstDrip.Decides), len(c.Slumps.Decides))
	}
	f, err := ball(-18).frame(studio, nil)
	if err != nil {
		t.Fatal(err)
	}
	density, err := f.model.s.Mix.Density()
	if err != nil {
		t.Fatal(err)
	}
	slump, whole := f.model.s.SlumpShare.Likely, 1000*density*math.Pi/6*0.055*0.055*0.055
	var before ScoopPoint
	crossed := neverAt
	for i, m := range c.Series {
		if i == 0 {
			before = m
			continue
		}
		if m.Time <= before.Time || m.MeltedShare < before.MeltedShare-1e-9 || m.DrippedGrams < before.DrippedGrams ||
			m.CoreC < before.CoreC-1e-6 || m.SoftMM < before.SoftMM-1e-9 || m.MeltedShare > 1 {
			t.Errorf("%+v after %+v", m, before)
		}
		if level := slump * whole; crossed == neverAt && m.DrippedGrams >= level {
			crossed = before.Time + time.Duration((level-before.DrippedGrams)/(m.DrippedGrams-before.DrippedGrams)*float64(m.Time-before.Time))
		}
		if m.Time <= at(c.FirstDrip.Likely) && m.DrippedGrams > 0 {
			t.Errorf("%g g have run off at %v, before the first drip at %v", m.DrippedGrams, m.Time, c.FirstDrip.Window)
		}
		before = m
	}
	testkit.CloseRel(t, "time of the loss of shape", crossed.Seconds(), c.Slumps.Likely.After.Seconds(), 0.02)
	if s := before.DrippedGrams; !(s > 0 && s < 60) {
		t.Errorf("%g g dripped", s)
	}
}

// Swapping in a fresh scoop restarts the clock: nothing is remembered.
func TestSwappingRestartsTheClock(t *testing.T) {
	a, err1 := ball(-18).Clock(studio, tungsten)
	b, err2 := ball(-18).Clock(studio, tungsten)
	for _, k := range []*Runs{&a.Kept, &b.Kept} {
		k.kept, k.explain = nil, nil // functions do not compare
	}
	if err1 != nil || err2 != nil || !reflect.DeepEqual(a, b) {
		t.Errorf("a second scoop: %v, %v, %v, %v", a.FirstDrip, b.FirstDrip, err1, err2)
	}
	l := likely(t, ball(-18), studio, tungsten)
	if at(l.FirstDrip.Likely) != at(a.FirstDrip.Likely) || at(l.Slumps.Likely) != at(a.Slumps.Likely) {
		t.Errorf("Likely says %v, Hold %v", l.FirstDrip, a.FirstDrip)
	}
}

// Over the whole of what it takes, a scoop's computation ends with times in order
// of what they mean: never a step that does not come off.
func TestScoopOverItsWholeDomain(t *testing.T) {
	blazing := light.Lamp{Source: light.Tungsten, Lux: 200000}
	if testing.Short() {
		t.Skip("864 scoops")
	}
	for _, d := range []float64{0.01, 0.05, 0.12} {
		for _, start := range []float64{-60, -20, -6} {
			for _, air := range []float64{-20, 3, 25, 50} {
				for _, rh := range []float64{0.01, 1} {
					for _, speed := range []float64{0, 2} {
						for _, lamps := range [][]light.Lamp{nil, {tungsten}, {blazing}} {
							for rest := OnPlate; rest <= OnNothing; rest++ {
								s := Scoop{Mix: food.Recipes().Sorbet, Diameter: d, StartC: start, Rest: rest, PlateC: honestplate.Some(-30), SoftDepth: honestplate.Exactly(d / 10)}
								c, err := s.Likely(Air{TempC: air, RH: rh, Speed: speed}, lamps...)
								if err != nil {
									t.Fatalf("%+v in %g degC, %g, %g m/s, %d lamps: %v", s, air, rh, speed, len(lamps), err)
								}
								if air == -20 && start == -60 && lamps == nil && c.Slumps.MayHappen() && rest == OnNothing {
									t.Errorf("slumps at %v in a freezer", c.Slumps.Window)
								}
							}
						}
					}
				}
			}
		}
	}
}

// Under the strongest lamps that it takes, the whole band comes off.
func TestHoldUnderBlazingLight(t *testing.T) {
	b := ball(-20)
	b.Structure = food.NaturalStructure
	c, err := b.Clock(studio, light.Lamp{Source: light.Tungsten, Watts: 1000, Distance: 0.4, BeamDegrees: 50})
	if err != nil {
		t.Fatal(err)
	}
	if at(c.FirstDrip.Likely) > time.Minute || at(c.FirstDrip.Latest) == neverAt || at(c.FirstDrip.Earliest) <= 0 {
		t.Errorf("first drip %v", c.FirstDrip.Window)
	}
}

func TestAlreadySoftIsSoftAtOnce(t *testing.T) {
	if c := likely(t, ball(-6), studio); at(c.Softens.Likely) != 0 {
		t.Errorf("softens after %v", c.Softens.Window)
	}
	s := ball(-30)
	s.Horizon = time.Minute
	if c := likely(t, s, studio); c.Slumps.MayHappen() {
		t.Errorf("slumps within a minute: %v", c.Slumps.Window)
	}
}

func TestHoldRefusesNonsense(t *testing.T) {
	change := func(f func(*Scoop)) Scoop { s := ball(-18); f(&s); return s }
	nan := math.NaN()
	for name, s := range map[string]Scoop{
		"no recipe":       {Diameter: 0.05, StartC: -18},
		"no diameter":     change(func(s *Scoop) { s.Diameter = 0 }),
		"huge":            change(func(s *Scoop) { s.Diameter = 3 }),
		"NaN":             change(func(s *Scoop) { s.StartC = nan }),
		"already melting": change(func(s *Scoop) { s.StartC = -1 }),
		"rest":            change(func(s *Scoop) { s.Rest = 9 }),
		"plate":           change(func(s *Scoop) { s.Rest, s.PlateC = OnChilledPlate, honestplate.Some(90) }),
		"absorptance":     change(func(s *Scoop) { s.Absorptance = light.Absorptance{Tungsten: 2} }),
		"soft":            change(func(s *Scoop) { s.SoftFrozen = honestplate.Exactly(2) }),
		"depth":           change(func(s *Scoop) { s.SoftDepth = honestplate.Exactly(0.04) }),
		"cling":           change(func(s *Scoop) { s.ClingGM2 = honestplate.Exactly(nan) }),
		"band low":        change(func(s *Scoop) { s.ClingGM2 = honestplate.Estimate{Low: 200, Likely: 100, High: 300} }),
		"band high":       change(func(s *Scoop) { s.ClingGM2 = honestplate.Estimate{Low: 50, Likely: 100, High: 60} }),
		"slump":           change(func(s *Scoop) { s.SlumpShare = honestplate.Exactly(-1) }),
		"flow":            change(func(s *Scoop) { s.FlowFrozen = honestplate.Exactly(0.9) }),
		"horizon":         change(func(s *Scoop) { s.Horizon = -1 }),
		"long horizon":    change(func(s *Scoop) { s.Horizon = 100 * time.Hour }),
	} {
		_, err := s.Clock(studio, tungsten)
		if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := ball(-18).Clock(Air{TempC: nan}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("NaN room: %v", err)
	}
	if _, err := ball(-18).Likely(Air{TempC: 80, RH: 0.1}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("hot room: %v", err)
	}
	if _, err := ball(-18).Clock(studio, light.Lamp{Watts: -1, Distance: 1}); err == nil {
		t.Error("negative lamp")
	}
	if _, err := ball(-18).Clock(studio, light.Lamp{Watts: 1e5, Distance: 0.05, BeamDegrees: 2}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("burning glass: %v", err)
	}
}

func TestRestsHaveNames(t *testing.T) {
	for r, want := range map[Rest]string{OnPlate: "on a plate", OnChilledPlate: "on a chilled plate",
		OnCone: "on a cone", OnNothing: "on nothing", 7: "unknown rest (7)"} {
		if r.String() != want {
			t.Errorf("%d: %s", r, r)
		}
	}
}

// rarely is true for one value in sixteen.
func rarely(v float64) bool { return math.Float64bits(v*1.1)%16 == 0 }

func FuzzScoopHold(f *testing.F) {
	f.Add(0.055, -18.0, 24.0, 0.5, 0.0, 650.0, 1.4, 40.0, 0, 0, 0.65, 200.0)
	f.Add(0.12, -60.0, 50.0, 1.0, 30.0, 1e5, 0.3, 10.0, 0, 1, 0.9, 5.0)
	f.Add(0.01, -5.0, -20.0, 0.0, 0.0, 0.0, 1.0, 0.0, 2, 2, 0.0, 2000.0)
	f.Fuzz(func(t *testing.T, d, start, air, rh, speed, watts, distance, beam float64, source, rest int, soft, cling float64) {
		s := Scoop{Mix: food.Recipes().Gelato, Diameter: d, StartC: start, Rest: Rest(rest), PlateC: honestplate.Some(start / 2), Horizon: 20 * time.Minute,
			SoftFrozen: honestplate.Exactly(soft), ClingGM2: honestplate.Exactly(cling)}
		a := Air{TempC: air, RH: rh, Speed: speed}
		l := light.Lamp{Watts: watts, Source: light.Source(source), Distance: distance, BeamDegrees: beam}
		c, err := s.Likely(a, l)
		if err != nil {
			return
		}
		if rarely(start) { // the whole band takes long
			if c, err = s.Clock(a, l); err != nil {
				return
			}
		}
		for _, w := range []honestplate.Window{c.Softens.Window, c.FirstDrip.Window, c.Puddles.Window, c.Slumps.Window} {
			if at(w.Earliest) < 0 || at(w.Earliest) > at(w.Likely) || at(w.Likely) > at(w.Latest) || (at(w.Likely) > s.Horizon && at(w.Likely) != neverAt) {
				t.Fatalf("%v", w)
			}
		}
	})
}

func BenchmarkScoopLikely(b *testing.B) {
	f, err := ball(-18).frame(studio, []light.Lamp{tungsten})
	m, times := runOnce(b, f, err)
	b.ReportAllocs()
	for b.Loop() {
		if err := m.run(times, noCourse); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkScoopHold(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ball(-18).Clock(studio, tungsten); err != nil {
			b.Fatal(err)
		}
	}
}
