package rheology_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// stiff is a liquid with a yield stress, a Bingham body.
type stiff struct {
	given
	yield float64
}

func (s stiff) YieldStress(float64) (honestplate.Estimate, error) {
	return honestplate.Within(s.yield, 0.2), nil
}

func (s stiff) ViscosityAtRate(_, rate float64) (honestplate.Estimate, error) {
	return honestplate.Within(s.eta+s.yield/max(rate, 1e-9), s.band), nil
}

// thinning is a power law liquid.
type thinning struct {
	given
	n float64
}

func (s thinning) ViscosityAtRate(_, rate float64) (honestplate.Estimate, error) {
	return honestplate.Within(s.eta*math.Pow(max(rate, 1e-9), s.n-1), s.band), nil
}

var ketchup = stiff{given{eta: 0.5, rho: 1100, sigma: 0.05, band: 0.2}, 20}

// The representative rate against the exact flow of a power law liquid in a long tube, Q =
// pi R3 n/(3n + 1) (R rho g H/(2 K L))^(1/n) (Rabinowitsch): the wall stress to 6 % for an
// index of 0.2, 1 % for 0.5.
func TestAThinningLiquidPoursAsItsWallRateSays(t *testing.T) {
	for _, c := range []struct{ n, k, stress float64 }{{0.2, 40, 0.06}, {0.3, 30, 0.035}, {0.5, 20, 0.012}, {0.8, 15, 0.003}, {1, 10, 0.001}} {
		l := thinning{given{eta: c.k, rho: 1000, sigma: 1e-3, band: 0.1}, c.n}
		s := rheology.Spout{Diameter: 0.004, Length: 2, Head: 5}
		p, err := s.Pour(l, 20, 1e-3)
		if err != nil {
			t.Fatal(err)
		}
		r := s.Diameter / 2
		// Head without surface tension's hold; length with the entry's radius.
		drive := l.rho*g0*s.Head - 2*l.sigma/s.Diameter
		want := math.Pi * r * r * r * c.n / (3*c.n + 1) * math.Pow(r*drive/(2*c.k*(s.Length+r)), 1/c.n)
		// A stress too high by a part x gives a flow too low by x/n.
		near(t, "stress", math.Pow(p.Rate.Likely/want, c.n), 1, c.stress)
	}
}

// Bingham's plug against the exact result of Buckingham and Reiner, 8 V/D = tau/eta (1 - 4/3
// f + f4/3), f the yield stress over the wall stress.
func TestAPlugFlowsAsBuckinghamAndReinerSay(t *testing.T) {
	for _, f := range []float64{0.95, 0.8, 0.5, 0.2, 0.05} {
		s := rheology.Spout{Diameter: 0.004, Length: 2, Head: 5}
		l := stiff{given{eta: 5, rho: 1000, sigma: 1e-3, band: 0.1}, 0}
		wall := (l.rho*g0*s.Head - 2*l.sigma/s.Diameter) * s.Diameter / (4 * (s.Length + s.Diameter/2))
		l.yield = f * wall
		p, err := s.Pour(l, 20, 1e-3)
		if err != nil {
			t.Fatal(err)
		}
		want := math.Pi / 4 * s.Diameter * s.Diameter * s.Diameter / 8 * wall / l.eta * (1 - 4*f/3 + f*f*f*f/3)
		near(t, "rate", p.Rate.Likely, want, 1e-3)
		if p.MayStay != (f > 1/1.2) {
			t.Errorf("at %g of the wall stress: may stay %v", f, p.MayStay)
		}
	}
}

func TestAStiffLiquidStaysInUntilTheHeadMovesIt(t *testing.T) {
	s := rheology.Spout{Diameter: 0.01, Length: 0.05, Head: 0.02}
	_, err := s.Pour(ketchup, 20, 50)
	var n *rheology.HeldError
	if !errors.As(err, &n) || n.Cause != "yield stress" {
		t.Fatalf("error %v", err)
	}
	if want := "rheology: the liquid does not run out: its yield stress holds it under a head of 20 mm; it moves from 41.7 mm"; err.Error() != want {
		t.Errorf("error %q, want %q", err, want)
	}
	s.Head = n.NeedHead * 0.99
	if _, err := s.Pour(ketchup, 20, 50); !errors.Is(err, honestplate.ErrNoFlow) {
		t.Errorf("just below: %v", err)
	}
	s.Head = n.NeedHead * 1.5
	if _, err := s.Pour(ketchup, 20, 50); err != nil {
		t.Errorf("well above: %v", err)
	}
	lip := rheology.Lip{Width: 0.03, Length: 0.03, Head: 0.005}
	if _, err := lip.Pour(ketchup, 20, 50); !errors.Is(err, honestplate.ErrNoFlow) {
		t.Errorf("lip: %v", err)
	}
	lip.Head = 0.03
	if _, err := lip.Pour(ketchup, 20, 50); err != nil {
		t.Errorf("lip: %v", err)
	}
}

