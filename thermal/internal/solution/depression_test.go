package solution

import (
	"math"
	"testing"
)

// The depression is continuous into its extension.
func TestDepressionGoesOnSmoothly(t *testing.T) {
	last, _ := Depression(0)
	for x := 0.5; x < 900; x += 0.5 {
		d, slope := Depression(x)
		if d <= last || d-last > 0.12 {
			t.Fatalf("at %g g: %g after %g", x, d, last)
		}
		if next, _ := Depression(x + 1e-4); math.Abs((next-d)/1e-4-slope) > 1e-6 {
			t.Fatalf("at %g g: slope %g, by difference %g", x, slope, (next-d)/1e-4)
		}
		last = d
	}
}
