package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/light"
)

// A tumbler of 300 g, as its tests use it.
func tumbler(iceGrams float64) Glass {
	return Glass{Diameter: 0.075, Height: 0.12, DrinkGrams: 300 - iceGrams, IceGrams: iceGrams, DrinkC: honestplate.Some(2), WallC: honestplate.Some(2)}
}

var calmRoom = Air{TempC: 23, RH: 0.5}

func mustLikely(t *testing.T, g Glass, a Air, lamps ...light.Lamp) GlassClock {
	t.Helper()
	k, err := g.Likely(a, lamps...)
	if err != nil {
		t.Fatalf("%+v in %+v: %v", g, a, err)
	}
	return k
}

func frostedMug() Glass {
	return Glass{Diameter: 0.085, Height: 0.12, WallThickness: 0.006, WallC: honestplate.Some(-18)}
}

func warmTumbler() Glass {
	g := tumbler(0)
	g.WallC = honestplate.Some(23)
	return g
}

func TestHeatOfTheGlassIsAccountedFor(t *testing.T) {
	steel := tumbler(100)
	steel.Wall, steel.Emissivity, steel.WallThickness = heat.Material{Conductivity: 16, Density: 7900, SpecificHeat: 500}, 0.1, 0.0008
	for name, g := range map[string]Glass{
		"iced": tumbler(100), "not iced": tumbler(0), "warm": warmTumbler(), "frosted mug": frostedMug(), "steel": steel,
	} {
		for _, lamps := range [][]light.Lamp{nil, {{Watts: 650, Distance: 1.5, BeamDegrees: 40}}} {
			k := mustLikely(t, g, Air{TempC: 23, RH: 0.5, Speed: 0.2}, lamps...)
			if e := missing(k.Balance); e > 1e-6 {
				t.Errorf("%s, %d lamps: %g of the heat is missing: %+v", name, len(lamps), e, k.Balance)
			}
		}
	}
	if missing(HeatBalance{}) != 0 {
		t.Error("nothing exchanged, nothing missing")
	}
}

func TestGlassTimesConvergeWithTheStep(t *testing.T) {
	for name, g := range map[string]Glass{"iced": tumbler(100), "not iced": tumbler(0), "warm": warmTumbler(), "frosted mug": frostedMug()} {
		g, err := g.complete(calmRoom)
		if err != nil {
			t.Fatal(err)
		}
		run := func(scale float64) [glassEvents]float64 {
			r, err := g.start(calmRoom, 0, 1)
			if err != nil {
				t.Fatal(err)
			}
			r.scale = scale
			if err := r.run(); err != nil {
				t.Fatal(err)
			}
			return r.at
		}
		coarse, fine := run(1), run(0.02)
		for e := range coarse {
			if (coarse[e] == never) != (fine[e] == never) {
				t.Errorf("%s, event %d: %v, converged %v", name, e, coarse[e], fine[e])
				continue
			}
			const limit = 0.005
			if fine[e] != never && math.Abs(float64(coarse[e]-fine[e])) > limit*float64(fine[e]) {
				t.Errorf("%s, event %d: %v, converged %v", name, e, coarse[e], fine[e])
			}
		}
	}
}

func TestGlassWithoutIceHasNoIceToLose(t *testing.T) {
	if k := mustLikely(t, tumbler(0), calmRoom); k.IceGone.MayHappen() || at(k.Haze.Likely) > time.Minute {
		t.Errorf("got ice gone %v, haze %v", k.IceGone.Window, k.Haze)
	}
}

func TestAirDrierThanTheGlassIsColdNeverFogs(t *testing.T) {
	// 23 degC with a dew point of -1 degC: an iced drink stays dry
	dry, err := AirFromDewPoint(23, -1, 0)
	if err != nil {
		t.Fatal(err)
	}
	k := mustLikely(t, tumbler(100), dry)
	if k.Haze.MayHappen() || k.Dry.MayHappen() || k.FogLine != 0 {
		t.Errorf("haze %v, dry %v, fog to %g m", k.Haze.Window, k.Dry.Window, k.FogLine)
	}
	// and next to no vapour
	if k := mustLikely(t, tumbler(100), Air{TempC: 23, RH: 1e-6}); k.Haze.MayHappen() || k.DewPointC > -90 {
		t.Errorf("haze %v, dew point %g", k.Haze.Window, k.DewPointC)
	}
}

