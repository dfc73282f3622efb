package pour

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/law"
)

// puddleSpread is how far the one measured spill that was found lies from the fed
// law over its first two minutes (Lister 1992: half width 2 to 9 % below).
const puddleSpread = 0.10

// A Puddle is a pour that lies on a level plate.
type Puddle struct {
	// Radius in m, with its band.
	Radius honestplate.Estimate `json:"radius_m"`
	// Depth in m, the mean: volume over area.
	Depth float64 `json:"depth_m"`
	// Held says what stops or slows it: "inertia", it has only just landed and spreads as
	// fast as it falls; "viscosity", it creeps on; "surface tension" or "yield stress", it
	// lies still.
	Held string `json:"held"`
}

// Settled returns the puddle in which the pour ends on a level plate wide enough that it
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
// Errors: InputError for the zero Pour, RangeError for the angle.
func (p Pour) Settled(contactDegrees float64) (Puddle, error) {
	if err := cmp.Or(p.check(), contact(contactDegrees, 1)); err != nil {
		return Puddle{}, err
	}
	return p.settled(p.Grams/1000/p.Density.Likely, contactDegrees), nil
}

// settled is the puddle in which a part of the pour, in m3, would end by itself.
func (p Pour) settled(volume, contactDegrees float64) Puddle {
	out := Puddle{Radius: honestplate.Within(tensionRadius(volume, p.Density.Likely, p.SurfaceTension.Likely, contactDegrees), 0.15), Held: "surface tension"}
	if p.yield.Low > 0 {
		r := func(tau float64) float64 { return yieldRadius(volume, p.Density.Likely, tau) }
		if r(p.yield.Likely) < out.Radius.Likely {
			out.Held = "yield stress"
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
	h := 2 * math.Sqrt(sigma/(rho*physics.Gravity)) * math.Sin(theta/2)
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
	return math.Pow(15*v/(8*math.Pi)*math.Sqrt(rho*physics.Gravity/(2*tau)), 0.4)
}

// Puddle returns the puddle on a level plate a time after the first of the pour lands
// there: fed by [law.FedPuddle] while it runs, spreading on by [law.ReleasedPuddle] from
// the radius it has when it ends, no faster than inertia lets it, R = (g V)^(1/4)
// sqrt t, and no further than [Pour.Settled]. The join is ours; the band is 10 % on the
// viscous part (see [law.FedPuddle]), and the viscosity's own to the power 1/8. The rate is
// taken as steady at the mean. A liquid that thins under shear spreads a little slower
// than this, for its viscosity is taken at the pour's rate. Errors as for Settled, and
// RangeError for a time not above 0 or beyond a month.
func (p Pour) Puddle(after time.Duration, contactDegrees float64) (Puddle, error) {
	rest, err := p.Settled(contactDegrees)
	if err != nil {
		return Puddle{}, err
	}
	t := after.Seconds()
	if err := honestplate.InRange("After", t, 1e-9, 31*86400, "s", "a month"); err != nil {
		return Puddle{}, err
	}
	whole := p.Grams / 1000 / p.Density.Likely
	lasts := max(p.Duration.Likely.After.Seconds(), 1e-9)
	nu := p.Viscosity.Likely / p.Density.Likely
	volume := whole * min(t/lasts, 1)
	r, err := law.FedPuddle(whole/lasts, nu, min(t, lasts))
	if err != nil {
		return Puddle{}, err
	}
	if t > lasts {
		// The released law, started so early that it meets the fed one.
		unled, err := law.ReleasedPuddle(whole, nu, lasts)
		if err != nil {
			return Puddle{}, err
		}
		if r, err = law.ReleasedPuddle(whole, nu, t-lasts+lasts*math.Pow(r/unled, 8)); err != nil {
			return Puddle{}, err
		}
	}
	rel := math.Hypot(puddleSpread, math.Pow(p.Viscosity.High/p.Viscosity.Low, 1.0/16)-1)
	out := Puddle{Radius: honestplate.Within(r, rel), Held: "viscosity"}
	if fast := math.Sqrt(math.Sqrt(physics.Gravity*volume) * t); fast < r {
		out = Puddle{Radius: honestplate.Factor(fast, 1.5), Held: "inertia"}
	}
	if rest.Radius.Likely < out.Radius.Likely && t >= lasts {
		return rest, nil
	}
	// While it is fed it cannot lie wider than what has landed would at rest.
	if part := p.settled(volume, contactDegrees); part.Radius.Likely < out.Radius.Likely {
		return part, nil
	}
	out.Depth = volume / (math.Pi * out.Radius.Likely * out.Radius.Likely)
	return out, nil
}
