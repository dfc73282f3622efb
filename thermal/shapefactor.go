package thermal

import (
	"math"
	"slices"
)

// ShapeFactor returns the equivalent heat transfer dimensionality E: how many times
// sooner than a slab of the same least thickness the piece freezes or thaws. Slab 1,
// long cylinder 2, ball 3; for bar, brick and short cylinder, with b the ratio of a
// longer side to the shortest and Bi = h d/k on half the shortest,
//
//	E = G1 + G2 E1 + G3 E2
//	E1 = X1/b1 + (1 - X1) 0.73/b1^2.50,  E2 = X2/b2 + (1 - X2) 0.50/b2^3.69
//	Xi = xi/(Bi^1.34 + xi),  xi = 2.32 bi^-1.77
//
// with G = 1, 1, 0 (bar), 1, 1, 1 (brick), 1, 2, 0 (cylinder lower than wide) or
// 2, 0, 1 (higher than wide). Source: Cleland, Cleland & Earle 1987, as in the ASHRAE
// Refrigeration handbook, chapter on freezing times (from memory). Sizes that make
// no shape are an *InputError, a Biot number not above 0 too.
func ShapeFactor(size Size, biot float64) (float64, error) {
	if err := positive("Biot number", biot, ""); err != nil {
		return 0, err
	}
	axes, err := size.axes()
	if err != nil {
		return 0, err
	}
	return size.factor(axes, biot), nil
}

func (s Size) factor(axes []axis, bi float64) float64 {
	share := func(b float64) float64 {
		x := 2.32 * math.Pow(b, -1.77)
		return x / (math.Pow(bi, 1.34) + x)
	}
	e1 := func(b float64) float64 { x := share(b); return x/b + (1-x)*0.73*math.Pow(b, -2.5) }
	e2 := func(b float64) float64 { x := share(b); return x/b + (1-x)*0.5*math.Pow(b, -3.69) }
	ratios := sideRatios(axes)
	switch {
	case len(axes) == 1:
		return 2*curvature(axes[0].form) + 1
	case axes[0].form == SlabForm && len(axes) == 2:
		return 1 + e1(ratios[0])
	case axes[0].form == SlabForm:
		return 1 + e1(ratios[0]) + e2(ratios[1])
	case axes[1].half < axes[0].half:
		return 1 + 2*e1(ratios[0])
	}
	return 2 + e2(ratios[0])
}

// sideRatios are the longer sides over the shortest, in rising order.
func sideRatios(axes []axis) []float64 {
	halves := make([]float64, len(axes))
	for i, a := range axes {
		halves[i] = a.half
	}
	slices.Sort(halves)
	for i := range halves[1:] {
		halves[i+1] /= halves[0]
	}
	return halves[1:]
}

// plank returns Plank's constants and the length, m, that goes with them.
func (s Size) plank() (p, r, length float64, err error) {
	axes, err := s.axes()
	if err != nil {
		return 0, 0, 0, err
	}
	length = 2 * axes[0].half
	for _, a := range axes {
		length = min(length, 2*a.half)
	}
	ratios := sideRatios(axes)
	switch {
	case axes[0].form == SlabForm && len(axes) == 3:
		p, r = brickPlank(ratios[0], ratios[1])
	case axes[0].form == SlabForm && len(axes) == 2:
		p, r = brickPlank(ratios[0], 1e6)
	case len(axes) == 1:
		n := 2*curvature(axes[0].form) + 1
		p, r = 1/(2*n), 1/(8*n)
	default:
		return 0, 0, 0, &InputError{"height of a cylinder", s.Height, "m", "not given: Plank has no constants for a short one"}
	}
	return p, r, length, nil
}
