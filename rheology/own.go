package rheology

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// Own is a liquid of your own: from a few viscosities measured at different
// temperatures (Curve, by FitVogel), or from a flow curve measured at one (Flow, by
// FitFlow), or both, when Curve moves the flow curve in temperature.
type Own struct {
	Name             string    // what you call it
	Curve            Vogel     // viscosity against temperature; zero if only Flow is known
	Flow             FlowModel // flow curve at FlowC; nil for a Newtonian liquid
	FlowC            float64   // temperature of the flow curve, degC
	DensityKgM3      float64   // kg/m3, weighed: a known volume on a scale
	SurfaceTensionNm float64   // N/m; 0 means 0.05, most foods' within a third
}

const ownFlowMargin = 3.0 // degC around FlowC, when no Curve says more

// Describe gives its name and where it holds.
func (o Own) Describe() Description {
	d := Description{Name: o.Name, Source: "measured by the user"}
	switch {
	case o.Curve.N > 0:
		d.LowC, d.HighC = o.Curve.LowC, o.Curve.HighC
		d.Band = fmt.Sprintf("x/: %.3g, from %d points", math.Exp(o.Curve.Spread), o.Curve.N)
	case o.Flow != nil:
		d.LowC, d.HighC = o.FlowC-ownFlowMargin, o.FlowC+ownFlowMargin
		d.Band = "+-15 % with the 3 degC around the measurement, an engineering estimate"
	}
	if o.Flow != nil {
		d.ShearRate = sauceRate
	}
	return d
}

// Viscosity returns the viscosity in Pa s: that of Curve, or with a Flow the apparent
// viscosity at 50 1/s.
func (o Own) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return o.ViscosityAtRate(tempC, sauceRate)
}

// ViscosityAtRate returns the apparent viscosity in Pa s at a shear rate in 1/s. With
// both Flow and Curve it is the flow curve times how Curve changes from FlowC to
// tempC; with Flow alone it holds 3 degC around FlowC, +-15 %.
func (o Own) ViscosityAtRate(tempC, shearRate float64) (honestplate.Estimate, error) {
	if o.Flow == nil {
		if err := honestplate.NotNegative("shear rate", shearRate, "1/s"); err != nil {
			return honestplate.Estimate{}, err
		}
		return o.Curve.Viscosity(tempC)
	}
	at, err := ApparentViscosity(o.Flow, shearRate)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if err := honestplate.Finite("temperature of the flow curve", o.FlowC, "degC"); err != nil {
		return honestplate.Estimate{}, err
	}
	if o.Curve.N == 0 {
		if err := honestplate.InRange("temperature", tempC, o.FlowC-ownFlowMargin, o.FlowC+ownFlowMargin, "degC", "your flow curve"); err != nil {
			return honestplate.Estimate{}, err
		}
		return honestplate.Within(at, 0.15), nil
	}
	there, err := o.Curve.Viscosity(o.FlowC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	here, err := o.Curve.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	e := here.Times(at / there.Likely)
	if err := check.Band("apparent viscosity", e, 1e-9, 1e12, "Pa s", "anything that flows"); err != nil {
		return honestplate.Estimate{}, err
	}
	return e, nil
}

// YieldStress returns the flow curve's yield stress in Pa, moved in temperature like
// the viscosity; 0 without a flow curve.
func (o Own) YieldStress(tempC float64) (honestplate.Estimate, error) {
	e, err := o.Viscosity(tempC)
	if err != nil || o.Flow == nil {
		return honestplate.Estimate{}, err
	}
	at, err := ApparentViscosity(o.Flow, sauceRate)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	y := e.Times(o.Flow.YieldStress() / at)
	if err := honestplate.Finite("yield stress", y.High, "Pa"); err != nil {
		return honestplate.Estimate{}, err
	}
	return y, nil
}

func (o Own) check(tempC float64) error {
	_, err := o.Viscosity(tempC)
	return err
}

// Density returns DensityKgM3 at any temperature of the range, band +-1 %. Without it,
// an InputError.
func (o Own) Density(tempC float64) (honestplate.Estimate, error) {
	if err := o.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	if err := honestplate.InRange("density of your liquid", o.DensityKgM3, 300, 3000, "kg/m3", "liquids of the kitchen"); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(o.DensityKgM3, 0.01), nil
}

// SurfaceTension returns SurfaceTensionNm in N/m, band +-10 %; if that is 0, 0.05 with
// a band of +-40 %, which holds oil and syrup alike.
func (o Own) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	if err := o.check(tempC); err != nil {
		return honestplate.Estimate{}, err
	}
	if o.SurfaceTensionNm == 0 {
		return honestplate.Within(0.05, 0.4), nil
	}
	if err := honestplate.InRange("surface tension of your liquid", o.SurfaceTensionNm, 0.005, 0.5, "N/m", "liquids of the kitchen"); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Within(o.SurfaceTensionNm, 0.1), nil
}
