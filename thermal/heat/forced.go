package heat

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/thermal/internal/check"
)

// acrossNusselt is hD/k of a cylinder across a stream:
//
//	Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3)/[1 + (0.4/Pr)^(2/3)]^(1/4) [1 + (Re/282000)^(5/8)]^(4/5)
//
// for Re Pr above 0.2 (below, it tends to 0.3) and Re to 1e7; good to about 20 %.
//
// Source: Churchill and Bernstein 1977 (from memory, checked on published
// examples).
func acrossNusselt(re, pr float64) float64 {
	low := 0.62 * math.Sqrt(re) * math.Cbrt(pr) / math.Sqrt(math.Sqrt(1+math.Pow(0.4/pr, 2.0/3)))
	return 0.3 + low*math.Pow(1+math.Pow(re/282000, 5.0/8), 4.0/5)
}

// streamSphereNusselt is hD/k of a sphere in a stream:
//
//	Nu = 2 + (0.4 Re^(1/2) + 0.06 Re^(2/3)) Pr^0.4 (mu/mu_s)^(1/4)
//
// where mu/mu_s, viscosity of the stream over that at the surface, is taken as 1, as it is
// in air; other properties of the stream. Published for Re 3.5..76000 and Pr 0.71..380; below, it tends to
// the 2 of pure conduction.
//
// Source: Whitaker 1972 (from memory, checked on published examples).
func streamSphereNusselt(re, pr float64) float64 {
	third := math.Cbrt(re)
	return 2 + (0.4*math.Sqrt(re)+0.06*third*third)*math.Pow(pr, 0.4)
}

// alongNusselt is the mean hL/k of a plate of length L along the stream:
//
//	Nu = 0.664 Re^(1/2) Pr^(1/3)           for Re to 5e5
//	Nu = (0.037 Re^(4/5) - 871) Pr^(1/3)   for Re to 1e8
//
// Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, ch. 7 (from
// memory, checked on published examples).
func alongNusselt(re, pr float64) float64 {
	if re > 5e5 {
		return (0.037*math.Pow(re, 0.8) - 871) * math.Cbrt(pr)
	}
	return 0.664 * math.Sqrt(re) * math.Cbrt(pr)
}

// ForcedNusselt returns the Nusselt number of the surface in a stream, for a Reynolds
// and a Prandtl number on the length along the stream: the diameter of a cylinder or
// sphere (Churchill and Bernstein 1977, Whitaker 1972), else that of the plate (Incropera
// and DeWitt, ch. 7). Reynolds numbers beyond the published ranges are a
// [honestplate.RangeError].
func (s Surface) ForcedNusselt(reynolds, prandtl float64) (float64, error) {
	law, most := alongNusselt, 1e8
	switch {
	case s.Shape == Sphere:
		law, most = streamSphereNusselt, 7.6e4
	case s.Shape == HorizontalCylinder, s.Shape == VerticalCylinder && s.Diameter > 0:
		law, most = acrossNusselt, 1e7
	}
	if err := cmp.Or(check.One("Shape", int(s.Shape), shapes[:]),
		honestplate.InRange("Reynolds", reynolds, 0, most, "", "the correlation's published range"),
		honestplate.Positive("Prandtl", prandtl, "")); err != nil {
		return 0, err
	}
	return law(reynolds, prandtl), nil
}
