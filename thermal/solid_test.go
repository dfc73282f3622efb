package thermal

import (
	"errors"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/integrate/quad"
)

// butterLike is an invented food.
var butterLike = Material{Conductivity: 0.2, Density: 950, SpecificHeat: 2300}

// solids are one of each shape.
func solids() map[string]Solid {
	base := Solid{Material: butterLike, H: 9, StartC: 4, AmbientC: 24}
	with := func(f func(*Solid)) Solid { s := base; f(&s); return s }
	return map[string]Solid{
		"sphere":         with(func(s *Solid) { s.Diameter = 0.05 }),
		"long cylinder":  with(func(s *Solid) { s.Diameter, s.Long = 0.05, true }),
		"short cylinder": with(func(s *Solid) { s.Diameter, s.Height = 0.05, 0.04 }),
		"slab":           with(func(s *Solid) { s.Height = 0.03 }),
		"bar":            with(func(s *Solid) { s.Height, s.Width, s.Long = 0.03, 0.06, true }),
		"brick":          with(func(s *Solid) { s.Height, s.Width, s.Depth = 0.03, 0.06, 0.1 }),
	}
}

func mustTransient(t testing.TB, s Solid) *Transient {
	t.Helper()
	tr, err := s.Transient()
	if err != nil {
		t.Fatal(err)
	}
	return tr
}

func TestTimeToInvertsTemperature(t *testing.T) {
	for name, s := range solids() {
		tr := mustTransient(t, s)
		for _, p := range []Place{{}, {0.5, 0.2, 0.9, 0.1}, {1, 1, 1, 1}} {
			for _, temp := range []float64{4.5, 10, 20, 23.9} {
				at, err := tr.TimeTo(p, temp)
				if err != nil {
					t.Fatal(name, err)
				}
				got, err := tr.TempC(p, at)
				if err != nil {
					t.Fatal(name, err)
				}
				if math.Abs(got-temp) > 1e-6 {
					t.Errorf("%s %v: %g degC comes back as %g", name, p, temp, got)
				}
			}
		}
		at, err := tr.MeanTimeTo(15)
		if err != nil {
			t.Fatal(err)
		}
		if mean, _ := tr.MeanC(at); math.Abs(mean-15) > 1e-6 {
			t.Errorf("%s: mean 15 degC comes back as %g", name, mean)
		}
	}
}

// The mean factors of the series are a second route to what quadrature of the
// temperature over the volume gives.
func TestMeanIsTheVolumeAverage(t *testing.T) {
	s := solids()["short cylinder"]
	tr := mustTransient(t, s)
	for _, after := range []time.Duration{10 * time.Minute, time.Hour} {
		mean := quad.Fixed(func(r float64) float64 {
			return 2 * r * quad.Fixed(func(h float64) float64 {
				temp, err := tr.TempC(Place{R: r, H: h}, after)
				if err != nil {
					t.Fatal(err)
				}
				return temp
			}, 0, 1, 24, nil, 0)
		}, 0, 1, 24, nil, 0)
		got, err := tr.MeanC(after)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got-mean) > 1e-8 {
			t.Errorf("after %v: mean %.10g, by quadrature %.10g", after, got, mean)
		}
	}
}

func TestMoreSurfaceWarmsSooner(t *testing.T) {
	all := solids()
	times := map[string]time.Duration{}
	for name, s := range all {
		d, err := mustTransient(t, s).TimeTo(Place{}, 15)
		if err != nil {
			t.Fatal(err)
		}
		times[name] = d
	}
	for _, pair := range [][2]string{{"bar", "slab"}, {"brick", "bar"}, {"short cylinder", "long cylinder"}, {"sphere", "long cylinder"}} {
		if !(times[pair[0]] < times[pair[1]]) {
			t.Errorf("%s takes %v, %s %v", pair[0], times[pair[0]], pair[1], times[pair[1]])
		}
	}
	s := all["sphere"]
	last := times["sphere"]
	for _, start := range []float64{2, 0, -5} {
		s.StartC = start
		d, err := mustTransient(t, s).TimeTo(Place{}, 15)
		if err != nil {
			t.Fatal(err)
		}
		if d <= last {
			t.Errorf("start at %g degC: %v, not later than %v", start, d, last)
		}
		last = d
	}
}

func TestStartAndEndOfATransient(t *testing.T) {
	for name, s := range solids() {
		tr := mustTransient(t, s)
		for _, c := range []struct {
			after time.Duration
			want  float64
		}{{0, s.StartC}, {1000 * time.Hour, s.AmbientC}} {
			for _, p := range []Place{{}, {1, 1, 1, 1}} {
				got, err := tr.TempC(p, c.after)
				if err != nil || math.Abs(got-c.want) > 1e-9 {
					t.Errorf("%s after %v: %g, want %g (%v)", name, c.after, got, c.want, err)
				}
			}
		}
		if d, err := tr.TimeTo(Place{}, s.StartC); d != 0 || err != nil {
			t.Errorf("%s: the start is reached after %v (%v)", name, d, err)
		}
	}
}

