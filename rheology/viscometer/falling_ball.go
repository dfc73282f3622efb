package viscometer

import (
	"cmp"
	"fmt"
	"math"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
	"example.org/honestplate/rheology/internal/physics"
)

// A FallingBall measures a thick clear liquid, honey or syrup, by the time that a
// ball takes to sink in the middle of an upright tube. By Stokes' law with Faxen's
// correction for the wall,
//
//	eta = f(x) (rhoBall - rho) g d^2 / (18 v)
//	f(x) = 1 - 2.104 x + 2.09 x^3 - 0.95 x^5        x = d/D
//
// eta in Pa s, d and D the diameters of ball and tube in m, v the speed in m/s,
// g = 9.80665 m/s2. The constants of f (Faxen 1922, from memory) were read in the
// Renkin equation for pores, which has the same factor. It holds for x up to 0.3 (from
// memory) and a Reynolds number rho v d/eta up to 0.5; outside, a RangeError. Keep
// the marks more than the tube's radius from the surface and the bottom: then the
// ends add less than 0.5 % of the wall's drag (Tanner 1963, End effects in
// falling-ball viscometry, abstract read).
type FallingBall struct {
	Diameter     float64       `json:"diameter_m"`          // of the ball, m
	Density      float64       `json:"density_kg_per_m3"`   // of the ball, kg/m3; steel is about 7800
	TubeDiameter float64       `json:"tube_diameter_m"`     // inside, m
	Distance     float64       `json:"distance_m"`          // between the marks, m
	Reading      time.Duration `json:"reading_ns,omitzero"` // 95 % band of the timing
}

const (
	ballWallLimit    = 0.3
	ballReynolds     = 0.5
	ballWallBand     = 0.01 // of f, engineering estimate
	ballInertiaPerRe = 3. / 16
	sourceBall       = "Stokes' law with Faxen's wall correction"
)

// Viscosity returns the viscosity in Pa s of a liquid of known density in kg/m3 from
// the time between the marks. The band holds the timing, 1 % for the wall, and
// downwards the inertia that Stokes' law leaves out, 3/16 of the Reynolds number
// (Oseen 1910). A ball no denser than the liquid is an InputError.
func (b FallingBall) Viscosity(t time.Duration, density float64) (honestplate.Estimate, error) {
	x := b.Diameter / b.TubeDiameter
	if err := cmp.Or(honestplate.Positive("Diameter", b.Diameter, "m"),
		honestplate.Positive("Density", b.Density, "kg/m3"), honestplate.Positive("TubeDiameter", b.TubeDiameter, "m"),
		honestplate.Positive("Distance", b.Distance, "m"), honestplate.NotNegative("Reading", b.Reading.Seconds(), "s"),
		honestplate.InRange("Diameter/TubeDiameter", x, 0, ballWallLimit, "", sourceBall),
		honestplate.Positive("T", t.Seconds(), "s"), honestplate.Positive("Liquid.Density", density, "kg/m3")); err != nil {
		return honestplate.Estimate{}, err
	}
	if b.Density <= density {
		return honestplate.Estimate{}, check.Input("Density", b.Density, "kg/m3", fmt.Sprintf("above the liquid's, %.6g kg/m3", density))
	}
	v := b.Distance / t.Seconds()
	x3 := x * x * x
	f := 1 - 2.104*x + 2.09*x3 - 0.95*x3*x*x
	eta := f * (b.Density - density) * physics.Gravity * b.Diameter * b.Diameter / 18 / v
	re := density * v * b.Diameter / eta
	if err := honestplate.InRange("Reynolds", re, 0, ballReynolds, "", sourceBall); err != nil {
		return honestplate.Estimate{}, err
	}
	timing := b.Reading.Seconds() / t.Seconds()
	up := math.Hypot(timing, ballWallBand)
	down := math.Hypot(up, ballInertiaPerRe*re)
	e := honestplate.Estimate{Low: max(0, eta*(1-down)), Likely: eta, High: eta * (1 + up)}
	return e, cmp.Or(honestplate.Positive("T", eta, "Pa s"), honestplate.Finite("Reading", e.High, "Pa s"))
}
