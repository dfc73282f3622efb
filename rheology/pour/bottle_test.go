package pour_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/pour"
)

// Clanet and Searby 2004 (law from memory): a bottle of length L and width D over a neck d
// empties in 3.0 L/sqrt(g D) (D/d)^(5/2): a wine bottle in about 20 s, where common practice
// (no source) has 10 s and more.
func TestABottleGlugs(t *testing.T) {
	const d, wide = 0.0185, 0.073
	wine := pour.Spout{Diameter: d, Length: 0.08, Head: 0.25, SurfaceArea: math.Pi / 4 * wide * wide}
	vented := pourOf(t, wine, thin, 750)
	wine.Closed = true
	glugs := pourOf(t, wine, thin, 750)
	length := 0.75e-3 / (math.Pi / 4 * wide * wide)
	want := 3.0 * length / math.Sqrt(g0*wide) * math.Pow(wide/d, 2.5)
	near(t, "duration", glugs.Duration.Likely.After.Seconds(), want, 1e-3)
	if b := glugs.Duration; b.Earliest.After.Seconds() > 12 || b.Latest.After.Seconds() < 30 {
		t.Errorf("band %v does not hold 12 to 30 s", b)
	}
	if vented.Duration.Latest.After.Seconds() > 4 || glugs.Regime != "glugs, held by the air that must come in" {
		t.Errorf("with air: %v; without: %q", vented.Duration, glugs.Regime)
	}
	// The air's bubble slows in a thick liquid, and honey's own friction is slower still.
	syruped := pourOf(t, wine, given{eta: 0.2, rho: 1320, sigma: 0.07, band: 0.1}, 750)
	if r := glugs.Rate.Likely / syruped.Rate.Likely; r < 1.1 || r > 3 {
		t.Errorf("a syrup of 0.2 Pa s glugs %g times slower", r)
	}
	if syruped.Rate.High/syruped.Rate.Low <= glugs.Rate.High/glugs.Rate.Low {
		t.Errorf("the thick one is known better: %v, %v", syruped.Rate, glugs.Rate)
	}
	// No bubble rises in a straw.
	_, err := pour.Spout{Diameter: 0.004, Length: 0.05, Head: 0.1, Closed: true}.Pour(thin, 20, 5)
	if !errors.Is(err, honestplate.ErrNoFlow) {
		t.Errorf("a narrow neck: %v", err)
	}
}

// Never faster with the air shut out than with it, for any liquid and neck.
func TestAClosedBottleIsNeverFaster(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup, honey} {
		for _, d := range []float64{0.008, 0.02, 0.04} {
			s := pour.Spout{Diameter: d, Length: 0.03, Head: 0.2, SurfaceArea: 0.004}
			open := pourOf(t, s, l, 300)
			s.Closed = true
			shut := pourOf(t, s, l, 300)
			if shut.Duration.Likely.After < open.Duration.Likely.After || shut.Rate.Likely > open.Rate.Likely {
				t.Errorf("eta %g, neck %g m: closed %v, open %v", l.eta, d, shut.Duration, open.Duration)
			}
		}
	}
}
