package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"example.org/honestplate"
)

// Batches against drawing them: each with its own rate, that about a rate which is
// itself uncertain.
func TestBatchesAgainstSimulation(t *testing.T) {
	draws := 60_000
	if testing.Short() {
		draws = 8_000
	}
	source := rand.NewPCG(14, 7)
	r := rand.New(source)
	for _, c := range []struct {
		h Heroes
		n int
	}{
		{Heroes{SuccessRate: 0.6, Correlation: 0.3, Batch: 4, Wanted: 3}, 10},
		{Heroes{SuccessRate: 0.3, Correlation: 0.5, Wanted: 2}, 7},
		{Heroes{Prior: Prior{3, 2}, Takes: 4, Good: 2, Correlation: 0.2, Batch: 5, Wanted: 4}, 13},
		{Heroes{Correlation: 0.1, Batch: 3, Wanted: 2}, 5},
	} {
		got, err := c.h.Chance(c.n)
		if err != nil {
			t.Fatal(err)
		}
		a, b := c.h.beta()
		enough := 0
		for range draws {
			p := c.h.SuccessRate
			if p == 0 {
				p = distuv.Beta{Alpha: a, Beta: b, Src: source}.Rand()
			}
			rate, good := 0.0, 0
			for k := range c.n {
				if k == 0 || c.h.Batch > 0 && k%c.h.Batch == 0 {
					spread := 1/c.h.Correlation - 1
					rate = distuv.Beta{Alpha: p * spread, Beta: (1 - p) * spread, Src: source}.Rand()
				}
				if r.Float64() < rate {
					good++
				}
			}
			if good >= c.h.Wanted {
				enough++
			}
		}
		want := float64(enough) / float64(draws)
		if math.Abs(got-want) > 4*math.Sqrt(got*(1-got)/float64(draws)) {
			t.Errorf("%+v, %d: %g, drawn %g", c.h, c.n, got, want)
		}
	}
}

// As the correlation goes to none the batches come to what single units say, as a batch
// of one does at any correlation; the rates that stand for an uncertain one are good to 1e-7.
func TestBatchesHaveTheirLimits(t *testing.T) {
	for _, h := range []Heroes{{SuccessRate: 0.6, Wanted: 3}, {Takes: 10, Good: 6, Wanted: 3}, {Prior: Prior{0.5, 0.5}, Wanted: 2}, {Prior: Prior{300, 3}, Wanted: 8}} {
		for n := h.Wanted; n < 30; n += 3 {
			single, _ := h.Chance(n)
			weak, together := h, h
			weak.Correlation = 1e-7
			together.Correlation, together.Batch = 0.4, 1
			for _, c := range []struct {
				h   Heroes
				far float64
			}{{weak, 1e-5}, {together, 1e-7}} {
				if got, err := c.h.Chance(n); err != nil || math.Abs(got-single) > c.far {
					t.Errorf("%+v, %d: %g, %v, single units %g", c.h, n, got, err, single)
				}
			}
		}
	}
	for rate, want := range map[float64]float64{1: 1, 1e-12: 0} {
		if got, err := (Heroes{SuccessRate: rate, Correlation: 0.5, Wanted: 2}).Chance(5); err != nil || math.Abs(got-want) > 1e-9 {
			t.Errorf("rate %g: %g, %v", rate, got, err)
		}
	}
	// A rate so near to 1 that nearly no batch fails.
	near := Heroes{Prior: Prior{0.09, 0.045}, Takes: 14, Good: 14, Correlation: 0.6, Batch: 2, Wanted: 47}
	if got, err := near.Chance(54); err != nil || !(got > 0.9 && got <= 1) {
		t.Errorf("near 1: %g, %v", got, err)
	}
	// More units never make it less likely, also where a batch begins.
	h := Heroes{SuccessRate: 0.5, Correlation: 0.6, Batch: 3, Wanted: 4}
	for n, before := 0, 0.0; n < 60; n++ {
		got, err := h.Chance(n)
		if err != nil || got < before-1e-12 {
			t.Fatalf("%d: %g after %g, %v", n, got, before, err)
		}
		before = got
	}
	if n, err := h.Units(); err != nil || n != 17 {
		t.Errorf("units %d, %v", n, err)
	}
}

