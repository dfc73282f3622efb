package rheology

import (
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// A Cup is a flow cup or a dip cup: it is filled, and the time until the stream
// first breaks tells the kinematic viscosity,
//
//	nu = A (t - C) - B/t        nu in m2/s, t in s
//
// for a Newtonian liquid at the temperature it was filled at. ISO2431, FordCup,
// ZahnCup and ShellCup give the standard ones; fill the fields for a cup with a
// calibration certificate. Cups of one name but different standards differ by
// several per cent or several times: never use the formula of one for another.
//
// A Bostwick consistometer is not here: no published relation of its reading to
// viscosity was found.
type Cup struct {
	Name    string        // shown to people and in errors, such as "ISO 2431, 4 mm"
	A       float64       // m2/s2, above 0
	B       float64       // m2, 0 or more
	C       float64       // s, 0 or more
	Least   time.Duration // shortest time for which the formula holds
	Most    time.Duration // longest
	Rel     float64       // 95 % band of the calibration, as a fraction of nu
	Reading time.Duration // 95 % band of the timing: 0.5 s by hand (common practice, no source)
	Source  string        // whose formula, and whether it was read or is from memory
}

// String names the cup, such as "ISO 2431, 4 mm".
func (c Cup) String() string { return c.Name }

func (c Cup) check() error {
	// The usual case first: naming what is wrong costs allocations.
	least := c.Least.Seconds()
	if c.A > 0 && c.B >= 0 && c.C >= 0 && c.Rel >= 0 && c.Rel < 1 && c.Reading >= 0 && least > 0 && c.Most >= c.Least &&
		c.nu(least) > 0 && !math.IsInf(c.nu(c.Most.Seconds()), 0) {
		return nil
	}
	return c.wrong()
}

// wrong returns the InputError of a cup that check did not pass.
func (c Cup) wrong() error {
	of := " of " + c.label()
	if err := honestplate.Positive("constant A"+of, c.A, "m2/s2"); err != nil {
		return err
	}
	for _, v := range []struct {
		quantity string
		value    float64
		unit     string
	}{{"constant B", c.B, "m2"}, {"constant C", c.C, "s"}, {"band", c.Rel, ""}, {"reading", c.Reading.Seconds(), "s"}} {
		if err := honestplate.NotNegative(v.quantity+of, v.value, v.unit); err != nil {
			return err
		}
	}
	if c.Rel >= 1 {
		return check.Input("band"+of, c.Rel, "", "below 1")
	}
	if err := honestplate.Positive("shortest time"+of, c.Least.Seconds(), "s"); err != nil {
		return err
	}
	if c.Most < c.Least {
		return check.Input("longest time"+of, c.Most.Seconds(), "s", fmt.Sprintf("at least the shortest, %v", c.Least))
	}
	return check.Input("viscosity at the limits"+of, c.nu(c.Least.Seconds()), "m2/s", "finite and above 0")
}

func (c Cup) label() string {
	if c.Name == "" {
		return "the cup"
	}
	return c.Name
}

func (c Cup) nu(seconds float64) float64 { return c.A*(seconds-c.C) - c.B/seconds }

// Range returns the kinematic viscosities in m2/s that the cup can tell.
func (c Cup) Range() (low, high float64, err error) {
	if err := c.check(); err != nil {
		return 0, 0, err
	}
	return c.nu(c.Least.Seconds()), c.nu(c.Most.Seconds()), nil
}

// KinematicViscosity returns the kinematic viscosity in m2/s of a liquid that takes
// the time t. The band holds the calibration (Rel) and the timing (Reading),
// taken as independent. A time outside Least..Most is a RangeError.
func (c Cup) KinematicViscosity(t time.Duration) (honestplate.Estimate, error) {
	if err := c.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	s := t.Seconds()
	if err := honestplate.InRange("time in the cup", s, c.Least.Seconds(), c.Most.Seconds(), "s", c.label()); err != nil {
		return honestplate.Estimate{}, err
	}
	v := c.nu(s)
	d := math.Hypot(c.Rel*v, (c.A+c.B/(s*s))*c.Reading.Seconds())
	return honestplate.Estimate{Low: max(0, v-d), Likely: v, High: v + d}, nil
}

// Time returns the time that a liquid of kinematic viscosity nu in m2/s takes.
// One that the cup cannot tell is a RangeError: see Range.
func (c Cup) Time(nu float64) (time.Duration, error) {
	low, high, err := c.Range()
	if err != nil {
		return 0, err
	}
	// A billionth of slack lets the ends of the range be asked for.
	if err := honestplate.InRange("kinematic viscosity", nu, low*(1-1e-9), high*(1+1e-9), "m2/s", c.label()); err != nil {
		return 0, err
	}
	h := nu + c.A*c.C
	s := (h + math.Sqrt(h*h+4*c.A*c.B)) / (2 * c.A)
	t := time.Duration(math.Round(s * float64(time.Second)))
	return min(max(t, c.Least), c.Most), nil
}

// TimeOf returns the time that a liquid takes at a temperature in degC, with the
// shortest and longest time its band of viscosity allows. The likely time must be
// in the cup's range, a RangeError otherwise; the band is cut at the cup's limits.
func (c Cup) TimeOf(l Liquid, tempC float64) (likely, shortest, longest time.Duration, err error) {
	nu, err := KinematicViscosity(l, tempC)
	if err != nil {
		return 0, 0, 0, err
	}
	likely, err = c.Time(nu.Likely)
	if err != nil {
		return 0, 0, 0, err
	}
	low, high, _ := c.Range()
	shortest, _ = c.Time(min(max(nu.Low, low), high))
	longest, _ = c.Time(min(max(nu.High, low), high))
	return likely, shortest, longest, nil
}

// KinematicViscosity returns viscosity over density in m2/s, which is what a flow
// cup tells. The band is that of the viscosity with that of the density on top.
func KinematicViscosity(l Liquid, tempC float64) (honestplate.Estimate, error) {
	if l == nil {
		return honestplate.Estimate{}, check.Missing("liquid", "a liquid, not nil")
	}
	eta, err := l.Viscosity(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	rho, err := l.Density(tempC)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if err := honestplate.Positive("density", rho.Low, "kg/m3"); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Estimate{Low: eta.Low / rho.High, Likely: eta.Likely / rho.Likely, High: eta.High / rho.Low}, nil
}
