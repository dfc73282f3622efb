package food

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
)

// Whatever goes in, the heat of what comes out is the same.
func TestMixIceKeepsHeat(t *testing.T) {
	heat := func(ice, iceC, water, waterC float64) float64 {
		return water*heat.WaterHeat*waterC + ice*(heat.Ice().SpecificHeat*iceC-heat.Fusion)
	}
	for _, ice := range []float64{0, 10, 100, 1000} {
		for _, water := range []float64{1, 50, 500} {
			for _, iceC := range []float64{0, -20, -60} {
				for _, waterC := range []float64{0, 4, 30, 100} {
					m, err := MixIce(ice, iceC, water, waterC)
					if err != nil {
						t.Fatal(err)
					}
					before := heat(ice, iceC, water, waterC)
					after := heat(m.IceGrams, min(m.TempC, 0), m.WaterGrams, max(m.TempC, 0))
					if math.Abs(before-after) > 1e-6*(1+math.Abs(before)) || math.Abs(m.IceGrams+m.WaterGrams-ice-water) > 1e-9*(ice+water) {
						t.Errorf("%g g at %g in %g g at %g: %+v", ice, iceC, water, waterC, m)
					}
				}
			}
		}
	}
	for _, v := range [][4]float64{{-1, 0, 1, 0}, {1, 5, 1, 0}, {1, 0, -1, 0}, {1, 0, 1, 200}, {0, 0, 0, 0}, {math.NaN(), 0, 1, 1}} {
		if _, err := MixIce(v[0], v[1], v[2], v[3]); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%v: %v", v, err)
		}
	}
}

func FuzzMixIce(f *testing.F) {
	f.Add(52.0, 0.0, 100.0, 40.0)
	f.Fuzz(func(t *testing.T, ice, iceC, water, waterC float64) {
		m, err := MixIce(ice, iceC, water, waterC)
		if err == nil && (math.IsNaN(m.TempC) || m.IceGrams < 0 || m.WaterGrams < 0 || m.TempC < -60.001 || m.TempC > 100.001) {
			t.Fatalf("%+v", m)
		}
	})
}
