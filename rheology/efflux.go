package rheology

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// The textbook closed forms of emptying. Spout.Pour contains them as its limits and
// joins them; they stand here for checks, for vessels that Spout does not know, and
// for reading a viscosity off a tube.

// OrificeTime returns the time in s in which the level of a vessel of surface area A
// (m2) falls from h1 to h2 (m) over a hole of area a (m2):
//
//	t = 2 A (sqrt h1 - sqrt h2)/(Cd a sqrt(2 g))
//
// Cd is the discharge coefficient, 0.6 for a sharp hole; for a pipe held by constant
// losses of K velocity heads it is 1/sqrt K. Range: inertia governs. Exact there.
// Source: Torricelli's law, as in Schaschke, Fluid Mechanics: Worked Examples for
// Engineers, Ex 6.3. Errors: InputError for sizes that make no sense and for h2
// above h1.
func OrificeTime(surface, hole, cd, h1, h2 float64) (float64, error) {
	if err := levels(h1, h2, 0); err != nil {
		return 0, err
	}
	if err := holed(hole, cd); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("surface area", surface, 1e-9, 1e9, "m2", poured); err != nil {
		return 0, err
	}
	return 2 * surface * (math.Sqrt(h1) - math.Sqrt(h2)) / (cd * hole * math.Sqrt(2*standardGravity)), nil
}

