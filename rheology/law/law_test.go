package law

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
)

var water = Fluid{Viscosity: 0.001, Density: 998, SurfaceTension: 0.0727}

// Every closed form takes its sensible arguments, and refuses each of them when it is NaN,
// infinite, negative or huge.
func TestClosedFormsRefuseNonsense(t *testing.T) {
	fluid := func(a []float64) Fluid { return Fluid{Viscosity: a[0], Density: a[1], SurfaceTension: a[2]} }
	for name, c := range map[string]struct {
		args []float64
		f    func(a []float64) error
	}{
		"DrippingWeber":  {[]float64{0.001, 1000, 0.07, 0.002, 0.003}, func(a []float64) error { _, err := fluid(a).DrippingWeber(a[3], a[4]); return err }},
		"PendantDrop":    {[]float64{0.001, 1000, 0.07, 0.002}, func(a []float64) error { _, err := fluid(a).PendantDrop(a[3]); return err }},
		"DraggedFilm":    {[]float64{0.002, 1000, 0.05, 0.01}, func(a []float64) error { _, err := fluid(a).DraggedFilm(a[3]); return err }},
		"TerminalSpeed":  {[]float64{0.002}, func(a []float64) error { _, err := TerminalSpeed(a[0]); return err }},
		"ReleasedPuddle": {[]float64{1e-4, 1e-3, 10}, func(a []float64) error { _, err := ReleasedPuddle(a[0], a[1], a[2]); return err }},
		"FedPuddle":      {[]float64{1e-6, 1e-3, 10}, func(a []float64) error { _, err := FedPuddle(a[0], a[1], a[2]); return err }},
		"Fall":           {[]float64{0.001, 1000, 0.07, 0.004, 1, 0.2}, func(a []float64) error { _, err := Jet{fluid(a), a[3], a[4], false}.Fall(a[5]); return err }},
		"BreakUp":        {[]float64{0.001, 1000, 0.07, 0.004, 1}, func(a []float64) error { _, err := Jet{fluid(a), a[3], a[4], true}.BreakUp(); return err }},
		"Coated":         {[]float64{0.001, 1000, 0.07, 0.003, 1.2}, func(a []float64) error { _, err := Bubble{fluid(a), a[3], a[4]}.Coated(); return err }},
		"Clean":          {[]float64{0.001, 1000, 0.07, 0.003, 1.2}, func(a []float64) error { _, err := Bubble{fluid(a), a[3], a[4]}.Clean(); return err }},
		"Lift": {[]float64{0.001, 1000, 0.07, 0.004, 2, 1.2, 1.8e-5, 7e-8}, func(a []float64) error {
			_, err := Impact{fluid(a), a[3], a[4], a[5], a[6], a[7]}.Lift()
			return err
		}},
	} {
		if err := c.f(c.args); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for i := range c.args {
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 1e300} {
				args := append([]float64(nil), c.args...)
				args[i] = bad
				if err := c.f(args); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
					t.Errorf("%s, argument %d of %g: %v", name, i+1, bad, err)
				}
			}
		}
	}
}

// Both ways of writing Landau and Levich's law; thick liquids drain as fast as they are laid.
func TestTheFilmOfAFallingLevel(t *testing.T) {
	h, err := Fluid{0.002, 1030, 0.05}.DraggedFilm(0.01)
	if err != nil {
		t.Fatal(err)
	}
	ca := 0.002 * 0.01 / 0.05
	near(t, "film", h, 0.9458*math.Sqrt(0.05/(1030*g0))*math.Pow(ca, 2.0/3), 1e-9)
	if h, err = (Fluid{10, 1350, 0.075}).DraggedFilm(0.01); err != nil {
		t.Fatal(err)
	}
	near(t, "thick", h, 2.0/3*math.Sqrt(10*0.01/(1350*g0)), 1e-9)
}

// The stiff sphere's three formulas meet, within 0.1 %, where they change at best numbers of 73
// and 580; small ones follow Stokes, and clean ones rise 1.5 times as fast.
func TestSpheres(t *testing.T) {
	for _, n := range []float64{73, 580} {
		// ND = 4 rho drho g d3/(3 eta2); d from it.
		b := Bubble{Fluid: Fluid{0.01, 1000, 0.07}, Gas: 1}
		d := math.Cbrt(3 * n * 0.01 * 0.01 / (4 * 1000 * 999 * g0))
		b.Diameter = d * (1 - 1e-6)
		below := b.sphere()
		b.Diameter = d * (1 + 1e-6)
		near(t, "meeting", b.sphere(), below, 0.001)
	}
	b := Bubble{Fluid: Fluid{1, 1350, 0.075}, Diameter: 0.0005}
	stiff, err := b.Coated()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stiff", stiff, g0*0.0005*0.0005*1350/18, 2e-3)
	clean, err := b.Clean()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "clean", clean/stiff, 1.5, 0.01)
	// Large ones are caps, clean or not.
	b = Bubble{Fluid: water, Diameter: 0.03}
	coated, err1 := b.Coated()
	clean, err2 := b.Clean()
	if err1 != nil || err2 != nil || coated != clean {
		t.Errorf("%v, %v, %v, %v", coated, clean, err1, err2)
	}
	near(t, "cap", coated, 0.711*math.Sqrt(g0*0.03), 2e-3)
}

// The time at which the sheet appears solves its equation, from fine mist to large drops.
func TestTheSheetsEquation(t *testing.T) {
	for re := 10.0; re < 1e5; re *= 3 {
		for we := 1.0; we < 1e5; we *= 3 {
			s := sheetTime(re, we, true)
			near(t, "1.2 t^1.5", 1.2*math.Pow(s, 1.5), math.Sqrt(3)/2/re/math.Sqrt(s)+1/we, 1e-5)
		}
	}
}

func TestNothingAllocates(t *testing.T) {
	j := Jet{Fluid: Fluid{1, 1350, 0.075}, Diameter: 0.006, Speed: 0.2}
	if n := testing.AllocsPerRun(10, func() {
		j.Fall(0.2)
		j.BreakUp()
		Impact{Fluid: water, Diameter: 0.004, Speed: 2}.Lift()
		water.PendantDrop(0.005)
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
