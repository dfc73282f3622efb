package mie

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
)

func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s = %.12g, want %.12g to %g", what, got, want, rel)
	}
}

func efficiencies(t *testing.T, m complex128, x float64) Efficiencies {
	t.Helper()
	e, err := Sphere(m, x)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// Small spheres scatter by Rayleigh's law, equally to and fro.
func TestRayleigh(t *testing.T) {
	for _, m := range []complex128{1.1, 1.5, 0.75, 1.33 + 0.1i, 2 + 1i} {
		const x = 0.01
		e := efficiencies(t, m, x)
		k := (m*m - 1) / (m*m + 2)
		near(t, "scattering", e.Scattering, 8.0/3*math.Pow(x, 4)*square(k), 2e-4)
		if imag(m) > 0 {
			near(t, "absorption", e.Extinction-e.Scattering, 4*x*imag(k), 2e-4)
		}
		if math.Abs(e.Asymmetry) > 1e-4 {
			t.Errorf("m %v: a small sphere has asymmetry %g", m, e.Asymmetry)
		}
	}
}

// A large sphere takes twice its shadow out of a beam, and a little for its edge: 1.99
// x^(-2/3) (Nussenzveig and Wiscombe 1980, from memory).
func TestLargeSphere(t *testing.T) {
	for _, m := range []complex128{1.5 + 0.1i, 1.33 + 0.05i} {
		for _, x := range []float64{1000, 10000} {
			near(t, "extinction", efficiencies(t, m, x).Extinction, 2+1.992*math.Pow(x, -2.0/3), 2e-4)
		}
	}
}

// Spheres nearly of the liquid's index scatter as van de Hulst's anomalous diffraction
// says (from memory), within a few hundredths.
func TestAnomalousDiffraction(t *testing.T) {
	for _, rho := range []float64{1, 2, 4.1, 7} {
		const m = 1.001
		x := rho / (2 * (m - 1))
		want := 2 - 4/rho*math.Sin(rho) + 4/(rho*rho)*(1-math.Cos(rho))
		near(t, "extinction", efficiencies(t, m, x).Extinction, want, 0.01)
	}
}

// Two independent ways to the series: real with Miller's recurrence, complex with
// logarithmic derivatives.
func TestBothWaysAgree(t *testing.T) {
	for x := 1e-3; x < 3000; x *= 1.37 {
		for _, m := range []float64{1.0001, 1.05, 1.1, 1.33, 2} {
			a, b := sphere(complex(m, 0), x), general(complex(m, 0), x)
			near(t, "scattering", a.Scattering, b.Scattering, 1e-8)
			near(t, "extinction", a.Extinction, b.Extinction, 1e-8)
			if math.Abs(a.Asymmetry-b.Asymmetry) > 1e-8 {
				t.Errorf("m %g, x %g: asymmetry %g and %g", m, x, a.Asymmetry, b.Asymmetry)
			}
		}
	}
}

// Nothing scatters more than it takes out, whatever the index and the size.
func TestEnergy(t *testing.T) {
	for x := 1e-3; x < largestSize; x *= 3.1 {
		for _, m := range []complex128{0.2, 0.9, 1.1, 3, 20, 1.1 + 1e-6i, 1.5 + 0.3i, 5 + 5i, 0.5 + 20i} {
			e := efficiencies(t, m, x)
			if !(e.Scattering > 0) || e.Scattering > e.Extinction*(1+1e-9) || math.Abs(e.Asymmetry) > 1 || math.IsInf(e.Extinction, 0) {
				t.Errorf("m %v, x %g: %+v", m, x, e)
			}
			if imag(m) == 0 && math.Abs(e.Scattering/e.Extinction-1) > 1e-6 {
				t.Errorf("m %v, x %g: clear, but %+v", m, x, e)
			}
		}
	}
}

func TestLogNormalHasItsMoments(t *testing.T) {
	for _, cv := range []float64{0.1, 0.3, 0.6} {
		classes, err := LogNormal(1e-6, cv, 1e-3)
		if err != nil {
			t.Fatal(err)
		}
		var share, mean, square float64
		for _, c := range classes {
			share += c.Share
			mean += c.Share * c.Radius
			square += c.Share * c.Radius * c.Radius
		}
		near(t, "sum of shares", share, 1, 1e-12)
		near(t, "mean", mean, 1e-6, 1e-3)
		near(t, "coefficient of variation", math.Sqrt(square-mean*mean)/mean, cv, 0.02)
	}
}

func TestSizesStayBelowTheLargest(t *testing.T) {
	cut, err := LogNormal(4e-6, 0.6, 10e-6)
	if err != nil {
		t.Fatal(err)
	}
	below, err := LogNormalBelow(43e-9, 0.23, 150e-9)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range cut {
		if c.Radius > 10e-6 {
			t.Errorf("a class of %g m", c.Radius)
		}
	}
	for _, c := range below {
		if c.Radius >= 150e-9 || c.Radius <= 0 {
			t.Errorf("a class of %g m", c.Radius)
		}
	}
}

// Twice as fine a division of the sizes changes nothing that counts.
func TestSizesAreFineEnough(t *testing.T) {
	for _, mean := range []float64{0.1e-6, 0.3e-6, 1.6e-6} {
		classes, err := LogNormal(mean, 0.6, 1e-3)
		if err != nil {
			t.Fatal(err)
		}
		d := math.Sqrt(math.Log(1.36))
		var fine []Class
		total := 0.0
		for i := -64; i <= 64; i++ {
			z := float64(i) / 16
			w := math.Exp(-z * z / 2)
			fine = append(fine, Class{math.Exp(math.Log(mean) - d*d/2 + d*z), w})
			total += w
		}
		for i := range fine {
			fine[i].Share /= total
		}
		for _, nm := range []float64{400, 550, 700} {
			a, err := Suspended{Classes: classes, Index: 1.463, Liquid: 1.333}.At(nm * 1e-9)
			if err != nil {
				t.Fatal(err)
			}
			b, err := Suspended{Classes: fine, Index: 1.463, Liquid: 1.333}.At(nm * 1e-9)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "reduced scattering", a.Scattering*(1-a.Asymmetry), b.Scattering*(1-b.Asymmetry), 1e-3)
		}
	}
}

