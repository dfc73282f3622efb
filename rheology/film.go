package rheology

import (
	"math"

	"example.org/honestplate"
)

// LandauLevich returns the thickness in m of the film that a wall carries out of a
// liquid, or that a falling level leaves on it:
//
//	h = 0.9458 lc Ca^(2/3),  lc = sqrt(sigma/(rho g)),  Ca = eta U/sigma
//
// with the viscosity eta in Pa s, the density rho in kg/m3, the surface tension
// sigma in N/m and the speed U in m/s. Written with Ca^(1/6) the length is sqrt(eta
// U/(rho g)), not lc: a common slip. Range: Ca up to 0.01; RangeError above.
// Accuracy: exact as Ca goes to 0, some 10 % at the limit (from memory). Source:
// Landau and Levich 1942, "Dragging of a liquid by a moving plate"; the factor
// 0.94 read in a secondary page, 0.9458 from memory.
func LandauLevich(eta, rho, sigma, speed float64) (float64, error) {
	if err := positiveAll(eta, rho, sigma); err != nil {
		return 0, err
	}
	if err := honestplate.NotNegative("speed", speed, "m/s"); err != nil {
		return 0, err
	}
	ca := eta * speed / sigma
	if err := honestplate.InRange("capillary number", ca, 0, 0.01, "", "Landau and Levich 1942"); err != nil {
		return 0, err
	}
	c := math.Cbrt(ca)
	return landauLevichFactor * math.Sqrt(sigma/(rho*standardGravity)) * c * c, nil
}

const landauLevichFactor = 0.9458

// positiveAll checks the three numbers that describe a liquid in the closed forms.
func positiveAll(eta, rho, sigma float64) error {
	if err := honestplate.InRange("viscosity", eta, 1e-6, 1e9, "Pa s", "a liquid that pours"); err != nil {
		return err
	}
	if err := honestplate.InRange("density", rho, 1, 3e4, "kg/m3", "a liquid"); err != nil {
		return err
	}
	return honestplate.InRange("surface tension", sigma, 1e-4, 10, "N/m", "a liquid")
}

// leftFilm returns the thickness in m of the film that a level falling at speed u
// leaves on the vessel's wall. At small Ca it is Landau and Levich's. At large Ca,
// where gravity drains the film as fast as it is laid, it is the mean of Jeffreys'
// draining film over the wall, 2/3 sqrt(nu u/g). The two meet at Ca = 0.12.
func leftFilm(eta, rho, sigma, u float64) float64 {
	ca := eta * u / sigma
	return math.Sqrt(eta*u/(rho*standardGravity)) * min(2.0/3, landauLevichFactor*math.Pow(ca, 1.0/6))
}

// filmFactor is the band of the film that stays: the wall's shape, its wetting and
// what runs down while the vessel is held (estimated, no source).
const filmFactor = 1.6

// left computes what stays on the wall and in the bore after volume m3 left in the
// given time.
func (p *Pour) left(volume, seconds, wall float64) {
	o := &p.out
	var height float64
	if p.surface > 0 {
		height = p.first - p.last
		if wall == 0 {
			wall = 2 * math.Sqrt(math.Pi*p.surface) * height
		}
	} else {
		// A beaker as tall as it is wide: pi d3/4 holds the volume.
		height = math.Cbrt(4 * volume / math.Pi)
		if wall == 0 {
			wall = 1.25 * math.Pi * height * height
		}
	}
	// The wall drains slowly, so a liquid that thins is read at rest, not at the
	// rate of the pour.
	film := leftFilm(o.eta, o.rho, p.SurfaceTension.Likely, height/seconds)
	film = max(film, p.yield.Likely/(o.rho*standardGravity))
	// No film is thicker than what was poured, spread over the wall.
	kept := min(wall*film, volume)
	if o.bore > 0 {
		kept += math.Pi * o.bore * o.length * min(film, o.bore/4)
	}
	p.LeftGrams = honestplate.Factor(kept*o.rho*1000, filmFactor)
}
