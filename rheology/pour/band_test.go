package pour_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/pour"
)

// The slow end of a band is the pour of a liquid as thick as the band allows: the viscosity's
// part of it, taken out of the quadrature, against that pour itself.
func TestTheBandIsThatOfThickerLiquids(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	log := func(low, high float64) float64 { return low * math.Pow(high/low, r.Float64()) }
	worst, n := 0.0, 0
	for range 400 {
		l := given{eta: log(1e-3, 10), rho: 1100, sigma: 0.05, band: 0.5}
		s := pour.Spout{Diameter: log(2e-3, 0.03), Length: log(2e-3, 0.2), Head: log(0.03, 0.5)}
		grams := 100.0
		s.SurfaceArea = grams / 1000 / l.rho / (s.Head * (0.2 + 0.6*r.Float64()))
		p, err := s.Pour(l, 20, grams)
		if err != nil {
			continue
		}
		thick := l
		thick.eta *= 1.5
		want, err := s.Pour(thick, 20, grams)
		if err != nil {
			continue
		}
		d := p.Duration
		spread := d.Latest.After.Seconds()/d.Likely.After.Seconds() - 1
		slow := 1 + math.Sqrt(max(spread*spread-p.Hydraulics*p.Hydraulics, 0))
		worst = max(worst, math.Abs(slow-want.Duration.Likely.After.Seconds()/d.Likely.After.Seconds()))
		n++
	}
	if worst > 0.04 || n < 200 {
		t.Errorf("worst of %d: %.4f of the duration", n, worst)
	}
	t.Logf("worst of %d: %.4f of the duration", n, worst)
}

// The local curve of a pour against the liquid's own: Carreau's liquid, whose index changes
// along the pour, in 100 parts with a kept head in the middle of each.
func TestAThinningLiquidsFallingHeadFollowsItsCurve(t *testing.T) {
	for _, index := range []float64{-0.02, -0.05, -0.1, -0.2, -0.35} {
		l := carreau{given{eta: 2, rho: 1000, sigma: 0.05, band: 0.1}, index}
		s := pour.Spout{Diameter: 0.006, Length: 0.05, Head: 0.3, SurfaceArea: 0.002}
		const grams, parts = 400.0, 100
		whole, err := s.Pour(l, 20, grams)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for i := range parts {
			part := s
			part.Head = s.Head - (float64(i)+0.5)/parts*grams/1000/l.rho/s.SurfaceArea
			part.SurfaceArea = 0
			p, err := part.Pour(l, 20, grams/parts)
			if err != nil {
				t.Fatal(err)
			}
			sum += p.Duration.Likely.After.Seconds()
		}
		near(t, fmt.Sprint("duration, power ", index), whole.Duration.Likely.After.Seconds(), sum, 0.005)
	}
}

type carreau struct {
	given
	power float64
}

func (c carreau) ViscosityAtRate(_, rate float64) (honestplate.Estimate, error) {
	return honestplate.Within(0.01+(c.eta-0.01)*math.Pow(1+rate*rate/100, c.power), c.band), nil
}
