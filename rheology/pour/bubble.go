package pour

import (
	"cmp"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
	"example.org/honestplate/rheology/law"
)

// BubbleRise returns the steady speed in m/s at which a bubble of air of diameter d (m)
// rises in a liquid at tempC, far from walls. Low is that of a bubble with a coated,
// stiff surface, High of a clean one, each widened by the viscosity's band and the
// correlations' 10 %; Likely is the coated one: milk, cream, juice and syrup carry proteins
// and the like that coat it (a judgement, no datum found). In thick liquids the two differ
// by a factor of 1.5. The laws are those of [law.Bubble].
//
// Range: 10 um to 50 mm. A liquid with a
// yield stress holds a bubble below d = 21 tau/(g (rho - rho_g)) (Beris and others 1985,
// for spheres, from memory): a speed of 0, which is an answer, not an error. A liquid that
// thins is taken at the shear rate U/d. Sources: Clift, Grace and Weber 1978, Bubbles,
// Drops, and Particles. Errors: those of the liquid, InputError, RangeError.
func BubbleRise(l rheology.Liquid, tempC, d float64) (honestplate.Estimate, error) {
	p, err := newPour(l, tempC, 1)
	if err := cmp.Or(err, honestplate.InRange("Diameter", d, 1e-5, 0.05, "m", "Clift, Grace and Weber 1978")); err != nil {
		return honestplate.Estimate{}, err
	}
	held, err := heldBubble(l, tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if d < held {
		return honestplate.Estimate{}, nil
	}
	// Thin liquids can rise faster when thicker (a wobbling bubble): order the ends.
	eta := p.Viscosity
	rise := func(eta float64, clean bool) float64 {
		b := law.Bubble{Fluid: p.fluid(eta), Diameter: d}
		u, err2 := b.Coated()
		if clean {
			u, err2 = b.Clean()
		}
		err = cmp.Or(err, err2)
		return u
	}
	if p.out.thins != nil {
		_, err2 := root.Settle(rise(eta.Likely, false), func(u float64) (float64, error) {
			e, err := p.out.atRate(u/d, false)
			if err != nil {
				return 0, err
			}
			eta = e
			return rise(eta.Likely, false), nil
		})
		err = cmp.Or(err, err2)
	}
	v := rise(eta.Likely, false)
	low := min(rise(eta.High, false), v)
	high := max(rise(eta.Low, true), rise(eta.Likely, true), rise(eta.Low, false), v)
	return honestplate.Estimate{Low: low * (1 - bubbleSpread), Likely: v, High: high * (1 + bubbleSpread)}, err
}

// bubbleSpread is the scatter of measured speeds about the correlations, as a fraction (from
// memory; air in water at 1 to 10 mm, quoted as 0.23 m/s, lies 7 % below the coated law).
const bubbleSpread = 0.10

// BubblesClear returns how long bubbles of diameter d (m) take to rise through depth
// metres of the liquid at tempC: what to wait after stirring or filling. Smaller ones
// stay: the time goes with 1/d2 in thick liquids. Errors: as for BubbleRise; RangeError for a
// bubble that a yield stress holds for good and for a wait of more than a year.
func BubblesClear(l rheology.Liquid, tempC, d, depth float64) (honestplate.Window, error) {
	u, err := BubbleRise(l, tempC, d)
	if err := cmp.Or(err, honestplate.InRange("Depth", depth, 1e-4, 10, "m", "a tank")); err != nil {
		return honestplate.Window{}, err
	}
	if u.Likely == 0 {
		least, err := heldBubble(l, tempC)
		if err != nil {
			return honestplate.Window{}, err
		}
		return honestplate.Window{}, check.Outside("Diameter", d, least, 0.05, "m", "below, the yield stress holds it: Beris and others 1985")
	}
	const year = 365 * 24 * time.Hour
	if err := honestplate.InRange("Time", depth/u.Low, 0, year.Seconds(), "s", "one year"); err != nil {
		return honestplate.Window{}, err
	}
	return honestplate.Lasting(inSeconds(depth/u.High), inSeconds(depth/u.Likely), inSeconds(depth/u.Low)), nil
}

// heldBubble returns the diameter in m below which the liquid's yield stress holds a bubble;
// 0 without one.
func heldBubble(l rheology.Liquid, tempC float64) (float64, error) {
	yield, err := check.YieldStress(l, tempC)
	rho, err2 := l.Density(tempC)
	return 21 * yield.Likely / (physics.Gravity * (rho.Likely - 1.2)), cmp.Or(err, err2)
}
