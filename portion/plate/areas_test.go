package plate

import (
	"math"
	"testing"

	"example.org/honestplate/portion"
)

// The grams of a spread go with the area of each slice inside the free edge, counted
// here in pixels of a quarter of a millimetre.
func TestSpreadFollowsPixels(t *testing.T) {
	for _, on := range []Dish{
		Round{0.3, 0.02, 6, 0}, Round{0.3, 0.05, 5, 7}, Round{0.2, 0, 7, -25}, Round{0.25, 0.03, 1, 3}, Round{0.2, 0.01, 2, 45},
		Rectangle{0.3, 0.2, 0.02, 3, 2}, Rectangle{0.36, 0.18, 0.04, 4, 1}, Rectangle{0.2, 0.4, 0.03, 1, 3},
	} {
		const grams, step = 1000, 0.1
		l, err := Spread{}.Lay(on, portion.Declaration{Grams: grams, StepGrams: step})
		if err != nil {
			t.Fatal(err)
		}
		p, err := on.plate()
		if err != nil {
			t.Fatal(err)
		}
		a, b := p.inner()
		const pixel = 0.25e-3
		counts, sums, all := make([]float64, len(p.slices)), make([]Point, len(p.slices)), 0.0
		for x := -a + pixel/2; x < a; x += pixel {
			for y := -b + pixel/2; y < b; y += pixel {
				if !p.round || math.Hypot(x, y) < a {
					k := p.sliceAt(Point{x, y})
					sums[k] = sums[k].plus(Point{x, y})
					counts[k]++
					all++
				}
			}
		}
		for k, s := range l.Slices {
			// A pixel's width along a slice's border, and a step.
			want, off := grams*counts[k]/all, 2+2*step
			if math.Abs(s.Grams-want) > off {
				t.Errorf("%+v slice %d: %.1f g, its pixels say %.1f", on, k+1, s.Grams, want)
			}
			_, centre := p.covered(k)
			if off := sums[k].times(1 / counts[k]).minus(centre).norm(); off > pixel {
				t.Errorf("%+v: the centre of slice %d is %.2g m off", on, k+1, off)
			}
		}
	}
}

// What is symmetrical left and right of the camera is shared so, where that is as near as
// any other way; the total stays exact.
func TestSymmetricDishesAreSharedSo(t *testing.T) {
	cheese := portion.Declaration{Grams: 62, StepGrams: 0.5}
	symmetric := func(name string, l Layout) {
		t.Helper()
		n, sum := len(l.Slices), 0.0
		for k, s := range l.Slices {
			sum += s.Grams
			if other := l.Slices[(n-k)%n].Grams; other != s.Grams {
				t.Errorf("%s: slice %d carries %g g, its mirror image %g", name, k+1, s.Grams, other)
			}
		}
		if sum != 62 {
			t.Errorf("%s: %g g in all", name, sum)
		}
	}
	l, err := Strips{Hub: 0.02, Favour: 0.4}.Lay(Round{Diameter: 0.28, Edge: 0.02, Slices: 8}, cheese)
	if err != nil {
		t.Fatal(err)
	}
	symmetric("strips, favour 0.4", l)
	for k, want := range []float64{9, 8.5, 8, 7, 6, 7, 8, 8.5} {
		if l.Slices[k].Grams != want {
			t.Errorf("slice %d: %g g, want %g", k+1, l.Slices[k].Grams, want)
		}
	}
	if l, err = (Spread{}).Lay(Round{Diameter: 0.28, Edge: 0.02, Slices: 8}, cheese); err != nil {
		t.Fatal(err)
	}
	symmetric("spread", l)
}
