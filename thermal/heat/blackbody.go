package heat

import (
	"math"

	"example.org/honestplate"
)

// BlackbodyFraction returns the share of a black body's radiation below a
// wavelength, given wavelength x temperature in m K:
//
//	F = 15/pi^4 sum_n exp(-n x) (x^3/n + 3 x^2/n^2 + 6 x/n^3 + 6/n^4), x = 0.01438777/(lambda T)
//
// to 1e-12; tables of textbooks agree to their last digit, except where they
// interpolated. lambda T must be finite and not negative.
//
// Source: the series of Planck's integral (Incropera and DeWitt, ch. 12; from
// memory, checked on published tables).
func BlackbodyFraction(lambdaT float64) (float64, error) {
	if err := honestplate.NotNegative("LambdaT", lambdaT, "m K"); err != nil {
		return 0, err
	}
	if lambdaT == 0 { // also -0, which would be below the shortest wave
		return 0, nil
	}
	const c2 = 0.01438776877 // m K, second radiation constant, exact in the SI of 2019
	x := c2 / lambdaT
	if x > 700 { // also +Inf
		return 0, nil
	}
	if x < 0.01 {
		// The series converges slowly where nearly everything lies below.
		return 1 - 15/math.Pow(math.Pi, 4)*x*x*x*(1.0/3-x/8+x*x/60), nil
	}
	var sum float64
	decay := math.Exp(-x)
	e := decay
	for n := 1.0; n < 5000; n++ {
		term := e / n * (x*x*x + (3*x*x+(6*x+6/n)/n)/n)
		sum += term
		if term < 1e-14*sum {
			break
		}
		e *= decay
	}
	return min(1, 15/math.Pow(math.Pi, 4)*sum), nil
}
