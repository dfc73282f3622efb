package look

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/look/colour"
)

func optics(t *testing.T, m interface{ Optics() (Optics, error) }) Optics {
	t.Helper()
	o, err := m.Optics()
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func reduced(t *testing.T, o Optics, nm float64) float64 {
	t.Helper()
	c, err := o.At(nm)
	if err != nil {
		t.Fatal(err)
	}
	return c.ReducedScattering.Likely
}

func labOf(o *Optics, s Scene) (colour.Lab, error) {
	c, err := o.colour(s)
	return c.lab, err
}

// More fat scatters more and hides sooner, homogenised or not, given or not.
func TestMoreFatScattersMoreAndHidesSooner(t *testing.T) {
	step := 0.1
	if testing.Short() {
		step = 0.4
	}
	for _, pressure := range []honestplate.Optional{{}, honestplate.Some(0), honestplate.Some(5), honestplate.Some(20)} {
		last, depth := 0.0, math.Inf(1)
		for fat := 0.0; fat <= mostFat; fat += step * (1 + 1.4*fat) {
			o := optics(t, Milk{FatPercent: fat, HomogenisedMPa: pressure})
			r := reduced(t, o, 550)
			if r <= last {
				t.Errorf("pressure %+v, %.2f %% fat scatters %.1f per m after %.1f", pressure, fat, r, last)
			}
			h, err := o.Hides(Scene{}, Black, White, Hidden)
			if err != nil {
				t.Fatal(err)
			}
			if h.Likely >= depth {
				t.Errorf("pressure %+v, %.2f %% fat hides at %.3g m after %.3g", pressure, fat, h.Likely, depth)
			}
			last, depth = r, h.Likely
		}
	}
}

// Homogenising scatters more, and so does protein.
func TestHomogenisingAndProteinScatterMore(t *testing.T) {
	last := 0.0
	for _, mpa := range []float64{0, 1.5, 5, 10, 20, 50} {
		r := reduced(t, optics(t, Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(mpa)}), 550)
		if r <= last {
			t.Errorf("%g MPa: %.1f after %.1f", mpa, r, last)
		}
		last = r
	}
	last = 0
	for _, protein := range []float64{0.01, 1, 3.4, 8} {
		r := reduced(t, optics(t, Milk{ProteinPercent: honestplate.Some(protein)}), 550)
		if r <= last {
			t.Errorf("%g %% protein: %.1f after %.1f", protein, r, last)
		}
		last = r
	}
}

// More carotene is yellower, and no lighter.
func TestMoreCaroteneIsYellower(t *testing.T) {
	for _, fat := range []float64{3.5, 36} {
		last := colour.Lab{L: 200, B: -1}
		for _, c := range []float64{0, 1, 3, 6, 12} {
			o := optics(t, Milk{FatPercent: fat, Carotene: honestplate.Some(c)})
			lab, err := labOf(&o, Scene{Depth: honestplate.Some(0.02)})
			if err != nil {
				t.Fatal(err)
			}
			if lab.B <= last.B || lab.L > last.L {
				t.Errorf("%g %% fat, %g mg: %+v after %+v", fat, c, lab, last)
			}
			last = lab
		}
	}
}

// A deeper layer over black is lighter, until it is a pool; over white it only hides.
func TestDepth(t *testing.T) {
	o := optics(t, Milk{FatPercent: 3.5})
	last := -1.0
	for depth := 0.0; depth < 10; depth = 2*depth + 1e-5 {
		lab, err := labOf(&o, Scene{Depth: honestplate.Some(depth)})
		if err != nil {
			t.Fatal(err)
		}
		if lab.L < last-1e-6 {
			t.Errorf("%g m: L* %.4f after %.4f", depth, lab.L, last)
		}
		last = lab.L
	}
	pool, err := labOf(&o, Scene{})
	if err != nil {
		t.Fatal(err)
	}
	white, err := labOf(&o, Scene{Ground: White})
	if err != nil || pool != white || math.Abs(pool.L-last) > 1e-6 {
		t.Errorf("pool %+v over black, %+v over white, 10 m %.6f", pool, white, last)
	}
}

// The bands are those that the evidence allows.
func TestBands(t *testing.T) {
	for _, c := range []struct {
		milk  Milk
		least float64 // half band of L*
	}{
		{Milk{FatPercent: 0.1, HomogenisedMPa: honestplate.Some(20)}, 4},
		{Milk{FatPercent: 1.5, HomogenisedMPa: honestplate.Some(20)}, 4},
		{Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(20)}, 1.5},
		{Milk{FatPercent: 36}, 1.5},
	} {
		o := optics(t, c.milk)
		a, err := o.Appear(Scene{})
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range []honestplate.Estimate{a.Lightness, a.Green, a.Yellow} {
			if err := e.Check("band"); err != nil {
				t.Error(err)
			}
		}
		if h := (a.Lightness.High - a.Lightness.Low) / 2; math.Abs(h-c.least) > 0.3 {
			t.Errorf("%+v: L* %v, want +- %g", c.milk, a.Lightness, c.least)
		}
		if a.Yellow.High-a.Yellow.Low < 6-1e-9 {
			t.Errorf("%+v: b* %v", c.milk, a.Yellow)
		}
	}
	given := optics(t, Milk{FatPercent: 36, Carotene: honestplate.Some(5)})
	left := optics(t, Milk{FatPercent: 36})
	a, _ := given.Appear(Scene{})
	b, _ := left.Appear(Scene{})
	if a.Yellow.High >= b.Yellow.High || a.Lab != b.Lab {
		t.Errorf("cream's b* with carotene given %v, without %v", a.Yellow, b.Yellow)
	}
}

