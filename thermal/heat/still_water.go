package heat

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// waterDensity is the density of fresh water, kg/m3, at -5..100 degC, with its
// maximum at 4 degC; 0.02 % to 40 degC, 0.2 % above. McCutcheon, Martin and Barnwell
// 1993, Handbook of Hydrology (from memory).
func waterDensity(t float64) float64 {
	return 1000 * (1 - (t+288.9414)*(t-3.9863)*(t-3.9863)/(508929.2*(t+68.12963)))
}

const (
	stillWaterK     = 0.57    // W/(m K), water at 0..10 degC
	stillWaterAlpha = 1.36e-7 // m2/s, the same
)

// InWater returns the heat transfer coefficient of the surface at faceC in still fresh
// water of waterC, W/(m2 K), by the free convection of FreeNusselt with
//
//	Ra = g D L^3/(nu alpha), D the mean of |rho(t) - rho(waterC)|/rho over t from faceC to waterC
//
// Water is heaviest at 4 degC, so that near it some layers rise while others sink: the
// mean of the amounts keeps the little that is left of the flow. For an upright face
// of 165 mm at 0 degC this gives 340 W/(m2 K) at 18 degC and 116 at 5, where the
// melting of an ice cylinder shows 300 and 115 (see the measured courses). nu as by
// Poiseuille's formula for water. Temperatures -40..100 degC; else a
// [honestplate.RangeError].
func (s Surface) InWater(faceC, waterC float64) (float64, error) {
	if err := check.Fields("water, and what is in it", check.Number("FaceC", faceC, -60, 100, "degC"),
		check.Number("WaterC", waterC, -60, 100, "degC"), check.Number("Length", s.Length, 1e-5, 10, "m")); err != nil {
		return 0, err
	}
	const layers = 8
	far, drive := waterDensity(max(waterC, -5)), 0.0
	for i := range layers {
		t := faceC + (waterC-faceC)*(float64(i)+0.5)/layers
		drive += math.Abs(waterDensity(max(t, -5))-far) / (1000 * layers)
	}
	film := max((faceC+waterC)/2, -5)
	nu := 1.79e-6 / (1 + film*(0.03368+0.000221*film))
	n, err := s.FreeNusselt(gravity*drive*s.Length*s.Length*s.Length/(nu*stillWaterAlpha), nu/stillWaterAlpha)
	return n * stillWaterK / s.Length, honestplate.In("InWater", err)
}
