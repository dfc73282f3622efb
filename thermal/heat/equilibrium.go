package heat

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/root"
)

// EquilibriumC returns the temperature at which the surface neither gains nor loses
// heat while it absorbs light W/m2, deg C: what a thin thing under a lamp comes to, or a
// wet cloth in a draught. By bisection to 1e-9 K: the balance falls with temperature. If
// it lies beyond -100..150 degC, or where a moist surface boils, the error is a
// [honestplate.RangeError].
func (x Exchanger) EquilibriumC(light float64) (float64, error) {
	low, high := -100.0, 150.0
	if most := 0.95 * x.pressure; x.activity*saturation(high) > most {
		// just below where the vapour at the surface is 95 % of the air pressure
		high = boiling(most/x.activity) - 1e-6
	}
	for _, end := range [...]float64{low, high} {
		f, err := x.At(end, light)
		if err != nil {
			return 0, err
		}
		if total := f.Total(); end == low && total < 0 || end == high && total > 0 {
			return 0, &honestplate.RangeError{Field: "SurfaceC", Value: end + math.Copysign(1, total), Low: low, High: high, Unit: "degC", Source: "where the balance is sought; a moist surface only to where it boils"}
		}
	}
	return root.Rising(func(t float64) float64 {
		f, _ := x.At(t, light) // between two ends that have an answer
		return -f.Total()
	}, low, high), nil
}
