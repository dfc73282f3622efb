package pour_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/law"
	"example.org/honestplate/rheology/pour"
)

// landing is a stream of 4 mm of a liquid at a speed.
func landing(l given, speed float64) pour.Stream {
	return pour.Stream{Diameter: 0.004, Speed: speed, Fluid: law.Fluid{Viscosity: l.eta, Density: l.rho, SurfaceTension: l.sigma}}
}

func splash(t *testing.T, s pour.Stream, onto pour.Target) pour.Splash {
	t.Helper()
	p, err := s.Splash(onto)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// At the threshold speed that a criterion gives, its value is its threshold.
func TestThresholdSpeedsAreThresholds(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup} {
		for _, onto := range []pour.Target{{}, {Rough: true}, {Film: 0.0004}, {Film: 0.002}, {Film: 0.1}} {
			for _, broken := range []bool{false, true} {
				s := landing(l, 2)
				s.Broken, s.Rate = broken, 1e-5
				for i, v := range verdicts(splash(t, s, onto)) {
					if v.ThresholdSpeed == 0 {
						if v.Criterion != "Riboux and Gordillo 2014" {
							t.Errorf("%s: no threshold speed", v.Criterion)
						}
						continue
					}
					at := s
					at.Speed = v.ThresholdSpeed
					if at.Speed < 1e-6 {
						continue
					}
					w := splash(t, at, onto).Verdicts[i]
					near(t, v.Criterion, w.Value, w.Threshold, 1e-4)
				}
			}
		}
	}
}

func verdicts(p pour.Splash) []pour.Verdict { return p.Verdicts }

// Every measure against its own formula, for milk of 4 mm at 2 m/s.
func TestMeasuresAreTheirFormulas(t *testing.T) {
	s := landing(milk, 2)
	s.Broken, s.Rate = true, 1e-5
	we := milk.rho * 4 * 0.004 / milk.sigma
	re := milk.rho * 2 * 0.004 / milk.eta
	oh := milk.eta / math.Sqrt(milk.rho*milk.sigma*0.004)
	f := 1e-5 / (math.Pi / 6 * 0.004 * 0.004 * 0.004)
	want := map[string]float64{
		"We^0.5 Re^0.25": math.Sqrt(we) * math.Pow(re, 0.25),
		"Ca^0.5":         math.Sqrt(milk.eta * 2 / milk.sigma),
		"We Oh^-0.4":     we * math.Pow(oh, -0.4),
		"We^0.5":         math.Sqrt(we),
		"V (rho/sigma)^0.25 nu^-0.125 f^-0.375": 2 * math.Pow(milk.rho/milk.sigma, 0.25) *
			math.Pow(milk.eta/milk.rho, -0.125) * math.Pow(f, -0.375),
	}
	seen := map[string]bool{}
	for _, film := range []float64{0, 0.001} {
		for _, v := range verdicts(splash(t, s, pour.Target{Film: film})) {
			if w, ok := want[v.Measure]; ok {
				near(t, v.Criterion, v.Value, w, 1e-9)
				seen[v.Measure] = true
			}
		}
	}
	if len(seen) != len(want) {
		t.Errorf("seen %v", seen)
	}
}

// Faster is never less of a splash, by any criterion.
func TestFasterIsNeverLessOfASplash(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup} {
		for _, onto := range []pour.Target{{}, {Film: 0.001}, {Film: 0.1}} {
			last := make([]bool, 6)
			for v := 0.05; v < 30; v *= 1.1 {
				for i, w := range verdicts(splash(t, landing(l, v), onto)) {
					if last[i] && !w.Exceeded {
						t.Fatalf("eta %g, %s: splashes below %g m/s and not above", l.eta, w.Criterion, v)
					}
					last[i] = w.Exceeded
				}
			}
		}
	}
}

// The capillary number would make thick cream splash at a hand's breadth: a liquid thicker
// than 5 mPa s is asked as one of 5, and its speed rises with Mundo's power of the thickness.
func TestTheCapillaryCriterionIsForThinLiquids(t *testing.T) {
	for _, c := range []struct {
		l       given
		rough   bool
		applies bool
	}{{milk, false, true}, {cream, false, true}, {milk, true, false}} {
		for _, v := range verdicts(splash(t, landing(c.l, 1), pour.Target{Rough: c.rough})) {
			if v.Measure != "Ca^0.5" {
				continue
			}
			if v.Applies != c.applies {
				t.Errorf("eta %g, rough %v: applies %v", c.l.eta, c.rough, v.Applies)
			}
			near(t, "threshold", v.ThresholdSpeed, 0.35*0.35*c.l.sigma/min(c.l.eta, 0.005)*math.Pow(max(c.l.eta/0.005, 1), 0.2), 1e-9)
		}
	}
}

