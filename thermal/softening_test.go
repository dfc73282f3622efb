package thermal

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/light"
)

func softFoods() []food.SoftFood {
	return []food.SoftFood{food.SoftFoods().DarkChocolate, food.SoftFoods().MilkChocolate, food.SoftFoods().WhiteChocolate, food.SoftFoods().Butter, food.SoftFoods().WhippedCream, food.SoftFoods().SetCream}
}

// curl is a curl of butter from the refrigerator.
var curl = Softening{Food: food.SoftFoods().Butter, Thickness: 0.03, StartC: honestplate.Some(5)}

func softenClock(t testing.TB, s Softening, a Air, lamps ...light.Lamp) SoftClock {
	t.Helper()
	c, err := s.Clock(a, lamps...)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestSofteningComesBeforeRunning(t *testing.T) {
	for _, f := range softFoods() {
		for _, form := range []heat.Form{heat.SphereForm, heat.SlabForm} {
			for _, lamps := range [][]light.Lamp{nil, {tungsten}} {
				c := softenClock(t, Softening{Food: f, Form: form, Thickness: 0.02, StartC: honestplate.Some(4)}, studio, lamps...)
				if at(c.Softens.Likely) > at(c.Runs.Likely) || at(c.Softens.Earliest) > at(c.Runs.Earliest) || at(c.Softens.Latest) > at(c.Runs.Latest) {
					t.Errorf("%s, %v, %d lamps: softens %v, runs %v", f.Name, form, len(lamps), c.Softens.Window, c.Runs)
				}
				for _, w := range []honestplate.Window{c.Softens.Window, c.Runs.Window} {
					if at(w.Earliest) > at(w.Likely) || at(w.Likely) > at(w.Latest) {
						t.Errorf("%s: window %v", f.Name, w)
					}
				}
				last := c.Series[len(c.Series)-1]
				if runs := at(c.Runs.Likely); runs != neverAt && (last.Time < runs || last.Time > runs+runs/30+time.Second || c.Series[len(c.Series)-2].Time > runs) {
					t.Errorf("%s: series ends at %v, runs at %v", f.Name, last.Time, at(c.Runs.Likely))
				}
			}
		}
	}
}

func TestColdLastsLongerAndLightShorter(t *testing.T) {
	base := at(softenClock(t, curl, studio, tungsten).Softens.Likely)
	far, err := tungsten.At(2.5)
	if err != nil {
		t.Fatal(err)
	}
	colder, thin, deep := curl, curl, curl
	colder.StartC = honestplate.Some(-18)
	thin.Thickness = 0.008
	deep.SkinDepth = honestplate.Exactly(0.004)
	if d := at(softenClock(t, colder, studio, tungsten).Softens.Likely); d <= base {
		t.Errorf("from the freezer %v, from the refrigerator %v", d, base)
	}
	if d := at(softenClock(t, curl, studio, far).Softens.Likely); d <= base {
		t.Errorf("lamp at 2.5 m %v, at 1.4 m %v", d, base)
	}
	if d := at(softenClock(t, curl, studio).Softens.Likely); d <= base {
		t.Errorf("no lamp %v, one lamp %v", d, base)
	}
	if d := at(softenClock(t, thin, studio, tungsten).Softens.Likely); d >= base {
		t.Errorf("a thin shaving %v, a curl %v", d, base)
	}
	if d := at(softenClock(t, deep, studio, tungsten).Softens.Likely); d <= base {
		t.Errorf("4 mm deep %v, 1 mm %v", d, base)
	}
}

func TestColdRoomNeverSoftensChocolate(t *testing.T) {
	c := softenClock(t, Softening{Food: food.SoftFoods().DarkChocolate, Form: heat.SlabForm, Thickness: 0.01, StartC: honestplate.Some(15)}, Air{TempC: 18, RH: 0.5})
	if c.Softens.MayHappen() || c.Runs.MayHappen() || len(c.Softens.Decides) != 0 {
		t.Errorf("softens %v, runs %v, decided by %v", c.Softens.Window, c.Runs.Window, c.Softens.Decides)
	}
	if s := c.Series[len(c.Series)-1]; s.Time != 2*time.Hour || math.Abs(s.MeanC-18) > 1 {
		t.Errorf("ends at %+v", s)
	}
}

// common practice, no source: whipped cream goes first, butter next, chocolate
// lasts; gelatin makes cream last.
func TestWhichGoesFirst(t *testing.T) {
	var last time.Duration
	for _, f := range []food.SoftFood{food.SoftFoods().WhippedCream, food.SoftFoods().Butter, food.SoftFoods().DarkChocolate} {
		d := at(softenClock(t, Softening{Food: f, Thickness: 0.03, StartC: honestplate.Some(5)}, studio, tungsten).Softens.Likely)
		if d <= last {
			t.Errorf("%s softens after %v, not after %v", f.Name, d, last)
		}
		last = d
	}
	plain := softenClock(t, Softening{Food: food.SoftFoods().WhippedCream, Thickness: 0.03, StartC: honestplate.Some(5)}, studio).Softens
	set := softenClock(t, Softening{Food: food.SoftFoods().SetCream, Thickness: 0.03, StartC: honestplate.Some(5)}, studio).Softens
	if at(set.Earliest) <= at(plain.Earliest) {
		t.Errorf("set cream %v, plain %v", set, plain)
	}
}

// common practice, no source: flash alone hardly changes anything.
func TestFlashAloneHardlyMatters(t *testing.T) {
	dark := softenClock(t, curl, studio).Softens.Likely.After.Seconds()
	flash := softenClock(t, curl, studio, packs).Softens.Likely.After.Seconds()
	if flash < 0.9*dark {
		t.Errorf("without light %g s, with flash %g s", dark, flash)
	}
}

// The skin's time does not hang on the grid: a body of twice the cells and a tenth
// of the step error agrees to 1 %.
func TestSofteningConverges(t *testing.T) {
	f, err := curl.frame(studio, []light.Lamp{tungsten})
	m, times := runOnce(t, f, err)
	run := &m.work
	table := &run.table
	light := run.top.light
	fine := heat.Body{Form: heat.SphereForm, Radius: 0.015, Curve: m.curve, Cells: 2 * softCells, Tolerance: softTolerance / 10}
	states, err := fine.Run(curl.StartC.Value, 0, func(surfaceC float64, _ time.Duration) float64 {
		heat, _ := table.at(surfaceC)
		return heat + light
	}, seconds(times[0]), seconds(times[1]))
	if err != nil {
		t.Fatal(err)
	}
	var e solve.Engine
	var c solve.Compiled
	solve.Load(&c, m.curve, 1, 1)
	e.Build(int(heat.SphereForm), 0.015, 2*softCells, solve.UsualGrade)
	e.Begin(&c, 5, softTolerance/10, &run.top)
	e.Expect(0.014, m.s.Food.SoftC.Likely)
	e.Expect(0.014, m.s.Food.RunC.Likely)
	if err := e.RunTo(1.1 * times[1]); err != nil {
		t.Fatal(err)
	}
	for k := range times {
		if got, want := times[k], e.FiredAt(k); math.Abs(got/want-1) > 0.01 {
			t.Errorf("event %d: %g s, finer %g s", k, got, want)
		}
		if s := states[k]; math.Abs(s.HeatJ-s.StoredJ) > 1e-6*s.HeatJ {
			t.Errorf("event %d: took %g J, holds %g J", k, s.HeatJ, s.StoredJ)
		}
	}
}

func TestSofteningRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	for name, spoil := range map[string]func(*Softening, *Air){
		"air":           func(_ *Softening, a *Air) { a.RH = 1.5 },
		"hot air":       func(_ *Softening, a *Air) { a.TempC = 55 },
		"material":      func(s *Softening, _ *Air) { s.Food.Density = 0 },
		"latent":        func(s *Softening, _ *Air) { s.Food.Latent = -1 },
		"latent huge":   func(s *Softening, _ *Air) { s.Food.Latent = 1e6 },
		"melting start": func(s *Softening, _ *Air) { s.Food.MeltsFromC = nan },
		"melting end":   func(s *Softening, _ *Air) { s.Food.MeltsToC = s.Food.MeltsFromC },
		"soft":          func(s *Softening, _ *Air) { s.Food.SoftC = honestplate.Estimate{Low: 20, Likely: 18, High: 22} },
		"run":           func(s *Softening, _ *Air) { s.Food.RunC = honestplate.Exactly(10) },
		"activity":      func(s *Softening, _ *Air) { s.Food.Activity = 2 },
		"absorptance":   func(s *Softening, _ *Air) { s.Food.Absorptance.Tungsten = 2 },
		"form":          func(s *Softening, _ *Air) { s.Form = heat.CylinderForm },
		"thickness":     func(s *Softening, _ *Air) { s.Thickness = 0 },
		"width":         func(s *Softening, _ *Air) { s.Across = nan },
		"start":         func(s *Softening, _ *Air) { s.StartC = honestplate.Some(100) },
		"horizon":       func(s *Softening, _ *Air) { s.Horizon = -1 },
		"skin":          func(s *Softening, _ *Air) { s.SkinDepth = honestplate.Exactly(0.02) },
	} {
		s, a := curl, studio
		spoil(&s, &a)
		if _, err := s.Clock(a, tungsten); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	bright := light.Lamp{Source: light.Tungsten, Lux: 1e6}
	if _, err := curl.Clock(studio, bright); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("a million lux: %v", err)
	}
}

