package pour_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology/law"
	"example.org/honestplate/rheology/pour"
)

const g0 = 9.80665

func streamOf(t *testing.T, p pour.Pour, drop float64) pour.Stream {
	t.Helper()
	s, err := p.Stream(drop)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Without inertia: a thread from near rest lands at 2 g z2/(3 pi2 nu), one that hardly
// stretches gains g z2/(6 nu).
// The explicit thread against its equation, w' = q w, q' = w q - 1/w, integrated back by
// Runge and Kutta's rule from the end, where q = 0.
// From rest, a long fall lags behind the free one by -2^(1/3) times the first zero of Ai,
// which gonum's Airy function shows to be 2.9458.
// A stream carries the rate of its pour.
func TestAStreamCarriesItsRate(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup, honey} {
		p := pourOf(t, jug, l, 200)
		for _, drop := range []float64{0.02, 0.1, 0.3, 1} {
			s := streamOf(t, p, drop)
			if s.Broken || s.Drips {
				continue
			}
			near(t, "rate", math.Pi/4*s.Diameter*s.Diameter*s.Speed, p.Rate.Likely, 1e-9)
			if s.Width.Likely != s.Diameter || s.Width.Low >= s.Diameter || s.Width.High <= s.Diameter {
				t.Errorf("eta %g: width %v of %g m", l.eta, s.Width, s.Diameter)
			}
		}
	}
}

// Grant and Middleman's two forms at the pack's own case, water at 5 mm and 1 m/s: the
// first is the value, the other lies in its band of 1.6 (to the rounding of that factor).
// Where the fall adds little speed, the falling jet breaks as the level one does.
// The waves on a falling jet have grown by as many e-folds as Grant and Middleman's jet, 19.5
// (1 + 3 Oh)^-0.15, where it breaks: their rate summed along the fall.
// Its value for spouts much finer than the capillary length is 4; it falls with the bore.
// Common practice, no source: a fast pour of milk from 30 cm stays whole; from two metres it is
// drops; a nearly stopped tap drips; honey runs as a thread.
func TestWhatStreamsDo(t *testing.T) {
	p := pourOf(t, pour.Spout{Diameter: 0.005, Length: 0.01, Head: 0.02}, milk, 100)
	if s := streamOf(t, p, 0.2); s.Broken || s.Drips {
		t.Errorf("milk from 20 cm: %+v", s)
	}
	if s := streamOf(t, p, 2.5); !s.Broken {
		t.Errorf("milk from 2.5 m: %+v", s)
	}
	tap := pourOf(t, pour.Spout{Diameter: 0.004, Length: 0.3, Head: 0.0042}, thin, 1)
	if s := streamOf(t, tap, 0.3); !s.Drips || s.Diameter < 0.003 || s.Diameter > 0.008 {
		t.Errorf("tap: %+v", s)
	}
	if s := streamOf(t, pourOf(t, jug, honey, 100), 0.2); s.Broken || s.Drips {
		t.Errorf("honey: %+v", s)
	}
}

func TestNothingComesOfNoPour(t *testing.T) {
	var p pour.Pour
	var s pour.Stream
	_, e1 := p.Stream(0.1)
	_, e4 := p.Dribble(30)
	_, e5 := p.Settled(30)
	_, e6 := p.Puddle(1e9, 30)
	_, e7 := s.Splash(pour.Target{})
	_, e8 := s.Crown(0.001)
	_, e9 := s.Coil()
	for i, err := range []error{e1, e4, e5, e6, e7, e8, e9} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%d: %v", i+1, err)
		}
	}
	p = pourOf(t, jug, milk, 10)
	for _, drop := range []float64{0, -1, 4, math.NaN(), math.Inf(1)} {
		if _, err := p.Stream(drop); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("drop %g: %v", drop, err)
		}
	}
}

// A small drop soon reaches its terminal speed, a large one keeps to free fall at first.
func TestDropsFallThroughAir(t *testing.T) {
	tap := pourOf(t, pour.Spout{Diameter: 0.004, Length: 0.3, Head: 0.0042}, thin, 1)
	near(t, "after 5 cm", streamOf(t, tap, 0.05).Speed, math.Sqrt(2*g0*0.05), 0.03)
	terminal, err := law.TerminalSpeed(0.005)
	if err != nil {
		t.Fatal(err)
	}
	if v := streamOf(t, tap, 3).Speed; v >= terminal {
		t.Errorf("after 3 m %g m/s, terminal %g", v, terminal)
	}
}

// Tate's law holds for the drop that it gives.
