package thermal

import (
	"cmp"
	"errors"
	"math"
	"slices"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/cold"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
)

func portion(m cold.Medium) DeepFreeze {
	return DeepFreeze{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: honestplate.Some(-13), TargetC: -27, Medium: m}
}

func TestDeepFreezeOrder(t *testing.T) {
	for _, m := range []cold.Medium{cold.Freezers().Deep, cold.Freezers().Blast, cold.Freezers().DryIce} {
		c, err := portion(m).Clock()
		if err != nil {
			t.Fatal(err)
		}
		if !(at(c.Surface.Likely) < at(c.Mean.Likely) && at(c.Mean.Likely) < at(c.Core.Likely)) {
			t.Errorf("%s: surface %v, mean %v, core %v", m.Name, c.Surface.Window, c.Mean.Window, c.Core)
		}
		if len(c.Core.Decides) == 0 || c.Core.Decides[0].Input != "air movement in the freezer" {
			t.Errorf("%s: decided by %v", m.Name, c.Core.Decides)
		}
		w, err := portion(m).Likely()
		if err != nil || at(w.Core.Likely) != at(c.Core.Likely) {
			t.Errorf("%s: Likely says %v, %v", m.Name, w.Core, err)
		}
	}
	slow, err1 := portion(cold.Freezers().Deep).Clock()
	fast, err2 := portion(cold.Freezers().Blast).Clock()
	if err1 != nil || err2 != nil || at(fast.Core.Likely) >= at(slow.Core.Likely) {
		t.Errorf("blast %v, still %v", fast, slow)
	}
}

// Much heat transfer resistance outside, none inside: the exact lumped answer, the
// integral of dH over the flux.
func TestSmallPortionIsLumped(t *testing.T) {
	d := portion(cold.Medium{Name: "still", TempC: -30, H: honestplate.Factor(0.5, 1.5)})
	d.Diameter = 0.01
	w, err := d.Clock()
	if err != nil {
		t.Fatal(err)
	}
	density, err := d.Mix.Density()
	if err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	const n = 20000
	for i := range n {
		c := -13 - 14*(float64(i)+0.5)/n
		above, err1 := d.Mix.Enthalpy(c + 7.0/n)
		below, err2 := d.Mix.Enthalpy(c - 7.0/n)
		if err := cmp.Or(err1, err2); err != nil {
			t.Fatal(err)
		}
		sum += (above - below) * density / (0.5 * (c + 30))
	}
	testkit.CloseRel(t, "mean", w.Mean.Likely.After.Seconds(), sum*0.005/3, 0.005)
}

func TestFormsOrder(t *testing.T) {
	var last time.Duration
	for _, form := range []heat.Form{heat.SphereForm, heat.CylinderForm, heat.SlabForm} {
		d := portion(cold.Freezers().Blast)
		d.Form = form
		w, err := d.Clock()
		if err != nil {
			t.Fatal(err)
		}
		if at(w.Core.Likely) < last*13/10 {
			t.Errorf("%v: %v after %v", form, w, last)
		}
		last = at(w.Core.Likely)
	}
}

func TestStagesFollowOneAnother(t *testing.T) {
	d := DeepFreeze{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: honestplate.Some(-5)}
	ends, err := d.After(FreezeStage{cold.Freezers().Home, 12 * time.Hour}, FreezeStage{cold.Freezers().Deep, 4 * time.Hour},
		FreezeStage{cold.Medium{Name: "on the way", TempC: 22, H: honestplate.Factor(10, 1.5)}, 90 * time.Second})
	if err != nil {
		t.Fatal(err)
	}
	if e := ends[0]; math.Abs(e.MeanC+18) > 0.1 || math.Abs(e.CoreC+18) > 0.1 {
		t.Errorf("after a night: %+v", e)
	}
	if e := ends[1]; math.Abs(e.CoreC+30) > 0.2 || e.SurfaceC > e.CoreC {
		t.Errorf("after the deep freezer: %+v", e)
	}
	if e := ends[2]; !(e.SurfaceC > e.MeanC && e.MeanC > e.CoreC && e.MeanC < -25) {
		t.Errorf("on the way: %+v", e)
	}
	// In two halves is as in one.
	halves, err := d.After(FreezeStage{cold.Freezers().Home, time.Hour}, FreezeStage{cold.Freezers().Home, time.Hour})
	if err != nil {
		t.Fatal(err)
	}
	whole, err := d.After(FreezeStage{cold.Freezers().Home, 2 * time.Hour})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(halves[1].MeanC-whole[0].MeanC) > 0.02 {
		t.Errorf("two hours: %+v, in halves %+v", whole[0], halves[1])
	}
}

