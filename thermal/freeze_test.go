package thermal

import (
	"errors"
	"math"
	"testing"
	"time"
)

// breadLike is an invented dough ball and how it is frozen.
var breadLike = Freezing{
	Food: Freezable{FreezeC: -2, Density: 1000, Heat: 3000, Latent: 140e3, FrozenK: 1.0, FrozenHeat: 1700, FrozenDensity: 950},
	Size: Size{Diameter: 0.06}, Medium: BlastFreezer(), StartC: 20, EndC: -18,
}

func plankPham(t *testing.T, f Freezing) (plank, pham time.Duration) {
	t.Helper()
	plank, err := f.Plank()
	if err != nil {
		t.Fatal(err)
	}
	pham, err = f.Pham()
	if err != nil {
		t.Fatal(err)
	}
	return plank, pham
}

// The closed formula and the solver, which share only the composition, agree as
// published methods do among themselves: within 25 %.
func TestPhamIsNearTheSolver(t *testing.T) {
	points, err := lean.Points()
	if err != nil {
		t.Fatal(err)
	}
	food, err := lean.Freezable()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		form Form
		size Size
	}{{SphereForm, Size{Diameter: 0.06}}, {CylinderForm, Size{Diameter: 0.06, Long: true}}, {SlabForm, Size{Height: 0.06}}} {
		for _, m := range []Medium{DeepFreezer(), BlastFreezer()} {
			pham, err := Freezing{Food: food, Size: c.size, Medium: m, StartC: 15, EndC: -10}.Pham()
			if err != nil {
				t.Fatal(err)
			}
			states, err := Body{Form: c.form, Radius: 0.03, Curve: points}.Run(15, -1, func(surfaceC float64, _ time.Duration) float64 {
				return m.H * (m.TempC - surfaceC)
			}, pham*3/4, pham*5/4)
			if err != nil {
				t.Fatal(err)
			}
			if states[0].CoreC < -10 || states[1].CoreC > -10 {
				t.Errorf("%v in the %s: Pham %v, core %.1f degC at 3/4 of it, %.1f at 5/4", c.form, m.Name, pham, states[0].CoreC, states[1].CoreC)
			}
		}
	}
}

func TestFreezingOrder(t *testing.T) {
	plank, pham := plankPham(t, breadLike)
	if !(pham > plank) {
		t.Errorf("Pham %v with cooling before and after is not above Plank %v", pham, plank)
	}
	for name, harder := range map[string]func(*Freezing){
		"larger":         func(f *Freezing) { f.Size.Diameter *= 1.5 },
		"weaker air":     func(f *Freezing) { f.Medium.H /= 2; f.Medium.HLow = 0 },
		"warmer air":     func(f *Freezing) { f.Medium.TempC = -25 },
		"more water":     func(f *Freezing) { f.Food.Latent *= 1.3 },
		"long cylinder":  func(f *Freezing) { f.Size.Long = true },
		"slab as thick":  func(f *Freezing) { f.Size = Size{Height: 0.06} },
		"brick as thick": func(f *Freezing) { f.Size = Size{Height: 0.06, Width: 0.06, Depth: 0.3} },
	} {
		f := breadLike
		harder(&f)
		a, b := plankPham(t, f)
		if a <= plank || b <= pham {
			t.Errorf("%s: Plank %v Pham %v, not above %v %v", name, a, b, plank, pham)
		}
	}
	f := breadLike
	f.StartC = 5
	if _, cooler := plankPham(t, f); cooler >= pham {
		t.Error("a cooler start does not freeze sooner")
	}
}

func TestFreezingRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	for name, spoil := range map[string]func(*Freezing){
		"medium":             func(f *Freezing) { f.Medium.H = 0 },
		"density":            func(f *Freezing) { f.Food.Density = nan },
		"latent":             func(f *Freezing) { f.Food.Latent = -1 },
		"conductivity":       func(f *Freezing) { f.Food.FrozenK = 0 },
		"NaN freezing point": func(f *Freezing) { f.Food.FreezeC = nan },
		"freezing point":     func(f *Freezing) { f.Food.FreezeC = 1 },
		"warm medium":        func(f *Freezing) { f.Medium.TempC = -1 },
		"no size":            func(f *Freezing) { f.Size = Size{} },
	} {
		f := breadLike
		spoil(&f)
		for _, method := range []func() (time.Duration, error){f.Plank, f.Pham} {
			if _, err := method(); !errors.Is(err, ErrInput) && !errors.Is(err, ErrRange) {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	for name, spoil := range map[string]func(*Freezing){
		"heat":         func(f *Freezing) { f.Food.Heat = 0 },
		"frozen heat":  func(f *Freezing) { f.Food.FrozenHeat = nan },
		"cold start":   func(f *Freezing) { f.StartC = -5 },
		"NaN end":      func(f *Freezing) { f.EndC = nan },
		"end too cold": func(f *Freezing) { f.EndC = -40 },
		"end unfrozen": func(f *Freezing) { f.EndC = 0 },
		"Biot number":  func(f *Freezing) { f.Food.FrozenK = 1e-3 },
		"above mean":   func(f *Freezing) { f.Food.FreezeC, f.StartC, f.EndC, f.Medium.TempC = -20, -19.9, -25, -30 },
	} {
		f := breadLike
		spoil(&f)
		if _, err := f.Pham(); !errors.Is(err, ErrInput) && !errors.Is(err, ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	f := breadLike
	f.Size.Height = 0.03
	if _, err := f.Plank(); !errors.Is(err, ErrInput) {
		t.Error("Plank has no short cylinder:", err)
	}
	if _, err := f.Pham(); err != nil {
		t.Error("Pham has:", err)
	}
}

func FuzzFreezing(f *testing.F) {
	f.Add(-2.0, 1000.0, 3000.0, 14e4, 1.0, 1700.0, 0.06, 0.0, 0.0, 0.0, 30.0, -35.0, 20.0, -18.0)
	f.Fuzz(func(t *testing.T, freeze, rho, c, latent, k, cf, d, h, w, depth, coefficient, medium, start, end float64) {
		x := Freezing{
			Food: Freezable{freeze, rho, c, latent, k, cf, 0},
			Size: Size{Diameter: d, Height: h, Width: w, Depth: depth}, Medium: Medium{TempC: medium, H: coefficient},
			StartC: start, EndC: end,
		}
		for _, method := range []func() (time.Duration, error){x.Plank, x.Pham} {
			if v, err := method(); err == nil && v < 0 {
				t.Fatalf("%+v: %v", x, v)
			}
		}
		if err := x.Medium.Validate(); err == nil && !(x.Medium.H > 0) {
			t.Fatalf("%+v is let through", x.Medium)
		}
		if d, err := SucroseDepression(depth); err == nil && !(d >= 0 && d < 14) {
			t.Fatalf("depression at %g: %g", depth, d)
		}
		if o, err := Overrun(rho, k); err == nil && !(o >= 0) {
			t.Fatalf("overrun of %g and %g: %g", rho, k, o)
		}
		if y, err := Watery(h, freeze, rho); err == nil && !(y.Latent > 0) {
			t.Fatalf("%+v", y)
		}
		if e, err := ShapeFactor(x.Size, coefficient); err == nil && !(e >= 1 && e <= 3.2) {
			t.Fatalf("%+v: shape factor %g", x.Size, e)
		}
	})
}
