package rheology

import (
	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
)

// alongCurve is the viscosity of a flow curve at a shear rate over that at another, both in 1/s.
func alongCurve(m flow.Model, rate, from float64) (float64, error) {
	at, err := flow.Viscosity(m, rate)
	if err != nil {
		return 0, err
	}
	there, err := flow.Viscosity(m, from)
	return at / there, err
}

// yieldOfCurve is the yield stress in Pa of a flow curve moved so that e is its viscosity at
// the rate of the sauces.
func yieldOfCurve(m flow.Model, e honestplate.Estimate) (honestplate.Estimate, error) {
	at, err := flow.Viscosity(m, sauceRate)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	y := e.Times(m.Stress(0) / at)
	return y, honestplate.NotNegative("Flow.Stress(0)", y.High, "Pa")
}
