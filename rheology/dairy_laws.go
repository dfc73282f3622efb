package rheology

import (
	"math"

	"example.org/honestplate"
)

// The published laws that Dairy is made of, each in its own range. They are
// exported so that a rule or a measurement can be compared with the source
// itself rather than with this library's reading of it.

const (
	sourceBakshi    = "Bakshi & Smith 1984, J. Dairy Sci. 67, Effect of fat content and temperature on viscosity in relation to pumping requirements of fluid milk products"
	sourcePhipps    = "Phipps 1969, J. Dairy Res. 36, as tabulated in Advanced Dairy Chemistry vol. 3, Table 15.5"
	sourceFernandez = "Fernandez-Martin 1972, J. Dairy Res. 39, as tabulated in Advanced Dairy Chemistry vol. 3, Table 15.5"
)

// BakshiSmith returns the viscosity in Pa s of commercial milk and cream by the
// formula of Bakshi & Smith 1984,
//
//	ln mu = -8.9 + 0.1 F + 2721.5/T        mu in mPa s, F fat % by mass, T in K
//
// for 0.1..30 % fat and 0..30 degC (a RangeError outside). Read in the paper's
// abstract; no scatter is printed. A textbook table has 2731.5 in place of
// 2721.5, 4 % higher. Every other cold value of 20 % fat or more that we know
// lies at 0.26..0.47 of it, so it is an upper estimate for cream.
func BakshiSmith(fatPercent, tempC float64) (float64, error) {
	if err := honestplate.InRange("fat", fatPercent, 0.1, 30, "%", sourceBakshi); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("temperature", tempC, 0, 30, "degC", sourceBakshi); err != nil {
		return 0, err
	}
	return 1e-3 * math.Exp(lnBakshi(fatPercent, tempC)), nil
}

// lnBakshi is the logarithm of the viscosity in mPa s.
func lnBakshi(fatPercent, tempC float64) float64 {
	return -8.9 + 0.1*fatPercent + 2721.5/(tempC+kelvin)
}

// Phipps returns the viscosity in Pa s of milk and cream with melted fat by the
// formula of Phipps 1969,
//
//	log10 eta = A (f + f^(5/3)) + 768.7/(273 + t) - 2.437,  A = 1.2876 + 0.001107 t
//
// eta in mPa s, f the mass fraction of fat, t in degC, for 0..40 % fat and 40..80
// degC (a RangeError outside). Read in a table that had lost its minus signs; the
// sign of 2.437 was restored against remembered values of the same paper, which
// it then meets within 2.5 %.
func Phipps(fatPercent, tempC float64) (float64, error) {
	if err := honestplate.InRange("fat", fatPercent, 0, 40, "%", sourcePhipps); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("temperature", tempC, 40, 80, "degC", sourcePhipps); err != nil {
		return 0, err
	}
	return 1e-3 * math.Exp(lnPhippsPlasma(tempC)+phippsSlope(tempC)*phippsShape(fatPercent)), nil
}

// lnPhippsPlasma is the logarithm of Phipps' viscosity without fat, in mPa s.
func lnPhippsPlasma(tempC float64) float64 {
	return math.Ln10 * (768.7/(273+tempC) - 2.437)
}

// phippsSlope times phippsShape is the logarithm of the factor by which the fat
// raises it.
func phippsSlope(tempC float64) float64 { return math.Ln10 * (1.2876 + 0.001107*tempC) }

func phippsShape(fatPercent float64) float64 {
	f := fatPercent / 100
	c := math.Cbrt(f)
	return f + f*c*c
}

// FernandezMartin returns the viscosity in Pa s of milk concentrates by the
// formula of Fernandez-Martin 1972,
//
//	log10 eta = 0.249 - 1.3e-2 t + 5.2e-5 t^2
//	          + (2.549e-2 - 9.8e-5 t + 4e-7 t^2) S
//	          + (5.43e-4 - 1.39e-5 t + 1.117e-7 t^2) S^2
//
// eta in mPa s, S total solids in % by mass, 8..30, t 0..80 degC (a RangeError
// outside), fat up to 7.4 %. Read in a table that had lost its minus signs,
// restored; without solids it meets water within 2.4 %.
func FernandezMartin(solidsPercent, tempC float64) (float64, error) {
	if err := honestplate.InRange("total solids", solidsPercent, 8, 30, "%", sourceFernandez); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("temperature", tempC, 0, 80, "degC", sourceFernandez); err != nil {
		return 0, err
	}
	return 1e-3 * math.Exp(lnFernandez(solidsPercent, tempC)), nil
}

func lnFernandez(s, t float64) float64 {
	return math.Ln10 * (0.249 - 1.3e-2*t + 5.2e-5*t*t +
		s*(2.549e-2-9.8e-5*t+4e-7*t*t) +
		s*s*(5.43e-4-1.39e-5*t+1.117e-7*t*t))
}

// lnSkim is lnFernandez at the 9 % solids of skim milk, folded by the compiler.
func lnSkim(t float64) float64 {
	const (
		s  = 9.0
		c0 = math.Ln10 * (0.249 + 2.549e-2*s + 5.43e-4*s*s)
		c1 = math.Ln10 * (-1.3e-2 - 9.8e-5*s - 1.39e-5*s*s)
		c2 = math.Ln10 * (5.2e-5 + 4e-7*s + 1.117e-7*s*s)
	)
	return c0 + t*(c1+t*c2)
}
