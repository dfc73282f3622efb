package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
)

func TestHeroUnitsForOneGoodUnit(t *testing.T) {
	for _, p := range []float64{0.1, 0.3, 0.6, 0.9} {
		for _, c := range []float64{0.5, 0.9, 0.99} {
			got, err := Heroes{SuccessRate: p, Wanted: 1, Confidence: c}.Units()
			want := int(math.Ceil(math.Log(1-c)/math.Log(1-p) - 1e-9))
			if err != nil || got != want {
				t.Errorf("p=%v C=%v: %d, %v; want %d", p, c, got, err, want)
			}
		}
	}
}

// Three quarters are reached exactly by two units of one half: rounding must not
// ask for a third. And "at least 5" at 0.5 and 95 % is 16; a printed 18 is for more
// than 5.
func TestConfidenceReachedExactlyIsEnough(t *testing.T) {
	for _, c := range []struct {
		h    Heroes
		want int
	}{
		{Heroes{SuccessRate: 0.5, Confidence: 0.75}, 2},
		{Heroes{SuccessRate: 0.5, Wanted: 5}, 16},
		{Heroes{SuccessRate: 1, Wanted: 7}, 7},
	} {
		if got, err := c.h.Units(); err != nil || got != c.want {
			t.Errorf("%+v: %d, %v; want %d", c.h, got, err, c.want)
		}
	}
}

// tail sums the binomial distribution term by term.
func tail(n, k int, p float64) (sum float64) {
	for i := k; i <= n; i++ {
		a, _ := math.Lgamma(float64(n + 1))
		b, _ := math.Lgamma(float64(i + 1))
		c, _ := math.Lgamma(float64(n - i + 1))
		sum += math.Exp(a - b - c + float64(i)*math.Log(p) + float64(n-i)*math.Log1p(-p))
	}
	return sum
}

func TestUnitsAreTheLeastThatDo(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 9))
	for range 1000 {
		h := Heroes{SuccessRate: 0.05 + 0.9*rng.Float64(), Wanted: 1 + rng.IntN(6), Confidence: 0.5 + 0.49*rng.Float64()}
		n, err := h.Units()
		if err != nil {
			t.Fatal(err)
		}
		if tail(n, h.Wanted, h.SuccessRate) < h.Confidence-1e-9 || tail(n-1, h.Wanted, h.SuccessRate) > h.Confidence+1e-9 {
			t.Fatalf("%+v: %d units", h, n)
		}
		more := h
		more.Wanted++
		if m, err := more.Units(); err != nil || m <= n {
			t.Fatalf("%+v: %d units, one more wanted: %d, %v", h, n, m, err)
		}
	}
}

// The chance judged by past takes is the average of the known-rate chance over
// every rate, weighted by what the takes say: compared with the sum over a fine
// grid of rates.
func TestPastTakesAreTheAverageOverRates(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 9))
	for range 40 {
		h := Heroes{Takes: 1 + rng.IntN(20), Wanted: 1 + rng.IntN(4)}
		h.Good = rng.IntN(h.Takes + 1)
		n := h.Wanted + rng.IntN(15)
		got, err := h.Chance(n)
		if err != nil {
			t.Fatal(err)
		}
		const steps = 4000
		sum, weight := 0.0, 0.0
		for i := range steps {
			p := (float64(i) + 0.5) / steps
			w := math.Pow(p, float64(h.Good)) * math.Pow(1-p, float64(h.Takes-h.Good))
			sum += w * tail(n, h.Wanted, p)
			weight += w
		}
		if math.Abs(got-sum/weight) > 1e-5 {
			t.Fatalf("%+v, %d units: %v, want %v", h, n, got, sum/weight)
		}
	}
}

func TestFewTakesCostUnits(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	for range 1000 {
		good := 1 + rng.IntN(8)
		takes := good + rng.IntN(5)
		wanted := 1 + rng.IntN(3)
		few, err := Heroes{Takes: takes, Good: good, Wanted: wanted, Confidence: 0.9}.Units()
		if err != nil {
			t.Fatal(err)
		}
		many, err := Heroes{Takes: 50 * takes, Good: 50 * good, Wanted: wanted, Confidence: 0.9}.Units()
		if err != nil {
			t.Fatal(err)
		}
		if many > few {
			t.Fatalf("%d of %d good: %d units, %d for fifty times the takes", good, takes, few, many)
		}
	}
}

func TestLowestRateIsReachedBySuchTakes(t *testing.T) {
	low, err := Heroes{Takes: 10, Good: 6, Confidence: 0.95}.LowestRate()
	if err != nil || low <= 0.3 || low >= 0.6 {
		t.Errorf("6 of 10: at least %v, %v", low, err)
	}
	if low, err := (Heroes{}).LowestRate(); err != nil || math.Abs(low-0.05) > 1e-12 {
		t.Errorf("nothing known, every rate equally likely: %g, %v", low, err)
	}
}

func TestBadHeroes(t *testing.T) {
	for name, c := range map[string]struct {
		h    Heroes
		kind error
	}{
		"NaN rate":        {Heroes{SuccessRate: math.NaN()}, honestplate.ErrInput},
		"rate above 1":    {Heroes{SuccessRate: 1.1}, honestplate.ErrInput},
		"negative wanted": {Heroes{SuccessRate: 0.5, Wanted: -1}, honestplate.ErrInput},
		"huge wanted":     {Heroes{SuccessRate: 0.5, Wanted: 1e7}, honestplate.ErrRange},
		"certainty":       {Heroes{SuccessRate: 0.5, Confidence: 1}, honestplate.ErrInput},
		"NaN confidence":  {Heroes{SuccessRate: 0.5, Confidence: math.NaN()}, honestplate.ErrInput},
		"hopeless":        {Heroes{SuccessRate: 1e-9}, honestplate.ErrRange},
		"negative takes":  {Heroes{Takes: -1}, honestplate.ErrInput},
		"too many good":   {Heroes{Takes: 3, Good: 4}, honestplate.ErrInput},
		"both":            {Heroes{SuccessRate: 0.5, Takes: 3}, honestplate.ErrInput},
	} {
		if _, err := c.h.Units(); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := c.h.Chance(3); err == nil && c.kind == honestplate.ErrInput {
			t.Errorf("%s: no error from Chance", name)
		}
	}
	for n, kind := range map[int]error{-1: honestplate.ErrInput, 1e7: honestplate.ErrRange} {
		if _, err := (Heroes{SuccessRate: 0.5}).Chance(n); !errors.Is(err, kind) {
			t.Errorf("%d units: %v", n, err)
		}
	}
}

func BenchmarkHeroUnits(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (Heroes{SuccessRate: 0.6, Wanted: 3, Confidence: 0.95}).Units(); err != nil {
			b.Fatal(err)
		}
	}
}
