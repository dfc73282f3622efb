package pour_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// From 5 mPa s on thicker cream never splashes more readily on a dry plate: neither the same
// drop nor what the same jug pours from the same height.
func TestThickerCreamNeverSplashesMoreReadily(t *testing.T) {
	lip := pour.Lip{Width: 0.02, Length: 0.01, Head: 0.008}
	rank := map[pour.Summary]int{pour.NoSplash: 0, pour.CriteriaDisagree: 1, pour.SplashLikely: 2}
	for _, drop := range []float64{0.05, 0.1, 0.15, 0.3, 0.6} {
		lastRank, last, lastSpeed := 3, pour.Splash{}, 0.0
		for eta := 0.005; eta < 0.3; eta *= 1.05 {
			l := given{eta: eta, rho: 1000, sigma: 0.045, band: 0.1}
			same := splash(t, landing(l, 2), pour.Target{})
			if same.Threshold.Low < lastSpeed {
				t.Fatalf("%g mPa s: threshold %g after %g m/s", eta*1000, same.Threshold.Low, lastSpeed)
			}
			lastSpeed = same.Threshold.Low
			p, err := lip.Pour(l, 6, 200)
			if err != nil {
				t.Fatal(err)
			}
			s := splash(t, streamOf(t, p, drop), pour.Target{})
			if r, ok := rank[s.Summary]; !ok || r > lastRank {
				t.Fatalf("%g m, %g mPa s: %q (%v) after %q (%v)", drop, eta*1000, s.Summary, s.Threshold, last.Summary, last.Threshold)
			}
			lastRank, last = rank[s.Summary], s
		}
	}
}

// No jump in the depth of the film: neither in a threshold nor in a verdict, which changes
// at most once each way.
func TestNoJumpInTheDepthOfTheFilm(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup} {
		last := honestplate.Estimate{}
		for delta := 0.02; delta < 20; delta *= 1.01 {
			e := splash(t, landing(l, 2), pour.Target{Film: delta * 0.004}).Threshold
			if last.Low > 0 && (math.Abs(math.Log(e.Low/last.Low)) > 0.02 || math.Abs(math.Log(e.High/last.High)) > 0.02 || math.Abs(math.Log(e.Likely/last.Likely)) > 0.02) {
				t.Errorf("eta %g at %g drops: %v after %v", l.eta, delta, e, last)
			}
			last = e
		}
	}
}

// A crown that has risen stays as the fall rises, until it throws droplets.
func TestACrownStaysAsTheFallRises(t *testing.T) {
	lip := pour.Lip{Width: 0.02, Length: 0.01, Head: 0.008}
	rank := map[pour.Summary]int{pour.NoSplash: 0, pour.CrownOnly: 1, pour.CriteriaDisagree: 2, pour.SplashLikely: 3}
	for _, l := range []given{milk, cream, {eta: 0.05, rho: 990, sigma: 0.045, band: 0.1}} {
		for _, film := range []float64{0.0003, 0.0005, 0.001, 0.003, 0.01} {
			p, err := lip.Pour(l, 6, 200)
			if err != nil {
				t.Fatal(err)
			}
			last := 0
			for drop := 0.02; drop < 0.6; drop *= 1.03 {
				s := streamOf(t, p, drop)
				sum := splash(t, s, pour.Target{Film: film}).Summary
				if r := rank[sum]; r < last {
					t.Fatalf("eta %g, film %g, fall %g: %q", l.eta, film, drop, sum)
				} else {
					last = r
				}
				if c, err := s.Crown(film); err == nil && c.Expected != (last > 0) {
					t.Fatalf("eta %g, film %g, fall %g: Crown says %v, Splash %q", l.eta, film, drop, c.Expected, sum)
				}
			}
		}
	}
}

// The greatest fall is where the first and the last criterion begin to say droplets.
func TestTheGreatestFallIsTheThreshold(t *testing.T) {
	lip := pour.Lip{Width: 0.02, Length: 0.01, Head: 0.008}
	p, err := lip.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		t.Fatal(err)
	}
	for _, onto := range []pour.Target{{}, {Film: 0.002}, {Film: 0.01}} {
		fall, err := p.GreatestFall(onto)
		if err != nil {
			t.Fatal(err)
		}
		if fall.Low < 0.1 || fall.Low > 0.5 {
			t.Errorf("%+v: no higher than %v m", onto, fall)
		}
		below := splash(t, streamOf(t, p, fall.Low*0.98), onto)
		above := splash(t, streamOf(t, p, fall.Low*1.02), onto)
		if below.Summary == pour.CriteriaDisagree || below.Summary == pour.SplashLikely ||
			above.Summary != pour.CriteriaDisagree && above.Summary != pour.SplashLikely {
			t.Errorf("%+v: %q below, %q above", onto, below.Summary, above.Summary)
		}
	}
	thick, err := lip.Pour(rheology.Syrup{Of: "maple"}, 6, 200)
	if err != nil {
		t.Fatal(err)
	}
	if fall, err := thick.GreatestFall(pour.Target{Film: 0.01}); err != nil || fall.High != 3 {
		t.Errorf("maple syrup: %v, %v", fall, err)
	}
	fast, err := pour.Spout{Diameter: 0.008, Length: 0.01, Head: 2}.Pour(milk, 20, 200)
	if err != nil {
		t.Fatal(err)
	}
	if fall, err := fast.GreatestFall(pour.Target{}); err != nil || fall.Low != 0 {
		t.Errorf("a hose: %v, %v", fall, err)
	}
	if _, err := p.GreatestFall(pour.Target{Rough: true}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("bread: %v", err)
	}
	if _, err := (pour.Pour{}).GreatestFall(pour.Target{}); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no pour: %v", err)
	}
	if _, err := p.GreatestFall(pour.Target{Film: -1}); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("a film below nothing: %v", err)
	}
}
