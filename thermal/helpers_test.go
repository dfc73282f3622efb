package thermal

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate"
)

// neverAt sorts after every time.
const neverAt = time.Duration(math.MaxInt64)

// at is a moment as a duration, to be compared: never comes last.
func at(m honestplate.Moment) time.Duration {
	if m.Never {
		return neverAt
	}
	return m.After
}

// runOnce is the likely run of a clock and its times, s.
func runOnce[M any](t testing.TB, f frame[M], err error) (M, []float64) {
	t.Helper()
	m, times := f.model, make([]float64, len(f.events))
	if err == nil {
		err = f.run(&m, times, noCourse)
	}
	if err != nil {
		t.Fatal(err)
	}
	return m, times
}

// missing is the imbalance of a heat account as a share of all heat exchanged.
func missing(b HeatBalance) float64 {
	all := math.Abs(b.Air) + math.Abs(b.Ends) + math.Abs(b.Light) + math.Abs(b.Thawing) + math.Abs(b.Stored)
	return math.Abs(b.Air+b.Ends+b.Light+b.Thawing-b.Stored) / max(all, 1e-300)
}
