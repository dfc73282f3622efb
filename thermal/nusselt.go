package thermal

import "math"

// The correlations of natural convection take the Rayleigh number
//
//	Ra = g beta dT L^3/(nu alpha)
//
// with properties at the film temperature, the mean of surface and air. Each is
// good to some 10..15 %; where two things stand close together, or people walk
// past, less.

// NusseltVerticalPlate returns hL/k of a vertical plate of height L in still
// fluid:
//
//	Nu = (0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27))^2, Ra to 1e12
//
// Source: Churchill and Chu 1975, Correlating equations for laminar and turbulent
// free convection from a vertical plate (from memory, checked on published
// examples).
func NusseltVerticalPlate(ra, pr float64) (float64, error) {
	if err := rayleigh(ra, 1e12, pr); err != nil {
		return 0, err
	}
	return plateNusselt(ra, plateFactor(pr)), nil
}

func plateFactor(pr float64) float64 {
	return 0.387 / math.Pow(1+math.Pow(0.492/pr, 9.0/16), 8.0/27)
}

func plateNusselt(ra, factor float64) float64 {
	root := 0.825 + factor*math.Sqrt(math.Cbrt(ra))
	return root * root
}

// NusseltVerticalPlateLaminar returns hL/k of a vertical plate of height L while
// the flow along it is laminar, a few per cent better there than
// NusseltVerticalPlate:
//
//	Nu = 0.68 + 0.670 Ra^(1/4)/[1 + (0.492/Pr)^(9/16)]^(4/9), Ra to 1e9
//
// Source: Churchill and Chu 1975 (from memory, checked on published examples).
func NusseltVerticalPlateLaminar(ra, pr float64) (float64, error) {
	if err := rayleigh(ra, 1e9, pr); err != nil {
		return 0, err
	}
	return 0.68 + 0.670*math.Sqrt(math.Sqrt(ra))/math.Pow(1+math.Pow(0.492/pr, 9.0/16), 4.0/9), nil
}

// NusseltHorizontalCylinder returns hD/k of a horizontal cylinder in still fluid:
//
//	Nu = (0.60 + 0.387 Ra^(1/6)/[1 + (0.559/Pr)^(9/16)]^(8/27))^2, Ra to 1e12
//
// Source: Churchill and Chu 1975, Correlating equations for laminar and turbulent
// free convection from a horizontal cylinder (from memory, checked on published
// examples).
func NusseltHorizontalCylinder(ra, pr float64) (float64, error) {
	if err := rayleigh(ra, 1e12, pr); err != nil {
		return 0, err
	}
	return cylinderNusselt(ra, cylinderFactor(pr)), nil
}

func cylinderFactor(pr float64) float64 {
	return 0.387 / math.Pow(1+math.Pow(0.559/pr, 9.0/16), 8.0/27)
}

func cylinderNusselt(ra, factor float64) float64 {
	root := 0.60 + factor*math.Sqrt(math.Cbrt(ra))
	return root * root
}

// NusseltSphere returns hD/k of a sphere in still fluid:
//
//	Nu = 2 + 0.589 Ra^(1/4)/[1 + (0.469/Pr)^(9/16)]^(4/9), Ra to 1e11, Pr 0.7 and up
//
// Source: Churchill 1983, in Heat Exchanger Design Handbook, sec. 2.5.7 (from
// memory, checked on published examples).
func NusseltSphere(ra, pr float64) (float64, error) {
	if err := rayleigh(ra, 1e11, pr); err != nil {
		return 0, err
	}
	return sphereNusselt(ra, sphereFactor(pr)), nil
}

func sphereFactor(pr float64) float64 {
	return 0.589 / math.Pow(1+math.Pow(0.469/pr, 9.0/16), 4.0/9)
}

func sphereNusselt(ra, factor float64) float64 {
	return 2 + factor*math.Sqrt(math.Sqrt(ra))
}

// NusseltPlateUp returns hL/k of a horizontal plate, hot and facing up or cold and
// facing down, L = area/perimeter:
//
//	Nu = 0.54 Ra^(1/4) for Ra 1e4..1e7, 0.15 Ra^(1/3) for 1e7..1e11
//
// Below 1e4 it keeps the first form and does not fall below 1, the value of pure
// conduction: an extension of ours.
//
// Source: Lloyd and Moran 1974 (from memory, checked on published examples).
func NusseltPlateUp(ra, pr float64) (float64, error) {
	if err := rayleigh(ra, 1e11, pr); err != nil {
		return 0, err
	}
	return plateUpNusselt(ra), nil
}

func plateUpNusselt(ra float64) float64 {
	if ra > 1e7 {
		return 0.15 * math.Cbrt(ra)
	}
	return max(1, 0.54*math.Sqrt(math.Sqrt(ra)))
}

// NusseltPlateDown returns hL/k of a horizontal plate, hot and facing down or cold
// and facing up, L = area/perimeter:
//
//	Nu = 0.27 Ra^(1/4) for Ra 1e5..1e10
//
// Below 1e5 it keeps the form and does not fall below 1: an extension of ours.
// Newer books give 0.52 Ra^(1/5) instead, 5 % lower at 1e5 and 16 % lower at 1e7.
//
// Source: McAdams 1954, Heat Transmission (from memory, checked on published
// examples).
func NusseltPlateDown(ra, pr float64) (float64, error) {
	if err := rayleigh(ra, 1e10, pr); err != nil {
		return 0, err
	}
	return plateDownNusselt(ra), nil
}

func plateDownNusselt(ra float64) float64 { return max(1, 0.27*math.Sqrt(math.Sqrt(ra))) }

func rayleigh(ra, high, pr float64) error {
	if err := within("Rayleigh number", ra, 0, high, "", "the correlation's published range"); err != nil {
		return err
	}
	return positive("Prandtl number", pr, "")
}
