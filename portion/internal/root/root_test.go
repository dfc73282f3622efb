package root_test

import (
	"math"
	"testing"

	"example.org/honestplate/portion/internal/root"
)

func TestSplitEndsBetweenNeighbours(t *testing.T) {
	for _, at := range []float64{0, 1e-300, 0.1, math.Sqrt2, 1e17, -3.7} {
		last, first := root.Split(-10, 1e18, func(x float64) bool { return x <= at })
		if last > at || first < at || first <= last {
			t.Errorf("%v is not in %v..%v", at, last, first)
		}
		if at != 0 && math.Abs(at) > 1e-200 && math.Nextafter(last, first) != first {
			t.Errorf("%v..%v are no neighbours", last, first)
		}
	}
}

func TestSplitFindsRoots(t *testing.T) {
	if x, _ := root.Split(0, 2, func(x float64) bool { return x*x <= 2 }); math.Abs(x-math.Sqrt2) > 4e-16 {
		t.Errorf("the root of 2 is %v", x)
	}
	// Where it holds everywhere or nowhere an end comes back.
	if last, _ := root.Split(0, 1, func(float64) bool { return false }); last != 0 {
		t.Errorf("nowhere: %v", last)
	}
	if _, first := root.Split(0, 1, func(float64) bool { return true }); first != 1 {
		t.Errorf("everywhere: %v", first)
	}
}