func TestDamperColderWindierFogsSooner(t *testing.T) {
	sooner := func(name string, a, b GlassClock) {
		t.Helper()
		if !(at(a.Haze.Likely) < at(b.Haze.Likely)) || at(a.Beads.Likely) > at(b.Beads.Likely) {
			t.Errorf("%s: haze %v, beads %v; else %v, %v", name, at(a.Haze.Likely), at(a.Beads.Likely), at(b.Haze.Likely), at(b.Beads.Likely))
		}
	}
	base := mustLikely(t, tumbler(100), calmRoom)
	sooner("damper", mustLikely(t, tumbler(100), Air{TempC: 23, RH: 0.6}), base)
	sooner("windier", mustLikely(t, tumbler(100), Air{TempC: 23, RH: 0.5, Speed: 1}), base)
	less := tumbler(0)
	less.DrinkC, less.WallC = honestplate.Some(6), honestplate.Some(6)
	sooner("colder", mustLikely(t, tumbler(0), calmRoom), mustLikely(t, less, calmRoom))
	// a stricter eye sees haze later
	strict := tumbler(100)
	strict.Stages = DefaultStages()
	strict.Stages.Haze = honestplate.Estimate{Low: 0.5, Likely: 0.8, High: 1}
	sooner("keener eye", base, mustLikely(t, strict, calmRoom))
}

func TestMoreLightMeltsTheIceSooner(t *testing.T) {
	g := tumbler(100)
	g.Absorptance = light.DarkFood()
	last := neverAt
	for _, watts := range []float64{1, 150, 650, 2000} {
		k := mustLikely(t, g, calmRoom, light.Lamp{Watts: watts, Distance: 1.5, BeamDegrees: 40})
		if at(k.IceGone.Likely) >= last {
			t.Errorf("%g W: %v, before %v", watts, at(k.IceGone.Likely), last)
		}
		last = at(k.IceGone.Likely)
	}
	// the same watts of LED on a clear drink do next to nothing
	clear := tumbler(100)
	led := mustLikely(t, clear, calmRoom, light.Lamp{Watts: 650, Source: light.LED, Distance: 1.5, BeamDegrees: 40})
	none := mustLikely(t, clear, calmRoom)
	if d := at(none.IceGone.Likely) - at(led.IceGone.Likely); d < 0 || d > at(none.IceGone.Likely)/20 {
		t.Errorf("LED on a clear drink: %v, dark %v", at(led.IceGone.Likely), at(none.IceGone.Likely))
	}
}

// What condenses is what the drink is warmed by: latent heat alone of a 100 um film on
// a 12 oz can warms it by 5 K (Durran and Frierson 2013, as reported).
func TestAFilmOfATenthOfAMillimetreWarmsACanByFiveKelvin(t *testing.T) {
	latent, err := heat.LatentHeat(5)
	if err != nil {
		t.Fatal(err)
	}
	if dT := 0.1 * 0.0301 * latent / (0.355 * heat.WaterHeat); math.Abs(dT-5) > 0.1 {
		t.Errorf("%g K", dT)
	}
}

// Common practice, no source.
func TestAWarmGlassFilledColdFogsLaterThanAChilledOne(t *testing.T) {
	chilled, warm := mustLikely(t, tumbler(0), calmRoom), mustLikely(t, warmTumbler(), calmRoom)
	if at(warm.Haze.Likely) < 2*at(chilled.Haze.Likely) {
		t.Errorf("chilled %v, warm %v", at(chilled.Haze.Likely), at(warm.Haze.Likely))
	}
}

// Common practice, no source.
func TestArtificialIceAtRoomTemperatureRaisesNoFog(t *testing.T) {
	g := tumbler(0)
	g.DrinkC, g.WallC = honestplate.Some(23), honestplate.Some(23) // acrylic cubes in a drink that was never cooled
	k, err := g.Clock(calmRoom)
	if err != nil {
		t.Fatal(err)
	}
	if k.Haze.MayHappen() || k.Beads.MayHappen() || k.Runs.MayHappen() {
		t.Errorf("haze %v, beads %v, runs %v", k.Haze.Window, k.Beads.Window, k.Runs)
	}
	if k.Haze.String() != "never" {
		t.Errorf("the sheet says %q", k.Haze)
	}
}

