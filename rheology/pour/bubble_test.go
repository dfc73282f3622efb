package pour_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/pour"
)

func TestBubbles(t *testing.T) {
	// In syrup small bubbles follow Stokes, and clean ones rise 1.5 times as fast.
	u, err := pour.BubbleRise(given{eta: 1, rho: 1350, sigma: 0.075}, 20, 0.001)
	if err != nil {
		t.Fatal(err)
	}
	stokes := g0 * 1e-6 * 1350 / 18
	near(t, "stiff", u.Likely, stokes, 2e-3)
	clean := 1.5 * g0 * 1e-6 * 1350 / 18
	near(t, "clean", u.High/1.1, clean, 0.02)

	for _, l := range []given{thin, milk, cream, syrup, honey} {
		last := 0.0
		for d := 2e-5; d < 0.0008; d *= 1.1 {
			u, err := pour.BubbleRise(l, 20, d)
			if err != nil {
				t.Fatal(err)
			}
			if u.Likely <= last || !u.Contains(u.Likely) {
				t.Fatalf("eta %g, %g m: %v after %g", l.eta, d, u, last)
			}
			last = u.Likely
		}
	}

	// A yield stress holds small bubbles for good.
	if u, err := pour.BubbleRise(ketchup, 20, 0.001); err != nil || u != (honestplate.Estimate{}) {
		t.Errorf("%v, %v", u, err)
	}
	if _, err := pour.BubblesClear(ketchup, 20, 0.001, 0.1); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
	if _, err := pour.BubbleRise(stiff{ketchup.given, 0.1}, 20, 0.01); err != nil {
		t.Error(err)
	}

	wait, err := pour.BubblesClear(syrup, 20, 0.0005, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if !(wait.Earliest.After < wait.Likely.After && wait.Likely.After < wait.Latest.After) {
		t.Errorf("%v", wait)
	}
	if half, err := pour.BubblesClear(syrup, 20, 0.00025, 0.1); err != nil || math.Abs(half.Likely.After.Seconds()/wait.Likely.After.Seconds()-4) > 0.05 {
		t.Errorf("half the size takes %v, the whole %v, %v", half.Likely.After, wait.Likely.After, err)
	}
	if _, err := pour.BubblesClear(given{eta: 1000, rho: 1400, sigma: 0.07}, 20, 1e-5, 1); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("more than a year: %v", err)
	}
	for _, d := range []float64{0, -1, 1, math.NaN()} {
		if _, err := pour.BubbleRise(milk, 20, d); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%g m: %v", d, err)
		}
	}
	if _, err := pour.BubblesClear(milk, 20, 0.001, -1); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}
