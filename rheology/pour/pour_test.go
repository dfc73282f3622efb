package pour_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// Liquids of the tests, with round figures.
var (
	thin  = given{eta: 0.001, rho: 1000, sigma: 0.07, band: 0.05}
	milk  = given{eta: 0.002, rho: 1030, sigma: 0.05, band: 0.12}
	cream = given{eta: 0.020, rho: 1000, sigma: 0.045, band: 0.3}
	syrup = given{eta: 1, rho: 1350, sigma: 0.075, band: 0.1}
	honey = given{eta: 10, rho: 1420, sigma: 0.08, band: 0.1}
)

var jug = pour.Spout{Diameter: 0.008, Length: 0.03, Head: 0.06}

func pourOf(t *testing.T, s pour.Spout, l rheology.Liquid, grams float64) pour.Pour {
	t.Helper()
	p, err := s.Pour(l, 20, grams)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !cmp.Equal(got, want, cmpopts.EquateApprox(rel, 0)) {
		t.Errorf("%s: %g, want %g to %g", what, got, want, rel)
	}
}

// Through a long narrow tube a thick liquid follows the textbook's logarithm.
func TestALongTubeEmptiesAsPoiseuilleSays(t *testing.T) {
	const area, head, length, bore = 0.01, 0.5, 0.4, 0.004
	s := pour.Spout{Diameter: bore, Length: length, Head: head, SurfaceArea: area}
	p := pourOf(t, s, honey, 500)
	hold := 2 * honey.sigma / (honey.rho * 9.80665 * bore)
	volume := 0.5 / honey.rho
	// Bird, Stewart and Lightfoot, Transport Phenomena, Problem 7B.9.
	want := 128 * honey.eta / honey.rho * (length + bore/2) * area / (math.Pi * 9.80665 * math.Pow(bore, 4)) *
		math.Log((head-hold)/(head-hold-volume/area))
	near(t, "time", p.Duration.Likely.After.Seconds(), want, 1e-3)
	if p.Regime != "laminar, held by friction" {
		t.Errorf("regime %q", p.Regime)
	}
}

// Out of a hole a thin liquid follows Torricelli.
func TestAHoleEmptiesAsTorricelliSays(t *testing.T) {
	const area, head, hole = 0.1, 0.4, 0.02
	s := pour.Spout{Diameter: hole, Head: head, SurfaceArea: area, Discharge: 0.6}
	p := pourOf(t, s, thin, 30_000)
	hold := 2 * thin.sigma / (thin.rho * 9.80665 * hole)
	want := 2 * area * (math.Sqrt(head-hold) - math.Sqrt(head-hold-0.3)) / (0.6 * math.Pi / 4 * hole * hole * math.Sqrt(2*g0))
	near(t, "time", p.Duration.Likely.After.Seconds(), want, 1e-6)

	s.Discharge = 0
	free := pourOf(t, s, thin, 30_000)
	near(t, "time with the model's coefficient", free.Duration.Likely.After.Seconds(), want, 0.04)
}

// The rate falls with viscosity without a jump, from water to honey. Behind a bare
// edge it first rises by some per cent, as sharp holes do: a viscous jet contracts
// less. In long bores it rises where turbulence gives way.
func TestAThickerLiquidPoursSlowerWithoutAJump(t *testing.T) {
	for _, lod := range []float64{0, 0.5, 1, 2, 5, 20, 100} {
		last := math.Inf(1)
		for eta := 1e-4; eta < 100; eta *= 1.02 {
			l := thin
			l.eta = eta
			p, err := pour.Spout{Diameter: 0.01, Length: 0.01 * lod, Head: 1}.Pour(l, 20, 1000)
			var tooLong *honestplate.RangeError
			if errors.As(err, &tooLong) {
				break
			}
			if err != nil {
				t.Fatal(err)
			}
			if lod >= 2 && lod < 50 && p.Rate.Likely > last*1.0005 {
				t.Fatalf("L/D %g, %g Pa s: the rate rises, %g after %g", lod, eta, p.Rate.Likely, last)
			}
			if math.Abs(math.Log(p.Rate.Likely/last)) > 0.05 && !math.IsInf(last, 1) {
				t.Fatalf("L/D %g, %g Pa s: the rate jumps to %g after %g", lod, eta, p.Rate.Likely, last)
			}
			last = p.Rate.Likely
		}
	}
}

// A higher head, a wider bore and a shorter one pour faster; more takes longer.
func TestAPourAnswersToItsSpout(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup, honey} {
		base := pourOf(t, jug, l, 200).Duration.Likely.After
		for name, s := range map[string]pour.Spout{
			"head":   {Diameter: 0.008, Length: 0.03, Head: 0.09},
			"bore":   {Diameter: 0.010, Length: 0.03, Head: 0.06},
			"length": {Diameter: 0.008, Length: 0.02, Head: 0.06},
		} {
			if got := pourOf(t, s, l, 200).Duration.Likely.After; got >= base {
				t.Errorf("eta %g, %s: %v, not below %v", l.eta, name, got, base)
			}
		}
		if got := pourOf(t, jug, l, 400).Duration.Likely.After; math.Abs(got.Seconds()/base.Seconds()-2) > 1e-6 {
			t.Errorf("eta %g: twice the grams take %v, once %v", l.eta, got, base)
		}
		fall := jug
		fall.SurfaceArea = 0.02
		if got := pourOf(t, fall, l, 200).Duration.Likely.After; got <= base {
			t.Errorf("eta %g: a falling head takes %v, a kept one %v", l.eta, got, base)
		}
	}
}