// Common practice, no source: a fresh glass, chilled alike, starts from nothing.
func TestSwappingInAFreshGlassRestartsTheClock(t *testing.T) {
	first := mustLikely(t, tumbler(0), calmRoom)
	fresh := mustLikely(t, tumbler(0), calmRoom)
	if first.Haze.Window != fresh.Haze.Window || fresh.Series[0].DewGM2 > 0.1 {
		t.Errorf("%v, %v", first.Haze.Window, fresh.Haze)
	}
	old := first.Series[len(first.Series)/2]
	if old.DewGM2 < 5 {
		t.Errorf("the first has gathered only %g g/m2", old.DewGM2)
	}
}

func TestRunsNeedIceOrADampRoom(t *testing.T) {
	g := tumbler(0)
	if k := mustLikely(t, g, calmRoom); k.Runs.MayHappen() {
		t.Errorf("without ice at 50 %%: %v", k.Runs)
	}
	much := Glass{Diameter: 0.09, Height: 0.16, DrinkGrams: 250, DrinkC: honestplate.Some(0), WallC: honestplate.Some(0), IceGrams: 350, Horizon: 8 * time.Hour}
	k := mustLikely(t, much, calmRoom)
	if at(k.Runs.Likely) < 30*time.Minute || at(k.Runs.Likely) == neverAt {
		t.Errorf("with much ice: %v", k.Runs)
	}
	if last := k.Series[len(k.Series)-1]; last.DewGM2 > DefaultStages().Runs.Likely+1e-9 {
		t.Errorf("it holds %g g/m2 and still has not run", last.DewGM2)
	}
}

func TestFrostedMugIsWhiteForMinutes(t *testing.T) {
	k := mustLikely(t, frostedMug(), calmRoom)
	if at(k.Thawed.Likely) < 3*time.Minute || at(k.Thawed.Likely) > 12*time.Minute {
		t.Errorf("thawed %v", k.Thawed)
	}
	if at(k.Haze.Likely) > 30*time.Second || !k.Dry.MayHappen() {
		t.Errorf("haze %v, dry %v", k.Haze.Window, k.Dry)
	}
	frost, dew := 0.0, 0.0
	for _, p := range k.Series {
		frost, dew = max(frost, p.FrostGM2), max(dew, p.DewGM2)
		if p.FrostGM2 > 0 && p.SurfaceC > 1 {
			t.Errorf("frost at %g degC", p.SurfaceC)
		}
	}
	if frost < 5 || dew < frost {
		t.Errorf("frost %g, dew %g g/m2", frost, dew)
	}
	if k.LiquidLine != 0.12 || k.FogLine != 0.12 {
		t.Errorf("lines %g, %g", k.LiquidLine, k.FogLine)
	}
	// a colder one stays white longer, a warm empty one never is
	colder := frostedMug()
	colder.WallC = honestplate.Some(-30)
	if c := mustLikely(t, colder, calmRoom); at(c.Thawed.Likely) <= at(k.Thawed.Likely) {
		t.Errorf("-30 degC: %v, -18 degC: %v", c.Thawed.Window, k.Thawed)
	}
	warm := frostedMug()
	warm.WallC = honestplate.Some(23)
	if w := mustLikely(t, warm, calmRoom); w.Haze.MayHappen() || w.FogLine != 0 {
		t.Errorf("warm and empty: %v", w.Haze)
	}
}

func TestChilledEmptyGlassFogsAndDriesSooner(t *testing.T) {
	empty := Glass{Diameter: 0.075, Height: 0.12, WallC: honestplate.Some(4)}
	e, f := mustLikely(t, empty, calmRoom), mustLikely(t, tumbler(0), calmRoom)
	if !(e.Haze.MayHappen() && at(e.Dry.Likely) < at(f.Dry.Likely)/2) || e.Runs.MayHappen() {
		t.Errorf("empty: haze %v, dry %v; filled: dry %v", e.Haze, e.Dry, f.Dry)
	}
}