// What the model says of a blend: a thin coat is whiter, a deep pool looks nearly the
// same in lightness and is yellower; with pale cream it is not.
func TestBlendAsCoatAndAsPool(t *testing.T) {
	milk := optics(t, Milk{FatPercent: 3.5})
	for _, c := range []struct {
		carotene float64
		yellower bool
	}{{6, true}, {0, false}} {
		cream := optics(t, Milk{FatPercent: 36, Carotene: honestplate.Some(c.carotene)})
		blend, err := Mix(Part{milk, 0.8}, Part{cream, 0.2})
		if err != nil {
			t.Fatal(err)
		}
		coat, err := blend.Beside(&milk, Scene{Depth: honestplate.Some(0.3e-3)})
		if err != nil {
			t.Fatal(err)
		}
		pool, err := blend.Beside(&milk, Scene{})
		if err != nil {
			t.Fatal(err)
		}
		whiter := func(c Comparison) float64 { return c.First.Lab.L - c.Second.Lab.L }
		yellower := pool.First.Lab.B - pool.Second.Lab.B
		if whiter(coat) < 2 || math.Abs(whiter(pool)) > 0.8 || yellower > 0.5 != c.yellower {
			t.Errorf("carotene %g: coat %.2f whiter, pool %.2f whiter and %.2f yellower", c.carotene, whiter(coat), whiter(pool), yellower)
		}
		if coat.Difference.Check("") != nil || coat.Eye < pool.Eye && !c.yellower {
			t.Errorf("coat %v %v, pool %v %v", coat.Difference, coat.Eye, pool.Difference, pool.Eye)
		}
	}
}

// Mixing is by volume: halves of one liquid are that liquid, and the order is nothing.
func TestMix(t *testing.T) {
	milk, cream := optics(t, Milk{FatPercent: 3.5}), optics(t, Milk{FatPercent: 36})
	same, err := Mix(Part{milk, 1}, Part{milk, 3})
	if err != nil {
		t.Fatal(err)
	}
	if a, b := reduced(t, same, 550), reduced(t, milk, 550); math.Abs(a/b-1) > 1e-12 {
		t.Errorf("milk with milk scatters %g, milk %g", a, b)
	}
	one, err := Mix(Part{milk, 2}, Part{cream, 1}, Part{cream, 0})
	if err != nil {
		t.Fatal(err)
	}
	want := (2*reduced(t, milk, 620) + reduced(t, cream, 620)) / 3
	if got := reduced(t, one, 620); math.Abs(got/want-1) > 1e-12 {
		t.Errorf("mix scatters %g, want %g", got, want)
	}
	if f := one.factor; f < min(milk.factor, cream.factor) || f > max(milk.factor, cream.factor) {
		t.Errorf("factor %g of %g and %g", f, milk.factor, cream.factor)
	}
}

// A coat of the depth that Hides returns has the contrast that was asked for.
func TestHidesUndoesContrast(t *testing.T) {
	o := optics(t, Milk{FatPercent: 3.5})
	for _, diffuse := range []bool{false, true} {
		for _, want := range []float64{0.6, 0.95, 0.98, 0.995} {
			for _, dark := range []Ground{Black, Chocolate} {
				s := Scene{Diffuse: diffuse}
				h, err := o.Hides(s, dark, White, want)
				if err != nil {
					t.Fatal(err)
				}
				got, err := o.Contrast(s, h.Likely, dark, White)
				if err != nil {
					t.Fatal(err)
				}
				if math.Abs(got-want) > 1e-4 || h.Check("") != nil {
					t.Errorf("contrast %g asked, %g at %v m", want, got, h)
				}
			}
		}
	}
	if h, err := o.Hides(Scene{Diffuse: true}, Ground{0.79, 0.79}, White, 0.9); err != nil || h.Likely != 0 {
		t.Errorf("grounds that look alike need %v, %v", h, err)
	}
	whey := optics(t, Milk{ProteinPercent: honestplate.Some(0)})
	if _, err := whey.Hides(Scene{}, Black, White, 0.98); !errors.Is(err, honestplate.ErrInfeasible) {
		t.Error(err)
	}
}

