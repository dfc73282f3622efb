package sharp

import (
	"encoding/json"
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"github.com/google/go-cmp/cmp"
)

var camera = Camera{Magnification: 0.5, Pixel: 4e-6}

func TestBlurIsSpeedTimesTimeTimesMagnification(t *testing.T) {
	b, err := camera.Blur(2, Exposure{Shutter: 200 * time.Microsecond})
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(b.Sensor.Likely-0.2e-3) > 1e-15 || math.Abs(b.Pixels.Likely-50) > 1e-9 {
		t.Errorf("%+v", b)
	}
	if b.Sensor.Low != b.Sensor.High {
		t.Errorf("a shutter has no band: %+v", b.Sensor)
	}
}

// What Freezes allows blurs by the limit, and no more.
func TestFreezesUndoesBlur(t *testing.T) {
	for _, speed := range []float64{0.01, 1, 30} {
		for _, limit := range []float64{camera.Pixel, FullFrameCircle} {
			seconds, err := camera.Freezes(speed, limit)
			if err != nil {
				t.Fatal(err)
			}
			b, err := camera.Blur(speed, Exposure{TenthPower: time.Duration(seconds * 1e9)})
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(b.Sensor.Likely/limit-1) > 5e-3 {
				t.Errorf("%g m/s: %g m allowed, %g blurred", speed, limit, b.Sensor.Likely)
			}
		}
	}
}

func TestFlashTimes(t *testing.T) {
	for _, c := range []struct {
		e    Exposure
		want [3]float64 // us
	}{
		{Exposure{HalfPower: 100 * time.Microsecond}, [3]float64{100, 300, 332.19}},
		{Exposure{TenthPower: 300 * time.Microsecond}, [3]float64{90.31, 300, 300}},
		{Exposure{HalfPower: 200 * time.Microsecond, TenthPower: 300 * time.Microsecond}, [3]float64{200, 300, 300}},
		{Exposure{Shutter: time.Millisecond}, [3]float64{1000, 1000, 1000}},
	} {
		got, err := c.e.Seconds()
		if err != nil {
			t.Fatal(err)
		}
		for i, v := range []float64{got.Low, got.Likely, got.High} {
			if math.Abs(v*1e6-c.want[i]) > 0.01 {
				t.Errorf("%+v: %v", c.e, got)
			}
		}
	}
}

// A unit gives its brightest setting that is short enough, and says when it has none.
func TestUnitsGiveTheBrightestThatFreezes(t *testing.T) {
	for _, u := range Units() {
		last := -1
		for us := 1.0; us < 1e4; us *= 1.1 {
			s, err := u.For(us * 1e-6)
			if err != nil {
				if !errors.Is(err, honestplate.ErrInfeasible) || last >= 0 {
					t.Errorf("%s, %g us: %v", u.Name, us, err)
				}
				continue
			}
			at := 0
			for u.Settings[at].Power != s.Power {
				at++
			}
			if seconds, _ := s.Exposure.Seconds(); seconds.Likely > us*1e-6 {
				t.Errorf("%s: %s lasts %v, wanted %g us", u.Name, s.Power, seconds, us)
			}
			if last >= 0 && at > last {
				t.Errorf("%s: more time, darker setting %s", u.Name, s.Power)
			}
			last = at
		}
	}
}

func TestMoments(t *testing.T) {
	near, _ := Contact{Diameter: 0.004, Speed: 3, Depth: 0.05}.Moments()
	// 2.96 drops, as the reference works out: an upper bound.
	if math.Abs(near.CraterRadius/0.004-2.96) > 0.01 {
		t.Errorf("crater of %g drops", near.CraterRadius/0.004)
	}
	fast, _ := Contact{Diameter: 0.004, Speed: 6, Depth: 0.05}.Moments()
	if !(fast.CraterRadius > near.CraterRadius) || !near.Crater.Likely.Before(fast.Crater.Likely) {
		t.Error("a faster drop digs no larger and no longer crater")
	}
	if !near.Crater.Likely.Before(near.Jet.Likely) || near.Crater.Check("") != nil || near.Jet.Check("") != nil {
		t.Errorf("out of order: %+v", near)
	}
	for depth, want := range map[float64]bool{0.0029: false, 0.003: true, 0.02: true} {
		m, err := Contact{Diameter: 0.004, Speed: 3, Depth: depth}.Moments()
		if err != nil || m.Jet.MayHappen() != want {
			t.Errorf("%g m deep: jet %v, %v", depth, m.Jet, err)
		}
		b, err := json.Marshal(m)
		var back Moments
		if err != nil || json.Unmarshal(b, &back) != nil || back != m {
			t.Errorf("%s came back as %+v, %v", b, back, err)
		}
	}
}

