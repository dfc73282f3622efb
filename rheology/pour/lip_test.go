package pour_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

func TestALipPoursByItsHead(t *testing.T) {
	last := 0.0
	for head := 0.002; head < 0.05; head *= 1.3 {
		p, err := pour.Lip{Width: 0.03, Length: 0.01, Head: head}.Pour(cream, 20, 100)
		if err != nil {
			t.Fatal(err)
		}
		if p.Rate.Likely <= last {
			t.Fatalf("at %g m %g m3/s after %g", head, p.Rate.Likely, last)
		}
		last = p.Rate.Likely
	}
	// Thin and high over the edge: a weir.
	p, err := pour.Lip{Width: 0.03, Head: 0.03}.Pour(thin, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "weir, less the friction of its edge", p.Rate.Likely, 2.0/3*0.58*0.03*math.Sqrt(2*g0*0.03)*0.03, 0.12)
	// Thick: a film of its own slope, q = g H4/(12 nu L).
	p, err = pour.Lip{Width: 0.03, Length: 0.5, Head: 0.01}.Pour(honey, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "film", p.Rate.Likely, 0.03*g0*1e-8/(12*honey.eta/honey.rho*0.5), 0.06)
	for name, s := range map[string]pour.Lip{
		"none": {}, "no head": {Width: 0.1}, "length": {Width: 0.1, Head: 0.1, Length: -1},
		"surface": {Width: 0.1, Head: 0.1, SurfaceArea: -1},
		"high":    {Width: 0.1, Head: 5},
	} {
		if _, err := s.Pour(milk, 20, 10); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := (pour.Lip{Width: 0.1, Head: 0.1}).Pour(nil, 20, 10); !errors.Is(err, honestplate.ErrInput) {
			t.Error(err)
		}
	}
}

// A hand's lip is known to 25 %, one that was timed to 12 %.
func TestATimedLipIsKnownBetter(t *testing.T) {
	milk := rheology.Dairy{FatPercent: 3.5}
	lip, err := pour.Lip{Width: 0.03}.ForDuration(milk, 6, 200, 5*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	timed, err := pour.Lip{Width: 0.03}.Calibrate(rheology.Water{}, 20, 200, 5*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	for want, l := range map[float64]pour.Lip{0.25: lip, 0.12: timed} {
		if p, err := l.Pour(milk, 6, 200); err != nil || p.Hydraulics != want {
			t.Errorf("%+v: known to %g, %v, want %g", l, p.Hydraulics, err, want)
		}
	}
}
