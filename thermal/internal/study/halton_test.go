package study

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The points are even: in every dimension, each tenth of the probability holds a
// tenth of them, to within two points.
func TestPointsAreEven(t *testing.T) {
	m := normalPoints(usualSamples)
	for j := range haltonDims {
		bins := make([]int, 10)
		for i := range usualSamples {
			z := m.At(i, j)
			if math.IsNaN(z) || math.IsInf(z, 0) {
				t.Fatalf("dimension %d holds %g", j, z)
			}
			bins[min(9, int(10*0.5*math.Erfc(-z/math.Sqrt2)))]++
		}
		for i, n := range bins {
			if n < 19 || n > 32 {
				t.Errorf("dimension %d: %d of 256 points in tenth %d", j, n, i)
			}
		}
	}
}

func TestMorePointsKeepTheFirst(t *testing.T) {
	a, b := halton(256, 3), halton(700, 3)
	if d := cmp.Diff(a, b[:len(a)]); d != "" {
		t.Error(d)
	}
}
