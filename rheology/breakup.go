package rheology

import (
	"math"

	"example.org/honestplate"
)

// The drops of a jet, from the fastest growing wave on it (Rayleigh 1878, "On the
// instability of jets"; 9.0 and 1.89 read in later accounts, the further digits from
// his dispersion relation).
const (
	// RayleighWavelength is the distance between the drops of a jet over its radius.
	RayleighWavelength = 9.0146
	// RayleighDrop is the diameter of a drop over that of its jet: one wavelength
	// gathered into a ball, (3/4 of 9.0146)^(1/3).
	RayleighDrop = 1.8909
)

const (
	// breakUpFactor is how well a break-up length is known: two published forms for
	// the same laminar jet, 19.5 We^0.5 (1 + 3 Oh)^0.85 and 12 (We^0.5 + 3 We/Re), differ
	// by 1.62 for water at 5 mm and 1 m/s, and no measured pour was found.
	breakUpFactor = 1.6
	// turbulentLengths is the bore, in diameters, from which a turbulent bore makes
	// a turbulent jet (estimated, no source).
	turbulentLengths = 10
)

// BreakUp returns the length in m after which a jet that gravity does not stretch is
// drops, with its factor of 1.6:
//
//	laminar    L/d = 19.5 We^0.5 (1 + 3 Oh)^0.85
//	turbulent  L/d = 8.51 We^0.32
//
// We = rho v2 d/sigma, Oh = eta/sqrt(rho sigma d). Source: Grant and Middleman 1966,
// "Newtonian jet stability", A.I.Ch.E. J. 12, 669 (read, second-hand). Thick syrups
// (Oh above about 1) extrapolate it. Errors: InputError and RangeError for sizes
// that are none.
func (j Jet) BreakUp(turbulent bool) (honestplate.Estimate, error) {
	if err := j.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(j.efolds(turbulent)*j.growth(j.Diameter)*j.Speed, breakUpFactor), nil
}

// FallingBreakUp returns the same length in m for a jet that points down and
// stretches as it falls. The waves grow at the pace of the width they ride on:
//
//	integral dt/growth(d) = n,   d = d0 (v0/V)^(1/2),   dt = dV/g
//
// with the growth time sqrt(rho d3/sigma) + 3 eta d/sigma and the number n of e-folds
// that Grant and Middleman's length gives the unstretched jet. So it is BreakUp where
// the fall adds little speed, and longer where it adds much, for the stream carries
// its waves away. Stretching also slows the waves themselves, which is left out, and
// no measurement of a stretched pour was found: the factor of 1.6 is the unstretched
// jet's. Errors as for BreakUp.
func (j Jet) FallingBreakUp(turbulent bool) (honestplate.Estimate, error) {
	if err := j.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	return honestplate.Factor(j.breakUp(turbulent), breakUpFactor), nil
}

// WaveGrowth returns the fastest growth rate in 1/s of the waves on the jet, without
// its viscosity: 0.34334 sqrt(sigma/(rho R3)), R = d/2. Source: Rayleigh 1878 (read in
// a later account); the factor is the maximum of his dispersion relation. Errors as
// for BreakUp.
func (j Jet) WaveGrowth() (float64, error) {
	if err := j.check(); err != nil {
		return 0, err
	}
	r := j.Diameter / 2
	return 0.34334 * math.Sqrt(j.SurfaceTension/(j.Density*r*r*r)), nil
}

