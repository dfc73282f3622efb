package thermal

import "math"

// Density returns the density of the moist air, kg/m3, ideal gases:
// p/(287.042 T) (1 - 0.378055 p_w/p). Within 0.1 % of published tables.
func (a Air) Density() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return density(a.TempC, a.vapour(), a.pressure()), nil
}

func density(tempC, pw, p float64) float64 {
	return (p - (1-ratioOfMoles)*pw) / (dryGas * (tempC + kelvin))
}

// Viscosity returns the dynamic viscosity of dry air at this temperature, Pa s:
//
//	mu = 1.458e-6 T^1.5/(T + 110.4), T in K
//
// Within 0.7 % of tabulated values from 200 to 400 K. Vapour lowers it: at 30 degC
// saturated by about 1 %.
//
// Source: U.S. Standard Atmosphere 1976 (from memory).
func (a Air) Viscosity() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return viscosity(a.TempC + kelvin), nil
}

func viscosity(t float64) float64 { return 1.458e-6 * t * math.Sqrt(t) / (t + 110.4) }

// Conductivity returns the thermal conductivity of dry air at this temperature,
// W/(m K):
//
//	k = 2.64638e-3 T^1.5/(T + 245.4 x 10^(-12/T)), T in K
//
// Textbook tables disagree by 2.5 % at 300 K (0.0263 and 0.0257); this is within
// 0.4 % of the first from 200 to 400 K.
//
// Source: U.S. Standard Atmosphere 1976 (from memory).
func (a Air) Conductivity() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return conductivity(a.TempC + kelvin), nil
}

func conductivity(t float64) float64 {
	// 10^(-12/T) by its series, to 1e-8 above 170 K: every surface asks at every step.
	y := 12 * math.Ln10 / t
	power := 1 - y*(1-y/2*(1-y/3*(1-y/4*(1-y/5*(1-y/6)))))
	return 2.64638e-3 * t * math.Sqrt(t) / (t + 245.4*power)
}

// SpecificHeat returns the heat capacity of the moist air per kg of dry air,
// J/(kg K): 1006 + 1860 W (ASHRAE Handbook Fundamentals (SI) 2021, ch. 1).
func (a Air) SpecificHeat() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return 1006 + 1860*a.ratio(), nil
}

// VapourDiffusivity returns the diffusion coefficient of water vapour in air,
// m2/s:
//
//	D = (-2.775e-6 + 4.479e-8 T + 1.656e-10 T^2) 101325/p, T in K
//
// Published values disagree by 4 % at 25 degC (25.0..26 mm2/s); this is within 2 %
// of the ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, Table 4, from -70 to
// 45 degC.
//
// Source: Bolz and Tuve 1976, Handbook of Tables for Applied Engineering Science
// (from memory).
func (a Air) VapourDiffusivity() (float64, error) {
	if err := a.Validate(); err != nil {
		return 0, err
	}
	return diffusivity(a.TempC+kelvin, a.pressure()), nil
}

func diffusivity(t, p float64) float64 {
	return (-2.775e-6 + t*(4.479e-8+t*1.656e-10)) * StandardPressure / p
}
