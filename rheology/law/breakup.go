package law

import (
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/physics"
	"example.org/honestplate/rheology/internal/root"
)

// RayleighDrop is the diameter of a drop over that of its jet: one wavelength, 9.0146 of
// the jet's radii, gathered into a ball, (3/4 of 9.0146)^(1/3). From the fastest growing
// wave on a jet (Rayleigh 1878, "On the instability of jets"; 9.0 and 1.89 read in later
// accounts, the further digits from his dispersion relation).
const RayleighDrop = 1.8909

// breakUpFactor is how well a break-up length is known: two published forms for
// the same laminar jet, 19.5 We^0.5 (1 + 3 Oh)^0.85 and 12 (We^0.5 + 3 We/Re), differ
// by 1.62 for water at 5 mm and 1 m/s, and no measured pour was found.
const breakUpFactor = 1.6

// BreakUp returns the length in m after which a jet that points down and stretches as it
// falls is drops, with its factor of 1.6. A jet that gravity does not stretch breaks at
//
//	laminar    L/d = 19.5 We^0.5 (1 + 3 Oh)^0.85
//	turbulent  L/d = 8.51 We^0.32
//
// We = rho v2 d/sigma, Oh = eta/sqrt(rho sigma d). Source: Grant and Middleman 1966,
// "Newtonian jet stability", A.I.Ch.E. J. 12, 669 (read, second-hand). Thick syrups
// (Oh above about 1) extrapolate it. On a falling one the waves grow at the pace of the
// width they ride on:
//
//	integral dt/growth(d) = n,   d = d0 (v0/V)^(1/2),   dt = dV/g
//
// with the growth time sqrt(rho d3/sigma) + 3 eta d/sigma and the number n of e-folds
// that Grant and Middleman's length gives the unstretched jet. So it is their length where
// the fall adds little speed, and longer where it adds much, for the stream carries
// its waves away. Stretching also slows the waves themselves, which is left out, and
// no measurement of a stretched pour was found: the factor of 1.6 is the unstretched
// jet's.
func (j Jet) BreakUp() (honestplate.Estimate, error) {
	if err := j.check(); err != nil {
		return honestplate.Estimate{}, err
	}
	n := j.efolds()
	inertial := math.Sqrt(j.Density*j.Diameter*j.Diameter*j.Diameter/j.SurfaceTension) / j.Speed * physics.Gravity
	viscous := 3 * j.Viscosity * j.Diameter / j.SurfaceTension / j.Speed * physics.Gravity
	// With y = (V/v)^(1/4) the integrand is 4 y6/(inertial + viscous y): so nearly a
	// polynomial that the five-point rule has it all.
	grown := func(top float64) (float64, error) {
		sum := 0.0
		for i, t := range physics.Nodes {
			y := 1 + t*(top-1)
			y3 := y * y * y
			sum += physics.Weights[i] * y3 * y3 / (inertial + viscous*y)
		}
		return 4*(top-1)*sum - n, nil
	}
	// From the sum of the two limits that have a closed form. A part in a million is far
	// inside the band.
	start := math.Sqrt(math.Sqrt(math.Pow(1+1.75*n*inertial, 4.0/7) + math.Pow(1+1.5*n*viscous, 2.0/3) - 1))
	s3 := start * start * start
	y, _ := root.Search{Low: 1, High: math.Inf(1), Start: start, Slope: 4 * s3 * s3 / (inertial + viscous*start), Tol: 1e-6 * n}.Rise(grown)
	x := y * y * y * y
	return honestplate.Factor((x*x-1)*j.Speed*j.Speed/(2*physics.Gravity), breakUpFactor), nil
}

// growth is Weber's time in s in which waves on a thread grow by e: sqrt(rho d3/sigma) +
// 3 eta d/sigma (Weber 1931, "Zum Zerfall eines Fluessigkeitsstrahles"; read,
// second-hand). Its inviscid limit is 3 % from Rayleigh's.
func (j Jet) growth() float64 {
	return math.Sqrt(j.Density*j.Diameter*j.Diameter*j.Diameter/j.SurfaceTension) + 3*j.Viscosity*j.Diameter/j.SurfaceTension
}

// efolds is how many such times a jet lives: Grant and Middleman's length read as
// L = n V growth, n = 19.5 (1 + 3 Oh)^-0.15.
func (j Jet) efolds() float64 {
	if j.Turbulent {
		we := j.Density * j.Speed * j.Speed * j.Diameter / j.SurfaceTension
		return 8.51 * math.Pow(we, 0.32) * j.Diameter / (j.growth() * j.Speed)
	}
	oh := j.Viscosity / math.Sqrt(j.Density*j.SurfaceTension*j.Diameter)
	return 19.5 * math.Pow(1+3*oh, -0.15)
}