// Light from all sides or a beam, steep or not, through glass or not: never more than all.
func TestReflectanceIsAShare(t *testing.T) {
	o := optics(t, Milk{FatPercent: 10})
	for _, s := range []Scene{
		{Depth: honestplate.Some(0.001)}, {Depth: honestplate.Some(0.001), Diffuse: true}, {Depth: honestplate.Some(0.01), IncidenceDegrees: 60, Ground: Flake},
		{Glass: true}, {Depth: honestplate.Some(0), Ground: White}, {Depth: honestplate.Some(1e-4), Glass: true, Diffuse: true, Light: colour.LEDB3},
	} {
		r, err := s.spectra(&o, 1, 1, &o.absorption, s.Ground)
		if err != nil || slices.Max(r[0][:]) > 1 || slices.Min(r[0][:]) < 0 {
			t.Errorf("%+v: %v", s, err)
		}
	}
}

func TestTheWire(t *testing.T) {
	for _, v := range []struct{ in, out any }{
		{&Milk{FatPercent: 3.5, HomogenisedMPa: honestplate.Some(0), Carotene: honestplate.Some(6)}, &Milk{}},
		{&Milk{FatPercent: 3.5}, &Milk{}},
		{&Scene{Depth: honestplate.Some(0.001), Ground: Chocolate, Light: colour.A, Diffuse: true}, &Scene{}},
	} {
		b, err := json.Marshal(v.in)
		if err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(b, v.out); err != nil {
			t.Errorf("%s: %v", b, err)
		}
		again, _ := json.Marshal(v.out)
		if string(again) != string(b) {
			t.Errorf("%s came back as %s", b, again)
		}
	}
	milk, cream := optics(t, Milk{FatPercent: 3.5}), optics(t, Milk{FatPercent: 36})
	if _, err := json.Marshal(Part{milk, 1}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("what cannot be read back is written: %v", err)
	}
	c, err := cream.Beside(&milk, Scene{})
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(c)
	var back Comparison
	if err != nil || json.Unmarshal(b, &back) != nil || back != c {
		t.Errorf("%s: %v", b, err)
	}
	var pool Scene
	b, err = json.Marshal(Scene{})
	if err != nil || json.Unmarshal(b, &pool) != nil || pool.Depth.Given {
		t.Errorf("a pool without end is written %s, %v, and read %+v", b, err, pool)
	}
}

func TestNonsenseIsRefused(t *testing.T) {
	nan := math.NaN()
	o := optics(t, Milk{FatPercent: 3.5})
	none := new(Optics)
	scene := Scene{Depth: honestplate.Some(0.001)}
	for name, call := range map[string]func() error{
		"fat":             func() error { _, err := Milk{FatPercent: nan}.Optics(); return err },
		"butter":          func() error { _, err := Milk{FatPercent: 80}.Optics(); return err },
		"protein":         func() error { _, err := Milk{ProteinPercent: honestplate.Some(-1)}.Optics(); return err },
		"pressure":        func() error { _, err := Milk{HomogenisedMPa: honestplate.Some(0.5)}.Optics(); return err },
		"carotene":        func() error { _, err := Milk{Carotene: honestplate.Some(nan)}.Globules(); return err },
		"wavelength":      func() error { _, err := o.At(900); return err },
		"no optics":       func() error { _, err := none.At(500); return err },
		"nil":             func() error { var o *Optics; _, err := labOf(o, scene); return err },
		"no colour":       func() error { _, err := none.Appear(scene); return err },
		"depth":           func() error { _, err := labOf(&o, Scene{Depth: honestplate.Some(nan)}); return err },
		"negative depth":  func() error { _, err := o.Appear(Scene{Depth: honestplate.Some(-1)}); return err },
		"ground":          func() error { _, err := o.Appear(Scene{Ground: Ground{2, 0}}); return err },
		"light":           func() error { _, err := o.Appear(Scene{Light: "noon"}); return err },
		"angle":           func() error { _, err := o.Appear(Scene{IncidenceDegrees: 90}); return err },
		"other":           func() error { _, err := o.Beside(none, scene); return err },
		"first":           func() error { _, err := none.Beside(&o, scene); return err },
		"contrast":        func() error { _, err := o.Hides(scene, Black, White, 1); return err },
		"contrast of nil": func() error { _, err := none.Contrast(scene, 0.1, Black, White); return err },
		"contrast depth":  func() error { _, err := o.Contrast(scene, nan, Black, White); return err },
		"upside down":     func() error { _, err := o.Contrast(scene, 0.1, White, Black); return err },
		"bad dark":        func() error { _, err := o.Hides(scene, Ground{nan, 0}, White, 0.9); return err },
		"bad light":       func() error { _, err := o.Hides(scene, Black, Ground{0, 7}, 0.9); return err },
		"bad scene":       func() error { _, err := o.Hides(Scene{Light: "dusk"}, Black, White, 0.9); return err },
		"no parts":        func() error { _, err := Mix(); return err },
		"bad part":        func() error { _, err := Mix(Part{o, nan}); return err },
		"empty part":      func() error { _, err := Mix(Part{Volume: 1}); return err },
	} {
		if err := call(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestNoticed(t *testing.T) {
	for d, want := range map[float64]string{0: "not seen", 0.5: "not seen", 1: "slightly noticeable", 2: "noticeable", 4: "well visible"} {
		if got := noticed(d); got != want {
			t.Errorf("a difference of %g is %v, want %v", d, got, want)
		}
	}
}
