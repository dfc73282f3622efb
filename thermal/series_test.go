package thermal

import (
	"errors"
	"math"
	"testing"
)

var (
	forms  = []Form{SlabForm, CylinderForm, SphereForm}
	biots  = []float64{1e-6, 1e-4, 1.01e-4, 0.003, 0.1, 0.5, 0.99999, 1, 1.00001, 3, 40, 1e4, 1e6, math.Inf(1)}
	places = []float64{0, 0.01, 0.3, 0.7, 0.95, 1}
)

func mustSeries(t testing.TB, form Form, bi float64) *Series {
	t.Helper()
	s, err := NewSeries(form, bi)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func eachSeries(t *testing.T, f func(s *Series)) {
	for _, form := range forms {
		for _, bi := range biots {
			f(mustSeries(t, form, bi))
		}
	}
}

func TestRootsSatisfyTheirEquationAndAreAllThere(t *testing.T) {
	eachSeries(t, func(s *Series) {
		last := 0.0
		for i, term := range s.terms {
			// The equation divided by what makes it of order 1.
			f, slope := characteristic(s.form, s.bi, term.z)
			if math.Abs(f/slope) > 1e-9*term.z {
				t.Errorf("%v Bi %g: root %d is %g, %g off", s.form, s.bi, i+1, term.z, f/slope)
			}
			if gap := term.z - last; i > 0 && (gap < 2.3 || gap > 4.6) {
				t.Errorf("%v Bi %g: roots %d and %d are %g apart", s.form, s.bi, i, i+1, gap)
			}
			last = term.z
		}
	})
}

// The series that takes as many terms as it needs and the half-space formula were
// derived apart; where both hold they agree.
func TestEarlyFormulaMeetsTheSeries(t *testing.T) {
	eachSeries(t, func(s *Series) {
		tolerance := 1e-9
		if s.form == CylinderForm {
			tolerance = 1e-3 // Fo^1.5
		}
		fo := seriesFrom
		for _, x := range places {
			a, b := s.theta(x, fo), 1-warmed(s.form, s.bi, x, fo)
			if math.Abs(a-b) > tolerance {
				t.Errorf("%v Bi %g x %g: series %.12g, half-space %.12g", s.form, s.bi, x, a, b)
			}
		}
		if a, b := s.heat(fo), released(s.form, s.bi, fo); math.Abs(a-b) > tolerance {
			t.Errorf("%v Bi %g: heat by series %.12g, half-space %.12g", s.form, s.bi, a, b)
		}
	})
	for _, bi := range biots {
		s := mustSeries(t, CylinderForm, bi)
		for _, x := range places {
			a, b := s.theta(x, cylinderFrom), 1-warmed(CylinderForm, bi, x, cylinderFrom)
			if math.Abs(a-b) > 1e-6 {
				t.Errorf("cylinder Bi %g x %g: series %.12g, half-space %.12g", bi, x, a, b)
			}
		}
		if a, b := s.heat(cylinderFrom), released(CylinderForm, bi, cylinderFrom); math.Abs(a-b) > 1e-6 {
			t.Errorf("cylinder Bi %g: heat by series %.12g, half-space %.12g", bi, a, b)
		}
	}
}

// Conservation: the heat that has gone is what the surface gave up,
// dQ/dFo = (2c+1) Bi theta(1), without using the mean factors.
func TestHeatIsWhatTheSurfaceExchanged(t *testing.T) {
	eachSeries(t, func(s *Series) {
		if math.IsInf(s.bi, 1) {
			return
		}
		n := 2*curvature(s.form) + 1
		for _, fo := range []float64{1e-9, 5e-5, 2e-4, 0.0079, 0.0081, 0.1, 1, 10} {
			if fo/s.bi > 1e6 || s.bi*fo > 1e3 {
				continue
			}
			d := fo * 1e-4
			got := (s.heat(fo+d) - s.heat(fo-d)) / (2 * d)
			want := n * s.bi * s.theta(1, fo)
			tolerance := 1e-6*want + 1e-11/d
			if s.form == CylinderForm && fo < cylinderFrom {
				tolerance += 0.3 * math.Sqrt(fo) // the slope of the 1e-6 it may be off
			}
			if math.Abs(got-want) > tolerance {
				t.Errorf("%v Bi %g Fo %g: dQ/dFo %g, surface %g", s.form, s.bi, fo, got, want)
			}
		}
	})
}

// A place at the mean temperature exists, and the mean is what has not gone.
func TestMeanLiesBetweenSurfaceAndCentre(t *testing.T) {
	eachSeries(t, func(s *Series) {
		for _, fo := range []float64{1e-5, 0.01, 0.3} {
			mean, err := s.Mean(fo)
			if err != nil {
				t.Fatal(err)
			}
			if mean < s.theta(1, fo)-1e-9 || mean > s.theta(0, fo)+1e-9 {
				t.Errorf("%v Bi %g Fo %g: mean %g outside %g..%g", s.form, s.bi, fo, mean, s.theta(1, fo), s.theta(0, fo))
			}
		}
	})
}

func TestSmallBiotTendsToTheLumpedBody(t *testing.T) {
	for _, form := range forms {
		s := mustSeries(t, form, 1e-5)
		n := 2*curvature(form) + 1
		for _, x := range places {
			for _, tau := range []float64{0.1, 1, 4} {
				got := s.theta(x, tau/(n*1e-5))
				if math.Abs(got-math.Exp(-tau)) > 1e-5 {
					t.Errorf("%v x %g: %g, lumped %g", form, x, got, math.Exp(-tau))
				}
			}
		}
	}
}

func TestThetaFallsWithTimeAndTowardsTheSurface(t *testing.T) {
	eachSeries(t, func(s *Series) {
		for _, x := range places {
			last := 1.0
			for v := -30.0; v < 5; v += 0.25 {
				theta := s.theta(x, math.Exp(v))
				if theta > last+1e-9 || theta < -1e-12 || math.IsNaN(theta) {
					t.Fatalf("%v Bi %g x %g Fo %g: theta %g after %g", s.form, s.bi, x, math.Exp(v), theta, last)
				}
				last = theta
			}
		}
		for v := -30.0; v < 5; v += 0.5 {
			last := math.Inf(1)
			for _, x := range places {
				theta := s.theta(x, math.Exp(v))
				if theta > last+1e-9 {
					t.Fatalf("%v Bi %g Fo %g: theta rises outward at x %g", s.form, s.bi, math.Exp(v), x)
				}
				last = theta
			}
		}
	})
}

func TestSeriesRefusesNonsense(t *testing.T) {
	nan := math.NaN()
	for _, bi := range []float64{nan, 0, -1, 1e-7, 1e7, math.Inf(-1)} {
		if _, err := NewSeries(SlabForm, bi); !errors.Is(err, ErrInput) && !errors.Is(err, ErrRange) {
			t.Errorf("Biot number %g: %v", bi, err)
		}
	}
	if _, err := NewSeries(Form(9), 1); !errors.Is(err, ErrInput) {
		t.Error("unknown form:", err)
	}
	s := mustSeries(t, SphereForm, 1)
	for _, bad := range [][2]float64{{-0.1, 1}, {1.1, 1}, {nan, 1}, {0.5, -1}, {0.5, nan}, {0.5, math.Inf(1)}} {
		if _, err := s.Theta(bad[0], bad[1]); err == nil {
			t.Errorf("theta at %v: no error", bad)
		}
	}
	if _, err := s.At(2); !errors.Is(err, ErrRange) {
		t.Error("place outside:", err)
	}
	h, _ := s.At(0)
	for _, bad := range []float64{nan, -1} {
		if _, err := h.Theta(bad); !errors.Is(err, ErrInput) {
			t.Error(bad, err)
		}
		if _, err := s.Heat(bad); !errors.Is(err, ErrInput) {
			t.Error(bad, err)
		}
	}
	for _, bad := range []float64{0, -1, 1.1, nan} {
		if _, err := h.Fourier(bad); err == nil {
			t.Errorf("Fourier(%g): no error", bad)
		}
	}
}

func FuzzSeries(f *testing.F) {
	f.Add(0, 1.0, 0.5, 0.2)
	f.Add(1, 1e-6, 0.0, 1e-7)
	f.Add(2, math.Inf(1), 1.0, 1e9)
	f.Fuzz(func(t *testing.T, form int, bi, x, fo float64) {
		s, err := NewSeries(Form(form), bi)
		if err != nil {
			return
		}
		theta, err := s.Theta(x, fo)
		if err != nil {
			return
		}
		heat, err := s.Heat(fo)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range []float64{theta, heat} {
			if !(v > -1e-6 && v < 1+1e-6) {
				t.Fatalf("%v Bi %g x %g Fo %g: theta %g, heat %g", Form(form), bi, x, fo, theta, heat)
			}
		}
	})
}

func BenchmarkNewSeries(b *testing.B) {
	for _, form := range forms {
		b.Run(form.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := NewSeries(form, 1.3); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkSphereTheta(b *testing.B) {
	s := mustSeries(b, SphereForm, 1.3)
	b.ReportAllocs()
	fo := 0.1
	for b.Loop() {
		if _, err := s.Theta(0.7, fo); err != nil {
			b.Fatal(err)
		}
	}
}
