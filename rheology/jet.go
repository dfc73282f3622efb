package rheology

import "math"

// A Jet is a round stream where it leaves its outlet, pointing down.
type Jet struct {
	Diameter       float64 // m
	Speed          float64 // mean, m/s
	Viscosity      float64 // Pa s
	Density        float64 // kg/m3
	SurfaceTension float64 // N/m
}

// Fall returns the jet after a fall of z metres, 0 to 3 m.
//
// A thin liquid falls freely, V2 = V0^2 + 2 g z. A thick one hangs on what has not
// left yet: its thread stretches by V = g z2/(6 nu) first and falls freely only
// from a few lengths (9 nu2/g)^(1/3) on, 60 mm for 0.5 Pa s and 0.4 m for honey of
// 10 Pa s. The whole way is the solution of
//
//	V V' = g + 3 nu V (V'/V)'
//
// (Trouton's 3 nu; Clarke 1968, "Two-dimensional flow under gravity in a jet of
// viscous liquid", J. Fluid Mech. 31, 481, solves the sheet in Airy functions; from
// memory), here by an explicit interpolation of it that is within 1.3 % in the length
// (tested against the Airy functions). The width follows from the rate. Left out:
// the air's drag, the pull of surface tension, and the bulge where the stream meets
// the ground. Errors: InputError and RangeError for sizes that are none.
func (j Jet) Fall(z float64) (Jet, error) {
	if err := j.check(); err != nil {
		return Jet{}, err
	}
	if err := within("fall", z, 0, longestFall, "m", "free fall without the air's drag"); err != nil {
		return Jet{}, err
	}
	v := j.speed(z)
	j.Diameter *= math.Sqrt(j.Speed / v)
	j.Speed = v
	return j, nil
}

func (j Jet) check() error {
	if err := positiveAll(j.Viscosity, j.Density, j.SurfaceTension); err != nil {
		return err
	}
	if err := within("jet diameter", j.Diameter, 1e-6, maxBore, "m", poured); err != nil {
		return err
	}
	return within("jet speed", j.Speed, 1e-6, 100, "m/s", poured)
}

// speed after a fall z: the place on the universal thread where it has the speed v,
// plus z.
func (j Jet) speed(z float64) float64 {
	nu3 := 3 * j.Viscosity / j.Density
	length := math.Cbrt(nu3 * nu3 / standardGravity)
	unit := math.Cbrt(nu3 * standardGravity)
	if z > 3e4*length {
		// Free fall to 1e-4, and large numbers would only lose digits.
		return math.Sqrt(j.Speed*j.Speed + 2*standardGravity*z)
	}
	x := threadLength(j.Speed/unit) + z/length
	// The speed from the length, by Newton from the free fall, which is too fast.
	w := math.Sqrt(j.Speed*j.Speed+2*standardGravity*z) / unit
	for range 50 {
		f := threadLength(w) - x
		const h = 1e-6
		slope := (threadLength(w*(1+h)) - threadLength(w*(1-h))) / (2 * h * w)
		next := w - f/slope
		if next <= 0 {
			next = w / 2
		}
		if math.Abs(next-w) < 1e-10*w {
			w = next
			break
		}
		w = next
	}
	return w * unit
}

// threadLength returns the distance X from its point of rest at which the universal
// thread W W' = 1 + W (W'/W)' has the speed W, in units of (9 nu2/g)^(1/3) and
// (3 nu g)^(1/3). Exactly, 1/W = 2^(1/3) ((Ai'/Ai)2 - r) with r = X/2^(1/3) - 2.3381;
// X = sqrt(2 W) at small W and W2/2 + 2.9458 - 2/W at large. Between, the quotient
// has those limits and is within 1.3 % of X.
func threadLength(w float64) float64 {
	const (
		offset = 2.945830743353453 // -2^(1/3) times the first zero of Ai
		a      = math.Sqrt2 / offset
		b, c   = 0.40, 0.76 // fitted
		d      = a + 2*c/offset
	)
	u := math.Sqrt(w)
	return w*w/2 + offset*u*(a+b*u+c*w)/(1+d*u+b*w+c*w*u)
}
