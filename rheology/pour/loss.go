package pour

import "math"

// Constants of the losses of a bore. Each is a usual hydraulic figure; the band
// of a pour (see hydraulicSpread) allows for what they leave out.
const (
	// couetteRadii is the extra length, in radii, that the entry of a bore adds to
	// its laminar friction (Couette). Published figures go from 0.6 (one side of
	// the exact result for a hole in creeping flow, 3 pi/8 = 1.18 for both sides,
	// Sampson 1891, from memory) to 1.2; 1 is the middle (from memory).
	couetteRadii = 1.0
	// shahHagenbach is the velocity heads that a developing laminar flow loses
	// beyond friction and its first velocity head, so that 1 + 1.25 = 2.25 is
	// twice the Hagenbach factor m = 1.12 (Shah 1978, "A correlation for laminar
	// hydrodynamic entry length solutions for circular and noncircular ducts", J.
	// Fluids Eng. 100, 177; from memory).
	shahHagenbach = 1.25
	// edgeTube is the loss of a sharp entry to a tube, in velocity heads.
	edgeTube = 0.5
	// edgeHole is that of a hole in a thin wall beyond its first: a discharge
	// coefficient of 0.61 is 1/0.61^2 = 1 + 1.69 velocity heads.
	edgeHole = 1.69
	// contraction is the section of the jet from such a hole over the hole's.
	contraction = 0.62
)

// boreLoss returns the head that a round bore takes, in velocity heads V2/2g, at
// a Reynolds number re = V D/nu and a length of lengthOverD diameters:
//
//	laminar    1 + 13.76 s + (1.25 + 64 x - 13.76 s)/(1 + 0.00021/x2) + 32 n/Re
//	           x = L/(D Re), s = sqrt(x), n = 1
//	turbulent  1 + 4 f L/D,  f = 0.0791 Re^-0.25
//
// plus the loss of a sharp edge, which grows with Re. The laminar line is Shah's
// for developing flow (it contains the kinetic energy and its Hagenbach
// correction and tends to 64 L/(D Re) + 2.25) with Couette's entry radii; the
// turbulent is Blasius's. Between Re 2000 and 4000 the two are weighted, so the
// loss is continuous. For tubes of 2 to 10 diameters it follows the correlation
// of Lichtarowicz, Duggins and Markland 1965 (from memory) to 8 % in speed from
// Re 100 to 20000 (tested). A discharge coefficient above 0 replaces all of it by
// 1/Cd2.
func boreLoss(re, lengthOverD, discharge float64) float64 {
	if discharge > 0 {
		return 1 / (discharge * discharge)
	}
	k := edgeLoss(re, lengthOverD)
	w := turbulence(re)
	if w < 1 {
		x := lengthOverD / re
		s := 13.76 * math.Sqrt(x)
		k += (1 - w) * (1 + s + (shahHagenbach+64*x-s)*x*x/(x*x+0.00021) + 32*couetteRadii/re)
	}
	if w > 0 {
		k += w * (1 + 4*0.0791*lengthOverD/math.Sqrt(math.Sqrt(re)))
	}
	return k
}

// edgeLoss returns the loss of a sharp entry in velocity heads. It vanishes in
// creeping flow, where nothing separates. Up to a length of 2 D the jet does not
// fill the bore again, and the loss goes over from a hole's to a tube's.
func edgeLoss(re, lengthOverD float64) float64 {
	tube := edgeTube * (0.4*min(max((re-500)/1500, 0), 1) + 0.6*turbulence(re))
	if lengthOverD >= 2 {
		return tube
	}
	hole := 0.0
	if re > 5 {
		hole = edgeHole * min(math.Log10(re/5)/3.3, 1)
	}
	return hole + (tube-hole)*lengthOverD/2
}

// turbulence returns the weight of the turbulent law: 0 up to Re 2000, 1 from 4000, without a
// kink.
func turbulence(re float64) float64 {
	x := min(max((re-2000)/2000, 0), 1)
	return x * x * (3 - 2*x)
}

// viscousShare returns the share of a bore's loss that goes with the viscosity, in the
// bore and at its entry: how the head answers to the viscosity at one flow,
// -d ln(loss)/d ln(Re). 1 in creeping flow, however short the bore.
func viscousShare(re, lengthOverD, discharge float64) float64 {
	const step = 1.01
	down, up := boreLoss(re/step, lengthOverD, discharge), boreLoss(re*step, lengthOverD, discharge)
	return min(max(math.Log(down/up)/(2*math.Log(step)), 0), 1)
}

// poiseuilleShare returns the share of a bore's loss that is fully developed
// laminar friction, 64 L/(D Re): what is known best.
func poiseuilleShare(re, lengthOverD float64) float64 {
	return (1 - turbulence(re)) * min(64*lengthOverD/re/boreLoss(re, lengthOverD, 0), 1)
}
