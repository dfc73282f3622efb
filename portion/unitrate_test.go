package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
	"time"
)

func TestTakesWithinAWindow(t *testing.T) {
	rate, takes, err := UnitRate(0.5, 4*time.Minute, 30*time.Second, time.Minute)
	if err != nil || takes != 3 || math.Abs(rate-0.875) > 1e-12 {
		t.Errorf("%v, %d, %v", rate, takes, err)
	}
	if rate, _, err := UnitRate(1, time.Minute, 0, time.Minute); err != nil || rate != 1 {
		t.Errorf("certain take: %v, %v", rate, err)
	}
	for name, c := range map[string]struct {
		rate                float64
		window, setup, take time.Duration
		kind                error
	}{
		"rate":           {0, time.Minute, 0, time.Second, ErrInput},
		"NaN":            {math.NaN(), time.Minute, 0, time.Second, ErrInput},
		"window":         {0.5, -1, 0, time.Second, ErrInput},
		"setup":          {0.5, 1, -1, time.Second, ErrInput},
		"take":           {0.5, 1, 0, 0, ErrInput},
		"no take fits":   {0.5, time.Minute, 30 * time.Second, time.Minute, ErrRange},
		"no setup fits":  {0.5, time.Minute, time.Hour, time.Minute, ErrRange},
		"endless of all": {0.5, time.Minute, math.MaxInt64, math.MaxInt64, ErrRange},
	} {
		if _, _, err := UnitRate(c.rate, c.window, c.setup, c.take); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestALongerWindowNeverLowersTheRate(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 13))
	for range 10_000 {
		p := 0.01 + 0.99*rng.Float64()
		window := time.Minute + time.Duration(rng.Int64N(int64(time.Hour)))
		a, n, err := UnitRate(p, window, 10*time.Second, 20*time.Second)
		if err != nil {
			t.Fatal(err)
		}
		b, m, err := UnitRate(p, window+time.Minute, 10*time.Second, 20*time.Second)
		if err != nil || m != n+3 || b < a || a < p-1e-12 || b > 1 {
			t.Fatalf("%v: %v in %d takes, %v in %d, %v", p, a, n, b, m, err)
		}
	}
}

func FuzzUnitRate(f *testing.F) {
	f.Add(0.5, int64(4e9), int64(1e9), int64(1e9))
	f.Add(math.NaN(), int64(-1), int64(math.MaxInt64), int64(0))
	f.Fuzz(func(t *testing.T, p float64, window, setup, take int64) {
		if rate, m, err := UnitRate(p, time.Duration(window), time.Duration(setup), time.Duration(take)); err == nil {
			if !(rate > 0 && rate <= 1) || m < 1 {
				t.Fatalf("%v in %d takes", rate, m)
			}
		}
	})
}
