package rheology

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/rheology/internal/check"
)

// A Custom is a liquid of your own, from a flow curve measured at one temperature, such as
// [flow.Fit] makes of a rheometer's points; [flow.Newtonian] for one that does not thin.
type Custom struct {
	Name    string     `json:"name"`                             // what you call it
	Flow    flow.Model `json:"flow"`                             // flow curve at FlowC
	FlowC   float64    `json:"flow_c"`                           // temperature of the flow curve, degC
	KgPerM3 float64    `json:"density_kg_per_m3"`                // density, kg/m3, weighed: a known volume on a scale
	NPerM   float64    `json:"surface_tension_n_per_m,omitzero"` // surface tension, N/m; 0 means 0.05, most foods' within a third
}

// A flow curve is moved from its temperature by customSlope of ln(viscosity) a degC, as far as
// customFlowMargin: sauces change by 0.012 to 0.04 (those of [Food]). customFlowBand is the
// band at FlowC; away from it customSlope is not known to better than itself.
const (
	customFlowMargin = 10.0 // degC
	customSlope      = 0.020
	customFlowBand   = 0.15
)

// Describe gives its name and where it holds.
func (c Custom) Describe() Description {
	return Description{
		Name: c.Name, Source: "measured by the user",
		LowC: c.FlowC - customFlowMargin, HighC: c.FlowC + customFlowMargin, ShearRate: sauceRate,
		Band: "+-15 % at the measurement's temperature and 2 % more a degC away from it, an engineering estimate",
	}
}

// Viscosity returns the apparent viscosity in Pa s at 50 1/s.
func (c Custom) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return c.ViscosityAtRate(tempC, sauceRate)
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s: that of Flow,
// thinner by 2 % a degC as it warms. It holds 10 degC around FlowC, with a band of 15 % there
// that widens by 2 % a degC.
func (c Custom) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	at, err := flow.Viscosity(c.Flow, shearRate)
	if err := cmp.Or(err, honestplate.Finite("FlowC", c.FlowC, "degC"),
		honestplate.InRange("TempC", tempC, c.FlowC-customFlowMargin, c.FlowC+customFlowMargin, "degC", "your flow curve")); err != nil {
		return honestplate.Estimate{}, err
	}
	e := honestplate.Factor(at, 1+customFlowBand)
	if tempC != c.FlowC {
		change := customSlope * (c.FlowC - tempC)
		e = honestplate.Factor(at*math.Exp(change), math.Exp(math.Hypot(math.Log1p(customFlowBand), change)))
	}
	return check.Unless(check.Band("Flow", e, 1e-9, 1e12, "Pa s", "anything that flows"), e)
}

// YieldStress returns the flow curve's yield stress in Pa, moved in temperature like
// the viscosity.
func (c Custom) YieldStress(tempC float64) (honestplate.Estimate, error) {
	e, err := c.Viscosity(tempC)
	at, err2 := flow.Viscosity(c.Flow, sauceRate)
	if err := cmp.Or(err, err2); err != nil {
		return honestplate.Estimate{}, err
	}
	y := e.Times(c.Flow.Stress(0) / at)
	return y, honestplate.NotNegative("Flow.Stress(0)", y.High, "Pa")
}

func (c Custom) check(tempC float64) error {
	_, err := c.Viscosity(tempC)
	return err
}

// Density returns KgPerM3 at any temperature of the range, band +-1 %. Without it,
// an InputError.
func (c Custom) Density(tempC float64) (honestplate.Estimate, error) {
	err := cmp.Or(c.check(tempC), honestplate.InRange("KgPerM3", c.KgPerM3, 300, 3000, "kg/m3", "liquids of the kitchen"))
	return check.Unless(err, honestplate.Within(c.KgPerM3, 0.01))
}

// SurfaceTension returns NPerM in N/m, band +-10 %; if that is 0, 0.05 with
// a band of +-40 %, which holds oil and syrup alike.
func (c Custom) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if c.NPerM == 0 {
		return check.Unless(c.check(tempC), honestplate.Within(0.05, 0.4))
	}
	err := cmp.Or(c.check(tempC), honestplate.InRange("NPerM", c.NPerM, 0.005, 0.5, "N/m", "liquids of the kitchen"))
	return check.Unless(err, honestplate.Within(c.NPerM, 0.1))
}
