package rheology

import (
	"math"

	"example.org/honestplate/rheology/internal/physics"
)

// The published laws that [Dairy] is made of, each with its own range; Dairy leans on them
// beyond.

const (
	sourceFernandez = "Fernandez-Martin 1972, J. Dairy Res. 39, as tabulated in Advanced Dairy Chemistry vol. 3, Table 15.5"
)

// lnBakshi is the logarithm of the viscosity in mPa s of commercial milk and cream by the
// formula of Bakshi & Smith 1984, J. Dairy Sci. 67, "Effect of fat content and temperature on
// viscosity in relation to pumping requirements of fluid milk products",
//
//	ln mu = -8.9 + 0.1 F + 2721.5/T        mu in mPa s, F fat % by mass, T in K
//
// for 0.1..30 % fat and 0..30 degC. Read in the paper's
// abstract; no scatter is printed. A textbook table has 2731.5 in place of
// 2721.5, 4 % higher. Every other cold value of 20 % fat or more that we know
// lies at 0.26..0.47 of it, so it is an upper estimate for cream.
func lnBakshi(fatPercent, tempC float64) float64 {
	return -8.9 + 0.1*fatPercent + 2721.5/(tempC+physics.Kelvin)
}

// lnPhippsPlasma is the logarithm, without fat, of the viscosity in mPa s of milk and cream
// with melted fat by the formula of Phipps 1969, J. Dairy Res. 36, as tabulated in Advanced
// Dairy Chemistry vol. 3, Table 15.5,
//
//	log10 eta = A (f + f^(5/3)) + 768.7/(273 + t) - 2.437,  A = 1.2876 + 0.001107 t
//
// eta in mPa s, f the mass fraction of fat, t in degC, for 0..40 % fat and 40..80
// degC. Read in a table that had lost its minus signs; the
// sign of 2.437 was restored against remembered values of the same paper, which
// it then meets within 2.5 %.
func lnPhippsPlasma(tempC float64) float64 {
	return math.Ln10 * (768.7/(273+tempC) - 2.437)
}

// phippsSlope times phippsShape is the logarithm of the factor by which the fat
// raises it.
func phippsSlope(tempC float64) float64 { return math.Ln10 * (1.2876 + 0.001107*tempC) }

// phippsShape is f + f^(5/3) of a fraction of fat.
func phippsShape(f float64) float64 {
	c := math.Cbrt(f)
	return f + f*c*c
}

// lnSkim is the logarithm of the viscosity in mPa s, at the 9 % solids of skim milk and
// folded by the compiler, of milk concentrates by the
// formula of Fernandez-Martin 1972,
//
//	log10 eta = 0.249 - 1.3e-2 t + 5.2e-5 t^2
//	          + (2.549e-2 - 9.8e-5 t + 4e-7 t^2) S
//	          + (5.43e-4 - 1.39e-5 t + 1.117e-7 t^2) S^2
//
// eta in mPa s, S total solids in % by mass, 8..30, t 0..80 degC, fat up to 7.4 %. Read in a
// table that had lost its minus signs, restored; without solids it meets water within 2.4 %.
func lnSkim(t float64) float64 {
	const (
		s  = 9.0
		c0 = math.Ln10 * (0.249 + 2.549e-2*s + 5.43e-4*s*s)
		c1 = math.Ln10 * (-1.3e-2 - 9.8e-5*s - 1.39e-5*s*s)
		c2 = math.Ln10 * (5.2e-5 + 4e-7*s + 1.117e-7*s*s)
	)
	return c0 + t*(c1+t*c2)
}