// What stays on the wall grows with viscosity, and a yield stress keeps more.
func TestThickLiquidsLeaveMoreBehind(t *testing.T) {
	s := rheology.Spout{Diameter: 0.02, Length: 0.05, Head: 0.2}
	last := 0.0
	for _, l := range []given{thin, milk, cream, syrup} {
		p := pour(t, s, l, 200)
		if p.LeftGrams.Likely <= last || p.LeftGrams.Likely > 200 {
			t.Errorf("eta %g: %v g after %g", l.eta, p.LeftGrams, last)
		}
		last = p.LeftGrams.Likely
	}
	with := pour(t, s, ketchup, 200).LeftGrams.Likely
	without := pour(t, s, stiff{ketchup.given, 0.01}, 200).LeftGrams.Likely
	if with <= without {
		t.Errorf("with a yield stress %g g, with hardly any %g g", with, without)
	}
	s.WallArea = 1
	if more := pour(t, s, milk, 200).LeftGrams.Likely; more <= last/100 {
		t.Errorf("a square metre of wall keeps %g g", more)
	}
}

// Both ways of writing Landau and Levich's law, and its range.
func TestTheFilmOfAFallingLevel(t *testing.T) {
	h, err := rheology.LandauLevich(0.002, 1030, 0.05, 0.01)
	if err != nil {
		t.Fatal(err)
	}
	ca := 0.002 * 0.01 / 0.05
	near(t, "film", h, 0.9458*math.Sqrt(0.002*0.01/(1030*g0))*math.Pow(ca, 1.0/6), 1e-9)
	if _, err := rheology.LandauLevich(1, 1350, 0.075, 0.01); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("syrup: %v", err)
	}
	if _, err := rheology.LandauLevich(1, 1350, 0.075, -1); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("backwards: %v", err)
	}
	if _, err := rheology.LandauLevich(0, 1350, 0.075, 1); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("no viscosity: %v", err)
	}
}

// The closed forms against each other and at their ends.
func TestClosedForms(t *testing.T) {
	// A level falls in two parts as in one.
	a, err := rheology.TubeTime(1e-3, 0.1, 0.005, 0.01, 0.3, 0.2)
	if err != nil {
		t.Fatal(err)
	}
	b, err := rheology.TubeTime(1e-3, 0.1, 0.005, 0.01, 0.2, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	c, err := rheology.TubeTime(1e-3, 0.1, 0.005, 0.01, 0.3, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "tube", a+b, c, 1e-12)
	// The viscosity that a tube says is the one it had.
	for _, alpha := range []float64{0, 1, 2, 2.24} {
		q, err := rheology.TubeFlow(2e-6, 0.2, 0.002, 0.3, alpha)
		if err != nil {
			t.Fatal(err)
		}
		nu, err := rheology.TubeViscosity(q, 0.2, 0.002, 0.3, alpha)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "viscosity", nu, 2e-6, 1e-9)
	}
	if _, err := rheology.TubeViscosity(1, 0.2, 0.002, 0.3, 2); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("too fast for any viscosity: %v", err)
	}
	// A lip's law is a notch's, integrated: dQ = Cd sqrt(2g) h^0.5 b dh, with b rising to
	// 2 h tan(angle/2).
	weir, err := rheology.WeirFlow(0.1, 0.02, 0.6)
	if err != nil {
		t.Fatal(err)
	}
	notch, err := rheology.NotchFlow(2*math.Atan(0.05/0.02)*180/math.Pi, 0.02, 0.6)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "notch over weir of its width", notch/weir, 0.4, 1e-9)
	// The shallow bowl and the full one.
	full, err := rheology.BowlTime(0.1, 0.1, 1e-4, 0.6)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "full bowl", full, math.Pi*14.0/15*math.Pow(0.1, 2.5)/(0.6*1e-4*math.Sqrt(2*g0)), 1e-9)
	if q, err := rheology.NusseltFlow(0.001, 1e-4, 60); err != nil {
		t.Error(err)
	} else if h, err := rheology.NusseltFilm(q, 1e-4, 60); err != nil {
		t.Error(err)
	} else {
		near(t, "film", h, 0.001, 1e-12)
	}
}

