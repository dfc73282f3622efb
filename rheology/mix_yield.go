package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

const leastYield = 1e-6 // Pa: weaker than any film of water

// Powers of a blend's yield stress: tau^(1/p) is mixed by mass. What stands is a network
// whose yield stress falls with the second to fourth power of what is left of it when it is
// thinned (suspensions and gels, from memory): the third, with the second and fourth as the
// ends of the band.
const yieldPower, yieldPowerLow, yieldPowerHigh = 3.0, 4.0, 2.0

// YieldStress returns the stress in Pa below which the blend stands,
//
//	tau^(1/3) = sum w_i tau_i^(1/3)
//
// by mass, with the powers 1/4 and 1/2 and the ends of the parts' bands as its band. So a
// spoon of water hardly loosens a ketchup, and thinned to half it keeps an eighth. A part
// without a yield stress counts as 0; the zero Estimate if none has one, or less than a
// micropascal is left. Errors: those of the parts.
func (m Mix) YieldStress(tempC float64) (honestplate.Estimate, error) {
	if len(m.parts) == 0 {
		return honestplate.Estimate{}, m.empty()
	}
	if len(m.parts) == 1 {
		return check.YieldStress(m.parts[0].liquid, tempC)
	}
	var low, likely, high float64
	for _, p := range m.parts {
		e, err := check.YieldStress(p.liquid, tempC)
		if err != nil {
			return honestplate.Estimate{}, err
		}
		low += p.w * math.Pow(e.Low, 1/yieldPowerLow)
		likely += p.w * math.Pow(e.Likely, 1/yieldPower)
		high += p.w * math.Pow(e.High, 1/yieldPowerHigh)
	}
	e := honestplate.Estimate{Low: math.Pow(low, yieldPowerLow), Likely: math.Pow(likely, yieldPower), High: math.Pow(high, yieldPowerHigh)}
	if e.Likely < leastYield {
		return honestplate.Estimate{}, nil
	}
	// For two sauces the powers cross: the band takes in the likely value.
	return honestplate.Estimate{Low: min(e.Low, e.Likely), Likely: e.Likely, High: max(e.High, e.Likely)}, nil
}
