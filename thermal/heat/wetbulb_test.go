package heat

import (
	"math"
	"testing"

	"example.org/honestplate/testdata/testkit"
)

// The whole domain, against halving the bracket 100 times.
func TestWetBulbIsTheRootOfItsEquationEverywhere(t *testing.T) {
	n := 0
	for tc := -100.0; tc <= 100; tc += 1.7 {
		for _, rh := range []float64{0, 0.001, 0.01, 0.05, 0.1, 0.3, 0.5, 0.7, 0.9, 0.99, 0.999999} {
			for _, p := range []float64{0, 20000, 50000, 200000} {
				a := MoistAir{TempC: tc, RH: rh, PressurePa: p}
				if a.check() != nil {
					continue
				}
				w, p := a.ratio(), a.pressure()
				tooWarm := func(wet float64) bool { return saturation(wet) >= p || wetRatio(tc, wet, p) > w }
				low, high := -100.0, tc
				if tc > 0 && !tooWarm(0) {
					low = 0 // the formulas make a step there: the warmer root counts
				}
				got, err := a.WetBulbC()
				if tooWarm(low) {
					if testkit.Typed(t, err); err == nil {
						t.Errorf("%+v: %g, want an error", a, got)
					}
					continue
				}
				for range 100 {
					if mid := (low + high) / 2; tooWarm(mid) {
						high = mid
					} else {
						low = mid
					}
				}
				if n++; !(math.Abs(got-low) < 2e-7) {
					t.Errorf("%+v: %.9f, %v, want %.9f", a, got, err, low)
				}
			}
		}
	}
	if n < 4000 {
		t.Errorf("only %d rooms", n)
	}
}

// wetRatio is the humidity ratio of air at t that has the wet bulb wet.
func wetRatio(t, wet, p float64) float64 {
	c := overWater
	if wet < 0 {
		c = overIce
	}
	ws := ratioFrom(saturation(wet), p)
	return ((c.latent-c.less*wet)*ws - 1.006*(t-wet)) / (c.latent + 1.86*t - c.wet*wet)
}

func BenchmarkWetBulb(b *testing.B) {
	b.ReportAllocs()
	a := MoistAir{TempC: 23, RH: 0.5}
	for b.Loop() {
		_, _ = a.WetBulbC()
	}
}

// The saturation pressures at the room and at two guesses.
func BenchmarkWetBulbFloor(b *testing.B) {
	sum, x := 0.0, 290.0
	for b.Loop() {
		for range 3 {
			sum += math.Exp(1e-3*math.Log(x) + 7)
		}
		x += 1e-9
	}
	if sum == 0 {
		b.Error("nothing summed")
	}
}