// The opening time is the integral of the energy balance, worked out here by sums.
func TestCraterTime(t *testing.T) {
	sum, n := 0.0, 200000
	for i := range n {
		// u = 1 - s2 takes the root's end out of the integral.
		s := (float64(i) + 0.5) / float64(n)
		u := 1 - s*s
		sum += 2 * s * math.Pow(u, 1.5) / math.Sqrt(1-u*u*u*u) / float64(n)
	}
	if math.Abs(2*sum-1.35) > 0.005 {
		t.Errorf("2 x %.4f, the code has 1.35", sum)
	}
}

func TestTheWire(t *testing.T) {
	units := Units()
	b, err := json.Marshal(units)
	var back []Unit
	if err != nil || json.Unmarshal(b, &back) != nil || !cmp.Equal(units, back) {
		t.Errorf("units came back changed: %v", err)
	}
	blur, _ := camera.Blur(2, units[0].Settings[0].Exposure)
	b, err = json.Marshal(blur)
	var again Blur
	if err != nil || json.Unmarshal(b, &again) != nil || again != blur {
		t.Errorf("%s: %v", b, err)
	}
}

func TestNonsenseIsRefused(t *testing.T) {
	nan := math.NaN()
	flash := Exposure{HalfPower: time.Millisecond}
	for name, call := range map[string]func() error{
		"no camera":        func() error { _, err := Camera{}.Blur(1, flash); return err },
		"no speed":         func() error { _, err := camera.Blur(nan, flash); return err },
		"no light":         func() error { _, err := camera.Blur(1, Exposure{}); return err },
		"flash and lamp":   func() error { _, err := camera.Blur(1, Exposure{HalfPower: 1, Shutter: 1}); return err },
		"tail before peak": func() error { _, err := Exposure{HalfPower: 2, TenthPower: 1}.Seconds(); return err },
		"negative time":    func() error { _, err := Exposure{Shutter: -1}.Seconds(); return err },
		"what stands":      func() error { _, err := camera.Freezes(0, 1e-5); return err },
		"no limit":         func() error { _, err := camera.Freezes(1, 0); return err },
		"no settings":      func() error { _, err := Unit{}.For(1); return err },
		"no seconds":       func() error { _, err := Units()[0].For(nan); return err },
		"a bad setting":    func() error { _, err := Unit{Settings: []Setting{{}}}.For(1); return err },
		"no crown":         func() error { _, err := RimSpeed(nan, time.Second, time.Millisecond); return err },
		"before contact":   func() error { _, err := RimSpeed(0.01, time.Second, 0); return err },
		"no drop":          func() error { _, err := Contact{}.Moments(); return err },
		"a wild drop":      func() error { _, err := Contact{0.004, 1e9, 0.1}.Moments(); return err },
		"a bottomless cup": func() error { _, err := Contact{0.004, 1, nan}.Moments(); return err },
	} {
		if err := call(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzSharp(f *testing.F) {
	f.Add(0.5, 4e-6, 2.0, int64(100000), int64(0), int64(0), 0.004, 0.05)
	f.Fuzz(func(t *testing.T, magnification, pixel, speed float64, half, tenth, shutter int64, diameter, depth float64) {
		c := Camera{magnification, pixel}
		e := Exposure{time.Duration(half), time.Duration(tenth), time.Duration(shutter)}
		if b, err := c.Blur(speed, e); err == nil && (b.Pixels.Check("") != nil || b.Sensor.Low < 0) {
			t.Errorf("%+v, %+v: %+v", c, e, b)
		}
		if s, err := c.Freezes(speed, FullFrameCircle); err == nil {
			if !(s > 0) {
				t.Errorf("%g s", s)
			}
			for _, u := range Units() {
				_, _ = u.For(s)
			}
		}
		if v, err := RimSpeed(diameter, e.Shutter, e.HalfPower); err == nil && (!(v >= 0) || math.IsInf(v, 0)) {
			t.Errorf("a rim at %g m/s", v)
		}
		if s, err := e.Seconds(); err == nil && (s.Check("") != nil || !(s.Low > 0)) {
			t.Errorf("%+v lasts %v", e, s)
		}
		for _, u := range append(Units(), Unit{Settings: []Setting{{Exposure: e}}}) {
			if s, err := u.For(depth); err == nil {
				if lit, err := s.Exposure.Seconds(); err != nil || lit.Likely > depth {
					t.Errorf("%s lights %v for %g s: %v", u.Name, lit, depth, err)
				}
			}
		}
		if m, err := (Contact{diameter, speed, depth}).Moments(); err == nil && (m.Crater.Check("") != nil || m.Jet.Check("") != nil || !(m.CraterRadius > 0)) {
			t.Errorf("%+v", m)
		}
	})
}
