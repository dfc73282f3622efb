package pour

import (
	"cmp"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
)

// A Wall is a surface on which a liquid drains: the inside of a glass, a spoon, a bottle.
type Wall struct {
	// Height that drains, m, of an upright wall; above 0.
	Height float64 `json:"height_m"`
}

// A Coat is what a wall still carries.
type Coat struct {
	// Mean and Foot are the thickness over the wall and at its lower end, m. At the
	// upper end it is none, or what a yield stress keeps.
	Mean honestplate.Estimate `json:"mean_m"`
	Foot honestplate.Estimate `json:"foot_m"`
	// Stands reports that a yield stress keeps the mean coat up for good.
	Stands bool `json:"stands"`
	// Draining reports that it still runs as a thick sheet, so early that the law of a thin
	// film does not hold: everything that was picked up is on the wall or on its way down.
	// How much that is the dipping decides; Mean and Foot are then 0.
	Draining bool `json:"draining"`
}

// Drain returns the coat of a liquid on the wall a time after the wall was covered or the
// level fell away:
//
//	h(z, t) = sqrt(nu z/(g t)),   mean = 2/3 h(Height)
//
// z is the distance from the top. Range: the time is long against that in which the level
// fell; thin against the wall's height. Source: Jeffreys 1930, "The draining of a vertical
// plate" (Bird, Stewart and Lightfoot, Problem 2D.2; read; the mean is its integral). No
// measured coat was found: the band is the viscosity's and the density's under the root,
// and 15 % for the start (estimated, no source). A liquid that thins is taken at the shear
// rate of its film at the foot, rho g h/eta (or the nearest in its range), and one with a
// yield stress keeps at least tau/(rho g). Errors: those of the liquid, InputError, and
// RangeError for a wall above 10 m or a time out of 1 ms to a month. A coat above a tenth
// of the height that does not stand is no thin film yet: it is Draining. Melted chocolate
// keeps 1.1 to 2.7 mm on an enrober's pieces (read in a maker's data), where it sets as it
// drains.
func (w Wall) Drain(l rheology.Liquid, tempC float64, after time.Duration) (Coat, error) {
	p, err := newPour(l, tempC, 1)
	if err := cmp.Or(honestplate.Positive("Height", w.Height, "m"),
		honestplate.InRange("Height", w.Height, 1e-4, 10, "m", "a tank"), err); err != nil {
		return Coat{}, err
	}
	t := after.Seconds()
	if err := honestplate.InRange("After", t, 1e-3, 31*86400, "s", "from a blink to a month"); err != nil {
		return Coat{}, err
	}
	pull := p.Density.Likely * physics.Gravity
	eta := p.Viscosity
	foot := func(eta float64) float64 { return math.Sqrt(eta * w.Height / (pull * t)) }
	if p.out.thins != nil {
		// The thicker the film the faster it shears and the thinner it runs.
		_, err := root.Settle(eta.Likely, func(x float64) (float64, error) {
			var err error
			eta, err = p.out.atRate(pull*foot(x)/x, false)
			return eta.Likely, err
		})
		if err != nil {
			return Coat{}, err
		}
	}
	var c Coat
	h := foot(eta.Likely)
	up := 1 + math.Hypot(math.Sqrt(eta.High/eta.Likely)-1, 0.15)
	down := 1 + math.Hypot(math.Sqrt(eta.Likely/eta.Low)-1, 0.15)
	c.Foot = honestplate.Estimate{Low: h / down, Likely: h, High: h * up}
	c.Mean = c.Foot.Times(2.0 / 3)
	yield, err := check.YieldStress(l, tempC)
	if err != nil {
		return Coat{}, err
	}
	if stands := yield.Times(1 / pull); stands.Likely > c.Mean.Likely {
		c.Mean, c.Foot, c.Stands = stands, stands, true
	}
	if !c.Stands && c.Foot.Likely > w.Height/10 {
		return Coat{Draining: true}, nil
	}
	return c, nil
}
