package food

import (
	"example.org/honestplate"
	"example.org/honestplate/thermal/heat"
	"example.org/honestplate/thermal/internal/check"
)

// chenLow is the temperature at which Chen's enthalpy is 0, degC.
const chenLow = -40.0

const chen = "Chen 1985"

// Enthalpy returns the enthalpy, J/kg, from 0 at -40 degC to tempC, at most 60 degC.
// Frozen, with temperatures in degC and Tr = -40,
//
//	H = (T - Tr) [1550 + 1260 x_s - (x_w - x_b) L0 Tf/(Tr T)]
//
// and from there on, unfrozen, H(Tf) + (T - Tf) (4190 - 2300 x_s - 628 x_s^3), with
// x_s the solids and x_b = 0.4 x_protein the bound water. Source: Chen 1985, in the
// ASHRAE Refrigeration handbook (read in a copy); found best of the
// composition formulas by Fricke & Becker 2001 (abstract, read). It fails for fats
// and ice cream, says Pham (1995, abstract): for those use FrozenMix.
//
// A freezing point that is not given is an [honestplate.InputError]; others as IceFraction.
func (f Food) Enthalpy(tempC float64) (float64, error) {
	p, err := f.chen(tempC)
	if err != nil {
		return 0, err
	}
	solids := 1 - p[waterPart]
	frozen := func(t float64) float64 {
		return (t - chenLow) * (1550 + 1260*solids - p.freezable()*heat.Fusion*f.FreezeC/(chenLow*t))
	}
	if tempC <= f.FreezeC {
		return frozen(tempC), nil
	}
	return frozen(f.FreezeC) + (tempC-f.FreezeC)*(4190-2300*solids-628*solids*solids*solids), nil
}

func (f Food) chen(tempC float64) (mixParts, error) {
	if err := f.check(); err != nil {
		return mixParts{}, err
	}
	if f.FreezeC == 0 {
		return mixParts{}, check.Input("FreezeC", 0, "degC", "given, for an enthalpy")
	}
	return f.parts(), honestplate.InRange("TempC", tempC, chenLow, 60, "degC", chen)
}
