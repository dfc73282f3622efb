package rheology

import (
	"math"
	"time"

	"example.org/honestplate"
)

// ReleasedPuddle returns the radius in m, t seconds after it was let go, of a volume V
// (m3) of liquid of kinematic viscosity nu (m2/s) that spreads over a level plate by its
// weight against its viscosity:
//
//	R = 0.894 (g V3/(3 nu))^(1/8) t^(1/8)
//
// The prefactor is exact, (1024/(81 pi3))^(1/8). Range: after inertia and before surface
// tension or a yield stress; see Pour.Puddle, which looks after both. Source: Huppert
// 1982, "The propagation of two-dimensional and axisymmetric viscous gravity currents
// over a rigid horizontal surface", J. Fluid Mech. 121, 43 (0.894 from memory, derived
// again). Errors: InputError and RangeError for sizes that are none.
func ReleasedPuddle(volume, nu, t float64) (float64, error) {
	if err := spreads(volume, "volume", "m3", nu, t); err != nil {
		return 0, err
	}
	return releasedRadius(volume, nu, t), nil
}

// FedPuddle returns the same for a puddle fed at a steady rate Q (m3/s) at its middle:
//
//	R = 0.715 (g Q3/(3 nu))^(1/8) t^(1/2)
//
// Range, source and errors as for ReleasedPuddle (0.715 from memory; 0.71502 by
// integrating Huppert's similarity equation). On a plate that slopes by 2.5 degrees the
// half width of a fed spill still follows it within 10 % for two minutes (Lister 1992).
func FedPuddle(rate, nu, t float64) (float64, error) {
	if err := spreads(rate, "rate", "m3/s", nu, t); err != nil {
		return 0, err
	}
	return fedRadius(rate, nu, t), nil
}

const (
	releasedFactor = 0.89391 // (1024/(81 pi3))^(1/8)
	fedFactor      = 0.71502
	// puddleSpread is how far the one measured spill that was found lies from the fed
	// law over its first two minutes (Lister 1992: half width 2 to 9 % below).
	puddleSpread = 0.10
)

func releasedRadius(v, nu, t float64) float64 {
	return releasedFactor * math.Pow(standardGravity*v*v*v*t/(3*nu), 0.125)
}

func fedRadius(q, nu, t float64) float64 {
	return fedFactor * math.Pow(standardGravity*q*q*q/(3*nu), 0.125) * math.Sqrt(t)
}

func spreads(size float64, name, unit string, nu, t float64) error {
	if err := honestplate.InRange(name, size, 1e-15, 1e6, unit, "a puddle"); err != nil {
		return err
	}
	if err := honestplate.InRange("kinematic viscosity", nu, 1e-9, 1e6, "m2/s", "a liquid that pours"); err != nil {
		return err
	}
	return honestplate.InRange("time", t, 0, 1e9, "s", "a puddle")
}

// A Puddle is a pour that lies on a level plate.
type Puddle struct {
	// Radius in m, with its band.
	Radius honestplate.Estimate
	// Depth in m, the mean: volume over area.
	Depth float64
	// Held says what stops or slows it.
	Held PuddleHold
}

// A PuddleHold names what holds a puddle together.
type PuddleHold string

// What holds a puddle.
const (
	// HeldByInertia: it has only just landed and spreads as fast as it falls.
	HeldByInertia PuddleHold = "inertia"
	// HeldByViscosity: it creeps on.
	HeldByViscosity PuddleHold = "viscosity"
	// HeldByTension: it lies still, held by surface tension at its edge.
	HeldByTension PuddleHold = "surface tension"
	// HeldByYield: it lies still, stiff enough to stand.
	HeldByYield PuddleHold = "yield stress"
)

// Rest returns the puddle in which the pour ends on a level plate wide enough that it
// meets at contactDegrees (above 0, to 180): the smaller of
//
//	surface tension  h = 2 lc sin(theta/2),  R = sqrt(V/(pi h)),  lc = sqrt(sigma/(rho g))
//	yield stress     R = (15 V/(8 pi) sqrt(rho g/(2 tau)))^(2/5)
//
// The first is the flat puddle, for radii of several lc (from memory); a small one is a
// cap of that angle, whose radius is taken where it is the larger. The second integrates
// Coussot's flat deposit h = sqrt(2 tau (R - r)/(rho g)) round the middle. Bands: 15
// % for surface tension (contact angles move by +-15 degrees between wipes of a plate;
// estimated, no source), the yield stress's own to the power 1/5.
// Errors: ErrNoStream for the zero Pour, RangeError for the angle.
func (p Pour) Rest(contactDegrees float64) (Puddle, error) {
	if !(p.startL > 0) {
		return Puddle{}, noFlow("Pour")
	}
	if err := honestplate.InRange("contact angle", contactDegrees, 1, 180, "degrees", "a puddle that stays together"); err != nil {
		return Puddle{}, err
	}
	return p.restOf(p.Grams/1000/p.Density.Likely, contactDegrees), nil
}