func TestALipPoursByItsHead(t *testing.T) {
	last := 0.0
	for head := 0.002; head < 0.05; head *= 1.3 {
		p, err := rheology.Lip{Width: 0.03, Length: 0.01, Head: head}.Pour(cream, 20, 100)
		if err != nil {
			t.Fatal(err)
		}
		if p.Rate.Likely <= last {
			t.Fatalf("at %g m %g m3/s after %g", head, p.Rate.Likely, last)
		}
		last = p.Rate.Likely
	}
	// Thin and high over the edge: a weir.
	p, err := rheology.Lip{Width: 0.03, Head: 0.03}.Pour(thin, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	want, err := rheology.WeirFlow(0.03, 0.03, 0.58)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "weir, less the friction of its edge", p.Rate.Likely, want, 0.12)
	// Thick: a film of its own slope, q = g H4/(12 nu L).
	p, err = rheology.Lip{Width: 0.03, Length: 0.5, Head: 0.01}.Pour(honey, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "film", p.Rate.Likely, 0.03*g0*1e-8/(12*honey.eta/honey.rho*0.5), 0.06)
	for name, s := range map[string]rheology.Lip{
		"none": {}, "no head": {Width: 0.1}, "length": {Width: 0.1, Head: 0.1, Length: -1},
		"surface": {Width: 0.1, Head: 0.1, SurfaceArea: -1}, "wall": {Width: 0.1, Head: 0.1, WallArea: math.NaN()},
		"high": {Width: 0.1, Head: 5},
	} {
		if _, err := s.Pour(milk, 20, 10); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := (rheology.Lip{Width: 0.1, Head: 0.1}).Pour(nil, 20, 10); !errors.Is(err, honestplate.ErrInput) {
			t.Error(err)
		}
	}
}

// A puddle grows without a jump from its landing to its rest.
func TestAPuddleGrowsToItsRest(t *testing.T) {
	for _, l := range []rheology.Liquid{milk, cream, syrup, honey, ketchup} {
		p, err := rheology.Spout{Diameter: 0.012, Length: 0.03, Head: 0.3}.Pour(l, 20, 100)
		if err != nil {
			t.Fatal(err)
		}
		rest, err := p.Rest(40)
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

// While it is fed, a puddle that a yield stress holds is as wide as one of what has
// landed: it grows with the volume to the power 2/5, not 1/2.
func TestAFedHeapIsAsWideAsAHeapOfWhatHasLanded(t *testing.T) {
	outlet := rheology.Spout{Diameter: 0.005, Head: 0.2}
	whole, part := pour(t, outlet, ketchup, 200), pour(t, outlet, ketchup, 20)
	fed, err := whole.Puddle(whole.Duration.Likely.After/10, 40)
	if err != nil {
		t.Fatal(err)
	}
	rest, err := part.Rest(40)
	if err != nil {
		t.Fatal(err)
	}
	if fed.Held != rheology.HeldByYield {
		t.Fatalf("held by %v", fed.Held)
	}
	near(t, "radius", fed.Radius.Likely, rest.Radius.Likely, 1e-6)
	near(t, "depth", fed.Depth, rest.Depth, 1e-6)
}

func TestRest(t *testing.T) {
	p := pour(t, jug, milk, 100)
	flat, err := p.Rest(40)
	if err != nil {
		t.Fatal(err)
	}
	// The flat puddle: 2 lc sin(theta/2).
	near(t, "depth", flat.Depth, 2*math.Sqrt(milk.sigma/(milk.rho*g0))*math.Sin(20*math.Pi/180), 1e-9)
	near(t, "band", flat.Radius.High/flat.Radius.Likely, 1.15, 1e-9)
	waxed, err := p.Rest(100)
	if err != nil {
		t.Fatal(err)
	}
	if waxed.Radius.Likely >= flat.Radius.Likely || flat.Held != rheology.HeldByTension {
		t.Errorf("wax %v, glass %v", waxed, flat)
	}
	drop := pour(t, jug, milk, 0.001)
	ball, err := drop.Rest(180)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "a bead's radius", ball.Radius.Likely, math.Cbrt(3*1e-6/milk.rho/(4*math.Pi)), 1e-6)
	heap := pour(t, rheology.Spout{Diameter: 0.02, Head: 0.2}, ketchup, 100)
	stands, err := heap.Rest(40)
	if err != nil {
		t.Fatal(err)
	}
	if stands.Held != rheology.HeldByYield {
		t.Errorf("ketchup is %+v", stands)
	}
	// The heap's own shape, sqrt(2 tau (R - r)/(rho g)), holds its volume.
	r := stands.Radius.Likely
	near(t, "volume", 8*math.Pi/15*math.Sqrt(2*20/(ketchup.rho*g0))*math.Pow(r, 2.5), 0.1/ketchup.rho, 1e-9)
	for _, angle := range []float64{0, -1, 181, math.NaN()} {
		if _, err := p.Rest(angle); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("angle %g: %v", angle, err)
		}
	}
	if _, err := p.Puddle(0, 40); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}