func FuzzSoftening(f *testing.F) {
	f.Add(0, 0, 0.03, 0.08, 5.0, 24.0, 0.5, 5000.0)
	f.Add(3, 2, 0.004, 0.02, -40.0, -20.0, 1.0, 0.0)
	f.Fuzz(func(t *testing.T, food, form int, thickness, across, start, room, rh, lux float64) {
		foods := softFoods()
		if food < 0 || food >= len(foods) {
			return
		}
		s := Softening{Food: foods[food], Form: heat.Form(form), Thickness: thickness, Across: across, StartC: honestplate.Some(start), Horizon: 10 * time.Minute}
		c, err := s.Clock(Air{TempC: room, RH: rh}, light.Lamp{Source: light.Tungsten, Lux: lux})
		if err != nil {
			if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
				t.Fatal(err)
			}
			return
		}
		for _, p := range c.Series {
			if math.IsNaN(p.SurfaceC + p.MeanC + p.CoreC) {
				t.Fatalf("%+v: NaN in the series", s)
			}
		}
	})
}

func BenchmarkSoftening(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		softenClock(b, curl, studio, tungsten)
	}
}

func TestSmallPiecesNeedNoDepthOfTheirOwn(t *testing.T) {
	air := Air{TempC: 23, RH: 0.5}
	var last time.Duration
	for _, thickness := range []float64{0.003, 0.005, 0.006, 0.0075} {
		k, err := Softening{Food: food.SoftFoods().Butter, Form: heat.SlabForm, Thickness: thickness, StartC: honestplate.Some(5)}.Clock(air)
		if err != nil {
			t.Fatalf("%g m: %v", thickness, err)
		}
		if at(k.Softens.Likely) <= last {
			t.Errorf("%g m softens at %v, no later than a thinner one", thickness, k.Softens)
		}
		last = at(k.Softens.Likely)
	}
	for _, diameter := range []float64{0.01, 0.019} {
		if _, err := (Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: diameter, StartC: -18}).Likely(air); err != nil {
			t.Errorf("a scoop of %g m: %v", diameter, err)
		}
	}
	thin := Softening{Food: food.SoftFoods().Butter, Form: heat.SlabForm, Thickness: 0.005, StartC: honestplate.Some(5), SkinDepth: honestplate.Estimate{Low: 0.0005, Likely: 0.001, High: 0.002}}
	if _, err := thin.Clock(air); !errors.Is(err, honestplate.ErrRange) || !strings.Contains(err.Error(), "outside 0..0.00166667 m") {
		t.Errorf("deeper than a third: %v, want the limit named", err)
	}
}
