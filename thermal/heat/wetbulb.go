package heat

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/root"
)

// WetBulbC returns the thermodynamic wet-bulb temperature, deg C: what a wet cloth in
// a wind cools to, and a bare drop of water too. It solves
//
//	W = ((2501 - 2.326 t*) W_s* - 1.006 (t - t*))/(2501 + 1.86 t - 4.186 t*)   t* from 0 degC up
//	W = ((2830 - 0.24 t*) W_s* - 1.006 (t - t*))/(2830 + 1.86 t - 2.1 t*)      below
//
// with W_s* the saturated humidity ratio at t*, to 1e-7 K. The two meet with a small
// step at 0 degC; air that falls into it gets 0. Below -100 degC there is no answer
// and the error is an [honestplate.RangeError].
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eqs. 33 and 35, read in a
// copy.
func (a MoistAir) WetBulbC() (float64, error) {
	if err := a.check(); err != nil {
		return 0, err
	}
	if a.RH == 1 {
		return a.TempC, nil
	}
	b := wetBalance{t: a.TempC, w: a.ratio(), p: a.pressure(), by: overWater}
	low, high := 0.0, a.TempC
	if frozen, _ := b.at(0); high <= 0 || frozen > 0 {
		// The answer is below freezing: between 60 K less, or the end of the
		// formulas, and 0 degC.
		b.by, low, high = overIce, max(-100, high-60), min(high, 0)
		if warm, _ := b.at(high); warm <= 0 {
			return high, nil // in the step
		}
		if end, _ := b.at(low); end > 0 {
			return 0, &honestplate.RangeError{Field: "TempC", Value: a.TempC, Low: -100, High: 100, Unit: "degC", Source: "drier and colder air has its wet bulb below -100 degC"}
		}
	}
	// From the warm end, kept in the bracket; a step below 0.001 K lands within 1e-7.
	return root.Newton(func(t float64) (float64, float64) {
		f, slope := b.at(t)
		return f, f / slope
	}, low, high, high, 0.001), nil
}

// A wetBalance is the equation of the wet bulb of air at t with ratio w of vapour.
type wetBalance struct {
	t, w, p float64
	by      wetConstants
}

// at returns by how much a wet bulb of wet is too warm, with the denominators
// multiplied out so that it rises smoothly through the boiling point, and its slope.
func (b wetBalance) at(wet float64) (f, slope float64) {
	c := b.by
	ln, relative := lnSaturation(wet + kelvin)
	pw := math.Exp(ln)
	latent := ratioOfMoles * (c.latent - c.less*wet)
	need := 1.006*(b.t-wet) + b.w*(c.latent+1.86*b.t-c.wet*wet)
	slope = (latent+need)*pw*relative - ratioOfMoles*c.less*pw + (b.p-pw)*(1.006+b.w*c.wet)
	return latent*pw - (b.p-pw)*need, slope
}

// wetConstants are those of the two formulas of WetBulbC, kJ/kg and kJ/(kg K).
type wetConstants struct{ latent, less, wet float64 }

// liquidHeat is the specific heat of liquid water in that formula and in fog, J/(kg K).
const liquidHeat = 4186.0

var (
	overWater = wetConstants{2501, 2.326, liquidHeat / 1000}
	overIce   = wetConstants{2830, 0.24, 2.1}
)
