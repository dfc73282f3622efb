package physics

import (
	"math"
	"testing"
)

// The constants are those of their definitions; the rule integrates polynomials up to the
// ninth power exactly.
func TestConstantsAndRule(t *testing.T) {
	if Gravity != 9.80665 || Kelvin != 273.15 {
		t.Errorf("%v, %v", Gravity, Kelvin)
	}
	for n := range 10 {
		sum := 0.0
		for i, x := range Nodes {
			sum += Weights[i] * math.Pow(x, float64(n))
		}
		if math.Abs(sum*float64(n+1)-1) > 1e-13 {
			t.Errorf("x^%d: %v", n, sum)
		}
	}
}
