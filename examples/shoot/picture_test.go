package shoot

import (
	"math/rand/v2"
	"testing"
	"time"

	"example.org/honestplate"
)

func s(seconds float64) honestplate.Moment {
	return honestplate.After(time.Duration(seconds * float64(time.Second)))
}

func span(from, to honestplate.Moment) interval { return interval{from: from, to: to} }

func ones(n int) []float64 {
	w := make([]float64, n)
	for i := range w {
		w[i] = 1
	}
	return w
}

func TestAPictureStandsWhereNineInTenRunsShowIt(t *testing.T) {
	var runs []interval
	for i := range 10 {
		runs = append(runs, span(s(float64(i)), s(float64(100+10*i))))
	}
	p := stand(runs, ones(10))
	// The ninth run opens at 8 s; the second to close closes at 110 s.
	if !p.Sure || p.From != s(8) || p.To != s(110) {
		t.Errorf("got %v to %v, %v", p.From, p.To, p.Sure)
	}
	if p.Chance != 1 || p.Best != s(59) {
		t.Errorf("best %v with %g", p.Best, p.Chance)
	}
}

func TestAPictureThatDoesNotStandHasABestMoment(t *testing.T) {
	runs := []interval{span(s(0), s(10)), span(s(5), s(15)), span(s(9), s(20)), span(honestplate.Never(), honestplate.Never()), span(s(30), s(25))}
	p := stand(runs, ones(5))
	if p.Sure || p.Best != s(9) || p.Chance != 0.6 || p.From != p.To {
		t.Errorf("got %+v", p)
	}
	none := stand(runs[3:4], ones(1))
	if none.Sure || none.Chance != 0 || !none.Best.Never || none.Length() != honestplate.After(0) {
		t.Errorf("got %+v", none)
	}
}

func TestAPictureMayNeverEnd(t *testing.T) {
	p := stand([]interval{span(s(3), honestplate.Never()), span(s(4), honestplate.Never())}, ones(2))
	if !p.Sure || p.From != s(4) || !p.To.Never || !p.Length().Never {
		t.Errorf("got %+v", p)
	}
}

func TestWeightsCountAsRuns(t *testing.T) {
	runs := []interval{span(s(0), s(10)), span(s(20), s(30))}
	if p := stand(runs, []float64{9, 1}); !p.Sure || p.From != s(0) || p.To != s(10) {
		t.Errorf("got %+v", p)
	}
	if p := stand(runs, []float64{8, 2}); p.Sure || p.Chance != 0.8 {
		t.Errorf("got %+v", p)
	}
}

func TestTheSureIntervalAgreesWithLookingAtEverySecond(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	for range 300 {
		n := 1 + rng.IntN(40)
		runs, weights := make([]interval, n), make([]float64, n)
		for i := range runs {
			from := float64(rng.IntN(30))
			runs[i] = span(s(from), s(from+float64(rng.IntN(60))))
			weights[i] = float64(1 + rng.IntN(3))
		}
		p := stand(runs, weights)
		best, longest, run := 0.0, 0, 0
		for sec := range 100 {
			share := shownAt(runs, weights, s(float64(sec)))
			best = max(best, share)
			if share >= SureShare-1e-12 {
				run++
			} else {
				run = 0
			}
			longest = max(longest, run)
		}
		if got := int(p.Length().After / time.Second); got != longest {
			t.Errorf("longest sure interval %d s, looking gives %d", got, longest)
		}
		if !p.Sure && p.Chance != best {
			t.Errorf("best chance %g, looking gives %g", p.Chance, best)
		}
		if p.Sure && p.Chance < SureShare-1e-12 {
			t.Errorf("inside the window the chance is %g", p.Chance)
		}
	}
}
