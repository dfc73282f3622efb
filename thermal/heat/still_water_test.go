package heat

import (
	"math"
	"testing"
)

// Densities of water: 999.84, 999.97, 998.21 and 992.2 kg/m3 at 0, 4, 20 and 40 degC
// (handbook tables, from memory).
func TestWaterIsHeaviestAtFourDegrees(t *testing.T) {
	for _, c := range []struct{ tempC, rho float64 }{{0, 999.84}, {4, 999.97}, {20, 998.21}, {40, 992.2}} {
		// The formula is relative to the greatest: 0.03 kg/m3 below 1000.
		if got := waterDensity(c.tempC); math.Abs(got-c.rho) > 0.06 {
			t.Errorf("%g degC: %g, want %g", c.tempC, got, c.rho)
		}
	}
}