// BowlTime returns the time in s in which a hemispherical bowl of radius R filled to
// the height H (m) empties through a hole of area a (m2) at its bottom:
//
//	t = pi (4/3 R H^1.5 - 2/5 H^2.5)/(Cd a sqrt(2 g))
//
// Range, accuracy and errors as for OrificeTime; H is at most R. Source: Schaschke, Ex
// 6.4.
func BowlTime(radius, fill, hole, cd float64) (float64, error) {
	if err := honestplate.InRange("bowl radius", radius, 1e-4, 1e3, "m", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("fill", fill, 0, radius, "m", "the bowl's radius"); err != nil {
		return 0, err
	}
	if err := holed(hole, cd); err != nil {
		return 0, err
	}
	r := math.Sqrt(fill)
	return math.Pi * fill * r * (4.0/3*radius - 0.4*fill) / (cd * hole * math.Sqrt(2*standardGravity)), nil
}

// TubeTime returns the time in s in which the head over the mouth of a long tube of
// bore D and length L (m) falls from h1 to h2 under a surface area A (m2), with a
// kinematic viscosity nu (m2/s):
//
//	t = 128 nu L A/(pi g D4) ln(h1/h2)
//
// Range: laminar (Re below 2000) and L much above D; velocity heads neglected. For a
// tube that points down, both heads contain L. Source: Bird, Stewart and Lightfoot,
// Transport Phenomena, Problem 7B.9 (vertical tube); Schaschke, Ex 6.10 (level).
// Errors as for OrificeTime; h2 must be above 0, for the last drop takes for ever.
func TubeTime(nu, length, bore, surface, h1, h2 float64) (float64, error) {
	if err := levels(h1, h2, math.SmallestNonzeroFloat64); err != nil {
		return 0, err
	}
	if err := tube(nu, length, bore); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("surface area", surface, 1e-9, 1e9, "m2", poured); err != nil {
		return 0, err
	}
	d2 := bore * bore
	t := 128 * nu * length * surface / (math.Pi * standardGravity * d2 * d2) * math.Log(h1/h2)
	return t, honestplate.Finite("time", t, "s")
}

// TubeFlow returns the flow in m3/s through a long tube under a head h (m) that
// friction and the velocity of its outflow share:
//
//	h = 128 nu L Q/(pi g D4) + alpha V2/(2 g),   V = 4 Q/(pi D2)
//
// alpha is 2 for the parabolic profile, 0 to neglect the velocity. Range: laminar, square
// ends. The rounded ends of a glass viscometer lose less the slower it runs: its makers'
// corrections go with one over the time squared (SI Analytics, Micro-Ostwald 516,
// instructions), those of a constant alpha with one over the time.
// Source: White, Fluid Mechanics, 4th ed., Ex 6.5. Errors: InputError and RangeError
// for sizes that make no sense.
func TubeFlow(nu, length, bore, h, alpha float64) (float64, error) {
	if err := tube(nu, length, bore); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("head", h, 0, 1e6, "m", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("kinetic factor", alpha, 0, 10, "", "velocity heads of an outflow"); err != nil {
		return 0, err
	}
	// a V + b V2 = h, by the form that keeps its digits as b goes to 0.
	a := 32 * nu * length / (standardGravity * bore * bore)
	b := alpha / (2 * standardGravity)
	v := 2 * h / (a + math.Sqrt(a*a+4*b*h))
	return v * math.Pi / 4 * bore * bore, nil
}

// TubeViscosity returns the kinematic viscosity in m2/s at which a tube delivers a
// flow q (m3/s): the inverse of TubeFlow. A flow that no viscosity slows down to, the
// velocity alone taking more than the head, is a RangeError.
func TubeViscosity(q, length, bore, h, alpha float64) (float64, error) {
	if err := tube(1e-6, length, bore); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("flow", q, 1e-18, 1e3, "m3/s", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("head", h, 0, 1e6, "m", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("kinetic factor", alpha, 0, 10, "", "velocity heads of an outflow"); err != nil {
		return 0, err
	}
	v := q / (math.Pi / 4 * bore * bore)
	left := h - alpha*v*v/(2*standardGravity)
	if left <= 0 {
		most := math.Pi / 4 * bore * bore * math.Sqrt(2*standardGravity*h/alpha)
		return 0, check.Outside("flow", q, 0, most, "m3/s", "what the head gives without friction")
	}
	return left * standardGravity * bore * bore / (32 * length * v), nil
}

// WeirFlow returns the flow in m3/s over a level lip of width b under a head h (m):
//
//	Q = 2/3 Cd b sqrt(2 g) h^1.5
//
// Range: thin liquids at heads far above the capillary length of 2 to 3 mm; not cream
// above 20 mPa s nor syrup, for which see Lip. Cd 0.56 to 0.62. Source: Schaschke, Ex
// 7.7. Errors: InputError and RangeError for sizes that make no sense.
func WeirFlow(width, h, cd float64) (float64, error) {
	if err := honestplate.InRange("lip width", width, 1e-4, 1e4, "m", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("head", h, 0, 1e3, "m", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("discharge coefficient", cd, 0.01, 1, "", "a share of the frictionless flow"); err != nil {
		return 0, err
	}
	return 2.0 / 3 * cd * width * math.Sqrt(2*standardGravity*h) * h, nil
}

// NotchFlow returns the flow in m3/s through a V-shaped spout of full angle
// degrees under a head h (m):
//
//	Q = 8/15 Cd sqrt(2 g) tan(angle/2) h^2.5
//
// Range and errors as for WeirFlow, angle 5 to 170 degrees. Source: Schaschke, Ex 7.10
// (Cd 0.62).
func NotchFlow(degrees, h, cd float64) (float64, error) {
	if err := honestplate.InRange("notch angle", degrees, 5, 170, "degrees", "a V-shaped spout"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("head", h, 0, 1e3, "m", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("discharge coefficient", cd, 0.01, 1, "", "a share of the frictionless flow"); err != nil {
		return 0, err
	}
	return 8.0 / 15 * cd * math.Sqrt(2*standardGravity*h) * math.Tan(degrees*math.Pi/360) * h * h, nil
}

// levels checks a falling level.
func levels(h1, h2, least float64) error {
	if err := honestplate.InRange("first head", h1, 0, 1e6, "m", poured); err != nil {
		return err
	}
	if err := honestplate.Finite("last head", h2, "m"); err != nil {
		return err
	}
	if h2 < least || h2 > h1 {
		return check.Input("last head", h2, "m", "from empty up to the first head")
	}
	return nil
}

func holed(hole, cd float64) error {
	if err := honestplate.InRange("hole area", hole, 1e-12, 1e6, "m2", poured); err != nil {
		return err
	}
	return honestplate.InRange("discharge coefficient", cd, 0.01, 1, "", "a share of the frictionless flow")
}

func tube(nu, length, bore float64) error {
	if err := honestplate.InRange("kinematic viscosity", nu, 1e-9, 1e6, "m2/s", "a liquid that pours"); err != nil {
		return err
	}
	if err := honestplate.InRange("tube length", length, 1e-6, 1e6, "m", poured); err != nil {
		return err
	}
	return honestplate.InRange("tube bore", bore, 1e-6, 100, "m", poured)
}
