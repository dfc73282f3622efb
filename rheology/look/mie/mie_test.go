package mie

import (
	"math"
	"testing"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.9g, want %.9g within %g", what, got, want, tol)
	}
}

func TestTmp(t *testing.T) {
	for _, c := range []struct{ n, k, x, e, s, g float64 }{
		{1.55, 0, 5.212819668567135, 3.10543, 3.10543, .633137},
		{.75, 0, .101, 8.03354e-6, 8.03354e-6, .00150743},
		{.75, 0, 1000, 1.99791, 1.99791, .844944},
		{1.33, 1e-5, 1, .093952, .0939233, .184517},
		{1.33, 1e-5, 10000, 2.00409, 1.72386, .90784},
		{1.5, 1, .055, .101491, 1.13169e-5, .000491173},
		{1.5, 1, 100, 2.0975, 1.2837, .850252},
		{1.5, 1, 10000, 2.00437, 1.23657, .84631},
		{10, 10, 1, 2.53299, 2.04941, -.110664},
		{10, 10, 100, 2.07112, 1.83679, .556215},
		{10, 10, 10000, 2.00591, 1.79539, .548194},
		{1.5, 0, 10, 2.882, 2.882, .742913},
		{1.5, 0, 5000, 2.00865, 2.00865, .829592},
	} {
		e, err := Sphere(complex(c.n, c.k), c.x)
		if err != nil {
			t.Error(err)
		}
		near(t, "ext", e.Extinction/c.e, 1, 5e-6)
		near(t, "sca", e.Scattering/c.s, 1, 5e-6)
		near(t, "g", e.Asymmetry, c.g, 5e-6)
		f := absorbing(complex(c.n, c.k), c.x)
		near(t, "ext", e.Extinction/f.Extinction, 1, 1e-8)
		near(t, "g", e.Asymmetry, f.Asymmetry, 1e-8)
	}
}
