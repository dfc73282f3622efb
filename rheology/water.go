package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
)

// Water is pure water at 0.1 MPa, 0..100 degC as a pour needs it, and on to the
// limits of the formulas, -20..110 degC, where it is supercooled or superheated.
//
// Viscosity, density: IAPWS SR6-08(2011), Revised Supplementary Release on
// Properties of Liquid Water at 0.1 MPa, read in a public copy of its
// coefficients. Surface tension: IAPWS R1-76(2014), read the same way.
//
// The band of the viscosity is 1 % (the release's own, from memory); that of the
// density 0.01 kg/m3 for water without air; that of the surface tension 0.5 %,
// for clean water: a trace of fat or soap takes off a third.
type Water struct{}

const sourceWater = "IAPWS SR6-08(2011), liquid water at 0.1 MPa"

// The range of SR6-08: 253.15..383.15 K.
const (
	waterLowC  = -20.0
	waterHighC = 110.0
)

// Describe says whose numbers these are.
func (Water) Describe() Description {
	return Description{
		Name:   "water",
		Source: sourceWater + "; surface tension IAPWS R1-76(2014)",
		LowC:   waterLowC, HighC: waterHighC,
		Band: "viscosity +-1 % (the release's own, from memory)",
	}
}

// Viscosity returns the dynamic viscosity in Pa s:
//
//	mu = 1e-6 (280.68 u^-1.9 + 511.45 u^-7.7 + 61.131 u^-19.6 + 0.45903 u^-40),  u = T/300 K
//
// for -20..110 degC, IAPWS SR6-08(2011); 20 degC gives 1.0016 mPa s. (An
// older standard, the International Critical Tables of 1928, has 1.0087.)
func (Water) Viscosity(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(honestplate.InRange("TempC", tempC, waterLowC, waterHighC, "degC", sourceWater), honestplate.Within(waterViscosity(tempC), 0.01))
}

func waterViscosity(tempC float64) float64 {
	// u^-40 = u^-38 u^-2 and so on would save nothing that matters: four powers
	// as exponentials of one logarithm.
	l := math.Log((tempC + physics.Kelvin) / 300)
	return 1e-6 * (280.68*math.Exp(-1.9*l) + 511.45*math.Exp(-7.7*l) + 61.131*math.Exp(-19.6*l) + 0.45903*math.Exp(-40*l))
}

// Density returns the density in kg/m3, the inverse of
//
//	v = (R Tr/1e5 Pa) [a5 + sum a_i alpha^n_i + sum b_i beta^m_i]
//
// with R = 461.51805 J/(kg K), Tr = 10 K, alpha = Tr/(593 K - T), beta =
// Tr/(T - 232 K), for -20..110 degC: IAPWS SR6-08(2011).
func (Water) Density(tempC float64) (honestplate.Estimate, error) {
	rho := waterDensity(tempC)
	return check.Unless(honestplate.InRange("TempC", tempC, waterLowC, waterHighC, "degC", sourceWater), honestplate.Estimate{Low: rho - 0.01, Likely: rho, High: rho + 0.01})
}

func waterDensity(tempC float64) float64 {
	t := tempC + physics.Kelvin
	a, b := 10/(593-t), 10/(t-232)
	a4 := (a * a) * (a * a)
	sum := 1.93763157e-2 +
		a4*(6.74458446e3+a*(-2.22521604e5+a*a*(1.00231247e8+a*(-1.63552118e9+a*8.32299658e9)))) +
		b*(5.78545292e-3+b*(-1.53195665e-2+b*(3.11337859e-2+b*(-4.23546241e-2+b*(3.38713507e-2-b*1.19946761e-2)))))
	return 1e5 / (461.51805 * 10 * sum)
}

// SurfaceTension returns the surface tension against air in N/m:
//
//	sigma = 0.2358 tau^1.256 (1 - 0.625 tau),  tau = 1 - T/647.096 K
//
// IAPWS R1-76(2014), stated from 0.01 degC; used from -20 degC as its note allows.
func (Water) SurfaceTension(tempC float64) (honestplate.Estimate, error) {
	return check.Unless(honestplate.InRange("TempC", tempC, waterLowC, waterHighC, "degC", sourceWater), honestplate.Within(waterSurfaceTension(tempC), 0.005))
}

func waterSurfaceTension(tempC float64) float64 {
	tau := 1 - (tempC+physics.Kelvin)/647.096
	return 0.2358 * math.Pow(tau, 1.256) * (1 - 0.625*tau)
}
