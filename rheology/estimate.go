package rheology

import "math"

// An Estimate is a predicted value with its 95 % band: Low <= Value <= High. The
// doc comment of whatever returns it says from which data the band was derived.
type Estimate struct {
	// Value is the likely one; Low and High bound the band.
	Value, Low, High float64
}

// Exactly returns an Estimate without a band.
func Exactly(v float64) Estimate { return Estimate{v, v, v} }

// Within returns v with a band of plus or minus the fraction rel of v.
func Within(v, rel float64) Estimate {
	d := math.Abs(v) * rel
	return Estimate{v, v - d, v + d}
}

// Factor returns v with a band from v/f to v*f, for what is known to a factor.
func Factor(v, f float64) Estimate { return Estimate{v, v / f, v * f} }

// Contains reports whether x lies in the band.
func (e Estimate) Contains(x float64) bool { return e.Low <= x && x <= e.High }

// Times returns the estimate multiplied by k, which must be positive.
func (e Estimate) Times(k float64) Estimate { return Estimate{e.Value * k, e.Low * k, e.High * k} }
