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
// and the error is a [honestplate.RangeError].
//
// Source: ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, eqs. 33 and 35, read in a
// copy.
func (a MoistAir) WetBulbC() (float64, error) {
	if err := a.check(); err != nil {
		return 0, err
	}
	ln, slope := lnSaturation(a.TempC + kelvin)
	full := math.Exp(ln)
	if a.RH == 1 {
		return a.TempC, nil
	}
	b := wetBalance{t: a.TempC, p: a.pressure()}
	b.w = ratioFrom(a.RH*full, b.p)
	low, high, wet := 0.0, a.TempC, a.TempC
	f, df, ddf := b.at(wet, full, slope)
	if frozen, _, _ := b.at(0, atFreezing, 0); high <= 0 || frozen > 0 {
		// The answer is below freezing: between 60 K less, or the end of the
		// formulas, and 0 degC.
		b.ice = true
		low, high = max(-100, high-60), min(high, 0)
		if f, df, ddf = b.saturatedAt(high); f <= 0 {
			return high, nil // in the step
		}
		if end, _, _ := b.saturatedAt(low); end > 0 {
			return 0, &honestplate.RangeError{Field: "TempC", Value: a.TempC, Low: -100, High: 100, Unit: "degC", Source: "drier and colder air has its wet bulb below -100 degC"}
		}
		wet = high
	}
	// Halley's method from the warm end, whose vapour pressure is known already;
	// kept in the bracket. A step below 0.02 K lands within 1e-7.
	first := true
	return root.Newton(func(t float64) (float64, float64) {
		if !first {
			f, df, ddf = b.saturatedAt(t)
		}
		first = false
		newton := f / df
		return f, newton / (1 - newton*ddf/(2*df))
	}, low, high, wet, 0.02), nil
}

// atFreezing is the saturation pressure at 0 degC.
var atFreezing = saturation(0)

// A wetBalance is the equation of the wet bulb of air at t with ratio w of vapour.
type wetBalance struct {
	t, w, p float64
	ice     bool
}

// at returns by how much a wet bulb of wet is too warm, with the denominators
// multiplied out so that it rises smoothly through the boiling point, and its first
// two derivatives, the second nearly. pw is the saturation pressure at wet and slope
// that of its logarithm.
func (b wetBalance) at(wet, pw, slope float64) (f, df, ddf float64) {
	c := overWater
	if b.ice {
		c = overIce
	}
	const bend = 0.0005 // see saturatedAt
	latent := ratioOfMoles * (c.latent - c.less*wet)
	need := 1.006*(b.t-wet) + b.w*(c.latent+1.86*b.t-c.wet*wet)
	less, fewer := ratioOfMoles*c.less, 1.006+b.w*c.wet // their falls, a kelvin
	dp := pw * slope
	f = latent*pw - (b.p-pw)*need
	df = (latent+need)*dp - less*pw + (b.p-pw)*fewer
	ddf = dp * ((latent+need)*(slope-2/(wet+kelvin)-2*bend) - 2*(less+fewer))
	return f, df, ddf
}

func (b wetBalance) saturatedAt(wet float64) (f, df, ddf float64) {
	ln, slope := lnSaturation(wet + kelvin)
	return b.at(wet, math.Exp(ln), slope)
}

// wetConstants are those of the two formulas of WetBulbC, kJ/kg and kJ/(kg K).
type wetConstants struct{ latent, less, wet float64 }

var (
	overWater = wetConstants{2501, 2.326, 4.186}
	overIce   = wetConstants{2830, 0.24, 2.1}
)