func TestLiquidLineRisesWithTheFillAndFogStopsAboveIt(t *testing.T) {
	small, large := tumbler(0), tumbler(0)
	small.DrinkGrams = 150
	a, b := mustLikely(t, small, calmRoom), mustLikely(t, large, calmRoom)
	if !(a.LiquidLine < b.LiquidLine) || a.FogLine <= a.LiquidLine || a.FogLine > a.LiquidLine+0.05 {
		t.Errorf("lines %g and %g, fog to %g", a.LiquidLine, b.LiquidLine, a.FogLine)
	}
	// 300 g in a bore of 69 mm on a base of 3 mm
	if want := 0.003 + 0.3/998.2/(math.Pi/4*0.069*0.069); math.Abs(b.LiquidLine-want) > 1e-9 {
		t.Errorf("line %g, want %g", b.LiquidLine, want)
	}
	// melting ice leaves the line where it is
	if c := mustLikely(t, tumbler(100), calmRoom); math.Abs(c.LiquidLine-b.LiquidLine) > 1e-12 {
		t.Errorf("with ice %g, without %g", c.LiquidLine, b.LiquidLine)
	}
	// saturated air fogs all that is colder
	if d := mustLikely(t, large, Air{TempC: 23, RH: 1}); d.FogLine != 0.12 {
		t.Errorf("in saturated air to %g", d.FogLine)
	}
}

// The colder the wall runs up, the higher the fog: metal, thick glass, thin plastic.
func TestFogClimbsByTheWallsConductivity(t *testing.T) {
	climb := func(wall heat.Material, thickness, height float64) float64 {
		t.Helper()
		g := tumbler(0)
		g.Wall, g.WallThickness, g.Height = wall, thickness, height
		k := mustLikely(t, g, calmRoom)
		if k.FogLine < k.LiquidLine || k.FogLine > height {
			t.Errorf("line %g, fog to %g of %g", k.LiquidLine, k.FogLine, height)
		}
		return k.FogLine - k.LiquidLine
	}
	steel, glass, film := climb(heat.Material{Conductivity: 16, Density: 7900, SpecificHeat: 500}, 0.003, 0.2), climb(heat.SodaLime(), 0.003, 0.2), climb(heat.Material{Conductivity: 0.01, Density: 1000, SpecificHeat: 1500}, 1e-4, 0.9)
	if !(steel > glass && glass > film && film > 0 && film < 0.001) {
		t.Errorf("steel %g, glass %g, film %g", steel, glass, film)
	}
	if copper := climb(heat.Material{Conductivity: 390, Density: 8900, SpecificHeat: 385}, 0.002, 0.1); copper < 0.01 {
		t.Errorf("a short copper rim fogs to the top: %g", copper)
	}
}

func TestColdIceFirstCoolsItsDrink(t *testing.T) {
	wet, cold := tumbler(100), tumbler(100)
	wet.IceC, cold.IceC = honestplate.Some(0), honestplate.Some(-18)
	a, b := mustLikely(t, wet, calmRoom), mustLikely(t, cold, calmRoom)
	if at(b.IceGone.Likely) <= at(a.IceGone.Likely) {
		t.Errorf("wet ice %v, cold ice %v", a.IceGone, b.IceGone)
	}
	warm := tumbler(20)
	warm.DrinkC = honestplate.Some(60)
	if k := mustLikely(t, warm, calmRoom); at(k.IceGone.Likely) > 2*time.Minute || k.Series[len(k.Series)-1].DrinkC < 20 {
		t.Errorf("ice in a hot drink: %v", k.IceGone)
	}
}

