package heat

import "math"

// Properties are those of a state of moist air.
type Properties struct {
	// VapourPressure is RH times [SaturationPressure], Pa.
	VapourPressure float64
	// HumidityRatio is the mass of vapour per mass of dry air, kg/kg, of ideal gases:
	//
	//	W = 0.621945 p_w/(p - p_w)
	//
	// Saturated, it is 0.42 % (0 degC) to 0.53 % (40 degC) below the real-gas table of the
	// handbook: saturated vapour in moist air exceeds that of pure vapour by some 0.4 %
	// (Buck 1981), which is left out, as common tools do. ASHRAE Handbook Fundamentals
	// (SI) 2021, ch. 1, eq. 20, read in a copy.
	HumidityRatio float64
	// Enthalpy is the heat content in J per kg of dry air, zero for dry air at 0 degC and
	// liquid water at 0 degC: h = 1006 t + W (2501000 + 1860 t), t in degC. ASHRAE 2021,
	// ch. 1, eq. 30, read in a copy.
	Enthalpy float64
	// SpecificVolume is that of the moist air that holds 1 kg of dry air, m3:
	// v = 287.042 T (1 + 1.607858 W)/p, T in K. ASHRAE 2021, ch. 1, eq. 26, read in a copy.
	SpecificVolume float64
	// SpecificHeat is per kg of dry air, J/(kg K): 1006 + 1860 W (ASHRAE 2021, ch. 1).
	SpecificHeat float64
	// Density is that of the moist air, kg/m3, ideal gases: p/(287.042 T) (1 - 0.378055
	// p_w/p). Within 0.1 % of published tables.
	Density float64
	// Viscosity is that of dry air, Pa s: 1.458e-6 T^1.5/(T + 110.4), T in K. Within 0.7 %
	// of tabulated values from 200 to 400 K; vapour lowers it, at 30 degC saturated by
	// about 1 %. U.S. Standard Atmosphere 1976 (from memory).
	Viscosity float64
	// Conductivity is that of dry air, W/(m K): 2.64638e-3 T^1.5/(T + 245.4 x
	// 10^(-12/T)), T in K. Textbook tables disagree by 2.5 % at 300 K (0.0263 and 0.0257);
	// this is within 0.4 % of the first from 200 to 400 K. U.S. Standard Atmosphere 1976
	// (from memory).
	Conductivity float64
	// VapourDiffusivity of water vapour in air, m2/s: (-2.775e-6 + 4.479e-8 T + 1.656e-10
	// T^2) 101325/p, T in K. Published values disagree by 4 % at 25 degC (25.0..26 mm2/s);
	// this is within 2 % of ASHRAE 2021, ch. 1, Table 4, from -70 to 45 degC. Bolz and Tuve
	// 1976, Handbook of Tables for Applied Engineering Science (from memory).
	VapourDiffusivity float64
}

// Properties evaluates the properties of the air.
func (a MoistAir) Properties() (Properties, error) {
	if err := a.check(); err != nil {
		return Properties{}, err
	}
	t, pw, p, w := a.TempC+kelvin, a.vapour(), a.pressure(), a.ratio()
	return Properties{
		VapourPressure: pw, HumidityRatio: w, Enthalpy: enthalpy(a.TempC, w), SpecificVolume: dryVolume(a.TempC, w, p),
		SpecificHeat: 1006 + 1860*w, Density: density(a.TempC, pw, p),
		Viscosity: viscosity(t), Conductivity: conductivity(t), VapourDiffusivity: diffusivity(t, p),
	}, nil
}

// dryVolume is the volume that holds 1 kg of dry air with w kg of vapour, m3: see
// Properties.
func dryVolume(tempC, w, p float64) float64 { return dryGas * (tempC + kelvin) * (1 + 1.607858*w) / p }

func ratioFrom(pw, p float64) float64 { return ratioOfMoles * pw / (p - pw) }

func enthalpy(t, w float64) float64 { return 1006*t + w*(2.501e6+1860*t) }

func density(tempC, pw, p float64) float64 {
	return (p - (1-ratioOfMoles)*pw) / (dryGas * (tempC + kelvin))
}

func viscosity(t float64) float64 { return 1.458e-6 * t * math.Sqrt(t) / (t + 110.4) }

func conductivity(t float64) float64 {
	return 2.64638e-3 * t * math.Sqrt(t) / (t + 245.4*math.Pow(10, -12/t))
}

func diffusivity(t, p float64) float64 {
	return (-2.775e-6 + t*(4.479e-8+t*1.656e-10)) * StandardPressure / p
}
