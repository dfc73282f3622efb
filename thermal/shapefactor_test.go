package thermal

import (
	"errors"
	"math"
	"testing"
)

// Plank's formula for a brick has his constants of slab, cylinder and ball as limits.
func TestPlankBrickLimits(t *testing.T) {
	for _, c := range []struct {
		name         string
		b1, b2, p, r float64
	}{
		{"cube", 1, 1, 1. / 6, 1. / 24},
		{"near cube", 1.0005, 1.0005, 1. / 6, 1. / 24},
		{"square bar", 1, 1e6, 1. / 4, 1. / 16},
		{"slab", 1e5, 1e5, 1. / 2, 1. / 8},
	} {
		p, r := brickPlank(c.b1, c.b2)
		if math.Abs(p-c.p) > 1e-3 || math.Abs(r-c.r) > 1e-3 {
			t.Errorf("%s: P %.5f R %.5f, want %.5f %.5f", c.name, p, r, c.p, c.r)
		}
	}
	last := 0.0
	for b := 1.0; b < 8; b += 0.01 { // no jump where the cube is taken apart
		_, r := brickPlank(1, b)
		if r < last-1e-6 || (last > 0 && r-last > 1e-3) {
			t.Fatalf("R jumps to %g at ratio %g from %g", r, b, last)
		}
		last = r
	}
}

func TestShapeFactorLimits(t *testing.T) {
	for _, bi := range []float64{0.01, 1, 50} {
		for name, c := range map[string]struct {
			size Size
			want float64
		}{
			"slab":          {Size{Height: 0.1}, 1},
			"long cylinder": {Size{Diameter: 0.1, Long: true}, 2},
			"ball":          {Size{Diameter: 0.1}, 3},
			"vast brick":    {Size{Height: 0.1, Width: 100, Depth: 100}, 1},
			"vast bar":      {Size{Height: 0.1, Width: 100, Long: true}, 1},
			"flat disc":     {Size{Diameter: 100, Height: 0.1}, 1},
			"tall cylinder": {Size{Diameter: 0.1, Height: 100}, 2},
		} {
			got, err := ShapeFactor(c.size, bi)
			if err != nil || math.Abs(got-c.want) > 5e-3 {
				t.Errorf("%s at Bi %g: %g, want %g (%v)", name, bi, got, c.want, err)
			}
		}
	}
	// At a small Biot number the factor is that of the surface to volume: 3 for a cube.
	if got, _ := ShapeFactor(Size{Height: 1, Width: 1, Depth: 1}, 1e-6); math.Abs(got-3) > 1e-3 {
		t.Errorf("cube: %g, want 3", got)
	}
	if _, err := ShapeFactor(Size{}, 1); !errors.Is(err, ErrInput) {
		t.Error(err)
	}
	if _, err := ShapeFactor(Size{Height: 1}, 0); !errors.Is(err, ErrInput) {
		t.Error(err)
	}
}