func TestTheBandHoldsTheLikelyPour(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup, honey} {
		p := pourOf(t, jug, l, 200)
		d := p.Duration
		if !(d.Earliest.After < d.Likely.After && d.Likely.After < d.Latest.After) {
			t.Errorf("eta %g: %v", l.eta, d)
		}
		if !p.Rate.Contains(p.Rate.Likely) || p.Rate.Low <= 0 {
			t.Errorf("eta %g: rate %v", l.eta, p.Rate)
		}
		// A thick liquid's time goes with its viscosity, so its band is at least that.
		if l.eta >= 1 && d.Latest.After.Seconds()/d.Likely.After.Seconds() < 1+0.9*l.band {
			t.Errorf("eta %g: band %v is narrower than the viscosity's", l.eta, d)
		}
	}
}

// More than the vessel can push out is refused with what it can.
func TestGramsBeyondTheHeadAreRefused(t *testing.T) {
	s := jug
	s.SurfaceArea = 0.005
	_, err := s.Pour(cream, 20, 1000)
	var r *honestplate.RangeError
	if !errors.As(err, &r) || !errors.Is(err, honestplate.ErrRange) {
		t.Fatalf("error %v", err)
	}
	if r.High < 250 || r.High > 300 {
		t.Errorf("the most is %g g, want a little below 300", r.High)
	}
	if _, err := s.Pour(cream, 20, r.High*0.999); err != nil {
		t.Errorf("just below: %v", err)
	}
}

func TestAFineHoleHoldsItsLiquid(t *testing.T) {
	_, err := pour.Spout{Diameter: 0.0005, Head: 0.01}.Pour(thin, 20, 1)
	needs := needHead(t, err, "surface tension")
	if _, err := (pour.Spout{Diameter: 0.0005, Head: needs * 1.01}).Pour(thin, 20, 0.01); err != nil {
		t.Error(err)
	}
}

func TestBadPoursAreRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for name, s := range map[string]pour.Spout{
		"no spout":      {},
		"NaN bore":      {Diameter: nan, Head: 0.1},
		"no head":       {Diameter: 0.01},
		"endless head":  {Diameter: 0.01, Head: inf},
		"length":        {Diameter: 0.01, Head: 0.1, Length: -1},
		"surface":       {Diameter: 0.01, Head: 0.1, SurfaceArea: nan},
		"discharge":     {Diameter: 0.01, Head: 0.1, Discharge: 1.2},
		"huge head":     {Diameter: 0.01, Head: 1e6},
		"tiny coeff":    {Diameter: 0.01, Head: 0.1, Discharge: 1e-9},
		"negative bore": {Diameter: -0.01, Head: 0.1},
	} {
		if _, err := s.Pour(milk, 20, 100); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: error %v", name, err)
		}
	}
	for _, grams := range []float64{0, -1, nan, inf, 1e12} {
		if _, err := jug.Pour(milk, 20, grams); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%g g: error %v", grams, err)
		}
	}
	if _, err := jug.Pour(nil, 20, 100); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no liquid: %v", err)
	}
	if _, err := jug.Pour(milk, nan, 100); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("NaN temperature: %v", err)
	}
	pitch := given{eta: 1e6, rho: 1100, sigma: 0.03}
	if _, err := jug.Pour(pitch, 20, 100); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("pitch: %v", err)
	}
	for _, l := range []given{{eta: nan, rho: 1, sigma: 1}, {eta: 1, rho: -1, sigma: 1}, {eta: 1, rho: 1}} {
		if _, err := jug.Pour(l, 20, 100); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%v: error %v", l, err)
		}
	}
}

// Common practice, no source: a jug of milk with a pencil-wide spout empties in
// seconds, honey in many minutes.
func TestMilkPoursInSecondsHoneyInMinutes(t *testing.T) {
	if d := pourOf(t, jug, milk, 200).Duration.Likely.After; d < 2*time.Second || d > 10*time.Second {
		t.Errorf("milk %v", d)
	}
	if d := pourOf(t, jug, honey, 200).Duration.Likely.After; d < 5*time.Minute {
		t.Errorf("honey %v", d)
	}
}

// A given is a liquid of given properties, for tests of what pours it.
type given struct {
	eta, rho, sigma float64
	band            float64 // fraction of the viscosity
}

func (g given) Describe() rheology.Description {
	return rheology.Description{Name: "given", Source: "a test", LowC: -50, HighC: 150}
}
func (g given) Viscosity(float64) (honestplate.Estimate, error) {
	return honestplate.Within(g.eta, g.band), nil
}
func (g given) Density(float64) (honestplate.Estimate, error) { return honestplate.Exactly(g.rho), nil }
func (g given) SurfaceTension(float64) (honestplate.Estimate, error) {
	return honestplate.Exactly(g.sigma), nil
}
