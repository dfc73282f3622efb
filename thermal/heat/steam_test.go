package heat

import (
	"math"
	"testing"
)

// The threshold is where the tangent from the surface's point meets the room's:
// RH e(Ta) = e(Ts) - e'(Ts)(Ts - Ta) for a saturated surface.
func TestSteamThresholdIsTheTangent(t *testing.T) {
	for _, a := range []MoistAir{{TempC: 20, RH: 0.5}, {TempC: 22, RH: 0.4}, {TempC: 25, RH: 0.5}, {TempC: 5, RH: 0.2}} {
		s, err := a.Steam(60, 1)
		if err != nil {
			t.Fatal(err)
		}
		ts := s.ThresholdC
		ln, slope := lnSaturation(ts + kelvin)
		e := math.Exp(ln)
		if gap := a.vapour() - (e - e*slope*(ts-a.TempC)); math.Abs(gap) > 1e-3*e {
			t.Errorf("%+v: threshold %g misses the tangent by %g Pa", a, ts, gap)
		}
	}
}
