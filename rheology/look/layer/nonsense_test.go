package layer

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
)

func TestNonsenseIsRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	solved, err := Slab{Albedo: 0.9, Depth: 1}.Solve(1)
	if err != nil {
		t.Fatal(err)
	}
	for name, call := range map[string]func() error{
		"on the wire":      func() error { _, err := json.Marshal(solved); return err },
		"albedo":           func() error { _, err := Slab{Albedo: 1.1}.Solve(1); return err },
		"depth":            func() error { _, err := Slab{Depth: nan}.Solve(1); return err },
		"negative depth":   func() error { _, err := Slab{Depth: -inf}.Solve(1); return err },
		"huge depth":       func() error { _, err := Slab{Depth: 1e9}.Solve(1); return err },
		"asymmetry":        func() error { _, err := Slab{Asymmetry: 1}.Solve(1); return err },
		"index":            func() error { _, err := Slab{Index: 0.5}.Solve(1); return err },
		"glass":            func() error { _, err := Slab{Glass: 9}.Solve(1); return err },
		"cosine":           func() error { _, err := Slab{}.Solve(0); return err },
		"not solved":       func() error { _, err := new(Solved).Alone(); return err },
		"nothing to cover": func() error { var s *Solved; _, err := s.Over(0.5); return err },
		"ground":           func() error { _, err := solved.Over(2); return err },
		"surface":          func() error { _, _, _, err := SurfaceReflection(nan); return err },
		"k":                func() error { _, err := KubelkaMunk(-1, 1, 1, 0); return err },
		"s":                func() error { _, err := KubelkaMunk(1, nan, 1, 0); return err },
		"depth of paint":   func() error { _, err := KubelkaMunk(1, 1, -1, 0); return err },
		"ground of paint":  func() error { _, err := KubelkaMunk(1, 1, 1, nan); return err },
		"beyond numbers":   func() error { _, err := KubelkaMunk(1, 1e200, 1e200, 0); return err },
	} {
		if err := call(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// The closed forms at their edges.
func TestClosedFormsAtTheirEdges(t *testing.T) {
	inf := math.Inf(1)
	for _, c := range []struct{ k, s, depth, ground, want float64 }{
		{0, 0, 1, 0.3, 0.3}, {0, 0, inf, 0.3, 0.3}, {1, 0, inf, 0.3, 0}, {1, 2, 0, 0.3, 0.3},
		{0, 1, 1, 0, 0.5}, {0, 1, inf, 0, 1}, {1, 0, 1, 1, math.Exp(-2)}, {0, 1e-9, 1, 1, 1},
	} {
		got, err := KubelkaMunk(c.k, c.s, c.depth, c.ground)
		if err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %g, %v", c, got, err)
		}
	}
	// Continuous where the formula changes.
	a, _ := KubelkaMunk(1e-15, 1, 3, 0.2)
	b, _ := KubelkaMunk(1e-17, 1, 3, 0.2)
	if math.Abs(a-b) > 1e-7 {
		t.Errorf("%g and %g", a, b)
	}
	if beam, outside, inside, err := SurfaceReflection(0); err != nil || beam != 0 || outside != 0 || inside != 0 {
		t.Errorf("no surface reflects %g, %g, %g, %v", beam, outside, inside, err)
	}
}

func FuzzSlab(f *testing.F) {
	f.Add(0.99, 3.0, 0.9, 1.345, 0.0, 1.0, 0.8)
	f.Add(1.0, 1e7, 0.0, 1.0, 1.5, 0.3, 0.0)
	f.Fuzz(func(t *testing.T, albedo, depth, g, index, glass, cosine, ground float64) {
		solved, err := Slab{albedo, depth, g, index, glass}.Solve(cosine)
		if err != nil {
			return
		}
		a, err := solved.Alone()
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range []float64{a.BeamReflected, a.BeamTransmitted, a.DiffuseReflected, a.DiffuseTransmitted} {
			if !(v >= -0.01 && v <= 1.01) {
				t.Errorf("%+v alone, cosine %g: %+v", Slab{albedo, depth, g, index, glass}, cosine, a)
			}
		}
		if o, err := solved.Over(ground); err == nil && !(o.BeamReflected >= -0.01 && o.DiffuseReflected <= 1.01) {
			t.Errorf("%+v over %g: %+v", Slab{albedo, depth, g, index, glass}, ground, o)
		}
	})
}

func BenchmarkSolve(b *testing.B) {
	for b.Loop() {
		s, err := Slab{Albedo: 0.9999, Depth: 300, Asymmetry: 0.9, Index: 1.345}.Solve(1)
		if err != nil {
			b.Fatal(err)
		}
		if _, err := s.Over(0.8); err != nil {
			b.Fatal(err)
		}
	}
}

func FuzzClosedForms(f *testing.F) {
	f.Add(4.8, 3480.0, 0.001, 0.8, 1.345)
	f.Fuzz(func(t *testing.T, k, s, depth, ground, n float64) {
		share := func(what string, v float64, err error) {
			if err == nil && !(v >= -1e-9 && v <= 1+1e-9) {
				t.Errorf("%s of k %g, s %g, depth %g, ground %g, n %g: %g", what, k, s, depth, ground, n, v)
			}
		}
		r, err := KubelkaMunk(k, s, depth, ground)
		share("Kubelka-Munk", r, err)
		beam, outside, inside, surfaceErr := SurfaceReflection(n)
		share("beam", beam, surfaceErr)
		share("outside", outside, surfaceErr)
		share("inside", inside, surfaceErr)
	})
}
