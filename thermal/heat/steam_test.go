package heat

import (
	"math"
	"testing"
)

// The threshold is where the tangent from the surface's point meets the room's:
// RH e(Ta) = e(Ts) - e'(Ts)(Ts - Ta) for a saturated surface.
func TestSteamThresholdIsTheTangent(t *testing.T) {
	for _, a := range []MoistAir{{TempC: 20, RH: 0.5}, {TempC: 22, RH: 0.4}, {TempC: 25, RH: 0.5}, {TempC: 5, RH: 0.2}} {
		ts, err := a.SteamFromC(0, 1)
		if err != nil {
			t.Fatal(err)
		}
		ln, slope := lnSaturation(ts + kelvin)
		e := math.Exp(ln)
		if gap := a.vapour() - (e - e*slope*(ts-a.TempC)); math.Abs(gap) > 1e-3*e {
			t.Errorf("%+v: threshold %g misses the tangent by %g Pa", a, ts, gap)
		}
	}
}

// The temperature from which steam carries an amount is where Steam says that amount, and
// rises with it; without an amount it is the threshold.
func TestSteamFromIsTheInverseOfSteam(t *testing.T) {
	for _, a := range []MoistAir{{TempC: 22, RH: 0.4}, {TempC: 15, RH: 0.7}, {TempC: 28, RH: 0.3}, {TempC: 5, RH: 0.9, PressurePa: 75000}} {
		last := 0.0
		for _, want := range []float64{0, 0.3, 1, 2, 5} {
			c, err := a.SteamFromC(want, 1)
			if err != nil || c <= last {
				t.Fatalf("%+v: %g g/m3 from %g degC, less before %g: %v", a, want, c, last, err)
			}
			last = c
			if s, err := a.SteamGM3(c, 1); err != nil || math.Abs(s-want) > 2e-3 {
				t.Errorf("%+v at %g degC: %g g/m3, want %g, %v", a, c, s, want, err)
			}
		}
		if c, err := a.SteamFromC(0.5, 0.01); err != nil || c != 100 {
			t.Errorf("dry: %g, %v", c, err)
		}
	}
	if _, err := (MoistAir{TempC: 20, RH: 0.5}).SteamFromC(-1, 1); err == nil {
		t.Error("no error")
	}
}

// Fat that covers half of a surface halves its vapour, and leaves dew alone.
func TestCoveredSurfaceGivesOffLess(t *testing.T) {
	room := MoistAir{TempC: 22, RH: 0.4}
	at := func(covered, surfaceC float64) Flux {
		x, err := Surface{Shape: PlateUp, Length: 0.03, Activity: 1, Covered: covered}.In(room)
		if err != nil {
			t.Fatal(err)
		}
		f, err := x.At(surfaceC, 0)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	if open, half := at(0, 80), at(0.5, 80); math.Abs(half.VapourRate/open.VapourRate-0.5) > 1e-12 || half.Convection != open.Convection {
		t.Errorf("open %+v, half %+v", open, half)
	}
	if open, all := at(0, 2), at(1, 2); open != all {
		t.Errorf("dew: %+v and %+v", open, all)
	}
}