// Absorption of large weak spheres is that of their substance, 4 pi k/wavelength.
func TestAbsorptionOfTheBulk(t *testing.T) {
	c, err := Suspended{Classes: []Class{{1e-6, 1}}, Index: 1.34 + 1e-6i, Liquid: 1.333}.At(500e-9)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "absorption", c.Absorption, 4*math.Pi*1e-6/500e-9, 0.02)
}

func TestNonsenseIsRefused(t *testing.T) {
	nan := math.NaN()
	good := []Class{{1e-6, 1}}
	for name, call := range map[string]func() error{
		"no index":         func() error { _, err := Sphere(complex(nan, 0), 1); return err },
		"gain":             func() error { _, err := Sphere(1.5-1i, 1); return err },
		"no size":          func() error { _, err := Sphere(1.5, nan); return err },
		"too large":        func() error { _, err := Sphere(1.5, 1e6); return err },
		"negative":         func() error { _, err := Sphere(1.5, -1); return err },
		"mean":             func() error { _, err := LogNormal(0, 0.6, 1e-5); return err },
		"spread":           func() error { _, err := LogNormal(1e-6, nan, 1e-5); return err },
		"largest":          func() error { _, err := LogNormal(1e-6, 0.6, 1e-7); return err },
		"mean below":       func() error { _, err := LogNormalBelow(-1, 0.2, 1e-7); return err },
		"no classes":       func() error { _, err := Suspended{Index: 1.5, Liquid: 1.3}.At(5e-7); return err },
		"shares":           func() error { _, err := Suspended{[]Class{{1e-6, 0.4}}, 1.5, 1.3}.At(5e-7); return err },
		"radius":           func() error { _, err := Suspended{[]Class{{nan, 1}}, 1.5, 1.3}.At(5e-7); return err },
		"wavelength":       func() error { _, err := Suspended{good, 1.5, 1.3}.At(0); return err },
		"liquid":           func() error { _, err := Suspended{good, 1.5, 0}.At(5e-7); return err },
		"index":            func() error { _, err := Suspended{good, 1.5 - 1i, 1.3}.At(5e-7); return err },
		"beyond the range": func() error { _, err := Suspended{[]Class{{1e-3, 1}}, 1.5, 1.3}.At(1e-7); return err },
	} {
		if err := call(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzSphere(f *testing.F) {
	f.Add(1.1, 0.0, 5.0)
	f.Add(0.75, 0.0, 0.101)
	f.Add(10.0, 10.0, 100.0)
	f.Fuzz(func(t *testing.T, n, k, x float64) {
		if x > 3000 {
			x = math.Mod(x, 3000)
		}
		e, err := Sphere(complex(n, k), x)
		if err != nil {
			return
		}
		if !(e.Scattering >= 0) || !(e.Extinction >= e.Scattering*(1-1e-6)) || !(math.Abs(e.Asymmetry) <= 1+1e-9) || math.IsInf(e.Extinction, 0) {
			t.Errorf("n %g, k %g, x %g: %+v", n, k, x, e)
		}
	})
}

func BenchmarkSphere(b *testing.B) {
	for b.Loop() {
		if _, err := Sphere(1.1, 20); err != nil {
			b.Fatal(err)
		}
	}
}

func FuzzSuspended(f *testing.F) {
	f.Add(1e-6, 0.6, 1e-5, 1.463, 1.333, 550e-9)
	f.Add(43e-9, 0.23, 150e-9, 1.503, 1.333, 400e-9)
	f.Fuzz(func(t *testing.T, mean, spread, largest, index, liquid, wavelength float64) {
		for _, sizes := range []func(a, b, c float64) ([]Class, error){LogNormal, LogNormalBelow} {
			classes, err := sizes(mean, spread, largest)
			if err != nil {
				continue
			}
			if len(classes) > 0 && mean*liquid/wavelength > 50 {
				continue // right, but slow
			}
			c, err := Suspended{Classes: classes, Index: complex(index, 0), Liquid: liquid}.At(wavelength)
			if err == nil && (!(c.Scattering >= 0) || !(c.Absorption >= 0) || !(math.Abs(c.Asymmetry) <= 1+1e-9) || math.IsInf(c.Scattering, 0)) {
				t.Errorf("%g %g %g, index %g in %g at %g: %+v", mean, spread, largest, index, liquid, wavelength, c)
			}
		}
	})
}
