package heat

import (
	"math"

	"example.org/honestplate"
)

// NusseltCylinderAcross returns hD/k of a cylinder across a stream:
//
//	Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3)/[1 + (0.4/Pr)^(2/3)]^(1/4) [1 + (Re/282000)^(5/8)]^(4/5)
//
// for Re Pr above 0.2 (below, it tends to 0.3) and Re to 1e7; good to about 20 %.
//
// Source: Churchill and Bernstein 1977 (from memory, checked on published
// examples).
func NusseltCylinderAcross(re, pr float64) (float64, error) {
	if err := reynolds(re, 1e7, pr); err != nil {
		return 0, err
	}
	return acrossNusselt(re, pr), nil
}

func acrossNusselt(re, pr float64) float64 {
	low := 0.62 * math.Sqrt(re) * math.Cbrt(pr) / math.Sqrt(math.Sqrt(1+math.Pow(0.4/pr, 2.0/3)))
	return 0.3 + low*math.Pow(1+math.Pow(re/282000, 5.0/8), 4.0/5)
}

// NusseltSphereInStream returns hD/k of a sphere in a stream:
//
//	Nu = 2 + (0.4 Re^(1/2) + 0.06 Re^(2/3)) Pr^0.4 (mu/mu_s)^(1/4)
//
// with viscosityRatio mu/mu_s, stream over surface, 1 for air; other properties
// of the stream. Published for Re 3.5..76000 and Pr 0.71..380; below, it tends to
// the 2 of pure conduction.
//
// Source: Whitaker 1972 (from memory, checked on published examples).
func NusseltSphereInStream(re, pr, viscosityRatio float64) (float64, error) {
	if err := reynolds(re, 7.6e4, pr); err != nil {
		return 0, err
	}
	if err := honestplate.Positive("ViscosityRatio", viscosityRatio, ""); err != nil {
		return 0, err
	}
	return streamSphereNusselt(re, pr) + (math.Pow(viscosityRatio, 0.25)-1)*(streamSphereNusselt(re, pr)-2), nil
}

func streamSphereNusselt(re, pr float64) float64 {
	third := math.Cbrt(re)
	return 2 + (0.4*math.Sqrt(re)+0.06*third*third)*math.Pow(pr, 0.4)
}

// NusseltPlateAlong returns the mean hL/k of a plate of length L along the stream:
//
//	Nu = 0.664 Re^(1/2) Pr^(1/3)           for Re to 5e5
//	Nu = (0.037 Re^(4/5) - 871) Pr^(1/3)   for Re to 1e8
//
// Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 7 (from
// memory, checked on published examples).
func NusseltPlateAlong(re, pr float64) (float64, error) {
	if err := reynolds(re, 1e8, pr); err != nil {
		return 0, err
	}
	return alongNusselt(re, pr), nil
}

func alongNusselt(re, pr float64) float64 {
	if re > 5e5 {
		return (0.037*math.Pow(re, 0.8) - 871) * math.Cbrt(pr)
	}
	return 0.664 * math.Sqrt(re) * math.Cbrt(pr)
}

func reynolds(re, high, pr float64) error {
	if err := honestplate.InRange("Reynolds", re, 0, high, "", "the correlation's published range"); err != nil {
		return err
	}
	return honestplate.Positive("Prandtl", pr, "")
}
