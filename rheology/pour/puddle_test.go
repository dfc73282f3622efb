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

func TestAPuddleGrowsToItsRest(t *testing.T) {
	for _, l := range []rheology.Liquid{milk, cream, syrup, honey, ketchup} {
		p, err := pour.Spout{Diameter: 0.012, Length: 0.03, Head: 0.3}.Pour(l, 20, 100)
		if err != nil {
			t.Fatal(err)
		}
		rest, err := p.Settled(40)
		if err != nil {
			t.Fatal(err)
		}
		last := 0.0
		for s := 0.01; s < 2e6; s *= 1.05 {
			m, err := p.Puddle(time.Duration(s*1e9), 40)
			if err != nil {
				t.Fatal(err)
			}
			if m.Radius.Likely < last*0.9999 || (last > 0 && m.Radius.Likely > last*1.12) {
				t.Fatalf("%v at %g s: %g m after %g", l, s, m.Radius.Likely, last)
			}
			if !m.Radius.Contains(m.Radius.Likely) || m.Depth <= 0 {
				t.Fatalf("%v at %g s: %+v", l, s, m)
			}
			last = m.Radius.Likely
		}
		if l != rheology.Liquid(honey) && last != rest.Radius.Likely {
			t.Errorf("%v: ends at %g m, rest %g", l, last, rest.Radius.Likely)
		}
		near(t, "depth", rest.Depth*math.Pi*rest.Radius.Likely*rest.Radius.Likely, 0.1/p.Density.Likely, 1e-9)
	}
}

func TestAFedHeapIsAsWideAsAHeapOfWhatHasLanded(t *testing.T) {
	outlet := pour.Spout{Diameter: 0.005, Head: 0.2}
	whole, part := pourOf(t, outlet, ketchup, 200), pourOf(t, outlet, ketchup, 20)
	fed, err := whole.Puddle(whole.Duration.Likely.After/10, 40)
	if err != nil {
		t.Fatal(err)
	}
	rest, err := part.Settled(40)
	if err != nil {
		t.Fatal(err)
	}
	if fed.Held != "yield stress" {
		t.Fatalf("held by %v", fed.Held)
	}
	near(t, "radius", fed.Radius.Likely, rest.Radius.Likely, 1e-6)
	near(t, "depth", fed.Depth, rest.Depth, 1e-6)
}

func TestRest(t *testing.T) {
	p := pourOf(t, jug, milk, 100)
	flat, err := p.Settled(40)
	if err != nil {
		t.Fatal(err)
	}
	// The flat puddle: 2 lc sin(theta/2).
	near(t, "depth", flat.Depth, 2*math.Sqrt(milk.sigma/(milk.rho*g0))*math.Sin(20*math.Pi/180), 1e-9)
	near(t, "band", flat.Radius.High/flat.Radius.Likely, 1.15, 1e-9)
	waxed, err := p.Settled(100)
	if err != nil {
		t.Fatal(err)
	}
	if waxed.Radius.Likely >= flat.Radius.Likely || flat.Held != "surface tension" {
		t.Errorf("wax %v, glass %v", waxed, flat)
	}
	drop := pourOf(t, jug, milk, 0.001)
	ball, err := drop.Settled(180)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "a bead's radius", ball.Radius.Likely, math.Cbrt(3*1e-6/milk.rho/(4*math.Pi)), 1e-6)
	heap := pourOf(t, pour.Spout{Diameter: 0.02, Head: 0.2}, ketchup, 100)
	stands, err := heap.Settled(40)
	if err != nil {
		t.Fatal(err)
	}
	if stands.Held != "yield stress" {
		t.Errorf("ketchup is %+v", stands)
	}
	// The heap's own shape, sqrt(2 tau (R - r)/(rho g)), holds its volume.
	r := stands.Radius.Likely
	near(t, "volume", 8*math.Pi/15*math.Sqrt(2*20/(ketchup.rho*g0))*math.Pow(r, 2.5), 0.1/ketchup.rho, 1e-9)
	for _, angle := range []float64{0, -1, 181, math.NaN()} {
		if _, err := p.Settled(angle); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("angle %g: %v", angle, err)
		}
	}
	if _, err := p.Puddle(0, 40); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}
