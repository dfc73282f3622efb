package rheology

import (
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// BubbleRise returns the steady speed in m/s at which a bubble of air of diameter d (m)
// rises in a liquid at tempC, far from walls. Low is that of a bubble with a coated,
// stiff surface, High of a clean one, each widened by the viscosity's band and the
// correlations' 10 %; Value is the
// coated one: milk, cream, juice and syrup carry proteins and the like that coat it (a
// judgement, no datum found). In thick liquids the two differ by a factor of 1.5.
//
//	small or in thick liquids   RigidBubble, of which Stokes' U = g d2 rho/(18 eta) is the
//	                            limit; clean 1.5 times it (Hadamard and Rybczynski) and more
//	1 mm and more in thin ones  EllipsoidBubble and CleanBubble
//	large                       CapBubble
//
// Range: 10 um to 50 mm. A liquid with a
// yield stress holds a bubble below d = 21 tau/(g (rho - rho_g)) (Beris and others 1985,
// for spheres, from memory): a speed of 0, which is an answer, not an error. A liquid that
// thins is taken at the shear rate U/d. Sources: Clift, Grace and Weber 1978, Bubbles,
// Drops, and Particles. Errors: those of the liquid, InputError, RangeError.
func BubbleRise(l Liquid, tempC, d float64) (honestplate.Estimate, error) {
	p, err := newPour(l, tempC, 1)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if err := honestplate.InRange("bubble diameter", d, 1e-5, 0.05, "m", "Clift, Grace and Weber 1978"); err != nil {
		return honestplate.Estimate{}, err
	}
	held, err := heldBubble(l, tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if d < held {
		return honestplate.Estimate{}, nil
	}
	b := bubble{d: d, rho: p.Density.Likely, sigma: p.SurfaceTension.Likely}
	eta := p.Viscosity
	if p.out.thins != nil {
		u := b.coated(eta.Likely)
		for range 60 {
			if eta, err = p.out.atRate(u/d, false); err != nil {
				return honestplate.Estimate{}, err
			}
			// The geometric mean of old and new does not swing.
			next := math.Sqrt(u * b.coated(eta.Likely))
			done := math.Abs(next-u) < 1e-6*u
			u = next
			if done {
				break
			}
		}
	}
	// Thin liquids can rise faster when thicker (a wobbling bubble): order the ends.
	low := min(b.coated(eta.High), b.coated(eta.Likely))
	high := max(b.clean(eta.Low), b.clean(eta.Likely), b.coated(eta.Low))
	v := b.coated(eta.Likely)
	return honestplate.Estimate{Low: low * (1 - bubbleSpread), Likely: v, High: max(high, v) * (1 + bubbleSpread)}, nil
}

// BubblesClear returns how long bubbles of diameter d (m) take to rise through depth
// metres of the liquid at tempC: what to wait after stirring or filling. Smaller ones
// stay: the time goes with 1/d2 in thick liquids. Errors: as for BubbleRise; RangeError for a
// bubble that a yield stress holds for good and for a wait of more than a year.
func BubblesClear(l Liquid, tempC, d, depth float64) (honestplate.Window, error) {
	u, err := BubbleRise(l, tempC, d)
	if err != nil {
		return honestplate.Window{}, err
	}
	if err := honestplate.InRange("depth", depth, 1e-4, 10, "m", "a vessel"); err != nil {
		return honestplate.Window{}, err
	}
	if u.Likely == 0 {
		least, err := heldBubble(l, tempC)
		if err != nil {
			return honestplate.Window{}, err
		}
		return honestplate.Window{}, check.Outside("bubble diameter", d, least, 0.05, "m", "below, the yield stress holds it: Beris and others 1985")
	}
	const year = 365 * 24 * time.Hour
	if err := honestplate.InRange("time to clear", depth/u.Low, 0, year.Seconds(), "s", "one year"); err != nil {
		return honestplate.Window{}, err
	}
	return honestplate.Lasting(inSeconds(depth/u.High), inSeconds(depth/u.Likely), inSeconds(depth/u.Low)), nil
}

// heldBubble returns the diameter in m below which the liquid's yield stress holds a bubble;
// 0 without one.
func heldBubble(l Liquid, tempC float64) (float64, error) {
	y, ok := l.(Yielding)
	if !ok {
		return 0, nil
	}
	yield, err := y.YieldStress(tempC)
	if err != nil {
		return 0, err
	}
	if err := honestplate.NotNegative("yield stress", yield.Likely, "Pa"); err != nil {
		return 0, err
	}
	rho, err := l.Density(tempC)
	if err != nil {
		return 0, err
	}
	return 21 * yield.Likely / (standardGravity * (rho.Likely - airDensity)), nil
}

// StokesBubble returns the speed in m/s at which a small bubble of diameter d (m) rises in
// a liquid of viscosity eta (Pa s) and density rho (kg/m3): g d2 rho/(18 eta), coated, the
// gas's weight left out; clean 1.5 times that. Range: Re = rho U d/eta below 1, RangeError
// above. Source: Stokes 1851; Hadamard 1911 and Rybczynski 1911.
func StokesBubble(d, eta, rho float64, clean bool) (float64, error) {
	if err := positiveAll(eta, rho, 1); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("bubble diameter", d, 1e-7, 0.1, "m", "a bubble"); err != nil {
		return 0, err
	}
	u := standardGravity * d * d * rho / (18 * eta)
	if clean {
		u *= 1.5
	}
	if err := honestplate.InRange("bubble Reynolds number", rho*u*d/eta, 0, 1, "", "Stokes 1851"); err != nil {
		return 0, err
	}
	return u, nil
}

// Room air in a bubble; neither moves a figure here by more than 2 %.
const (
	airDensity   = 1.2     // kg/m3
	airViscosity = 1.84e-5 // Pa s
)

// bubbleSpread is the scatter of measured speeds about the correlations, as a fraction (from
// memory; air in water at 1 to 10 mm, quoted as 0.23 m/s, lies 7 % below the coated law).
const bubbleSpread = 0.10

// A bubble in a liquid of given density and surface tension.
type bubble struct {
	d, rho, sigma float64
}

// coated is the speed with a stiff surface.
func (b bubble) coated(eta float64) float64 {
	if b.wobbles(eta) {
		return ellipsoidBubble(b.d, b.rho, airDensity, eta, b.sigma)
	}
	return min(rigidBubble(b.d, b.rho, airDensity, eta), capBubble(b.d, b.rho, airDensity))
}

// clean is the speed with a clean one. A sphere gains 1.5 times in creeping flow and more
// as inertia grows: 1.5 + 1.1 (Re/100)^0.55 joins the stiff sphere's drag to the clean
// one's, 48/Re (1 - 2.2/sqrt Re) (Moore 1963, from memory), within 5 % at Re 10 and 100.
func (b bubble) clean(eta float64) float64 {
	if b.wobbles(eta) {
		return b.coated(eta) * cleanFactor(b.eotvos(), eta)
	}
	u := rigidBubble(b.d, b.rho, airDensity, eta)
	re := b.rho * u * b.d / eta
	u *= min(1.5+1.1*math.Pow(re/100, 0.55), 3)
	return min(u, capBubble(b.d, b.rho, airDensity))
}

// wobbles reports that the bubble is flattened and unsteady: thin liquids, about 1 to 17 mm
// in water.
func (b bubble) wobbles(eta float64) bool {
	h := graceH(b.d, b.rho, airDensity, eta, b.sigma)
	return h > 2 && h < 1000 && b.eotvos() < 40 && morton(b.rho, airDensity, eta, b.sigma) < 1e-3
}

func (b bubble) eotvos() float64 {
	return standardGravity * (b.rho - airDensity) * b.d * b.d / b.sigma
}
