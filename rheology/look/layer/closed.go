package layer

import (
	"cmp"
	"math"

	"example.org/honestplate"
)

// KubelkaMunk returns what a layer over a ground reflects by the theory of Kubelka and
// Munk, for light from all sides and no surface:
//
//	R = (1 - G (a - b coth bSX))/(a - G + b coth bSX), a = 1 + K/S, b = sqrt(a2 - 1)
//
// absorption k and scatter s per m, depth in m (+Inf for without end), ground 0..1. From
// coefficients of transport, k is 2 mua and s 0.75 mus (1 - g).
//
// Beside the exact answer it is low, by 0.022 over black at a reduced optical depth of
// 0.5, 0.017 at 1, 0.009 at 2 and under 0.004 from 4 on; for a beam square on it is high.
// [Slab] has neither fault. Sources: the formula as read in public code of paint mixing;
// the errors from examples/published.
func KubelkaMunk(k, s, depth, ground float64) (float64, error) {
	if err := cmp.Or(
		honestplate.NotNegative("k", k, "1/m"), honestplate.NotNegative("s", s, "1/m"),
		honestplate.InRange("ground", ground, 0, 1, "", "a share"),
	); err != nil {
		return 0, err
	}
	endless := math.IsInf(depth, 1)
	if !endless {
		if err := honestplate.NotNegative("depth", depth, "m"); err != nil {
			return 0, err
		}
	}
	x := s * depth
	switch {
	case depth == 0:
		return ground, nil
	case s == 0 && endless:
		if k == 0 {
			return ground, nil
		}
		return 0, nil
	case s == 0 || k/s > 1e12:
		return ground * math.Exp(-2*k*depth), nil
	case endless:
		a := 1 + k/s
		return 1 / (a + math.Sqrt((a-1)*(a+1))), nil
	case math.IsInf(x, 0):
		return 0, &honestplate.InputError{Field: "depth", Got: "beyond all numbers",
			Want: "a depth of a layer, or +Inf"}
	case k/s*x*x < 1e-16 || k/s < 1e-30:
		return (ground + (1-ground)*x) / (1 + (1-ground)*x), nil
	}
	a := 1 + k/s
	b := math.Sqrt((a - 1) * (a + 1))
	bc := b / math.Tanh(b*x)
	return (1 - ground*(a-bc)) / (a - ground + bc), nil
}
