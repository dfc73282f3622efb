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

func efficiencies(t *testing.T, m, x float64) Efficiencies {
	t.Helper()
	e, err := Sphere(m, x)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// Small spheres scatter by Rayleigh's law, equally to and fro.
func TestRayleigh(t *testing.T) {
	for _, m := range []float64{1.1, 1.5, 2} {
		const x = 0.01
		e := efficiencies(t, m, x)
		k := (m*m - 1) / (m*m + 2)
		near(t, "scattering", e.Scattering, 8.0/3*math.Pow(x, 4)*k*k, 2e-4)
		if math.Abs(e.Asymmetry) > 1e-4 {
			t.Errorf("m %v: a small sphere has asymmetry %g", m, e.Asymmetry)
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
		near(t, "scattering", efficiencies(t, m, x).Scattering, want, 0.01)
	}
}

// Two independent ways to the series: real with Miller's recurrence, complex with
// logarithmic derivatives.
func TestBothWaysAgree(t *testing.T) {
	for x := 1e-3; x < 3000; x *= 1.37 {
		for _, m := range []float64{1.0001, 1.05, 1.1, 1.33, 2} {
			a, b := sphere(m, x), general(complex(m, 0), x)
			near(t, "scattering", a.Scattering, b.Scattering, 1e-8)
			near(t, "extinction", a.Scattering, b.Extinction, 1e-8)
			if math.Abs(a.Asymmetry-b.Asymmetry) > 1e-8 {
				t.Errorf("m %g, x %g: asymmetry %g and %g", m, x, a.Asymmetry, b.Asymmetry)
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

func TestNonsenseIsRefused(t *testing.T) {
	nan := math.NaN()
	good := []Class{{1e-6, 1}}
	for name, call := range map[string]func() error{
		"no index":         func() error { _, err := Sphere(nan, 1); return err },
		"a bubble":         func() error { _, err := Sphere(0.75, 1); return err },
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
		"index":            func() error { _, err := Suspended{good, 1.1, 1.3}.At(5e-7); return err },
		"beyond the range": func() error { _, err := Suspended{[]Class{{1e-3, 1}}, 1.5, 1.3}.At(1e-7); return err },
	} {
		if err := call(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func FuzzSphere(f *testing.F) {
	f.Add(1.1, 5.0)
	f.Add(1.0, 0.101)
	f.Add(2.0, 100.0)
	f.Fuzz(func(t *testing.T, m, x float64) {
		if x > 3000 {
			x = math.Mod(x, 3000)
		}
		e, err := Sphere(m, x)
		if err != nil {
			return
		}
		if !(e.Scattering >= 0) || !(math.Abs(e.Asymmetry) <= 1+1e-9) || math.IsInf(e.Scattering, 0) {
			t.Errorf("m %g, x %g: %+v", m, x, e)
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
			c, err := Suspended{Classes: classes, Index: index, Liquid: liquid}.At(wavelength)
			if err == nil && (!(c.Scattering >= 0) || !(math.Abs(c.Asymmetry) <= 1+1e-9) || math.IsInf(c.Scattering, 0)) {
				t.Errorf("%g %g %g, index %g in %g at %g: %+v", mean, spread, largest, index, liquid, wavelength, c)
			}
		}
	})
}
