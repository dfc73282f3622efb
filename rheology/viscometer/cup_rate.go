package viscometer

import (
	"cmp"
	"fmt"
	"math"
	"strings"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/root"
)

// ShearRate returns the shear rate in 1/s at which the cup reads a liquid that takes the
// time t, 0 if its Bore is not known:
//
//	rate = 8 Q/D^3,  Q = Volume/t
//
// pi/4 of the rate 8V/D at the wall of the bore at the mean speed V. There a power law has
// within 3 % the viscosity that a Newtonian liquid of this time has (representative rate,
// Schuemmer & Worthoff 1978, from memory). Cups of 3 mm shear at 300..990, of 4 mm at
// 125..420 1/s.
func (c Cup) ShearRate(t time.Duration) float64 {
	if !(c.Bore > 0) || t <= 0 {
		return 0
	}
	volume := c.Volume
	if volume == 0 {
		volume = 1e-4
	}
	return 8 * volume / t.Seconds() / (c.Bore * c.Bore * c.Bore)
}

// reads refuses what a cup cannot read: a liquid that stands, and one that thins in a cup of
// unknown bore. It says whether the liquid thins.
func (c Cup) reads(l rheology.Liquid, tempC float64) (thins bool, err error) {
	if check.IsNil(l) {
		return false, check.Missing("Liquid", "a liquid")
	}
	stress, err := check.YieldStress(l, tempC)
	if err != nil {
		return false, err
	}
	if stress.Likely > 0 {
		return false, &honestplate.RefusedError{
			Field: "Liquid", Kind: honestplate.ErrNoFlow,
			Reason: fmt.Sprintf("%s has a yield stress, %.3g Pa, and stands in a cup before it has run out",
				honestplate.OneLine(l.Describe().Name), stress.Likely),
			Advice: "measure it on a rheometer",
		}
	}
	if l.Describe().ShearRate == 0 {
		return false, nil
	}
	if !(c.Bore > 0) || math.IsInf(c.Bore, 0) || !(c.Volume >= 0) {
		return false, check.Input("Cup.Bore", c.Bore, "m", fmt.Sprintf("the diameter of the orifice: %s thins, and is read at the cup's own shear rate", honestplate.OneLine(l.Describe().Name)))
	}
	return true, nil
}

// TimeOf returns the time that a liquid takes at a temperature in degC, with the shortest
// and longest time its band of viscosity allows, each at the cup's own shear rate for that
// time. The likely time must be in the cup's range, a RangeError otherwise, which names a cup
// of the list that can tell; the band is cut at the cup's limits, see [Cup.Test]. A
// liquid with a yield stress is a RefusedError (ErrNoFlow).
func (c Cup) TimeOf(l rheology.Liquid, tempC float64) (honestplate.Window, error) {
	var t [3]time.Duration
	for i, of := range [...]func(e honestplate.Estimate) float64{likelyOf, lowOf, highOf} {
		var err error
		if t[i], err = c.timeOf(l, tempC, 1, of); err != nil {
			return honestplate.Window{}, err
		}
	}
	if err := c.told("T", t[0], l, tempC, 1); err != nil {
		return honestplate.Window{}, err
	}
	return honestplate.Lasting(max(c.Least, t[1]), c.clamp(t[0]), min(c.Most, t[2])), nil
}

func likelyOf(e honestplate.Estimate) float64 { return e.Likely }
func lowOf(e honestplate.Estimate) float64    { return e.Low }
func highOf(e honestplate.Estimate) float64   { return e.High }

func (c Cup) clamp(t time.Duration) time.Duration { return min(max(t, c.Least), c.Most) }

// timeOf is the time by the formula, also where it lies outside the cup's range, of a liquid
// whose viscosity is scale times its own. Outside, the rate is that at the end of the range.
func (c Cup) timeOf(l rheology.Liquid, tempC, scale float64, of func(honestplate.Estimate) float64) (time.Duration, error) {
	thins, err := c.reads(l, tempC)
	if err := cmp.Or(c.check(), err); err != nil {
		return 0, err
	}
	nu, err := kinematicViscosity(l, tempC)
	rho, err2 := check.Density(l.Density(tempC))
	if err := cmp.Or(err, err2); err != nil {
		return 0, err
	}
	if !thins {
		return c.seconds(scale * of(nu)), nil
	}
	s, err := root.Settle(c.seconds(scale*of(nu)).Seconds(), func(s float64) (float64, error) {
		t := time.Duration(s * float64(time.Second))
		e, err := rheology.ViscosityAtRate(l, tempC, c.ShearRate(c.clamp(t)))
		// The density's band is small beside the rest and is in nu's.
		return c.seconds(scale * of(e) / rho.Likely).Seconds(), err
	})
	return time.Duration(math.Round(s * float64(time.Second))), err
}

// seconds is the time of a kinematic viscosity in m2/s by the formula.
func (c Cup) seconds(nu float64) time.Duration {
	h := nu + c.A*c.C
	s := (h + math.Sqrt(h*h+4*c.A*c.B)) / (2 * c.A)
	return time.Duration(math.Round(min(s, 1e9) * float64(time.Second)))
}

// told returns a RangeError for a time that the cup cannot tell, with a cup that can.
func (c Cup) told(field string, t time.Duration, l rheology.Liquid, tempC, scale float64) error {
	if c.Least <= t && t <= c.Most {
		return nil
	}
	advice := "another temperature"
	if other := c.instead(l, tempC, scale); other != "" {
		advice = "take " + other
	}
	return check.Outside(field, t.Seconds(), c.Least.Seconds(), c.Most.Seconds(), "s", honestplate.OneLine(cmp.Or(c.Name, "the cup"))+": "+advice)
}

// instead is the cup of the list that tells the liquid's time well inside its range, of the
// same family if there is one; "" if none does.
func (c Cup) instead(l rheology.Liquid, tempC, scale float64) string {
	family, _, _ := strings.Cut(c.Name, " ")
	var any string
	for _, other := range Cups() {
		t, err := other.timeOf(l, tempC, scale, likelyOf)
		if err != nil || other.Name == c.Name || t < other.Least*11/10 || t > other.Most {
			continue
		}
		if f, _, _ := strings.Cut(other.Name, " "); f == family {
			return other.Name
		}
		if any == "" {
			any = other.Name
		}
	}
	return any
}
