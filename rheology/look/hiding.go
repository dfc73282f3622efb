package look

import (
	"cmp"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/root"
)

// Hidden is the contrast ratio at which paint is said to hide (ISO 2814, from memory).
// At 0.95 a border is still seen by who looks for it.
const Hidden = 0.98

// Contrast returns the contrast ratio of a coat of the depth given in m: the luminous
// reflectance over dark by that over light ground, 0..1. The scene gives light and angle;
// its own depth and ground are not used. Where the surface reflects, its reflection counts in
// both.
func (o *Optics) Contrast(s Scene, depth float64, dark, light Ground) (float64, error) {
	if err := o.checkContrast(s, dark, light); err != nil {
		return 0, err
	}
	s.Depth, s.Ground = honestplate.Some(depth), Black
	if err := s.check(); err != nil {
		return 0, err
	}
	return o.contrast(s, 1, dark, light)
}

func (o *Optics) checkContrast(s Scene, dark, light Ground) error {
	if err := o.check(); err != nil {
		return err
	}
	s.Depth, s.Ground = honestplate.Optional{}, Black
	if err := cmp.Or(s.check(), dark.check("dark"), light.check("light")); err != nil {
		return err
	}
	if dark.Blue > light.Blue || dark.Red > light.Red || dark == light {
		return &honestplate.InputError{Field: "light", Got: "no lighter than dark",
			Want: "two grounds, the lighter one last"}
	}
	return nil
}

// checkRatio wants a contrast ratio to ask for.
func checkRatio(contrast float64) error {
	return honestplate.InRange("contrast", contrast, 0.05, 0.999, "", "a ratio that a coat can reach and miss")
}

// contrast works at steps of 20 nm: light and dark are smooth there.
func (o *Optics) contrast(s Scene, scale float64, dark, light Ground) (float64, error) {
	over, err := s.spectra(o, 4, scale, &o.absorption, dark, light)
	if err != nil {
		return 0, err
	}
	y0, err := s.Light.See(&over[0])
	y1, err2 := s.Light.See(&over[1])
	if err := cmp.Or(err, err2); err != nil || y1.Y == 0 {
		return 1, err // nothing comes back from either
	}
	return y0.Y / y1.Y, nil
}

// Hides returns the depth in m from which a coat hides the difference between two grounds
// to a contrast ratio, such as [Hidden]; between [Black] and [White] it is the hiding
// thickness of paints. The band is x/ 1.5, or the factor of the scattering where that is
// more. A coat that does not hide at 10 m is refused ([honestplate.ErrInfeasible]).
func (o *Optics) Hides(s Scene, dark, light Ground, contrast float64) (honestplate.Estimate, error) {
	if err := cmp.Or(o.checkContrast(s, dark, light), checkRatio(contrast)); err != nil {
		return honestplate.Estimate{}, err
	}
	over := func(lnDepth float64) (float64, error) {
		s.Depth = honestplate.Some(math.Exp(lnDepth))
		c, err := o.contrast(s, 1, dark, light)
		return math.Log((1 - contrast) / (1 - min(c, 1) + 1e-15)), err
	}
	low, high := math.Log(1e-7), math.Log(10)
	most, err := over(high)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if most < 0 {
		return honestplate.Estimate{}, &honestplate.RefusedError{Field: "contrast", Kind: honestplate.ErrInfeasible,
			Reason: "10 m of it do not hide the ground", Advice: "take a cloudier liquid or a lower contrast ratio"}
	}
	least, err := over(low)
	if err != nil {
		return honestplate.Estimate{}, err
	}
	if least >= 0 {
		return honestplate.Exactly(0), nil // the grounds are as like as that without a coat
	}
	x, err := root.Search{Low: low, High: high, Start: low + (high-low)/2, Slope: 1, Tol: 1e-5}.Rise(over)
	return honestplate.Factor(math.Exp(x), max(1.5, o.factor)), err
}
