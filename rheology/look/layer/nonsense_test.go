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
	} {
		if err := call(); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
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
		if _, err := json.Marshal(solved); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("a worked out layer is written: %v", err)
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
