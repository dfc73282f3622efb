package pour_test

import (
	"testing"

	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// Honey at a Reynolds number of 0.02 is held by friction, however short the bore, and its
// band is the liquid's.
func TestHoneyIsNeverHeldByInertia(t *testing.T) {
	for _, length := range []float64{0, 0.001, 0.005, 0.02} {
		p := pourOf(t, pour.Spout{Diameter: 0.012, Length: length, Head: 0.01}, given{eta: 15, rho: 1420, sigma: 0.055, band: 0.5}, 25)
		if p.Reynolds > 0.1 || p.Regime != "laminar, held by friction" || p.Friction < 0.9 || p.Ruled != "liquid" {
			t.Errorf("bore of %g m: Re %g, %q, friction %g, ruled by %q", length, p.Reynolds, p.Regime, p.Friction, p.Ruled)
		}
	}
	if p := pourOf(t, pour.Spout{Diameter: 0.012, Length: 0.005, Head: 0.03}, thin, 25); p.Ruled != "outlet" || p.Friction > 0.2 {
		t.Errorf("water: %q, %g", p.Ruled, p.Friction)
	}
}

// The share of friction is how the rate answers to the viscosity: d ln rate/d ln eta is
// -f/(2 - f) in a bore.
func TestFrictionIsHowTheRateAnswers(t *testing.T) {
	for _, eta := range []float64{0.001, 0.01, 0.1, 1, 10} {
		l := given{eta: eta, rho: 1300, sigma: 0.07, band: 0.1}
		s := pour.Spout{Diameter: 0.006, Length: 0.02, Head: 0.05}
		p := pourOf(t, s, l, 1)
		if p.Reynolds > 1900 {
			continue
		}
		l.eta *= 1.01
		answer := (p.Rate.Likely/pourOf(t, s, l, 1).Rate.Likely - 1) / 0.01
		if want := p.Friction / (2 - p.Friction); answer < want-0.03 || answer > want+0.03 {
			t.Errorf("eta %g: answer %g, friction %g says %g", eta, answer, p.Friction, want)
		}
	}
}

// A lip's stream may be ragged long before a capillary's, and honey does not break on a set.
func TestALipsStreamIsHonestAboutItsEnd(t *testing.T) {
	lip := pour.Lip{Width: 0.012, Length: 0.01, Head: 0.012}
	p, err := lip.Pour(rheology.Dairy{FatPercent: 3.5}, 6, 200)
	if err != nil {
		t.Fatal(err)
	}
	s := streamOf(t, p, 0.4)
	near(t, "low end", s.BreakUp.Low, s.BreakUp.Likely/3, 1e-9)
	if s.Unbroken || s.BreakUp.Low > 0.5 {
		t.Errorf("milk over a lip: %+v", s)
	}
	if p, err = lip.Pour(rheology.Honey{}, 20, 200); err != nil {
		t.Fatal(err)
	}
	if s := streamOf(t, p, 1); !s.Unbroken || s.Broken || s.MayBreak || s.BreakUp.High != 0 {
		t.Errorf("honey: %+v", s)
	}
	// A lip's film turns turbulent at 1500 to 2000.
	if p, err = lip.Pour(thin, 20, 200); err != nil || p.Reynolds < 2000 || p.Regime != "turbulent" {
		t.Errorf("water over a lip: %g, %q, %v", p.Reynolds, p.Regime, err)
	}
}
