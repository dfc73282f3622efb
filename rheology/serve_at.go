package rheology

import (
	"cmp"
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/root"
)

// ServeAt returns the temperature in degC at which a liquid, just as it is, has the
// viscosity pas in Pa s, between lowC and highC: what is left to choose for an
// advertised product, and chilling instead of thickening for a stand-in. Found by
// bisection to a ten-thousandth of a degree. A viscosity that the liquid has
// nowhere between is a RangeError with what it has; a temperature outside the
// liquid's range is the liquid's own; lowC above highC is an InputError.
//
// Keep food at temperatures that food law allows, or do not serve it afterwards.
func ServeAt(l Liquid, pas, lowC, highC float64) (tempC float64, err error) {
	if check.IsNil(l) {
		return 0, check.Missing("Liquid", "a liquid")
	}
	if err := cmp.Or(honestplate.Positive("PaS", pas, "Pa s"), honestplate.Finite("LowC", lowC, "degC"), honestplate.Finite("HighC", highC, "degC")); err != nil {
		return 0, err
	}
	if lowC > highC {
		return 0, check.Input("LowC", lowC, "degC", fmt.Sprintf("at most the highest, %.6g degC", highC))
	}
	low, err := check.Viscosity(l.Viscosity(lowC))
	high, err2 := check.Viscosity(l.Viscosity(highC))
	if err := cmp.Or(err, err2); err != nil {
		return 0, err
	}
	above := func(v float64) bool { return v >= pas }
	switch {
	case low.Likely == pas:
		return lowC, nil
	case high.Likely == pas:
		return highC, nil
	case above(low.Likely) == above(high.Likely):
		return 0, check.Outside("PaS", pas, min(low.Likely, high.Likely), max(low.Likely, high.Likely), "Pa s", fmt.Sprintf("reach of %s between %.4g and %.4g degC", l.Describe().Name, lowC, highC))
	}
	return root.Bisect(func(t float64) (float64, error) {
		v, err := check.Viscosity(l.Viscosity(t))
		return v.Likely - pas, err
	}, lowC, highC, 1e-4)
}

// Chill returns the temperature in degC, between lowC and highC, at which a batch
// of measured viscosity, in Pa s at the recipe's TempC, has its target without any
// addition: chilling instead of thickening. The measured value scales the
// model; how viscosity changes with temperature is the model's own. Errors are
// those of ServeAt.
func (b Batch) Chill(measuredPaS, lowC, highC float64) (tempC float64, err error) {
	if err := cmp.Or(honestplate.Positive("MeasuredPaS", measuredPaS, "Pa s"), honestplate.Positive("TargetPaS", b.TargetPaS, "Pa s")); err != nil {
		return 0, err
	}
	m, err := b.Mix()
	if err != nil {
		return 0, err
	}
	model, err := m.Viscosity(b.Recipe.TempC)
	if err != nil {
		return 0, err
	}
	return ServeAt(m, b.TargetPaS*model.Likely/measuredPaS, lowC, highC)
}
