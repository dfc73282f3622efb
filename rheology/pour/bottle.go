package pour

import (
	"cmp"
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
)

const (
	// glugSpeed is the mean speed in the neck of a closed bottle upside down over sqrt(g d).
	// Clanet and Searby 2004, "On the glug-glug of ideal bottles", J. Fluid Mech. 510, 145
	// (law from memory): it empties in 3.0 L/sqrt(g D) (D/d)^(5/2), L its length, D its
	// width, d its neck. With the volume pi/4 D2 L that is a rate of pi/12 sqrt(g) d^(5/2)
	// whatever the bottle, a mean speed of sqrt(g d)/3: nearly that at which one long bubble
	// rises in a tube, 0.35 sqrt(g d).
	glugSpeed = 1.0 / 3
	// glugThick is how that bubble slows in a thick liquid: its speed is
	// 1 - exp(-glugThick N) of the thin one's, N = sqrt(g d3)/nu (Wallis 1969,
	// "One-dimensional Two-phase Flow", 0.01/0.345, from memory).
	glugThick = 0.01 / 0.345
	// glugBand is how well a rate is known: the ideal bottles were thin-walled holes, a
	// neck has a length, a hand tilts and swirls. A wine bottle is said to glug for 10 s
	// and more, where the law has 20, and about 5 s once it is swirled to a vortex, which
	// is not covered (estimated).
	glugBand = 1.8
	// glugThickBand is that of a thick liquid, N below 100: no measured bottle was found.
	glugThickBand = 2.5
	// airNeck is rho g d2/sigma below which no bubble rises in a tube: the liquid stays
	// (Bretherton 1961, 3.37, from memory).
	airNeck = 3.37
)

// glug bounds the pour of a closed bottle by the air that comes in past it.
func (p *Pour) glug() error {
	d := p.out.bore
	if bond := p.Density.Likely * physics.Gravity * d * d / p.SurfaceTension.Likely; bond <= airNeck {
		wide := d * math.Sqrt(airNeck/bond)
		return &honestplate.RefusedError{
			Field: "Closed", Kind: honestplate.ErrNoFlow,
			Reason: fmt.Sprintf("no air gets in past the liquid in a neck of %.3g mm", d*1000),
			Advice: fmt.Sprintf("it does from %.3g mm on: vent the bottle, squeeze or shake it", wide*1000),
		}
	}
	nu := p.Viscosity.Likely / p.Density.Likely
	n := math.Sqrt(physics.Gravity*d*d*d) / nu
	rate := func(n float64) float64 {
		return glugSpeed * math.Sqrt(physics.Gravity*d) * p.out.boreArea() * -math.Expm1(-glugThick*n)
	}
	q := rate(n)
	if q >= p.EndRate.Likely {
		// What the liquid's own flow lets through is less than the air would.
		if q >= p.Rate.Likely {
			return nil
		}
		q = min(q, math.Sqrt(p.Rate.Likely*p.EndRate.Likely))
	}
	p.glugs, p.airBand = true, glugBand
	if n < 100 {
		p.airBand = glugThickBand
	}
	slow := rate(n) / rate(n*p.Viscosity.Likely/p.Viscosity.High)
	fast := rate(n) / rate(n*p.Viscosity.Likely/p.Viscosity.Low)
	down := math.Exp(math.Hypot(math.Log(p.airBand), math.Log(slow)))
	up := math.Exp(math.Hypot(math.Log(p.airBand), math.Log(fast)))
	p.Rate = honestplate.Estimate{Low: q / down, Likely: q, High: q * up}
	p.EndRate = p.Rate
	volume := p.Grams / 1000 / p.Density.Likely
	seconds := volume / q
	if err := cmp.Or(p.lasts(seconds/up, seconds, seconds*down), p.start()); err != nil {
		return err
	}
	p.judge(slow, fast)
	return p.left(volume, seconds)
}
