package rheology

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/flow"
	"example.org/honestplate/rheology/internal/check"
)

// A Custom is a liquid of your own: from a few viscosities measured at different
// temperatures (Curve, by [FitVogel]), or from a flow curve measured at one (Flow, by
// [flow.Fit]), or both, when Curve moves the flow curve in temperature.
type Custom struct {
	Name    string     `json:"name"`                             // what you call it
	Curve   Vogel      `json:"curve,omitzero"`                   // viscosity against temperature; zero if only Flow is known
	Flow    flow.Model `json:"flow,omitzero"`                    // flow curve at FlowC; nil for a Newtonian liquid
	FlowC   float64    `json:"flow_c,omitzero"`                  // temperature of the flow curve, degC
	KgPerM3 float64    `json:"density_kg_per_m3"`                // density, kg/m3, weighed: a known volume on a scale
	NPerM   float64    `json:"surface_tension_n_per_m,omitzero"` // surface tension, N/m; 0 means 0.05, most foods' within a third
}

// When no Curve says more, a flow curve is moved from its temperature by customSlope of
// ln(viscosity) a degC, as far as customFlowMargin: sauces change by 0.012 to 0.04 (those
// of [Food]). customFlowBand is the band at FlowC; away from it customSlope is not known
// to better than itself.
const (
	customFlowMargin = 10.0 // degC
	customSlope      = 0.020
	customFlowBand   = 0.15
)

// Describe gives its name and where it holds.
func (c Custom) Describe() Description {
	d := Description{Name: c.Name, Source: "measured by the user"}
	switch {
	case c.Curve.N > 0:
		d.LowC, d.HighC = c.Curve.LowC, c.Curve.HighC
		d.Band = fmt.Sprintf("x/: %.3g, from %d points", math.Exp(c.Curve.Spread), c.Curve.N)
	case c.Flow != nil:
		d.LowC, d.HighC = c.FlowC-customFlowMargin, c.FlowC+customFlowMargin
		d.Band = "+-15 % at the measurement's temperature and 2 % more a degC away from it, an engineering estimate"
	}
	if c.Flow != nil {
		d.ShearRate = sauceRate
	}
	return d
}

// Viscosity returns the viscosity in Pa s: that of Curve, or with a Flow the apparent
// viscosity at 50 1/s.
func (c Custom) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return c.ViscosityAtRate(tempC, sauceRate)
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s. With
// both Flow and Curve it is the flow curve times how Curve changes from FlowC to
// tempC; with Flow alone it is thinner by 2 % a degC as it warms, and holds 10 degC around
// FlowC, with a band of 15 % there that widens by 2 % a degC.
func (c Custom) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	if c.Flow == nil {
		if err := honestplate.NotNegative("ShearRate", shearRate, "1/s"); err != nil {
			return honestplate.Estimate{}, err
		}
		return c.Curve.Viscosity(tempC)
	}
	at, err := flow.Viscosity(c.Flow, shearRate)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if err := honestplate.Finite("FlowC", c.FlowC, "degC"); err != nil {
		return honestplate.Estimate{}, err
	}
	if c.Curve.N == 0 {
		if err := honestplate.InRange("TempC", tempC, c.FlowC-customFlowMargin, c.FlowC+customFlowMargin, "degC", "your flow curve"); err != nil {
			return honestplate.Estimate{}, err
		}
		change := customSlope * (c.FlowC - tempC)
		e := honestplate.Factor(at*math.Exp(change), math.Exp(math.Hypot(math.Log1p(customFlowBand), change)))
		return check.Unless(check.Band("Flow", e, 1e-9, 1e12, "Pa s", "anything that flows"), e)
	}
	there, err := c.Curve.Viscosity(c.FlowC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	here, err := c.Curve.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	e := here.Times(at / there.Likely)
	return check.Unless(check.Band("Flow", e, 1e-9, 1e12, "Pa s", "anything that flows"), e)
}

// YieldStress returns the flow curve's yield stress in Pa, moved in temperature like
// the viscosity; 0 without a flow curve.
func (c Custom) YieldStress(tempC float64) (honestplate.Estimate, error) {
	e, err := c.Viscosity(tempC)
	if err != nil || c.Flow == nil {
		return honestplate.Estimate{}, err
	}
	return yieldOfCurve(c.Flow, e)
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