func TestSummaries(t *testing.T) {
	for _, c := range []struct {
		name  string
		s     pour.Stream
		onto  pour.Target
		want  pour.Summary
		known bool
	}{
		{"milk creeping onto a plate", landing(milk, 0.2), pour.Target{}, pour.NoSplash, true},
		{"milk from a height onto a plate", landing(milk, 9), pour.Target{}, pour.SplashLikely, true},
		{"milk from 40 cm onto a plate", landing(milk, 2.8), pour.Target{}, pour.CriteriaDisagree, true},
		{"milk onto bread", landing(milk, 2.2), pour.Target{Rough: true}, pour.OutsideRange, false},
		{"cream onto its own film", landing(cream, 1.5), pour.Target{Film: 0.0005}, pour.CrownOnly, true},
		{"syrup onto a plate", landing(syrup, 2), pour.Target{}, pour.NoSplash, true},
		{"syrup onto a thread of film", landing(syrup, 2), pour.Target{Film: 1e-5}, pour.NoSplash, true},
		{"milk into a bowl", landing(milk, 0.5), pour.Target{Film: 0.05}, pour.NoSplash, true},
		{"milk into a bowl, a rim", landing(milk, 1), pour.Target{Film: 0.05}, pour.CrownOnly, true},
		{"milk into a bowl from high", landing(milk, 3), pour.Target{Film: 0.05}, pour.SplashLikely, true},
	} {
		p := splash(t, c.s, c.onto)
		if p.Summary != c.want {
			t.Errorf("%s: %q, want %q", c.name, p.Summary, c.want)
		}
		if (p.Threshold.Likely > 0) != c.known || p.Threshold.Low > p.Threshold.Likely || p.Threshold.High < p.Threshold.Likely {
			t.Errorf("%s: threshold %v", c.name, p.Threshold)
		}
	}
}

// Each criterion counts where Splash says that it does.
func TestCriteriaCountInTheirRanges(t *testing.T) {
	applies := func(l given, delta float64) string {
		out := ""
		for _, v := range verdicts(splash(t, landing(l, 2), pour.Target{Film: delta * 0.004})) {
			if v.Applies {
				out += v.Criterion[:3]
			}
		}
		return out
	}
	almost, thick := milk, milk
	almost.eta, thick.eta = 0.0049, 0.0051
	for _, c := range []struct {
		l     given
		delta float64
		want  string
	}{
		{milk, 0.05, "RioRioCosVan"}, {milk, 0.98, "RioRioCosVan"}, {milk, 1.02, "RioOkaCos"}, {milk, 3.1, "RioOka"},
		{almost, 0.5, "RioRioCosVan"}, {thick, 0.5, "RioRioCos"}, {cream, 0.05, "RioRioCos"},
	} {
		if got := applies(c.l, c.delta); got != c.want {
			t.Errorf("eta %g, film of %g drops: %q, want %q", c.l.eta, c.delta, got, c.want)
		}
	}
}

// Six criteria at most, in the array's order, and the drop says which it is.
func TestTheDropSaysWhichItIs(t *testing.T) {
	s := landing(milk, 2)
	whole := splash(t, s, pour.Target{})
	s.Broken = true
	broken := splash(t, s, pour.Target{})
	s.Broken, s.Drips = false, true
	drips := splash(t, s, pour.Target{})
	if whole.Why == broken.Why || broken.Why == drips.Why || whole.Why == "" {
		t.Errorf("%q, %q, %q", whole.Why, broken.Why, drips.Why)
	}
}

func TestBadLandingsAreRefused(t *testing.T) {
	good := landing(milk, 1)
	for name, change := range map[string]func(*pour.Stream){
		"speed":     func(s *pour.Stream) { s.Speed = math.NaN() },
		"diameter":  func(s *pour.Stream) { s.Diameter = -1 },
		"viscosity": func(s *pour.Stream) { s.Viscosity = 0 },
		"density":   func(s *pour.Stream) { s.Density = math.Inf(1) },
		"rate":      func(s *pour.Stream) { s.Rate = -1 },
	} {
		s := good
		change(&s)
		if _, err := s.Splash(pour.Target{}); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, film := range []float64{-1, math.NaN(), 100} {
		if _, err := good.Splash(pour.Target{Film: film}); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("film %g: %v", film, err)
		}
	}
}

func TestACrownGrowsNearlyAsTheRootOfTime(t *testing.T) {
	s := landing(milk, 2)
	c, err := s.Crown(0.001)
	if err != nil {
		t.Fatal(err)
	}
	slow := landing(milk, 0.4) // We Oh^-0.4 is 115
	if d, err := slow.Crown(0.001); err != nil || d.Expected {
		t.Errorf("at 0.4 m/s: %+v, %v", d, err)
	}
	if !c.Expected || c.Largest.Low >= c.Largest.Likely || c.Lasts.Earliest.After >= c.Lasts.Latest.After {
		t.Errorf("%+v", c)
	}
	// r/D = (2/3)^(1/4) (D/h)^(1/4) (V t/D)^0.43 at V t/D = 20.
	near(t, "largest", c.Largest.Likely, 0.004*math.Pow(2.0/3*4, 0.25)*math.Pow(20, 0.43), 1e-6)
	thick, err := s.Crown(0.003)
	if err != nil {
		t.Fatal(err)
	}
	if thick.Largest.Likely >= c.Largest.Likely {
		t.Errorf("on a deeper film the crown is wider: %v, %v", thick.Largest, c.Largest)
	}
	for _, film := range []float64{0, 1e-5, 0.01, math.NaN()} {
		if _, err := s.Crown(film); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("film %g: %v", film, err)
		}
	}
}

