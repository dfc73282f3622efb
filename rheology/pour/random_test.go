package pour_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// Anything sensible pours, or says why it does not; whatever pours can be asked
// everything.
func TestRandomPours(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	log := func(low, high float64) float64 { return low * math.Pow(high/low, r.Float64()) }
	poured, kinds := 0, map[string]int{}
	for i := range 4000 {
		base := given{eta: log(5e-4, 300), rho: log(800, 1500), sigma: log(0.02, 0.08), band: 0.3 * r.Float64()}
		liquids := []rheology.Liquid{base, stiff{base, log(0.1, 100)}, thinning{base, 0.2 + 0.8*r.Float64()}}
		l := liquids[i%3]
		surface := 0.0
		if r.IntN(2) == 0 {
			surface = log(1e-4, 0.1)
		}
		grams := log(0.1, 2000)
		var p pour.Pour
		var err error
		if r.IntN(3) == 0 {
			p, err = pour.Lip{Width: log(2e-3, 0.2), Length: r.Float64() * 0.1, Head: log(1e-3, 0.2), SurfaceArea: surface}.Pour(l, 20, grams)
		} else {
			p, err = pour.Spout{Diameter: log(5e-4, 0.05), Length: r.Float64() * 0.3, Head: log(3e-3, 1), SurfaceArea: surface}.Pour(l, 20, grams)
		}
		if err != nil {
			if !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrNoFlow) {
				t.Fatalf("%v: %v", l, err)
			}
			continue
		}
		poured++
		kinds[string(p.Regime)]++
		d := p.Duration
		if d.Earliest.After > d.Likely.After || d.Likely.After > d.Latest.After || !p.Rate.Contains(p.Rate.Likely) || !p.EndRate.Contains(p.EndRate.Likely) {
			t.Fatalf("%v: %v, %v, %v", l, d, p.Rate, p.EndRate)
		}
		if p.EndRate.Likely > p.Rate.Likely*(1+1e-9) || p.LeftGrams.Likely < 0 {
			t.Fatalf("%v: ends at %v of %v, keeps %v", l, p.EndRate, p.Rate, p.LeftGrams)
		}
		// The mean rate lies between the ends.
		mean := grams / 1000 / base.rho / d.Likely.After.Seconds()
		if d.Likely.After > time.Millisecond && (mean > p.Rate.Likely*1.0001 || mean < p.EndRate.Likely*0.9999) {
			t.Fatalf("%v: mean %g, from %g to %g", l, mean, p.Rate.Likely, p.EndRate.Likely)
		}
		after(t, p, log(1e-3, 3), log(1e-5, 0.05), 1+170*r.Float64(), r.IntN(2) == 0, 1+r.IntN(10), int64(log(1e6, 1e14)))
	}
	if poured < 1500 || len(kinds) < 4 {
		t.Errorf("%d poured, %v", poured, kinds)
	}
	t.Logf("%d poured, %v", poured, kinds)
}
