package viscometer

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/internal/check"
)

// A Cup is a flow cup or a dip cup: it is filled, and the time until the stream
// first breaks tells the kinematic viscosity,
//
//	nu = A (t - C) - B/t        nu in m2/s, t in s
//
// for a Newtonian liquid at the temperature it was filled at. One that thins is read at the
// cup's own shear rate, see [Cup.ShearRate]; one with a yield stress does not run out of a
// cup as the formula has it and is refused. [CupNamed] gives the
// standard ones; fill the fields for a cup with a
// calibration certificate. Cups of one name but different standards differ by
// several per cent or several times: never use the formula of one for another.
//
// A Bostwick consistometer is not here: no published relation of its reading to
// viscosity was found.
type Cup struct {
	Name    string        `json:"name"`                // shown to people and in errors, such as "ISO 2431, 4 mm"
	A       float64       `json:"a_m2_per_s2"`         // m2/s2, above 0
	B       float64       `json:"b_m2,omitzero"`       // m2, 0 or more
	C       float64       `json:"c_s,omitzero"`        // s, 0 or more
	Least   time.Duration `json:"least_ns"`            // shortest time for which the formula holds
	Most    time.Duration `json:"most_ns"`             // longest
	Rel     float64       `json:"rel,omitzero"`        // 95 % band of the calibration, as a fraction of nu
	Reading time.Duration `json:"reading_ns,omitzero"` // 95 % band of the timing: 0.5 s by hand (common practice, no source)
	Bore    float64       `json:"bore_m,omitzero"`     // diameter of the orifice, m
	Volume  float64       `json:"volume_m3,omitzero"`  // that runs out in the time, m3; 0 with Bore means 100 mL
	Source  string        `json:"source,omitzero"`     // whose formula, and whether it was read or is from memory
}

// String names the cup, such as "ISO 2431, 4 mm".
func (c Cup) String() string { return c.Name }

func (c Cup) check() error {
	err := cmp.Or(honestplate.Positive("Cup.A", c.A, "m2/s2"), honestplate.NotNegative("Cup.B", c.B, "m2"), honestplate.NotNegative("Cup.C", c.C, "s"),
		honestplate.NotNegative("Cup.Rel", c.Rel, ""), honestplate.NotNegative("Cup.Reading", c.Reading.Seconds(), "s"),
		honestplate.Positive("Cup.Least", c.Least.Seconds(), "s"))
	switch {
	case err != nil:
	case c.Rel >= 1:
		err = check.Input("Cup.Rel", c.Rel, "", "below 1")
	case c.Most < c.Least:
		err = check.Input("Cup.Most", c.Most.Seconds(), "s", fmt.Sprintf("at least the shortest time, %v", c.Least))
	case !(c.nu(c.Least.Seconds()) > 0) || math.IsInf(c.nu(c.Most.Seconds()), 0):
		err = check.Input("Cup.A", c.A, "m2/s2", "constants that give a viscosity above 0 and finite from Least to Most")
	}
	return err
}

// inRange is honestplate.InRange with the cup as the source; only an error costs its text.
func (c Cup) inRange(field string, v, low, high float64, unit string) error {
	if low <= v && v <= high {
		return nil
	}
	return honestplate.InRange(field, v, low, high, unit, cmp.Or(c.Name, "the cup's Least and Most")+": take another cup, or another temperature")
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
	v := c.nu(s)
	d := math.Hypot(c.Rel*v, (c.A+c.B/(s*s))*c.Reading.Seconds())
	return check.Unless(c.inRange("T", s, c.Least.Seconds(), c.Most.Seconds(), "s"), honestplate.Estimate{Low: max(0, v-d), Likely: v, High: v + d})
}

// Time returns the time that a liquid of kinematic viscosity nu in m2/s takes.
// One that the cup cannot tell is a RangeError: see [Cup.Range].
func (c Cup) Time(nu float64) (time.Duration, error) {
	low, high, err := c.Range()
	if err != nil {
		return 0, err
	}
	// A billionth of slack lets the ends of the range be asked for.
	if err := c.inRange("Nu", nu, low*(1-1e-9), high*(1+1e-9), "m2/s"); err != nil {
		return 0, err
	}
	return c.clamp(c.seconds(nu)), nil
}

// kinematicViscosity is viscosity over density in m2/s, which is what a flow
// cup tells, at the shear rate at which the liquid states it. The band is that of the viscosity with that of the density on top.
func kinematicViscosity(l rheology.Liquid, tempC float64) (honestplate.Estimate, error) {
	if check.IsNil(l) {
		return honestplate.Estimate{}, check.Missing("Liquid", "a liquid")
	}
	eta, err := check.Viscosity(l.Viscosity(tempC))
	rho, err2 := check.Density(l.Density(tempC))
	return check.Unless(cmp.Or(err, err2, honestplate.Positive("Liquid.Density", rho.Low, "kg/m3")), honestplate.Estimate{Low: eta.Low / rho.High, Likely: eta.Likely / rho.Likely, High: eta.High / rho.Low})
}
