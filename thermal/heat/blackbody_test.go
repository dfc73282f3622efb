package heat

import (
	"math"
	"testing"
)

func TestBlackbodyFractionIsADistribution(t *testing.T) {
	last := -1.0
	for x := 1e-5; x < 10; x *= 1.1 {
		f, err := BlackbodyFraction(x)
		if err != nil {
			t.Fatal(err)
		}
		if f < last || f > 1 {
			t.Errorf("%g m K: %.17g after %.17g", x, f, last)
		}
		last = f
	}
	if f, err := BlackbodyFraction(0); err != nil || f != 0 {
		t.Errorf("nothing below no wavelength: %g, %v", f, err)
	}
	// The median wavelength of Planck's law (from memory): 4107 um K.
	if f, err := BlackbodyFraction(4107e-6); err != nil || math.Abs(f-0.5) > 1e-4 {
		t.Errorf("median: %g, %v", f, err)
	}
	// series and the form for long waves meet
	a, b := planckBelow(0.01438776877/0.01000001), planckBelow(0.01438776877/0.00999999)
	if math.Abs(a-b) > 1e-9 {
		t.Errorf("%.15g, %.15g", a, b)
	}
}

// The density of the fraction is Planck's law, here by differences against the closed
// form.
func TestBlackbodyFractionHasPlancksSlope(t *testing.T) {
	const c2 = 0.01438776877
	for _, x := range []float64{0.001, 0.002898, 0.005, 0.02} {
		const d = 1e-7
		got := (planckBelow(x+d) - planckBelow(x-d)) / (2 * d)
		want := 15 / math.Pow(math.Pi, 4) * math.Pow(c2, 4) / (math.Pow(x, 5) * math.Expm1(c2/x))
		if math.Abs(got-want) > 1e-6*want {
			t.Errorf("%g m K: %g, Planck %g", x, got, want)
		}
	}
}

func planckBelow(lambdaT float64) float64 {
	below, _ := BlackbodyFraction(lambdaT)
	return below
}