// The chance after each take is, on average over that take, the chance before it.
func TestFinishIsAMartingale(t *testing.T) {
	for _, h := range []Heroes{
		{SuccessRate: 0.4, Wanted: 2}, {Takes: 3, Good: 1, Wanted: 2}, {Prior: Prior{2, 5}, Wanted: 3},
		{SuccessRate: 0.4, Correlation: 0.3, Batch: 3, Wanted: 2}, {Prior: Prior{2, 3}, Correlation: 0.3, Batch: 2, Wanted: 2},
		{Prior: Prior{2, 3}, Correlation: 0.3, Wanted: 3},
	} {
		const n = 6
		for code := range 1 << 4 {
			takes := []bool{code&1 > 0, code&2 > 0, code&4 > 0, code&8 > 0}
			before, err := h.Finish(n, takes...)
			if err != nil {
				t.Fatal(err)
			}
			good, err := h.Finish(n, append(takes, true)...)
			bad, err2 := h.Finish(n, append(takes, false)...)
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			b, g, f := before[4], good[5], bad[5]
			// The rate of the next take, whatever it is, lies between 0 and 1.
			if b > math.Max(g, f)+1e-12 || b < math.Min(g, f)-1e-12 {
				t.Errorf("%+v after %v: %g, then %g or %g", h, takes, b, g, f)
			}
			if g < f-1e-12 {
				t.Errorf("%+v after %v: a good take makes it less likely, %g, than a bad one, %g", h, takes, g, f)
			}
		}
	}
	got, err := (Heroes{SuccessRate: 0.5, Wanted: 1}).Finish(3, false, true)
	if err != nil || len(got) != 3 || got[0] != 0.875 || got[1] != 0.75 || got[2] != 1 {
		t.Errorf("%v, %v", got, err)
	}
}

func TestPriorAfter(t *testing.T) {
	p, err := Prior{}.After(20, 12, 0.5)
	if err != nil || p != (Prior{7, 5}) {
		t.Errorf("%+v, %v", p, err)
	}
	for name, err := range map[string]error{
		"takes":  failure(Prior{}.After(-1, 0, 1)),
		"good":   failure(Prior{}.After(1, 2, 1)),
		"weight": failure(Prior{}.After(1, 1, math.NaN())),
		"A":      failure(Prior{-1, 1}.After(1, 1, 1)),
		"B":      failure(Prior{1, math.Inf(1)}.After(1, 1, 1)),
	} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := (Prior{1e-9, 1}).After(1, 1, 1); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("%v", err)
	}
}

func TestHeroesRefuseContradictions(t *testing.T) {
	for field, h := range map[string]Heroes{
		"Prior.A":     {SuccessRate: 0.5, Prior: Prior{1, 1}},
		"Prior.B":     {Prior: Prior{1, -1}},
		"Correlation": {SuccessRate: 0.5, Correlation: 1},
		"Batch":       {SuccessRate: 0.5, Batch: 3},
		"Wanted":      {SuccessRate: 0.5, Correlation: 0.2, Wanted: 1001},
	} {
		if _, err := h.Units(); field != "" && fieldOf(err) != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	if _, err := (Heroes{SuccessRate: 0.5}).Finish(1, true, true); fieldOf(err) != "N" {
		t.Errorf("%v", err)
	}
	nothing := Heroes{Wanted: 1, Confidence: 0.9}
	if n, err := nothing.Units(); err != nil || n != 9 {
		t.Errorf("nothing known: %d, %v", n, err)
	}
}

func TestStopIsBestOfAllThresholds(t *testing.T) {
	// Every rule that stops at or below a number of good takes, over few takes, tried.
	h := Heroes{Prior: Prior{2, 2}, Wanted: 2}
	const n, value, cost = 4, 10, 3.0
	best, err := h.Stop(n, value, cost)
	if err != nil {
		t.Fatal(err)
	}
	top := 0.0
	for code := range 27 * 3 {
		rule := []int{code%3 - 1, code/3%3 - 1, code/9%3 - 1, code/27%3 - 1}
		var worth func(k, g int) float64
		worth = func(k, g int) float64 {
			if k == n || g == h.Wanted || g <= rule[k] {
				return 0
			}
			p := (2 + float64(g)) / (4 + float64(k))
			return -cost + p*(value+worth(k+1, g+1)) + (1-p)*worth(k+1, g)
		}
		top = max(top, worth(0, 0))
	}
	if math.Abs(best.Value-top) > 1e-12 {
		t.Errorf("worth %g, the best rule %g", best.Value, top)
	}
	if math.Abs(best.Value-(value*best.Heroes-cost*best.Takes)) > 1e-12 {
		t.Errorf("%+v does not add up", best)
	}
	free, err := Heroes{SuccessRate: 0.5, Wanted: 3}.Stop(20, 1, 0)
	if err != nil || free.StopAt[0] != -1 || math.Abs(free.Chance-0.99979877) > 1e-7 {
		t.Errorf("free takes: %+v, %v", free, err)
	}
	dear, err := Heroes{SuccessRate: 0.5, Wanted: 3}.Stop(20, 1, 0.5)
	if err != nil || dear.StopAt[0] != 0 || dear.Takes != 0 {
		t.Errorf("a tie stops: %+v, %v", dear, err)
	}
	for field, err := range map[string]error{
		"Takes":       failure(h.Stop(0, 1, 1)),
		"Value":       failure(h.Stop(1, 0, 1)),
		"Cost":        failure(h.Stop(1, 1, -1)),
		"Correlation": failure(Heroes{Correlation: 0.1}.Stop(1, 1, 1)),
		"Good":        failure(Heroes{Good: 1}.Stop(1, 1, 1)),
	} {
		if fieldOf(err) != field {
			t.Errorf("%s: %v", field, err)
		}
	}
	if _, err := h.Stop(5001, 1, 1); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("%v", err)
	}
}
