package light

import (
	"math"
	"testing"

	"example.org/honestplate/testdata/testkit"
	"example.org/honestplate/thermal/heat"
)

func TestSameLuxHeatsTenTimesLessByLED(t *testing.T) {
	tungsten, err := Lamp{Lux: 5000, Source: Tungsten}.Irradiance()
	if err != nil {
		t.Fatal(err)
	}
	led, err := Lamp{Lux: 5000, Source: LED}.Irradiance()
	if err != nil {
		t.Fatal(err)
	}
	if tungsten.Likely < 160 || tungsten.Likely > 190 || led.Likely < 15 || led.Likely > 20 {
		t.Errorf("tungsten %v, LED %v W/m2", tungsten, led)
	}
}

func TestSourceDataAreOrdered(t *testing.T) {
	for s := Tungsten; s <= Flash; s++ {
		d, err := s.Data()
		if err != nil {
			t.Fatal(err)
		}
		if d.Radiated.Check("Radiated") != nil || d.Efficacy.Check("Efficacy") != nil {
			t.Errorf("%v: %+v", s, d)
		}
		if s.String() == "" {
			t.Errorf("source %d has no name", int(s))
		}
	}
	if got := Source(9).String(); got != "unknown source (9)" {
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
		if err != nil || a.Tungsten < last.Tungsten || a.LED < last.LED || a.Tungsten > 1 {
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
		a, _ := w.of(s)
		b, _ := p.of(s)
		c, err := d.of(s)
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
	if math.Abs(both.Likely-one.Likely-other.Likely) > 1e-9 || math.Abs(one.Likely-a.Tungsten*e.Likely) > 1e-9 {
		t.Errorf("%v, %v, %v of %v", both, one, other, e)
	}
	if got, err := a.Absorbed(); got.Likely != 0 || err != nil {
		t.Errorf("no lamps: %v, %v", got, err)
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
		"fraction": func() (float64, error) { return heat.BlackbodyFraction(-1) },
		"data":     func() (float64, error) { _, err := Source(5).Data(); return 0, err },
		"ice":      func() (float64, error) { _, err := ClearIce(-1); return 0, err },
		"far ice":  func() (float64, error) { _, err := ClearIce(math.Inf(1)); return 0, err },
	} {
		if _, err := f(); err == nil {
			t.Errorf("%s: no error", name)
		} else {
			testkit.Typed(t, err)
		}
	}
}

func FuzzLight(f *testing.F) {
	f.Add(0, 5000.0, 0.03, 0.6)
	f.Fuzz(func(t *testing.T, source int, lux, path, share float64) {
		for _, g := range []func() (any, error){
			func() (any, error) { return heat.BlackbodyFraction(path) },
			func() (any, error) { return ClearIce(path) }, func() (any, error) { return ClearWater(path) },
			func() (any, error) { return Source(source).Data() },
			func() (any, error) { return Absorptance{share, share, share, share}.of(Source(uint(source) % 4)) },
		} {
			if v, err := g(); err != nil {
				testkit.Typed(t, err)
			} else {
				testkit.Finite(t, v)
			}
		}
	})
}