// restOf is the puddle in which a part of the pour, in m3, would end by itself.
func (p Pour) restOf(volume, contactDegrees float64) Puddle {
	out := Puddle{Radius: honestplate.Within(tensionRadius(volume, p.Density.Likely, p.SurfaceTension.Likely, contactDegrees), 0.15), Held: HeldByTension}
	if p.yield.Low > 0 {
		r := func(tau float64) float64 { return yieldRadius(volume, p.Density.Likely, tau) }
		if r(p.yield.Likely) < out.Radius.Likely {
			out.Held = HeldByYield
			out.Radius = honestplate.Estimate{Low: r(p.yield.High), Likely: r(p.yield.Likely), High: r(p.yield.Low)}
		}
	}
	out.Depth = volume / (math.Pi * out.Radius.Likely * out.Radius.Likely)
	return out
}

// tensionRadius is the radius at rest, m: of the cap for small volumes, of the flat
// puddle for large ones.
func tensionRadius(v, rho, sigma, degrees float64) float64 {
	theta := degrees * math.Pi / 180
	h := 2 * math.Sqrt(sigma/(rho*standardGravity)) * math.Sin(theta/2)
	flat := math.Sqrt(v / (math.Pi * h))
	// A cap of sphere radius s has the volume pi s3 (2 + cos)(1 - cos)2/3 and its widest
	// radius is s sin theta, or s beyond 90 degrees.
	c := math.Cos(theta)
	s := math.Cbrt(3 * v / (math.Pi * (2 + c) * (1 - c) * (1 - c)))
	foot := s
	if theta < math.Pi/2 {
		foot = s * math.Sin(theta)
	}
	return max(flat, foot)
}

// yieldRadius is the radius at which a deposit of yield stress tau stands, m.
func yieldRadius(v, rho, tau float64) float64 {
	return math.Pow(15*v/(8*math.Pi)*math.Sqrt(rho*standardGravity/(2*tau)), 0.4)
}

// Puddle returns the puddle on a level plate a time after the first of the pour lands
// there: fed by FedPuddle's law while it runs, spreading on by ReleasedPuddle's from
// the radius it has when it ends, no faster than inertia lets it, R = (g V)^(1/4)
// sqrt t, and no further than Rest. The join is ours; the band is 10 % on the
// viscous part (see FedPuddle), and the viscosity's own to the power 1/8. The rate is
// taken as steady at the mean. A liquid that thins under shear spreads a little slower
// than this, for its viscosity is taken at the pour's rate. Errors as for Rest, and
// RangeError for a time not above 0 or beyond a month.
func (p Pour) Puddle(after time.Duration, contactDegrees float64) (Puddle, error) {
	rest, err := p.Rest(contactDegrees)
	if err != nil {
		return Puddle{}, err
	}
	t := after.Seconds()
	if err := honestplate.InRange("time after landing", t, 1e-9, 31*86400, "s", "a puddle"); err != nil {
		return Puddle{}, err
	}
	whole := p.Grams / 1000 / p.Density.Likely
	lasts := max(p.Duration.Likely.After.Seconds(), 1e-9)
	nu := p.Viscosity.Likely / p.Density.Likely
	volume := whole * min(t/lasts, 1)
	r := fedRadius(whole/lasts, nu, min(t, lasts))
	if t > lasts {
		// The released law, started so early that it meets the fed one.
		head := lasts * math.Pow(fedFactor/releasedFactor, 8)
		r = releasedRadius(whole, nu, t-lasts+head)
	}
	rel := math.Hypot(puddleSpread, math.Pow(p.Viscosity.High/p.Viscosity.Low, 1.0/16)-1)
	out := Puddle{Radius: honestplate.Within(r, rel), Held: HeldByViscosity}
	if fast := math.Sqrt(math.Sqrt(standardGravity*volume) * t); fast < r {
		out = Puddle{Radius: honestplate.Factor(fast, 1.5), Held: HeldByInertia}
	}
	if rest.Radius.Likely < out.Radius.Likely && t >= lasts {
		return rest, nil
	}
	// While it is fed it cannot lie wider than what has landed would at rest.
	if part := p.restOf(volume, contactDegrees); part.Radius.Likely < out.Radius.Likely {
		return part, nil
	}
	out.Depth = volume / (math.Pi * out.Radius.Likely * out.Radius.Likely)
	return out, nil
}
