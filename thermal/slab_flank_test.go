package thermal

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/solve"
	"example.org/honestplate/thermal/light"
	"example.org/honestplate/thermal/ware"
)

// A slice of butter of 10 mm from the refrigerator gives under a knife after 20 to 30 min
// in a room (common practice, no source): on a board here, where a slab that is warmed at
// its top alone needs 97. A pat of 30 mm has more edge, goes sooner, and sooner on what
// conducts.
func TestAPatOfButterSoftensInHalfAnHour(t *testing.T) {
	pat := Softening{Food: food.SoftFoods().Butter, Form: heat.SlabForm, Thickness: 0.01, StartC: honestplate.Some(5), Below: ware.WoodTop}
	c, err := pat.Clock(Air{TempC: 23, RH: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if m := at(c.Softens.Likely).Minutes(); m < 20 || m > 36 {
		t.Errorf("on a board softens at %v", c.Softens)
	}
	pat.Across, pat.Below = 0.03, ware.WireRack
	if c, err = pat.Clock(Air{TempC: 23, RH: 0.5}); err != nil {
		t.Fatal(err)
	}
	if m := at(c.Softens.Likely).Minutes(); m < 12 || m > 36 {
		t.Errorf("a small one on a rack softens at %v", c.Softens)
	}
	last := at(c.Softens.Likely)
	for _, top := range []ware.Tabletop{ware.WoodTop, ware.CeramicTop, ware.MetalTop} {
		pat.Below = top
		c, err := pat.Likely(Air{TempC: 23, RH: 0.5})
		if err != nil {
			t.Fatal(err)
		}
		if d := at(c.Softens.Likely); d >= last {
			t.Errorf("on %v %v, on what conducts less %v", top, d, last)
		} else {
			last = d
		}
	}
}

// newton warms by h.
type newton struct{ h, airC float64 }

func (n newton) At(surfaceC, _ float64) (float64, float64) { return n.h * (n.airC - surfaceC), -n.h }

// A slab warmed alike from both sides is half of it with its middle sealed; the heat that
// came by top and flank is what it holds.
func TestFlankOfASlabIsItsOtherFace(t *testing.T) {
	law := newton{60, 30}
	var c solve.Compiled
	curve, err := food.SoftFoods().Butter.Curve()
	if err != nil {
		t.Fatal(err)
	}
	solve.Load(&c, curve, 1, 1)
	half, whole := &solve.Engine{}, &solve.Engine{}
	half.Build(int(heat.SlabForm), 0.01, 60, 1)
	half.Begin(&c, 5, 1e-5, law)
	whole.Build(int(heat.SlabForm), 0.02, 120, 0)
	resist := whole.Faces[1] / 2 / food.SoftFoods().Butter.Conductivity
	whole.Flank = func(cell int, tempC, _ float64) (float64, float64) {
		if cell > 0 {
			return 0, 0
		}
		h := 1 / (1/law.h + resist)
		return h * (law.airC - tempC), -h
	}
	whole.Begin(&c, 5, 1e-5, law)
	for _, at := range []float64{60, 600, 2400} {
		for _, e := range []*solve.Engine{half, whole} {
			if err := e.RunTo(at); err != nil {
				t.Fatal(err)
			}
		}
		a, b := half.State(20), whole.State(20)
		testkit.CloseRel(t, "surface", b.SurfaceC, a.SurfaceC, 1e-3)
		testkit.CloseRel(t, "mean", b.MeanC, a.MeanC, 1e-3)
		testkit.CloseRel(t, "beside", whole.Beside, whole.Heat, 2e-3)
		testkit.CloseRel(t, "kept", b.StoredJ, whole.Heat+whole.Beside, 1e-9)
	}
}

// Over the whole range of thicknesses, widths, starts, rooms and lamps, twice the cells
// and a tenth of the step error change no time by 1.5 %.
func TestSofteningConvergesOverItsRange(t *testing.T) {
	foods := food.SoftFoods()
	lamp := []light.Lamp{{Source: light.Tungsten, Lux: 60000}}
	for _, s := range []Softening{
		{Food: foods.Butter, Form: heat.SlabForm, Thickness: 0.003, Across: 2, Below: ware.MetalTop, StartC: honestplate.Some(-40)},
		{Food: foods.Butter, Form: heat.SlabForm, Thickness: 0.3, Across: 0.01, Below: ware.WireRack, StartC: honestplate.Some(-40)},
		{Food: foods.SetCream, Form: heat.SlabForm, Thickness: 0.06, Across: 0.06, Below: ware.StoneTop, StartC: honestplate.Some(4)},
		{Food: foods.MilkChocolate, Form: heat.SlabForm, Thickness: 0.01, StartC: honestplate.Some(18)},
		{Food: foods.DarkChocolate, Thickness: 0.3, StartC: honestplate.Some(-40)},
		{Food: foods.WhippedCream, Thickness: 0.003, StartC: honestplate.Some(-40)},
	} {
		s.Horizon = 24 * time.Hour
		for _, a := range []Air{{TempC: 24, RH: 0.5}, {TempC: 50, RH: 1, Speed: 2}} {
			for _, lamps := range [][]light.Lamp{nil, lamp} {
				f, err := s.frame(a, lamps)
				_, usual := runOnce(t, f, err)
				f.model.cells, f.model.tol, f.model.work = 2*softCells, softTolerance/10, softRun{}
				_, fine := runOnce(t, f, nil)
				for e := range usual {
					if usual[e] != fine[e] && !(math.Abs(usual[e]-fine[e]) <= 0.015*fine[e]+0.05) {
						t.Errorf("%s %g m, %+v, %d lamps, event %d: %.5g s, finer %.5g s", s.Food.Name, s.Thickness, a, len(lamps), e, usual[e], fine[e])
					}
				}
			}
		}
	}
}
