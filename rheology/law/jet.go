package law

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
)

// A Jet is a round stream where it leaves its outlet, pointing down.
type Jet struct {
	Fluid
	Diameter  float64 `json:"diameter_m"`    // m
	Speed     float64 `json:"speed_m_per_s"` // mean, m/s
	Turbulent bool    `json:"turbulent"`     // it comes from a bore that made it so
}

// Fall returns the jet where it lands after a fall of z metres, 0 to 3 m.
//
// A thin liquid falls freely, V2 = V0^2 + 2 g z. A thick one hangs on what has not
// left yet: over a fall below the length (9 nu2/g)^(1/3), 60 mm for 0.5 Pa s and 0.4 m
// for honey of 10 Pa s, its speed rises by g z2/(6 nu) only, or from rest to 2 g z2/(3
// pi2 nu). The whole way is the solution of
//
//	V V' = g + 3 nu V (V'/V)',   V = V0 at the outlet, V' = 0 where it lands
//
// (Trouton's 3 nu; the end of the stream, on a plate or in the air, carries no pull),
// here by an explicit interpolation of it, within 2.6 % in the speed (tested against the
// equation). For long falls it is Clarke's solution in Airy functions (Clarke 1968,
// "Two-dimensional flow under gravity in a jet of viscous liquid", J. Fluid Mech. 31, 481;
// from memory). The width follows from the rate. Left out: the air's drag, the pull of
// surface tension, and the foot of the stream where it bends or spreads.
func (j Jet) Fall(z float64) (Jet, error) {
	if err := cmp.Or(j.check(), honestplate.InRange("Fall", z, 0, physics.LongestFall, "m", "free fall without the air's drag")); err != nil {
		return Jet{}, err
	}
	v := j.speed(z)
	j.Diameter *= math.Sqrt(j.Speed / v)
	j.Speed = v
	return j, nil
}

func (j Jet) check() error {
	return cmp.Or(j.Fluid.Check(), size("Diameter", j.Diameter), speed("Speed", j.Speed))
}

// speed where the jet lands after a fall z.
func (j Jet) speed(z float64) float64 {
	nu3 := 3 * j.Viscosity / j.Density
	length := math.Cbrt(nu3 * nu3 / physics.Gravity)
	free := math.Sqrt(j.Speed*j.Speed + 2*physics.Gravity*z)
	if z > 3000*length || z == 0 {
		return free // to 5e-4
	}
	unit := math.Cbrt(nu3 * physics.Gravity)
	w0, x := j.Speed/unit, z/length
	w, _ := root.Search{
		Low: w0, High: free / unit,
		// From the smaller of the two limits.
		Start: min(free/unit, w0+x*x/2), Slope: x/(free/unit) + 1e-9, Tol: 1e-12 * x,
	}.Rise(func(w float64) (float64, error) { return threadLength(w0, w) - x, nil })
	return w * unit
}

// threadLength returns the fall X in which a thread goes from the speed w0 to w where it
// ends, in units of (9 nu2/g)^(1/3) and (3 nu g)^(1/3). Without inertia it is exactly
// sqrt(2 w) acos(sqrt(w0/w)); with inertia alone (w2 - w0^2)/2. From rest a long fall lags
// behind the free one by 2.9458, -2^(1/3) times the first zero of Ai. The sum, with the
// first part led over to that lag and fading with w0, is within 2.6
// % in w over w from 0.003 to 1000.
func threadLength(w0, w float64) float64 {
	if w <= w0 {
		return 0
	}
	const (
		lag  = 2.945830743353453
		fade = 0.2 // fitted, as the power 3 is
	)
	slow := math.Pi / math.Sqrt2 * math.Sqrt(w)
	r := slow / lag
	slow /= math.Cbrt(1 + r*r*r)
	return (w*w-w0*w0)/2 + slow*math.Acos(math.Sqrt(w0/w))*2/math.Pi/(1+fade*w0)
}