func TestSolidRefusesNonsense(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, spoil := range map[string]func(*Solid){
		"no size":            func(s *Solid) { s.Diameter = 0 },
		"negative size":      func(s *Solid) { s.Diameter = -1 },
		"infinite size":      func(s *Solid) { s.Diameter = inf },
		"ball with a width":  func(s *Solid) { s.Width = 1 },
		"cylinder and width": func(s *Solid) { s.Height, s.Width = 1, 1 },
		"depth, no width":    func(s *Solid) { s.Diameter, s.Height, s.Depth = 0, 1, 1 },
		"endless disc":       func(s *Solid) { s.Height, s.Long = 1, true },
		"short bar":          func(s *Solid) { s.Diameter, s.Height, s.Width = 0, 1, 1 },
		"no conductivity":    func(s *Solid) { s.Conductivity = 0 },
		"NaN density":        func(s *Solid) { s.Density = nan },
		"no heat":            func(s *Solid) { s.SpecificHeat = 0 },
		"no coefficient":     func(s *Solid) { s.H = 0 },
		"NaN coefficient":    func(s *Solid) { s.H = nan },
		"NaN start":          func(s *Solid) { s.StartC = nan },
		"no difference":      func(s *Solid) { s.AmbientC = s.StartC },
	} {
		s := solids()["sphere"]
		spoil(&s)
		if _, err := s.Transient(); !errors.Is(err, ErrInput) {
			t.Errorf("%s: error %v, want ErrInput", name, err)
		}
	}
	s := solids()["sphere"]
	for name, spoil := range map[string]func(*Solid){
		"huge Biot number":    func(s *Solid) { s.H = 1e9 },
		"below absolute zero": func(s *Solid) { s.StartC = -300 },
	} {
		s := s
		spoil(&s)
		if _, err := s.Transient(); !errors.Is(err, ErrRange) {
			t.Errorf("%s: error %v, want ErrRange", name, err)
		}
	}
	s.H = inf // the surface is held: allowed
	tr := mustTransient(t, s)
	if _, err := tr.TempC(Place{R: 2}, time.Hour); !errors.Is(err, ErrRange) {
		t.Error(err)
	}
	if _, err := tr.TimeTo(Place{R: 2}, 10); !errors.Is(err, ErrRange) {
		t.Error(err)
	}
	for _, after := range []time.Duration{-time.Second} {
		if _, err := tr.TempC(Place{}, after); !errors.Is(err, ErrInput) {
			t.Error(err)
		}
		if _, err := tr.MeanC(after); !errors.Is(err, ErrInput) {
			t.Error(err)
		}
	}
	for _, temp := range []float64{-1, 24, 25, nan} {
		if _, err := tr.TimeTo(Place{}, temp); err == nil {
			t.Errorf("time to %g degC: no error", temp)
		}
	}
}

func TestMaterialRefusesNonsense(t *testing.T) {
	m := butterLike
	m.Density = -1
	if _, err := m.Diffusivity(); !errors.Is(err, ErrInput) {
		t.Error(err)
	}
	if _, err := m.Effusivity(); !errors.Is(err, ErrInput) {
		t.Error(err)
	}
	if a, err := butterLike.Diffusivity(); err != nil || math.Abs(a/9.153e-8-1) > 1e-3 {
		t.Errorf("diffusivity %g (%v)", a, err)
	}
}

func FuzzSolid(f *testing.F) {
	f.Add(0.05, 0.0, 0.0, 0.0, false, 9.0, 4.0, 24.0, 0.5, int64(1e12))
	f.Add(0.05, 0.04, 0.0, 0.0, false, 1e3, 4.0, -24.0, 1.0, int64(1))
	f.Add(0.0, 0.04, 0.03, 0.2, false, 1e-3, 80.0, 20.0, 0.0, int64(1e15))
	f.Fuzz(func(t *testing.T, d, h, w, depth float64, long bool, coefficient, start, ambient, x float64, after int64) {
		s := Solid{Material: butterLike, Size: Size{d, h, w, depth, long},
			H: coefficient, StartC: start, AmbientC: ambient}
		tr, err := s.Transient()
		if err != nil {
			return
		}
		temp, err := tr.TempC(Place{x, x, x, x}, time.Duration(after))
		if err != nil {
			return
		}
		slack := 1e-5 * math.Abs(start-ambient)
		if !(temp >= min(start, ambient)-slack && temp <= max(start, ambient)+slack) {
			t.Fatalf("%+v at %g after %d: %g degC", s, x, after, temp)
		}
		if mean, err := tr.MeanC(time.Duration(after)); err != nil || math.IsNaN(mean) {
			t.Fatal(mean, err)
		}
		if _, err := tr.TimeTo(Place{x, x, x, x}, (start+ambient)/2); err != nil && !errors.Is(err, ErrRange) {
			t.Fatal(err)
		}
	})
}

func BenchmarkTransientTempC(b *testing.B) {
	tr := mustTransient(b, solids()["brick"])
	b.ReportAllocs()
	for b.Loop() {
		if _, err := tr.TempC(Place{}, time.Hour); err != nil {
			b.Fatal(err)
		}
	}
}
