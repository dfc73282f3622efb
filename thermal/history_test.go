package thermal

import (
	"math"
	"testing"
)

func TestHistoryIsTheSeriesAndItsInverse(t *testing.T) {
	eachSeries(t, func(s *Series) {
		for _, x := range places {
			h, err := s.At(x)
			if err != nil {
				t.Fatal(err)
			}
			for _, fo := range []float64{0, 1e-5, 0.01, 0.3, 2} {
				a, err := h.Theta(fo)
				if err != nil {
					t.Fatal(err)
				}
				if b := s.theta(x, fo); math.Abs(a-b) > 1e-14 {
					t.Errorf("%v Bi %g x %g Fo %g: %g and %g", s.form, s.bi, x, fo, a, b)
				}
			}
			for _, theta := range []float64{1, 0.9, 0.5, 0.01} {
				fo, err := h.Fourier(theta)
				if err != nil {
					t.Fatal(err)
				}
				if math.IsInf(s.bi, 1) && x == 1 {
					continue // jumps at once
				}
				if fo < 1e-11 {
					continue // sooner than the search looks
				}
				if got := h.theta(fo); math.Abs(got-theta) > 1e-7 {
					t.Errorf("%v Bi %g x %g: at Fo %g theta is %g, want %g", s.form, s.bi, x, fo, got, theta)
				}
			}
		}
	})
}

// Six terms count at this Fourier number.
func BenchmarkSphereHistory(b *testing.B) {
	h, err := mustSeries(b, SphereForm, 1.3).At(0.7)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	fo := 0.12
	for b.Loop() {
		if _, err := h.Theta(fo); err != nil {
			b.Fatal(err)
		}
	}
}

// The six exponentials.
func BenchmarkSphereHistoryFloor(b *testing.B) {
	sum, fo := 0.0, 0.12
	for b.Loop() {
		for n := range 6 {
			sum += math.Exp(-float64(n*n) * fo)
		}
		fo += 1e-9
	}
	if sum == 0 {
		b.Error("nothing summed")
	}
}