// DrippingWeber returns the Weber number rho V2 d/sigma at a downward spout of inner
// diameter d and outer diameter outside (m) below which the liquid drips and above
// which it leaves as a jet:
//
//	We = 4 (Bo'/Bo) (1 + K Bo Bo' - sqrt((1 + K Bo Bo')^2 - 1))^2
//
// Bo = sqrt(rho g d2/(2 sigma)), Bo' the same of the outer diameter, K = 0.37. Range:
// water-like liquids; it is 4 for the thinnest spouts and below 1 from 4 mm. Source:
// Clanet and Lasheras 1999, "Transition from dripping to jetting", J. Fluid Mech.
// 383, 307 (K and Bo read in the abstract, the bracket from memory; no printed point
// found). A thick liquid drips at a lower rate than this says.
func DrippingWeber(d, outside, rho, sigma float64) (float64, error) {
	if err := positiveAll(1, rho, sigma); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("jet diameter", d, 1e-6, maxBore, "m", poured); err != nil {
		return 0, err
	}
	if err := honestplate.InRange("outer diameter", outside, d, 2*maxBore, "m", "a spout's wall has some thickness"); err != nil {
		return 0, err
	}
	return drippingWeber(d, outside, rho, sigma), nil
}

func drippingWeber(d, outside, rho, sigma float64) float64 {
	k := math.Sqrt(rho * standardGravity / (2 * sigma))
	x := 0.37 * k * d * k * outside
	// 1 + x - sqrt(x2 + 2 x), written so that large x loses no digits.
	b := 1 / (1 + x + math.Sqrt(x*(x+2)))
	return 4 * outside / d * b * b
}

// growth is Weber's time in s in which waves on a thread of diameter d grow by e:
// sqrt(rho d3/sigma) + 3 eta d/sigma (Weber 1931, "Zum Zerfall eines
// Fluessigkeitsstrahles"; read, second-hand). Its inviscid limit is 3 % from
// Rayleigh's.
func (j Jet) growth(d float64) float64 {
	return math.Sqrt(j.Density*d*d*d/j.SurfaceTension) + 3*j.Viscosity*d/j.SurfaceTension
}

// efolds is how many such times a jet lives: Grant and Middleman's length read as
// L = n V growth, n = 19.5 (1 + 3 Oh)^-0.15.
func (j Jet) efolds(turbulent bool) float64 {
	if turbulent {
		we := j.Density * j.Speed * j.Speed * j.Diameter / j.SurfaceTension
		return 8.51 * math.Pow(we, 0.32) * j.Diameter / (j.growth(j.Diameter) * j.Speed)
	}
	oh := j.Viscosity / math.Sqrt(j.Density*j.SurfaceTension*j.Diameter)
	return 19.5 * math.Pow(1+3*oh, -0.15)
}

// breakUp is the likely length of FallingBreakUp.
func (j Jet) breakUp(turbulent bool) float64 {
	n := j.efolds(turbulent)
	inertial := math.Sqrt(j.Density*j.Diameter*j.Diameter*j.Diameter/j.SurfaceTension) / j.Speed * standardGravity
	viscous := 3 * j.Viscosity * j.Diameter / j.SurfaceTension / j.Speed * standardGravity
	// With y = (V/v)^(1/4) the integrand is 4 y6/(inertial + viscous y): so nearly a
	// polynomial that the five-point rule has it all.
	grown := func(top float64) float64 {
		sum := 0.0
		for i, t := range gauss5 {
			y := 1 + t*(top-1)
			y3 := y * y * y
			sum += gauss5Weight[i] * y3 * y3 / (inertial + viscous*y)
		}
		return 4 * (top - 1) * sum
	}
	// Newton, kept in a bracket, from the sum of the two limits that have a closed form. A
	// part in a million is far inside the band.
	y := math.Sqrt(math.Sqrt(math.Pow(1+1.75*n*inertial, 4.0/7) + math.Pow(1+1.5*n*viscous, 2.0/3) - 1))
	low, high := 1.0, math.Inf(1)
	for range 60 {
		y3 := y * y * y
		g, rate := grown(y)-n, 4*y3*y3/(inertial+viscous*y)
		if g > 0 {
			high = y
		} else {
			low = y
		}
		next := y - g/rate
		if next <= low || next >= high {
			next = (low + min(high, 2*low)) / 2
		}
		done := math.Abs(next-y) < 1e-6*y
		y = next
		if done {
			break
		}
	}
	x := y * y * y * y
	return (x*x - 1) * j.Speed * j.Speed / (2 * standardGravity)
}
