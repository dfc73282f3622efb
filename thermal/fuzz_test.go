package thermal

import (
	"testing"
	"time"

	"example.org/honestplate"
)

// sound checks an answer: typed errors, finite values.
func sound(t *testing.T) func(v any, err error) {
	return func(v any, err error) {
		t.Helper()
		if err != nil {
			typed(t, err)
			return
		}
		finiteAll(t, v)
	}
}

func FuzzMixAndPieces(f *testing.F) {
	f.Add(12.0, 11.0, 12.0, 4.0, 90.0, 0.5, 0.03, 0)
	f.Fuzz(func(t *testing.T, fat, msnf, sucrose, syrup, overrun, frozen, size float64, shape int) {
		m, check := FrozenMix{FatPercent: fat, MSNFPercent: msnf, SucrosePercent: sucrose, GlucoseSyrupPercent: syrup, OverrunPercent: overrun}, sound(t)
		v, err := m.FreezingPointC()
		check(v, err)
		v, err = m.FrozenAtC(frozen)
		check(v, err)
		v, err = m.MixDensity()
		check(v, err)
		v, err = IceShape(shape).PieceGrams(size)
		check(v, err)
		if c, err := m.Curve(); err == nil {
			finiteAll(t, []float64{m.WaterFraction(), c.FreezingPointC()})
			finiteAll(t, c.Points())
		}
		p, err := (Food{Water: frozen, Fat: fat / 100, Ash: 1 - frozen - fat/100, FreezeC: -size}).Points()
		check(p, err)
	})
}

func FuzzTimesTo(f *testing.F) {
	f.Add(920.0, 2100.0, 0.2, 0.05, 9.0, 4.0, 24.0, 15.0, 0.4)
	f.Fuzz(func(t *testing.T, density, heat, k, d, h, start, ambient, temp, theta float64) {
		m, check := Material{Density: density, SpecificHeat: heat, Conductivity: k}, sound(t)
		v, err := m.Diffusivity()
		check(v, err)
		v, err = m.Effusivity()
		check(v, err)
		l := Lumped{Material: m, Volume: d * d * d, Area: 6 * d * d, H: h, StartC: start, AmbientC: ambient}
		v, err = l.Biot()
		check(v, err)
		if tau, err := l.TimeConstant(); err != nil {
			typed(t, err)
		} else if tau < 0 {
			t.Errorf("time constant %v", tau)
		}
		if tr, err := (Solid{m, Size{Diameter: d}, h, start, ambient}).Transient(); err == nil {
			if at, err := tr.MeanTimeTo(temp); err != nil {
				typed(t, err)
			} else if at < 0 {
				t.Errorf("mean at %g degC after %v", temp, at)
			}
		}
		if s, err := NewSeries(SlabForm, h); err == nil {
			root, factor := s.FirstTerm()
			finiteAll(t, []float64{root, factor})
			if at, err := s.At(0.5); err == nil {
				v, err = at.Fourier(theta)
				check(v, err)
			}
		}
	})
}

func FuzzWindow(f *testing.F) {
	f.Add(int64(1e9), int64(2e9), int64(3e9), int64(1e9))
	f.Add(int64(0), int64(1), int64(Never), int64(-1))
	f.Fuzz(func(t *testing.T, earliest, likely, latest, to int64) {
		w := honestplate.Window{time.Duration(earliest), time.Duration(likely), time.Duration(latest)}
		r := w.Round(time.Duration(to))
		if w.MayHappen() != r.MayHappen() {
			t.Errorf("%v rounds to %v", w, r)
		}
		if w.String() == "" || Clock(w.Likely) == "" {
			t.Error("nothing said")
		}
	})
}
