package heat

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// The correlations of natural convection take the Rayleigh number
//
//	Ra = g beta dT L^3/(nu alpha)
//
// with properties at the film temperature, the mean of surface and air. Each is
// good to some 10..15 %; where two things stand close together, or people walk
// past, less.

// chuFactor is the Prandtl part of the correlation of Churchill and Chu, whose constant
// differs by the form.
func chuFactor(by, pr float64) float64 {
	return 0.387 / math.Pow(1+math.Pow(by/pr, 9.0/16), 8.0/27)
}

// chuNusselt is hL/k of a vertical plate of height L, or hD/k of a horizontal cylinder, in
// still fluid:
//
//	Nu = (0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27))^2, Ra to 1e12, a plate
//	Nu = (0.60 + 0.387 Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27))^2, Ra to 1e12, a cylinder
//
// Source: Churchill and Chu 1975, Correlating equations for laminar and turbulent
// free convection from a vertical plate, and from a horizontal cylinder (from memory,
// checked on published examples).
func chuNusselt(least, ra, factor float64) float64 {
	root := least + factor*math.Sqrt(math.Cbrt(ra))
	return root * root
}

// popiel returns B (32^(1/2) L/D)^C and C.
func popiel(pr, slenderness float64) (b, c float64) {
	c = 0.9165 - 0.0043*math.Sqrt(pr) + 0.01333*math.Log(pr) + 0.0004809/pr
	return (0.0571322 + 0.20305*math.Pow(pr, -0.43)) * math.Pow(math.Sqrt(32)*slenderness, c), c
}

// cylinderBend is hL/k of a vertical cylinder of height L and
// slenderness L/D in still fluid: the plate's, times
//
//	1 + B (32^(1/2) Gr^(-1/4) L/D)^C, Gr = Ra/Pr
//	B = 0.0571322 + 0.20305 Pr^(-0.43)
//	C = 0.9165 - 0.0043 Pr^(1/2) + 0.01333 ln Pr + 0.0004809/Pr
//
// for Pr 0.01..100; below Gr = 1e4, where there is no boundary layer to curve, the
// factor stays what it is at 1e4.
//
// Source: Popiel 2008, Free convection heat transfer from vertical slender cylinders
// (read in a general-purpose library, ht).
func cylinderBend(b, c, grashof float64) float64 {
	return 1 + b*math.Exp(-c/4*math.Log(max(grashof, 1e4)))
}

// sphereNusselt is hD/k of a sphere in still fluid:
//
//	Nu = 2 + 0.589 Ra^(1/4)/F^(4/9) (1 + 7.44e-8 Ra/F^(16/9))^(1/12), F = 1 + (0.469/Pr)^(9/16)
//
// for Ra to 1e11 and Pr 0.7 and up.
//
// Source: Churchill 1983, in Heat Exchanger Design Handbook, sec. 2.5.7 (from
// memory, checked on published values).
func sphereNusselt(ra, factor float64) float64 {
	f4 := factor / 0.589
	f4 *= f4
	turbulent := 7.44e-8 * ra * f4 * f4
	blend := 1 + turbulent/12
	if turbulent > 1e-4 {
		blend = math.Exp(math.Log1p(turbulent) / 12)
	}
	return 2 + factor*math.Sqrt(math.Sqrt(ra))*blend
}

// plateUpNusselt is hL/k of a horizontal plate, hot and facing up or cold and
// facing down, L = area/perimeter:
//
//	Nu = 0.54 Ra^(1/4) for Ra 1e4..1e7, 0.15 Ra^(1/3) for 1e7..1e11
//
// Below 1e4 it keeps the first form and does not fall below 1, the value of pure
// conduction: an extension of ours.
//
// Source: Lloyd and Moran 1974 (from memory, checked on published examples).
func plateUpNusselt(ra float64) float64 {
	if ra > 1e7 {
		return 0.15 * math.Cbrt(ra)
	}
	return max(1, 0.54*math.Sqrt(math.Sqrt(ra)))
}

// plateDownNusselt is hL/k of a horizontal plate, hot and facing down or cold
// and facing up, L = area/perimeter:
//
//	Nu = 0.27 Ra^(1/4) for Ra 1e5..1e10
//
// Below 1e5 it keeps the form and does not fall below 1: an extension of ours.
// Newer books give 0.52 Ra^(1/5) instead, 5 % lower at 1e5 and 16 % lower at 1e7.
//
// Source: McAdams 1954, Heat Transmission (from memory, checked on published
// examples).
func plateDownNusselt(ra float64) float64 { return max(1, 0.27*math.Sqrt(math.Sqrt(ra))) }

// freeFactor is the Prandtl part of a shape's correlation.
func (s Shape) freeFactor(pr float64) float64 {
	switch s {
	case VerticalPlate, VerticalCylinder:
		return chuFactor(0.492, pr)
	case HorizontalCylinder:
		return chuFactor(0.559, pr)
	case Sphere:
		return 0.589 / math.Pow(1+math.Pow(0.469/pr, 9.0/16), 4.0/9)
	}
	return 0
}

// free is a shape's Nusselt number for a Rayleigh number and its freeFactor; a plate is
// the warmer one.
func (s Shape) free(ra, factor float64) float64 {
	switch s {
	case HorizontalCylinder:
		return chuNusselt(0.60, ra, factor)
	case Sphere:
		return sphereNusselt(ra, factor)
	case PlateUp:
		return plateUpNusselt(ra)
	case PlateDown:
		return plateDownNusselt(ra)
	}
	return chuNusselt(0.825, ra, factor)
}

// FreeNusselt returns the Nusselt number of the surface in still fluid, on its Length,
// for a Rayleigh and a Prandtl number: by Churchill and Chu 1975 (plate, horizontal
// cylinder), Popiel 2008 (vertical cylinder), Churchill 1983 (sphere), Lloyd and Moran
// 1974 (plate facing up) and McAdams 1954 (facing down), the plates being the warmer.
// Rayleigh numbers beyond the published ranges are an [honestplate.RangeError].
func (s Surface) FreeNusselt(rayleigh, prandtl float64) (float64, error) {
	if err := check.One("Shape", int(s.Shape), shapes[:]); err != nil {
		return 0, err
	}
	most := [...]float64{1e12, 1e12, 1e12, 1e11, 1e11, 1e10}[s.Shape]
	if err := cmp.Or(honestplate.InRange("Rayleigh", rayleigh, 0, most, "", "the correlation's published range"),
		honestplate.InRange("Prandtl", prandtl, 0.01, 1e4, "", "air, water and oils")); err != nil {
		return 0, err
	}
	n := s.Shape.free(rayleigh, s.Shape.freeFactor(prandtl))
	if s.Shape == VerticalCylinder && s.Diameter > 0 {
		slenderness := s.Length / s.Diameter
		if err := cmp.Or(honestplate.InRange("Prandtl", prandtl, 0.01, 100, "", "Popiel 2008"),
			honestplate.InRange("Length", s.Length, 0, 1e4*s.Diameter, "m", "from a disc to a wire")); err != nil {
			return 0, err
		}
		b, c := popiel(prandtl, slenderness)
		n *= cylinderBend(b, c, rayleigh/prandtl)
	}
	return n, nil
}