// When After has reached the time that Times gives, the core is at the target.
func TestTimesAgreesWithAfter(t *testing.T) {
	d := portion(cold.Freezers().Deep)
	c, err := d.Clock()
	if err != nil {
		t.Fatal(err)
	}
	ends, err := d.After(FreezeStage{d.Medium, at(c.Core.Likely)})
	if err != nil || math.Abs(ends[0].CoreC-d.TargetC) > 0.03 {
		t.Errorf("core %+v, %v", ends, err)
	}
	ends, err = d.After(FreezeStage{d.Medium, at(c.Mean.Likely)})
	if err != nil || math.Abs(ends[0].MeanC-d.TargetC) > 0.03 {
		t.Errorf("mean %+v, %v", ends, err)
	}
}

func TestDeepFreezeRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	change := func(f func(*DeepFreeze)) DeepFreeze { d := portion(cold.Freezers().Deep); f(&d); return d }
	for name, d := range map[string]DeepFreeze{
		"zero":           {},
		"form":           change(func(d *DeepFreeze) { d.Form = 5 }),
		"size":           change(func(d *DeepFreeze) { d.Diameter = 9 }),
		"start":          change(func(d *DeepFreeze) { d.StartC = honestplate.Some(nan) }),
		"medium":         change(func(d *DeepFreeze) { d.Medium.H.Low = 0 }),
		"target NaN":     change(func(d *DeepFreeze) { d.TargetC = nan }),
		"target above":   change(func(d *DeepFreeze) { d.TargetC = 0 }),
		"too cold":       change(func(d *DeepFreeze) { d.TargetC = -40 }),
		"at the freezer": change(func(d *DeepFreeze) { d.TargetC = -30 }),
	} {
		if _, err := d.Clock(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	d := portion(cold.Freezers().Deep)
	for name, stages := range map[string][]FreezeStage{
		"none":   nil,
		"time":   {{cold.Freezers().Home, -1}},
		"medium": {{cold.Medium{}, time.Hour}},
	} {
		if _, err := d.After(stages...); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("stages, %s: %v", name, err)
		}
	}
	d.Diameter = 0
	if _, err := d.After(FreezeStage{cold.Freezers().Home, time.Hour}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("no size: %v", err)
	}
}

// A freezer that may be a little too warm may never get there.
func TestMarginalFreezerMayNever(t *testing.T) {
	d := portion(cold.Freezers().Deep)
	d.TargetC = -29.5
	w, err := d.Clock()
	if err != nil || !w.Core.Latest.Never || w.Core.Likely.Never {
		t.Errorf("%v, %v", w, err)
	}
}

func FuzzDeepFreeze(f *testing.F) {
	f.Add(0.055, -13.0, -27.0, -30.0, 8.0, 0, 3600.0)
	f.Add(0.5, 30.0, -80.0, -88.0, 1e4, 2, 1e6)
	f.Add(0.005, -59.0, -60.0, -61.0, 1e-3, 1, 1.0)
	f.Fuzz(func(t *testing.T, size, start, target, air, h float64, form int, wait float64) {
		m := cold.Medium{TempC: air, H: honestplate.Factor(h, 1.5)}
		d := DeepFreeze{Mix: food.Recipes().Sorbet, Form: heat.Form(form), Diameter: size, StartC: honestplate.Some(start), TargetC: target, Medium: m}
		mod, err := d.model()
		if err == nil {
			times := make([]float64, freezeEvents)
			if err := mod.run(times, noCourse); err == nil && slices.Min(times) < 0 {
				t.Fatalf("%v", times)
			}
		}
		ends, err := d.After(FreezeStage{m, time.Duration(math.Abs(wait) * 1e9)})
		if err == nil && (math.IsNaN(ends[0].MeanC) || math.IsNaN(ends[0].SurfaceC)) {
			t.Fatalf("%+v", ends)
		}
		if !rarely(size) { // the whole band takes long
			return
		}
		if c, err := d.Clock(); err == nil {
			for _, w := range []honestplate.Window{c.Surface.Window, c.Mean.Window, c.Core.Window} {
				if at(w.Earliest) < 0 || at(w.Earliest) > at(w.Likely) || at(w.Likely) > at(w.Latest) {
					t.Fatalf("%+v", c)
				}
			}
		}
	})
}

func BenchmarkDeepFreezeTimes(b *testing.B) {
	d := portion(cold.Freezers().Deep)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := d.Clock(); err != nil {
			b.Fatal(err)
		}
	}
}

// common practice, no source: the same ball is ready sooner in moving air than in a
// home freezer, sooner still in dry ice.
func TestMediaRank(t *testing.T) {
	last := neverAt
	for _, m := range []cold.Medium{cold.Freezers().Home, cold.Freezers().Deep, cold.Freezers().Blast, cold.Freezers().DryIce} {
		d := portion(m)
		d.TargetC = -15
		c, err := d.Likely()
		if err != nil {
			t.Fatal(err)
		}
		if core := at(c.Core.Likely); core < last {
			last = core
		} else {
			t.Errorf("%s takes %v, not below %v", m.Name, core, last)
		}
	}
}