func TestHoneyCoilsAndMilkDoesNot(t *testing.T) {
	coil := func(l given, s pour.Spout, drop float64) pour.Coil {
		t.Helper()
		c, err := streamOf(t, pourOf(t, s, l, 50), drop).Coil()
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	spout := pour.Spout{Diameter: 0.006, Length: 0.02, Head: 0.08}
	if c := coil(milk, spout, 0.2); c.Regime != "no coil" || c.Frequency != (honestplate.Estimate{}) {
		t.Errorf("milk: %+v", c)
	}
	// A rising fall meets the regimes in order, each no sooner than the last.
	order := map[string]int{"no coil": -1, "viscous": 0, "gravitational": 1, "inertio-gravitational": 2, "inertial": 3}
	last := -1
	seen := map[string]bool{}
	for drop := 0.02; drop < 1; drop *= 1.05 {
		c := coil(honey, spout, drop)
		if c.Regime == "no coil" {
			continue
		}
		seen[c.Regime] = true
		// The frequency is the regime's scaling, the radius that of the speed.
		st := streamOf(t, pourOf(t, spout, honey, 50), drop)
		a, nu := st.Diameter/2, honey.eta/honey.rho
		scaling := map[string]float64{
			"viscous":       st.Rate / (drop * a * a),
			"gravitational": math.Pow(g0*math.Pow(st.Rate, 3)/(nu*math.Pow(a, 8)), 0.25),
			"inertial":      math.Cbrt(math.Pow(st.Rate, 4) / (nu * math.Pow(a, 10))),
		}
		// No ring is smaller than its thread.
		if w, ok := scaling[c.Regime]; ok {
			near(t, c.Regime, 2*math.Pi*c.Frequency.Likely, min(w, st.Speed/a), 1e-6)
		}
		if c.Radius.Low < a*(1-1e-12) || c.Frequency.High > st.Speed/(2*math.Pi*a)*(1+1e-12) || c.Frequency.Likely > c.Frequency.High {
			t.Errorf("at %g m: ring %v m of a thread of %g, %v turns a second", drop, c.Radius, a, c.Frequency)
		}
		near(t, "radius", 2*math.Pi*c.Frequency.Likely*c.Radius.Likely, st.Speed, 1e-6)
		if order[c.Regime] < last {
			t.Fatalf("at %g m: %s after a later regime", drop, c.Regime)
		}
		last = order[c.Regime]
		want := "faster"
		if c.Regime == "viscous" {
			continue
		}
		if c.Height != want {
			t.Errorf("at %g m, %s: higher is %s", drop, c.Regime, c.Height)
		}
		if c.Radius.High/c.Radius.Likely < 9.9 {
			t.Errorf("an order of magnitude is claimed, band %v", c.Radius)
		}
	}
	if len(seen) < 2 {
		t.Errorf("regimes seen: %v", seen)
	}
}

// The threshold is that of the formula, with the depth at the edge.
func TestASlowLipDribbles(t *testing.T) {
	lip := pour.Lip{Width: 0.03, Length: 0.005, Head: 0.004}
	p, err := lip.Pour(milk, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	c, err := p.Dribble(30)
	if err != nil {
		t.Fatal(err)
	}
	if !c.Dribbles || !c.MayDribble {
		t.Errorf("a slow lip lets go: %+v", c)
	}
	near(t, "threshold", c.Threshold.Likely, math.Sqrt(milk.sigma*(1+math.Cos(math.Pi/6))/(milk.rho*p.Rate.Likely/(0.03*p.Speed))), 1e-9)
	waxed, err := p.Dribble(120)
	if err != nil {
		t.Fatal(err)
	}
	if waxed.Threshold.Likely >= c.Threshold.Likely {
		t.Errorf("wax does not help: %v, %v", waxed.Threshold, c.Threshold)
	}
	fast := pourOf(t, pour.Spout{Diameter: 0.008, Length: 0.01, Head: 0.3}, milk, 100)
	if c, err := fast.Dribble(30); err != nil || c.Dribbles || c.MayDribble {
		t.Errorf("a fast spout: %+v, %v", c, err)
	}
	if _, err := pourOf(t, jug, honey, 100).Dribble(30); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("honey: %v", err)
	}
	if _, err := p.Dribble(200); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}