// Near the front the slope hardly matters: the level plane's law is its limit.
func TestADepositOnAGentleSlopeIsAFlatOne(t *testing.T) {
	flat, err := rheology.DepositFront(20, 1100, 0, 0.001)
	if err != nil {
		t.Fatal(err)
	}
	gentle, err := rheology.DepositFront(20, 1100, 1e-6, 0.001)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "front", gentle, flat, 1e-6)
	// The two ways of computing it meet.
	low, err := rheology.DepositFront(20, 1100, 10, 0.99999e-4*20/(1100*g0*math.Sin(10*math.Pi/180)))
	if err != nil {
		t.Fatal(err)
	}
	high, err := rheology.DepositFront(20, 1100, 10, 1.00001e-4*20/(1100*g0*math.Sin(10*math.Pi/180)))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "meeting", high/low, 1.00001*1.00001/(0.99999*0.99999), 1e-6)
	// Deeper than the yield stress holds, it would run.
	h, err := rheology.StandingFilm(20, 1100, 10)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := rheology.DepositFront(20, 1100, 10, h*1.01); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}

func TestAWallDrainsAsJeffreysSays(t *testing.T) {
	wall := rheology.Wall{Height: 0.1}
	c, err := wall.Drain(cream, 20, 10*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "foot", c.Foot.Likely, math.Sqrt(cream.eta*0.1/(cream.rho*g0*10)), 1e-9)
	near(t, "mean", c.Mean.Likely, c.Foot.Likely*2/3, 1e-9)
	near(t, "mass", c.GramsPerArea.Likely, c.Mean.Likely*cream.rho*1000, 1e-9)
	later, err := wall.Drain(cream, 20, 40*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "four times as long", later.Mean.Likely, c.Mean.Likely/2, 1e-9)
	lean, err := rheology.Wall{Height: 0.1, Degrees: 30}.Drain(cream, 20, 10*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "leaning", lean.Mean.Likely, c.Mean.Likely*math.Sqrt2, 1e-9)

	// A thinning liquid is consistent with its own rate: h2 = eta(rho g h/eta) z/(rho g t).
	l := thinning{given{eta: 10, rho: 1000, sigma: 0.05, band: 0.1}, 0.4}
	th, err := wall.Drain(l, 20, 10*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	h := th.Foot.Likely
	// eta = K rate^(n-1) and rate = rho g h/eta give eta = K^(1/n) (rho g h)^(1 - 1/n).
	eta := math.Pow(10, 1/0.4) * math.Pow(1000*g0*h, 1-1/0.4)
	near(t, "thinning", h, math.Sqrt(eta*0.1/(1000*g0*10)), 1e-4)

	stands, err := wall.Drain(ketchup, 20, time.Hour)
	if err != nil {
		t.Fatal(err)
	}
	keeps, err := rheology.StandingFilm(ketchup.yield, ketchup.rho, 90)
	if err != nil {
		t.Fatal(err)
	}
	if !stands.Stands {
		t.Errorf("%+v", stands)
	}
	near(t, "standing", stands.Mean.Likely, keeps, 1e-9)
	for name, w := range map[string]rheology.Wall{"none": {}, "high": {Height: 20}, "level": {Height: 1, Degrees: 0.1}, "over": {Height: 1, Degrees: 100}} {
		if _, err := w.Drain(milk, 20, time.Second); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := wall.Drain(milk, 20, 0); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
	if _, err := wall.Drain(nil, 20, time.Second); !errors.Is(err, honestplate.ErrInput) {
		t.Error(err)
	}
	if _, err := (rheology.Wall{Height: 0.001}).Drain(honey, 20, time.Second); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("a film thicker than its wall: %v", err)
	}
}

func TestBubbles(t *testing.T) {
	// In syrup small bubbles follow Stokes, and clean ones rise 1.5 times as fast.
	u, err := rheology.BubbleRise(given{eta: 1, rho: 1350, sigma: 0.075}, 20, 0.001)
	if err != nil {
		t.Fatal(err)
	}
	stokes, err := rheology.StokesBubble(0.001, 1, 1350, false)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stiff", u.Likely, stokes, 2e-3)
	clean, err := rheology.StokesBubble(0.001, 1, 1350, true)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "clean", u.High/1.1, clean, 0.02)

	for _, l := range []given{thin, milk, cream, syrup, honey} {
		last := 0.0
		for d := 2e-5; d < 0.0008; d *= 1.1 {
			u, err := rheology.BubbleRise(l, 20, d)
			if err != nil {
				t.Fatal(err)
			}
			if u.Likely <= last || !u.Contains(u.Likely) {
				t.Fatalf("eta %g, %g m: %v after %g", l.eta, d, u, last)
			}
			last = u.Likely
		}
	}

	// A yield stress holds small bubbles for good.
	if u, err := rheology.BubbleRise(ketchup, 20, 0.001); err != nil || u != (honestplate.Estimate{}) {
		t.Errorf("%v, %v", u, err)
	}
	if _, err := rheology.BubblesClear(ketchup, 20, 0.001, 0.1); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
	if _, err := rheology.BubbleRise(stiff{ketchup.given, 0.1}, 20, 0.01); err != nil {
		t.Error(err)
	}

	wait, err := rheology.BubblesClear(syrup, 20, 0.0005, 0.1)
	if err != nil {
		t.Fatal(err)
	}
	if !(wait.Earliest.After < wait.Likely.After && wait.Likely.After < wait.Latest.After) {
		t.Errorf("%v", wait)
	}
	if half, err := rheology.BubblesClear(syrup, 20, 0.00025, 0.1); err != nil || math.Abs(half.Likely.After.Seconds()/wait.Likely.After.Seconds()-4) > 0.05 {
		t.Errorf("half the size takes %v, the whole %v, %v", half.Likely.After, wait.Likely.After, err)
	}
	if _, err := rheology.BubblesClear(given{eta: 1000, rho: 1400, sigma: 0.07}, 20, 1e-5, 1); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("more than a year: %v", err)
	}
	for _, d := range []float64{0, -1, 1, math.NaN()} {
		if _, err := rheology.BubbleRise(milk, 20, d); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%g m: %v", d, err)
		}
	}
	if _, err := rheology.BubblesClear(milk, 20, 0.001, -1); !errors.Is(err, honestplate.ErrRange) {
		t.Error(err)
	}
}

// The stiff sphere's three formulas meet, within 0.1 %, where they change at best numbers of 73
// and 580.
func TestTheSpheresFormulasMeet(t *testing.T) {
	for _, n := range []float64{73, 580} {
		// ND = 4 rho2 g d3/(3 eta2) without a gas; d from it.
		d := math.Cbrt(3 * n * 0.01 * 0.01 / (4 * 1000 * 1000 * g0))
		below, err := rheology.RigidBubble(d*(1-1e-6), 1000, 0, 0.01)
		if err != nil {
			t.Fatal(err)
		}
		above, err := rheology.RigidBubble(d*(1+1e-6), 1000, 0, 0.01)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "meeting", above, below, 0.001)
	}
}