func TestGlassClockBandsHoldTheLikelyRun(t *testing.T) {
	k, err := tumbler(100).Clock(calmRoom, light.Lamp{Watts: 650, Distance: 1.5, BeamDegrees: 40})
	if err != nil {
		t.Fatal(err)
	}
	l := mustLikely(t, tumbler(100), calmRoom, light.Lamp{Watts: 650, Distance: 1.5, BeamDegrees: 40})
	for name, w := range map[string][2]honestplate.Window{
		"haze": {k.Haze.Window, l.Haze.Window}, "opaque": {k.Opaque.Window, l.Opaque.Window}, "beads": {k.Beads.Window, l.Beads.Window}, "runs": {k.Runs.Window, l.Runs.Window},
		"dry": {k.Dry.Window, l.Dry.Window}, "ice gone": {k.IceGone.Window, l.IceGone.Window},
	} {
		if at(w[0].Likely) != at(w[1].Likely) || at(w[0].Earliest) > at(w[0].Likely) || at(w[0].Latest) < at(w[0].Likely) {
			t.Errorf("%s: %v, likely run %v", name, w[0], w[1])
		}
	}
	if len(k.Beads.Decides) == 0 || k.Beads.Decides[0].Share <= 0 || len(l.Beads.Decides) != 0 {
		t.Errorf("decides: %v", k.Beads.Decides)
	}
	again, err := tumbler(100).Clock(calmRoom, light.Lamp{Watts: 650, Distance: 1.5, BeamDegrees: 40})
	if err != nil || again.Haze.Window != k.Haze.Window || again.Runs.Window != k.Runs.Window {
		t.Errorf("not reproducible: %v, %v, %v", again.Haze.Window, k.Haze.Window, err)
	}
	sure := tumbler(100)
	sure.Stages = FogStages{honestplate.Exactly(0.4), honestplate.Exactly(4), honestplate.Exactly(20), honestplate.Exactly(175)}
	s, err := sure.Clock(Air{TempC: 23, RH: 0.5, Speed: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	if at(s.Beads.Latest)-at(s.Beads.Earliest) >= at(k.Beads.Latest)-at(k.Beads.Earliest) {
		t.Errorf("known stages do not narrow the band: %v, %v", s.Beads, k.Beads)
	}
}

func TestGlassRefusesNonsense(t *testing.T) {
	change := func(f func(*Glass)) Glass {
		g := tumbler(100)
		f(&g)
		return g
	}
	nan := math.NaN()
	for name, g := range map[string]Glass{
		"nothing":             {},
		"NaN diameter":        change(func(g *Glass) { g.Diameter = nan }),
		"all wall":            change(func(g *Glass) { g.Diameter, g.WallThickness = 0.02, 0.0095 }),
		"thick wall":          change(func(g *Glass) { g.WallThickness = 0.1 }),
		"negative drink":      change(func(g *Glass) { g.DrinkGrams = -1 }),
		"infinite ice":        change(func(g *Glass) { g.IceGrams = math.Inf(1) }),
		"colder than its ice": change(func(g *Glass) { g.DrinkC = honestplate.Some(-3) }),
		"supercooled":         change(func(g *Glass) { g.IceGrams, g.DrinkC = 0, honestplate.Some(-3) }),
		"boiling":             change(func(g *Glass) { g.DrinkC = honestplate.Some(101) }),
		"warm ice":            change(func(g *Glass) { g.IceC = honestplate.Some(3) }),
		"ice freezes it all": change(func(g *Glass) {
			g.DrinkGrams, g.DrinkC, g.IceGrams, g.IceC, g.Height = 75, honestplate.Some(0), 300, honestplate.Some(-40), 0
		}),
		"cryogenic wall":       change(func(g *Glass) { g.WallC = honestplate.Some(-196) }),
		"wall of nothing":      change(func(g *Glass) { g.Wall = heat.Material{Conductivity: 1} }),
		"emissivity":           change(func(g *Glass) { g.Emissivity = 2 }),
		"inside":               change(func(g *Glass) { g.InsideH = -1 }),
		"ends":                 change(func(g *Glass) { g.EndsH = nan }),
		"overflows":            change(func(g *Glass) { g.Height = 0.05 }),
		"height":               change(func(g *Glass) { g.Height = 7 }),
		"too deep":             change(func(g *Glass) { g.DrinkGrams, g.Height = 1e5, 0 }),
		"a drop":               change(func(g *Glass) { g.DrinkGrams, g.IceGrams = 1, 0 }),
		"ice alone":            change(func(g *Glass) { g.DrinkGrams = 0 }),
		"empty and of no size": {Diameter: 0.07},
		"horizon":              change(func(g *Glass) { g.Horizon = -time.Hour }),
		"horizon of a year":    change(func(g *Glass) { g.Horizon = 9000 * time.Hour }),
		"haze over opaque": change(func(g *Glass) {
			g.Stages = DefaultStages()
			g.Stages.Haze = honestplate.Estimate{Low: 5, Likely: 6, High: 7}
		}),
		"haze band": change(func(g *Glass) {
			g.Stages = DefaultStages()
			g.Stages.Haze = honestplate.Estimate{Low: 0.5, Likely: 0.4, High: 1}
		}),
		"no runs":     change(func(g *Glass) { g.Stages = DefaultStages(); g.Stages.Runs = honestplate.Estimate{} }),
		"absorptance": change(func(g *Glass) { g.Absorptance.Tungsten = 3 }),
	} {
		for m, f := range map[string]func(Air, ...light.Lamp) (GlassClock, error){"Clock": g.Clock, "Likely": g.Likely} {
			if k, err := f(calmRoom, light.Lamp{Watts: 100, Distance: 1}); err == nil {
				t.Errorf("%s, %s: got %v", m, name, k.Haze)
			} else {
				testkit.Typed(t, err)
			}
		}
	}
	for name, f := range map[string]func() (GlassClock, error){
		"air":         func() (GlassClock, error) { return tumbler(0).Clock(Air{RH: 2}) },
		"no humidity": func() (GlassClock, error) { return tumbler(0).Clock(Air{TempC: 23}) },
		"oven":        func() (GlassClock, error) { return tumbler(0).Clock(Air{TempC: 90, RH: 0.1}) },
		"dark lamp":   func() (GlassClock, error) { return tumbler(0).Clock(calmRoom, light.Lamp{Distance: 1}) },
		"lamp":        func() (GlassClock, error) { return tumbler(0).Likely(calmRoom, light.Lamp{Watts: -1}) },
		"empty lamp":  func() (GlassClock, error) { return frostedMug().Clock(calmRoom, light.Lamp{Watts: -1}) },
		"furnace": func() (GlassClock, error) {
			g := tumbler(0)
			g.Absorptance = light.DarkFood()
			return g.Clock(calmRoom, light.Lamp{Watts: 1e5, Distance: 0.1})
		},
	} {
		if _, err := f(); err == nil {
			t.Errorf("%s: no error", name)
		} else {
			testkit.Typed(t, err)
		}
	}
	var in *honestplate.InputError
	g := tumbler(100)
	g.DrinkC = honestplate.Optional{}
	if _, err := g.Clock(calmRoom); !errors.As(err, &in) || in.Field != "DrinkC" {
		t.Errorf("drink of no temperature: %v", err)
	}
}

func FuzzGlass(f *testing.F) {
	f.Add(0.075, 0.12, 0.003, 200.0, 100.0, 2.0, 0.0, 2.0, 0.9, 150.0, 6.0, 23.0, 0.5, 0.1, 500.0)
	f.Add(0.085, 0.12, 0.006, 0.0, 0.0, 0.0, 0.0, -18.0, 0.0, 0.0, 0.0, 23.0, 0.5, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, d, height, wall, drink, ice, drinkC, iceC, wallC, emissivity, inside, ends, airC, rh, speed, watts float64) {
		g := Glass{
			Diameter: d, Height: height, WallThickness: wall, DrinkGrams: drink, IceGrams: ice, DrinkC: honestplate.Some(drinkC), IceC: honestplate.Some(iceC),
			WallC: honestplate.Some(wallC), Emissivity: emissivity, InsideH: inside, EndsH: ends, Horizon: 20 * time.Minute,
		}
		a := Air{TempC: airC, RH: rh, Speed: speed}
		for _, clock := range []func(Air, ...light.Lamp) (GlassClock, error){g.Likely, g.Clock} {
			k, err := clock(a, light.Lamp{Watts: watts, Distance: 2})
			if err != nil {
				testkit.Typed(t, err)
				return
			}
			testkit.Finite(t, k)
			if e := missing(k.Balance); e > 1e-6 {
				t.Errorf("%g of the heat is missing: %+v", e, k.Balance)
			}
			for _, p := range k.Series {
				if p.DewGM2 < 0 || p.FrostGM2 < 0 || p.IceGrams < 0 {
					t.Fatalf("%+v", p)
				}
			}
		}
	})
}

func BenchmarkGlassLikely(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tumbler(100).Likely(calmRoom); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkGlassClock(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tumbler(100).Clock(calmRoom); err != nil {
			b.Fatal(err)
		}
	}
}
