package thermal

import (
	"math"
	"testing"
	"time"

	"example.org/honestplate/thermal/internal/study"
)

// A run that comes at 100 s was seen at 120 s by a sharp watch: its event's own doubt, a
// share z of the time, takes the difference up, whatever it was drawn as before. An event
// that was not seen keeps what was drawn.
func TestAnEventSeenSettlesItsOwnDoubt(t *testing.T) {
	const sd = 0.1
	l := look{
		seen: []Seen{{Event: "beads", At: 120 * time.Second, Within: time.Second}}, which: []int{0}, events: 2, sd: sd,
		study: study.Study{Outputs: 2},
	}
	for _, drawn := range []float64{-1.5, 0, 2} {
		z := [][]float64{{drawn}, {drawn}}
		logs := l.settle([]float64{100, 100}, z)
		if at := 100 * (1 + sd*z[0][0]); math.Abs(at-120) > 2 {
			t.Errorf("drawn as %g the event comes at %.1f s, and was seen at 120", drawn, at)
		}
		if z[1][0] != drawn {
			t.Errorf("an event that nobody saw moved from %g to %g", drawn, z[1][0])
		}
		// Two standard deviations of the doubt off: exp(-2) of the chance of one that fits.
		fits := l.settle([]float64{120, 100}, [][]float64{{0}, {0}})
		if ratio := logs[0] - fits[0]; ratio > -1 || ratio < -3 {
			t.Errorf("a run that is 20 s off is exp(%.2f) as likely as one that is not", ratio)
		}
	}
}
