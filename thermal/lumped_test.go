package thermal

import (
	"errors"
	"math"
	"testing"
	"time"
)

// ballOfButter is small enough to lump: 8 mm, Biot number 0.06.
var ballOfButter = Lumped{Material: butterLike, Volume: math.Pi * 512e-9 / 6, Area: math.Pi * 64e-6, H: 9, StartC: 4, AmbientC: 24}

func TestLumpedBodyIsNearTheSeries(t *testing.T) {
	tr := mustTransient(t, Solid{Material: butterLike, Size: Size{Diameter: 0.008}, H: 9, StartC: 4, AmbientC: 24})
	for _, after := range []time.Duration{20 * time.Second, 2 * time.Minute, 6 * time.Minute} {
		got, err := ballOfButter.TempC(after)
		if err != nil {
			t.Fatal(err)
		}
		mean, _ := tr.MeanC(after)
		if math.Abs(got-mean) > 0.02*20 {
			t.Errorf("after %v: lumped %g, mean by the series %g", after, got, mean)
		}
	}
}

func TestLumpedTimeConstantAndInverse(t *testing.T) {
	tau, err := ballOfButter.TimeConstant()
	if err != nil {
		t.Fatal(err)
	}
	got, err := ballOfButter.TempC(tau)
	if err != nil || math.Abs(got-(24-20/math.E)) > 1e-9 {
		t.Errorf("after one time constant %g (%v)", got, err)
	}
	back, err := ballOfButter.TimeTo(got)
	if err != nil || max(back-tau, tau-back) > time.Microsecond {
		t.Errorf("back in %v, want %v (%v)", back, tau, err)
	}
	if d, err := ballOfButter.TimeTo(4); d != 0 || err != nil {
		t.Errorf("the start is reached after %v (%v)", d, err)
	}
}

func TestLumpedRefusesWhatIsNotOneTemperature(t *testing.T) {
	l := ballOfButter
	l.H = 90
	bi, err := l.Biot()
	var re *RangeError
	if !errors.As(err, &re) || re.High != 0.1 || math.Abs(bi-0.6) > 1e-9 {
		t.Errorf("Biot number %g: %v", bi, err)
	}
	if _, err := l.TempC(time.Second); !errors.Is(err, ErrRange) {
		t.Error(err)
	}
	if _, err := l.TimeTo(10); !errors.Is(err, ErrRange) {
		t.Error(err)
	}
	if _, err := l.TimeConstant(); !errors.Is(err, ErrRange) {
		t.Error(err)
	}
	for name, spoil := range map[string]func(*Lumped){
		"no material": func(l *Lumped) { l.Material = Material{} },
		"no volume":   func(l *Lumped) { l.Volume = 0 },
		"no area":     func(l *Lumped) { l.Area = 0 },
		"NaN h":       func(l *Lumped) { l.H = math.NaN() },
		"NaN start":   func(l *Lumped) { l.StartC = math.NaN() },
	} {
		l := ballOfButter
		spoil(&l)
		if _, err := l.Biot(); !errors.Is(err, ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := ballOfButter.TempC(-1); !errors.Is(err, ErrInput) {
		t.Error(err)
	}
	for _, temp := range []float64{3, 24, 25, math.NaN()} {
		if _, err := ballOfButter.TimeTo(temp); err == nil {
			t.Errorf("time to %g: no error", temp)
		}
	}
}

func FuzzLumped(f *testing.F) {
	f.Add(0.2, 950.0, 2300.0, 1e-6, 1e-3, 9.0, 4.0, 24.0, int64(1e11))
	f.Fuzz(func(t *testing.T, k, rho, c, v, a, h, start, ambient float64, after int64) {
		l := Lumped{Material: Material{k, rho, c}, Volume: v, Area: a, H: h, StartC: start, AmbientC: ambient}
		if temp, err := l.TempC(time.Duration(after)); err == nil && math.IsNaN(temp) {
			t.Fatalf("%+v: NaN", l)
		}
		if _, err := l.TimeTo(start/2 + ambient/2); err != nil && !errors.Is(err, ErrRange) && !errors.Is(err, ErrInput) {
			t.Fatal(err)
		}
	})
}
