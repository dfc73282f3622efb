package heat

import (
	"math"

	"example.org/honestplate"
)

// tripleC is the temperature of water's triple point, deg C: below it this
// package takes saturation over ice, above it over liquid water.
const tripleC = 0.01

// SaturationPressure returns the pressure of saturated water vapour in Pa over
// ice below 0.01 degC and over liquid water above it.
//
//	ice,    -100..0 degC: ln p = C1/T + C2 + C3 T + C4 T^2 + C5 T^3 + C6 T^4 + C7 ln T
//	liquid,   0..200 degC: ln p = C8/T + C9 + C10 T + C11 T^2 + C12 T^3 + C13 ln T
//
// with p in Pa and T in K. Outside -100..200 degC it returns an [honestplate.RangeError].
// Against the table of the same chapter (IAPWS-based) it is within 0.05 % from
// -40 to 50 degC. Pure vapour over pure water: see EnhancementFactor for moist
// air.
//
// Source: Hyland and Wexler 1983 as given in the ASHRAE Handbook Fundamentals
// (SI) 2021, ch. 1, eqs. 5 and 6, read in a copy.
func SaturationPressure(tempC float64) (float64, error) {
	if err := honestplate.InRange("TempC", tempC, -100, 200, "degC", saturationBy); err != nil {
		return 0, err
	}
	return saturation(tempC), nil
}

// saturation is SaturationPressure without the check.
func saturation(tempC float64) float64 {
	ln, _ := lnSaturation(tempC + kelvin)
	return math.Exp(ln)
}

// A saturationFit is ln(p/Pa) at T in K: c0/T + c1 + c2 T + c3 T^2 + c4 T^3 + c5 T^4 +
// c6 ln T.
type saturationFit [7]float64

var (
	fitOverIce   = saturationFit{-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019}
	fitOverWater = saturationFit{-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0, 6.5459673}
)

// at returns the logarithm and its derivative in 1/K.
func (c *saturationFit) at(t float64) (ln, slope float64) {
	r := 1 / t
	ln = c[0]*r + c[1] + t*(c[2]+t*(c[3]+t*(c[4]+t*c[5]))) + c[6]*math.Log(t)
	slope = r*(c[6]-c[0]*r) + c[2] + t*(2*c[3]+t*(3*c[4]+t*4*c[5]))
	return ln, slope
}

// lnSaturation returns ln(p/Pa) at T in K and its derivative in 1/K.
func lnSaturation(t float64) (ln, slope float64) {
	if t < tripleC+kelvin {
		return fitOverIce.at(t)
	}
	return fitOverWater.at(t)
}

// lowestVapour is the saturation pressure at -100 degC, Pa, rounded down.
const lowestVapour = 0.001405

// lnTriple is ln of the pressure at which the two branches meet; the two
// formulas differ there by 2e-5, less than a millikelvin.
var lnTriple, _ = fitOverWater.at(tripleC + kelvin)

// SaturationTemperature returns the temperature in deg C at which water vapour
// of pressure pa (Pa) is saturated: the inverse of SaturationPressure to 1e-7 K. Below 611.7 Pa it is the frost point, over
// ice. Pressures outside those of -100..200 degC give an [honestplate.RangeError].
func SaturationTemperature(pa float64) (float64, error) {
	const low, high = lowestVapour, 1.5551e6 // Pa at -100 and 200 degC
	if err := honestplate.InRange("VapourPa", pa, low, high, "Pa", saturationBy); err != nil {
		return 0, err
	}
	return saturatedAt(math.Log(pa)), nil
}

// An inverse is a fit turned round: temperature against ln p, between nodes a 32nd apart by
// the cubic that has their values and slopes, which is good to 1e-7 K.
type inverse struct {
	from  float64 // ln p of the first node
	nodes []inverseNode
}

type inverseNode struct{ tempC, slope float64 } // deg C, and K a node

const perUnit = 32 // nodes per unit of ln p

var (
	frostPoints = invert(&fitOverIce, -6.57, lnTriple)
	dewPoints   = invert(&fitOverWater, lnTriple, 14.26)
)

func invert(fit *saturationFit, from, to float64) inverse {
	nodes := make([]inverseNode, 2+int((to-from)*perUnit))
	t := tripleC + kelvin
	for i := range nodes {
		var slope float64
		for step := 1.0; math.Abs(step) > 1e-9; t += step { // Newton's method, from the node before
			var ln float64
			ln, slope = fit.at(t)
			step = (from + float64(i)/perUnit - ln) / slope
		}
		nodes[i] = inverseNode{t - kelvin, 1 / (perUnit * slope)}
	}
	return inverse{from, nodes}
}

func (v *inverse) at(ln float64) float64 {
	x := (ln - v.from) * perUnit
	i := min(max(0, int(x)), len(v.nodes)-2) // the last digits of an end may lie beyond it
	a, b, u := &v.nodes[i], &v.nodes[i+1], x-float64(i)
	rise := b.tempC - a.tempC
	return a.tempC + u*(a.slope+u*(3*rise-2*a.slope-b.slope+u*(a.slope+b.slope-2*rise)))
}

// saturatedAt inverts lnSaturation, deg C.
func saturatedAt(ln float64) float64 {
	if ln < lnTriple {
		return frostPoints.at(ln)
	}
	return dewPoints.at(ln)
}

// LatentHeat returns the heat in J/kg that vapour gives up on a surface at
// tempC: of sublimation below 0 degC (frost), of condensation from there on
// (dew).
//
//	frost: 2834.1 - 0.29 t - 0.004 t^2   kJ/kg, -100..0 degC
//	dew:   2500.93 - 2.3665 t - 7.6e-6 t^3 kJ/kg, 0..200 degC
//
// The first is the meteorologists' formula (Rogers and Yau 1989, A Short Course
// in Cloud Physics, from memory), the second a fit of our own; both are within
// 0.05 % of the ASHRAE Handbook Fundamentals (SI) 2021, ch. 1, Table 3, from -60
// to 100 degC. Outside -100..200 degC it returns an [honestplate.RangeError].
func LatentHeat(tempC float64) (float64, error) {
	if err := honestplate.InRange("TempC", tempC, -100, 200, "degC", saturationBy); err != nil {
		return 0, err
	}
	return latentHeat(tempC), nil
}

func latentHeat(t float64) float64 {
	if t < 0 {
		return 1e3 * (2834.1 - t*(0.29+0.004*t))
	}
	return 1e3 * (2500.93 - t*(2.3665+7.6e-6*t*t))
}

// boiling is the temperature at which water boils under a pressure in Pa, deg C.
func boiling(p float64) float64 { return saturatedAt(math.Log(p)) }
