package rheology

import (
	"math"

	"example.org/honestplate/rheology/internal/physics"
)

// The emulsion law of milk and cream, hot and cold,
//
//	eta = plasma(t) (1 - phi/0.62)^(-1.55 k)
//
// plasma by Fernandez-Martin 1972 at 9 % solids, phi the volume fraction of fat. 1.55 is
// 2.5 (Einstein) times 0.62, so that at k = 1 a thin emulsion thickens as separate spheres
// do; the form is Krieger & Dougherty 1959 (from memory). k says how far the globules hold
// together:
//
//	k = c kc + (1 - c) kh,  c = 1 to 20 degC, 0 from 40 degC, straight between
//	kc = 1.05 + (K - 1.05) g,  kh = 1.08 + 0.42 (K - 1.5) g,  g = 1 - (1 + F/4) exp(-F/4)
//
// K, that of cold cream, is what a treatment or a measurement sets; g lets milk be milk.
const (
	packing   = 0.62 // phi at which the globules touch: one number hot and cold, fitted with k
	einstein  = 2.5 * packing
	coldMilk  = 1.05 // k of cold milk: 16 values to 5 % fat, mean ln ratio -0.01
	hotCream  = 1.08 // k of hot milk and cream: Phipps 1969 to 40 % fat within 0.1 in ln
	milkFat   = 4.0  // % fat over which milk becomes cream
	meltBegin = 20.0 // degC; the fat of cream melts for the most part between here
	meltEnd   = 40.0 // degC; and here
)

// K of cold cream by treatment. Plain: 1.31, 1.38 and 1.59 fit Earle (memory), a pump
// maker's chart and a table of unknown origin over all fats; over 12..25 and 25..50 %, each
// as one, 1.5 leans least. Homogenised: 2.4..2.7 fit one cream of 50 % solids (fat
// inferred), 2.59 Bakshi & Smith 1984 at 11.5 and 30 % fat.
const (
	plainK       = 1.5
	homogenisedK = 2.5
	hotPerK      = 0.42 // of kh with K: hot homogenised cream to 15 % fat (Bertsch & Cerf 1983)
)

// An emulsion is the law at one temperature.
type emulsion struct {
	tempC  float64
	cold   float64 // c
	plasma float64 // ln of the viscosity without fat, Pa s
	water  float64 // densities of what cream consists of, kg/m3
	fat    float64
	solids float64
}

const lnMilli = -6.907755278982137 // ln 0.001: mPa s to Pa s

func emulsionAt(tempC float64) emulsion {
	return emulsion{
		tempC: tempC, cold: coldShare(tempC), plasma: lnMilli + lnSkim(tempC),
		water: waterDensity(tempC), fat: milkFatDensity(tempC), solids: milkSolidsDensity(tempC),
	}
}

func coldShare(tempC float64) float64 {
	return min(1, max(0, (meltEnd-tempC)/(meltEnd-meltBegin)))
}

// crowding is y = -1.55 ln(1 - phi/0.62), which times k is ln of what the fat does.
func (e *emulsion) crowding(fatPercent float64) float64 {
	snf := dairySNF(fatPercent)
	volume := fatPercent/e.fat + snf/e.solids + (100-fatPercent-snf)/e.water
	return -einstein * math.Log1p(-fatPercent/e.fat/volume/packing)
}

// creaminess is g: 0 for skim milk, 1 for cream.
func creaminess(fatPercent float64) float64 {
	u := fatPercent / milkFat
	return 1 - (1+u)*math.Exp(-u)
}

func (e *emulsion) k(fatPercent, bigK float64) float64 {
	g := creaminess(fatPercent)
	cold := coldMilk + (bigK-coldMilk)*g
	hot := hotCream + hotPerK*(bigK-plainK)*g
	return e.cold*cold + (1-e.cold)*hot
}

// ln is the logarithm of the viscosity in Pa s, before the cream thins.
func (e *emulsion) ln(fatPercent, bigK float64) float64 {
	return e.plasma + e.k(fatPercent, bigK)*e.crowding(fatPercent)
}

// perK is how far ln moves with K.
func (e *emulsion) perK(fatPercent float64) float64 {
	return creaminess(fatPercent) * (e.cold + hotPerK*(1-e.cold)) * e.crowding(fatPercent)
}

// The half-widths of the band in ln(viscosity): of the plasma and milk, and what cream
// adds to it as 1 - exp(-y) rises.
const (
	plasmaBand      = 0.07
	coldCreamBand   = 0.62 // plain, and not stated downwards
	hotCreamBand    = 0.15
	homogenisedBand = 0.80 // cold
	hotHomogenised  = 0.40
	hotNotStated    = 0.85 // upwards: reaches hot homogenised cream to 15 % fat (Bertsch & Cerf 1983)
	bakshiMargin    = 0.04 // the band reaches over Bakshi & Smith by what two prints of it differ
)

// estimate is ln of the viscosity in Pa s with the 95 % band of a treatment.
func (e *emulsion) estimate(fatPercent float64, t Treatment, bigK float64) (value, low, high float64) {
	value = e.ln(fatPercent, bigK)
	crowd := -math.Expm1(-e.crowding(fatPercent))
	width := func(cold, hot float64) float64 {
		return plasmaBand + (e.cold*cold+(1-e.cold)*hot)*crowd
	}
	plain := width(coldCreamBand, hotCreamBand)
	switch t {
	case Homogenised:
		w := width(homogenisedBand, hotHomogenised)
		return value, value - w, value + w
	case PlainCream:
		return value, value - plain, value + plain
	}
	above := width(coldCreamBand, hotNotStated)
	// Bakshi & Smith hold to 30 degC; on from there as the fat melts.
	reach := lnMilli + lnBakshi(fatPercent, e.tempC) + bakshiMargin - value
	if e.tempC > 30 {
		reach = above + (reach-above)*max(0, (meltEnd-e.tempC)/(meltEnd-30))
	}
	return value, value - plain, value + max(above, reach)
}

// coldK is K of a treatment. Thickened cream has none: plain cream's stands in for its
// change with temperature only.
func (t Treatment) coldK() float64 {
	if t == Homogenised {
		return homogenisedK
	}
	return plainK
}

// lnBakshi is the logarithm of the viscosity in mPa s of commercial milk and cream by the
// formula of Bakshi & Smith 1984, J. Dairy Sci. 67, "Effect of fat content and temperature on
// viscosity in relation to pumping requirements of fluid milk products",
//
//	ln mu = -8.9 + 0.1 F + 2721.5/T        mu in mPa s, F fat % by mass, T in K
//
// for 0.1..30 % fat and 0..30 degC. Read in the paper's abstract; no scatter is printed. A
// textbook table has 2731.5 in place of 2721.5, 4 % higher. Every other cold value of 20 %
// fat or more lies at 0.26..0.51 of it: it is the upper end of the band, no more.
func lnBakshi(fatPercent, tempC float64) float64 {
	return -8.9 + 0.1*fatPercent + 2721.5/(tempC+physics.Kelvin)
}

// lnSkim is the logarithm of the viscosity in mPa s, at the 9 % solids of skim milk and
// folded by the compiler, of milk concentrates by the formula of Fernandez-Martin 1972,
// J. Dairy Res. 39, as tabulated in Advanced Dairy Chemistry vol. 3, Table 15.5,
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
