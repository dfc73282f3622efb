package thermal

import "math"

// DropDiameter returns how wide the drops are, m, that make up grams of water per
// square metre of glass, taken as caps of one size:
//
//	d = 2 m/(coverage rho f), f = (2 - 3 cos theta + cos^3 theta)/(3 sin^3 theta)
//
// with theta the contact angle, 5..150 degrees: 90 on an ordinary glass, 30..40 on a
// washed one, near 5 on a freshly cleaned one, where the water is a film rather than
// drops; and coverage the share of the glass under drops, 0.1..0.9: 0.55 at 90
// degrees (from memory of later theory of breath figures), more at smaller angles. At
// 90 degrees and 0.55 each g/m2 makes 5.5 um of width: beads of a third of a millimetre
// hold 60 g/m2. Real drops are of all sizes; the eye sees the largest, two or three times
// the mean. On a surface of constant flux and cooling the mean grows as t^0.75
// (Beysens and Knobler 1986, Growth of breath figures, Phys. Rev. Lett. 57:1433, abstract
// read).
//
// Geometry; an engineering estimate of what is seen.
func DropDiameter(grams, contactDegrees, coverage float64) (float64, error) {
	if err := within("water on the glass", grams, 0, 1e5, "g/m2", "this package"); err != nil {
		return 0, err
	}
	if err := within("contact angle", contactDegrees, 5, 150, "degrees", "this package"); err != nil {
		return 0, err
	}
	if err := within("coverage", coverage, 0.1, 0.9, "", "this package"); err != nil {
		return 0, err
	}
	return 2 * grams / 1000 / (coverage * drinkRho * capShape(contactDegrees*math.Pi/180)), nil
}

// capShape is the volume of a spherical cap over pi times the cube of its base radius.
func capShape(theta float64) float64 {
	c, s := math.Cos(theta), math.Sin(theta)
	return (2 - 3*c + c*c*c) / (3 * s * s * s)
}

// RunningDrop returns the width in m of the drop that just begins to run down an upright
// glass, from the contact angles of an edge that advances and one that recedes, degrees,
// 1..150:
//
//	k gamma d (cos receding - cos advancing) = rho g V, k = 24/pi^3, gamma = 0.0742 N/m
//
// with V that of a cap at the mean angle. Washed glass with 40 and 15 degrees lets go of
// drops of 4.9 mm, clean glass with 20 and 5 of 3.9 mm. Angles on real glass vary from
// wipe to wipe: an engineering estimate.
//
// Source: ElSherbini and Jacobi 2006, Retention forces and contact angles for critical
// liquid drops on non-horizontal surfaces (abstract read; the factor from memory);
// surface tension at 10 degC by IAPWS R1-76.
func RunningDrop(advancingDegrees, recedingDegrees float64) (float64, error) {
	if err := within("advancing contact angle", advancingDegrees, 1, 150, "degrees", "this package"); err != nil {
		return 0, err
	}
	if err := within("receding contact angle", recedingDegrees, 1, 150, "degrees", "this package"); err != nil {
		return 0, err
	}
	if recedingDegrees >= advancingDegrees {
		return 0, &InputError{"receding contact angle", recedingDegrees, "degrees", "below the advancing one"}
	}
	const gamma, k = 0.0742, 24 / (math.Pi * math.Pi * math.Pi)
	adv, rec := advancingDegrees*math.Pi/180, recedingDegrees*math.Pi/180
	// V = pi (d/2)^3 capShape
	volume := math.Pi / 8 * capShape((adv+rec)/2)
	return math.Sqrt(k * gamma * (math.Cos(rec) - math.Cos(adv)) / (drinkRho * gravity * volume)), nil
}
