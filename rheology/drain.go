package rheology

import (
	"math"
	"time"

	"example.org/honestplate"
)

// NusseltFilm returns the thickness in m of the film in which q m2/s (the rate per width)
// runs down a wall that leans by degrees from level (90 is upright):
//
//	h = (3 nu q/(g sin b))^(1/3)
//
// with nu in m2/s. Range: smooth up to Re = 4 q/nu of about 20, laminar with waves to
// about 1500 (from memory), RangeError above. Source: Nusselt 1916; Bird, Stewart and
// Lightfoot, Transport Phenomena, 2nd ed., section 2.2.
func NusseltFilm(q, nu, degrees float64) (float64, error) {
	if err := leans(nu, degrees); err != nil {
		return 0, err
	}
	if err := honestplate.NotNegative("rate per width", q, "m2/s"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("film Reynolds number", 4*q/nu, 0, wavyFilm, "", "laminar film"); err != nil {
		return 0, err
	}
	return math.Cbrt(3 * nu * q / (standardGravity * math.Sin(degrees*math.Pi/180))), nil
}

// NusseltFlow returns the rate per width in m2/s of a film h thick (m): the inverse of
// NusseltFilm, q = g h3 sin b/(3 nu).
func NusseltFlow(h, nu, degrees float64) (float64, error) {
	if err := leans(nu, degrees); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("film", h, 0, 1, "m", "a film"); err != nil {
		return 0, err
	}
	q := standardGravity * h * h * h * math.Sin(degrees*math.Pi/180) / (3 * nu)
	if err := honestplate.InRange("film Reynolds number", 4*q/nu, 0, wavyFilm, "", "laminar film"); err != nil {
		return 0, err
	}
	return q, nil
}

const wavyFilm = 1500

func leans(nu, degrees float64) error {
	if err := honestplate.InRange("kinematic viscosity", nu, 1e-9, 1e6, "m2/s", "a liquid that pours"); err != nil {
		return err
	}
	return honestplate.InRange("slope", degrees, 1, 90, "degrees", "a wall")
}

// A Wall is a surface on which a liquid drains: the inside of a glass, a spoon, a bottle.
type Wall struct {
	// Height that drains, m, along the wall; above 0.
	Height float64
	// Degrees by which it leans from level; 0 is taken as upright, 90.
	Degrees float64
}

// A Coat is what a wall still carries.
type Coat struct {
	// Mean and Foot are the thickness over the wall and at its lower end, m. At the
	// upper end it is none, or what a yield stress keeps.
	Mean, Foot honestplate.Estimate
	// GramsPerArea is the mean coat's mass, g/m2.
	GramsPerArea honestplate.Estimate
	// Stands reports that a yield stress keeps the mean coat up for good.
	Stands bool
}

// Drain returns the coat of a liquid on the wall a time after the wall was covered or the
// level fell away:
//
//	h(z, t) = sqrt(nu z/(g sin b t)),   mean = 2/3 h(Height)
//
// z is the distance from the top. Range: the time is long against that in which the level
// fell; thin against the wall's height. Source: Jeffreys 1930, "The draining of a vertical
// plate" (Bird, Stewart and Lightfoot, Problem 2D.2; read; the mean is its integral). No
// measured coat was found: the band is the viscosity's and the density's under the root, and 15 % for the
// start (estimated, no source). A liquid that thins is taken at the shear rate of its
// film at the foot, rho g sin b h/eta (or the nearest in its range), and one with a yield stress keeps at least
// tau/(rho g sin b). Errors: those of the liquid, InputError, and RangeError for a wall
// above 10 m, a time out of 1 ms to a month, or a coat above a tenth of the height.
func (w Wall) Drain(l Liquid, tempC float64, after time.Duration) (Coat, error) {
	b, err := w.sine()
	if err != nil {
		return Coat{}, err
	}
	p, err := newPour(l, tempC, 1)
	if err != nil {
		return Coat{}, err
	}
	t := after.Seconds()
	if err := honestplate.InRange("time of draining", t, 1e-3, 31*86400, "s", "a coat"); err != nil {
		return Coat{}, err
	}
	rho := p.Density.Likely
	pull := rho * standardGravity * b
	eta := p.Viscosity
	foot := func(eta float64) float64 { return math.Sqrt(eta * w.Height / (pull * t)) }
	if thins := p.out.thins; thins != nil {
		// The thicker the film the faster it shears and the thinner it runs: a few rounds
		// with a mean step settle it.
		for range 40 {
			rate := pull * foot(eta.Likely) / eta.Likely
			next, err := p.out.atRate(rate, false)
			if err != nil {
				return Coat{}, err
			}
			ratio := math.Sqrt(next.Likely / eta.Likely)
			eta = next.Times(1 / ratio)
			if math.Abs(ratio-1) < 1e-6 {
				break
			}
		}
	}
	var c Coat
	h := foot(eta.Likely)
	up := 1 + math.Hypot(math.Sqrt(eta.High/eta.Likely)-1, 0.15)
	down := 1 + math.Hypot(math.Sqrt(eta.Likely/eta.Low)-1, 0.15)
	c.Foot = honestplate.Estimate{Low: h / down, Likely: h, High: h * up}
	c.Mean = c.Foot.Times(2.0 / 3)
	if y, ok := l.(Yielding); ok {
		yield, err := y.YieldStress(tempC)
		if err != nil {
			return Coat{}, err
		}
		stands := yield.Times(1 / pull)
		if stands.Likely > c.Mean.Likely {
			c.Mean, c.Foot, c.Stands = stands, stands, true
		}
	}
	if err := honestplate.InRange("coat", c.Foot.Likely, 0, w.Height/10, "m", "a film thin against its wall"); err != nil {
		return Coat{}, err
	}
	c.GramsPerArea = c.Mean.Times(rho * 1000)
	return c, nil
}

func (w Wall) sine() (float64, error) {
	if err := honestplate.Positive("wall height", w.Height, "m"); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("wall height", w.Height, 1e-4, 10, "m", "a vessel"); err != nil {
		return 0, err
	}
	if w.Degrees == 0 {
		return 1, nil
	}
	if err := honestplate.InRange("slope", w.Degrees, 1, 90, "degrees", "a wall"); err != nil {
		return 0, err
	}
	return math.Sin(w.Degrees * math.Pi / 180), nil
}
