package thermal

import (
	"math"
	"testing"
)

func TestBlackbodyFractionIsADistribution(t *testing.T) {
	last := -1.0
	for x := 1e-5; x < 10; x *= 1.1 {
		f, err := BlackbodyFraction(x)
		if err != nil {
			t.Fatal(err)
		}
		if f < last || f > 1 {
			t.Errorf("%g m K: %.17g after %.17g", x, f, last)
		}
		last = f
	}
	if f, err := BlackbodyFraction(0); err != nil || f != 0 {
		t.Errorf("nothing below no wavelength: %g, %v", f, err)
	}
	// The median wavelength of Planck's law (from memory): 4107 um K.
	if f, err := BlackbodyFraction(4107e-6); err != nil || math.Abs(f-0.5) > 1e-4 {
		t.Errorf("median: %g, %v", f, err)
	}
	// series and the form for long waves meet
	a, b := planckBelow(0.01438776877/0.01000001), planckBelow(0.01438776877/0.00999999)
	if math.Abs(a-b) > 1e-9 {
		t.Errorf("%.15g, %.15g", a, b)
	}
}

// The density of the fraction is Planck's law, here by differences against the closed
// form.
func TestBlackbodyFractionHasPlancksSlope(t *testing.T) {
	const c2 = 0.01438776877
	for _, x := range []float64{0.001, 0.002898, 0.005, 0.02} {
		const d = 1e-7
		got := (planckBelow(x+d) - planckBelow(x-d)) / (2 * d)
		want := 15 / math.Pow(math.Pi, 4) * math.Pow(c2, 4) / (math.Pow(x, 5) * math.Expm1(c2/x))
		if math.Abs(got-want) > 1e-6*want {
			t.Errorf("%g m K: %g, Planck %g", x, got, want)
		}
	}
}

func TestSameLuxHeatsTenTimesLessByLED(t *testing.T) {
	tungsten, err := IrradianceFromLux(5000, Tungsten)
	if err != nil {
		t.Fatal(err)
	}
	led, err := IrradianceFromLux(5000, LED)
	if err != nil {
		t.Fatal(err)
	}
	if tungsten < 160 || tungsten > 190 || led < 15 || led > 20 {
		t.Errorf("tungsten %g, LED %g W/m2", tungsten, led)
	}
}

func TestSourceDataAreOrdered(t *testing.T) {
	for s := Tungsten; s <= Flash; s++ {
		d, err := s.Data()
		if err != nil {
			t.Fatal(err)
		}
		if !(d.RadiatedLow <= d.Radiated && d.Radiated <= d.RadiatedHigh && d.EfficacyLow <= d.Efficacy && d.Efficacy <= d.EfficacyHigh) {
			t.Errorf("%v: %+v", s, d)
		}
		if s.String() == "" {
			t.Errorf("source %d has no name", int(s))
		}
	}
	if got := Source(9).String(); got != "source 9" {
		t.Errorf("%q", got)
	}
}

func TestClearIceTakesInfraredAndLeavesLight(t *testing.T) {
	ice, err := ClearIce(0.03)
	if err != nil {
		t.Fatal(err)
	}
	if !(ice.Tungsten > 0.6 && ice.Tungsten < 0.7 && ice.Discharge > 0.25 && ice.Discharge < 0.33 && ice.LED < 0.01) {
		t.Errorf("30 mm: %+v", ice)
	}
	last := Absorptance{}
	for path := 1e-5; path < 5; path *= 2 {
		a, err := ClearWater(path)
		if err != nil {
			t.Fatal(err)
		}
		if a.Tungsten < last.Tungsten || a.LED < last.LED || a.Tungsten > 1 {
			t.Errorf("%g m: %+v after %+v", path, a, last)
		}
		last = a
	}
	if a, err := ClearIce(0); err != nil || a != (Absorptance{}) {
		t.Errorf("no path: %+v, %v", a, err)
	}
}

func TestFoodsAbsorbLessOfAnLEDTheWhiterTheyAre(t *testing.T) {
	w, p, d := WhiteFood(), PaleFood(), DarkFood()
	for s := Tungsten; s <= Flash; s++ {
		a, _ := w.Of(s)
		b, _ := p.Of(s)
		c, err := d.Of(s)
		if err != nil || !(a < b && b < c && c <= 1) {
			t.Errorf("%v: white %g, pale %g, dark %g, %v", s, a, b, c, err)
		}
	}
}

func TestAbsorbedSumsOverTheLamps(t *testing.T) {
	key := Lamp{Watts: 650, Distance: 1.4, BeamDegrees: 40}
	fill := Lamp{Watts: 200, Source: LED, Distance: 1, BeamDegrees: 60}
	a := WhiteFood()
	both, err := a.Absorbed(key, fill)
	if err != nil {
		t.Fatal(err)
	}
	one, err := a.Absorbed(key)
	if err != nil {
		t.Fatal(err)
	}
	other, err := a.Absorbed(fill)
	if err != nil {
		t.Fatal(err)
	}
	e, _ := key.Irradiance()
	if math.Abs(both-one-other) > 1e-9 || math.Abs(one-a.Tungsten*e) > 1e-9 {
		t.Errorf("%g, %g, %g of %g", both, one, other, e)
	}
	if got, err := a.Absorbed(); got != 0 || err != nil {
		t.Errorf("no lamps: %g, %v", got, err)
	}
	if _, err := (Absorptance{Tungsten: 2}).Absorbed(key); err == nil {
		t.Error("absorptance above 1 passes")
	}
	if _, err := a.Absorbed(Lamp{Watts: -1}); err == nil {
		t.Error("a lamp of negative power passes")
	}
}

func TestLightRefusesNonsense(t *testing.T) {
	for name, f := range map[string]func() (float64, error){
		"lux NaN":        func() (float64, error) { return IrradianceFromLux(math.NaN(), LED) },
		"lux, no source": func() (float64, error) { return IrradianceFromLux(1, 7) },
		"fraction":       func() (float64, error) { return BlackbodyFraction(-1) },
		"absorptance":    func() (float64, error) { return WhiteFood().Of(-1) },
		"data":           func() (float64, error) { _, err := Source(5).Data(); return 0, err },
		"ice":            func() (float64, error) { _, err := ClearIce(-1); return 0, err },
		"water":          func() (float64, error) { _, err := ClearWater(math.Inf(1)); return 0, err },
	} {
		if _, err := f(); err == nil {
			t.Errorf("%s: no error", name)
		} else {
			typed(t, err)
		}
	}
}

func FuzzLight(f *testing.F) {
	f.Add(0, 5000.0, 0.03, 0.6)
	f.Fuzz(func(t *testing.T, source int, lux, path, share float64) {
		for _, g := range []func() (any, error){
			func() (any, error) { return IrradianceFromLux(lux, Source(source)) },
			func() (any, error) { return BlackbodyFraction(path) },
			func() (any, error) { return ClearIce(path) },
			func() (any, error) { return ClearWater(path) },
			func() (any, error) { return Source(source).Data() },
			func() (any, error) { return Absorptance{share, share, share, share}.Of(Source(source)) },
		} {
			if v, err := g(); err != nil {
				typed(t, err)
			} else {
				finiteAll(t, v)
			}
		}
	})
}
