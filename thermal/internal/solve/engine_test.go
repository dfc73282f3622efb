package solve

import (
	"math"
	"testing"
)

// swing is a law that changes with time.
type swing struct{}

func (swing) At(surfaceC, seconds float64) (flux, slope float64) {
	return 200*math.Sin(seconds/200) - 10*surfaceC, -10
}

// Steps of a fixed size on a smooth problem: second order in time.
func TestSolverIsSecondOrderInTime(t *testing.T) {
	var c Compiled
	Load(&c, []Point{{-50, 0, 0.5}, {50, 100 * 2e6, 0.5}}, 1, 1)
	heat := func(steps int) float64 {
		var e Engine
		e.Build(0, 0.02, 24, UsualGrade)
		e.Begin(&c, 0, 1, swing{})
		for range steps {
			e.step(600 / float64(steps))
		}
		return e.Heat
	}
	h1, h2, h3 := heat(20), heat(40), heat(80)
	if order := math.Log2(math.Abs((h1 - h2) / (h2 - h3))); !(order > 1.8 && order < 2.3) {
		t.Errorf("order %.2f in time, want 2", order)
	}
}
