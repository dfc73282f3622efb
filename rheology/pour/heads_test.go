package pour_test

import (
	"errors"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// The head that a duration or a rate asks for gives it.
func TestTheHeadAnswersADurationAndARate(t *testing.T) {
	for _, l := range []given{thin, milk, cream, syrup, honey} {
		for _, area := range []float64{0, 0.01} {
			lip, err := pour.Lip{Width: 0.02, Length: 0.01, SurfaceArea: area}.ForDuration(l, 20, 200, 40*time.Second)
			if err != nil {
				t.Fatalf("eta %g: %v", l.eta, err)
			}
			p, err := lip.Pour(l, 20, 200)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "duration over a lip", p.Duration.Likely.After.Seconds(), 40, 1e-6)
			spout, err := pour.Spout{Diameter: 0.012, Length: 0.02, SurfaceArea: area}.ForDuration(l, 20, 200, 5*time.Second)
			if err != nil {
				t.Fatalf("eta %g: %v", l.eta, err)
			}
			if p, err = spout.Pour(l, 20, 200); err != nil {
				t.Fatal(err)
			}
			near(t, "duration of a spout", p.Duration.Likely.After.Seconds(), 5, 1e-6)
		}
		lip, err := pour.Lip{Width: 0.02, Length: 0.01}.ForRate(l, 20, 20e-6)
		if err != nil {
			t.Fatal(err)
		}
		p, err := lip.Pour(l, 20, 200)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "rate over a lip", p.Rate.Likely, 20e-6, 1e-6)
		spout, err := pour.Spout{Diameter: 0.012, Length: 0.02}.ForRate(l, 20, 20e-6)
		if err != nil {
			t.Fatal(err)
		}
		if p, err = spout.Pour(l, 20, 200); err != nil {
			t.Fatal(err)
		}
		near(t, "rate of a spout", p.Rate.Likely, 20e-6, 1e-6)
	}
	// A sauce that stands under small heads, and runs too fast for its curve under large ones.
	lip, err := pour.Lip{Width: 0.03, Length: 0.02}.ForDuration(rheology.Food("tomato ketchup"), 20, 100, 20*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	p, err := lip.Pour(rheology.Food("tomato ketchup"), 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "duration of ketchup", p.Duration.Likely.After.Seconds(), 20, 1e-3)
}

func TestAHeadThatIsNotThereIsRefused(t *testing.T) {
	lip := pour.Lip{Width: 0.02, Length: 0.01}
	_, e1 := lip.ForDuration(milk, 20, 200, time.Microsecond)
	_, e2 := lip.ForDuration(honey, 20, 200, time.Millisecond)
	_, e3 := lip.ForRate(milk, 20, 1)
	_, e4 := lip.ForRate(milk, 20, 1e-15)
	_, e5 := pour.Spout{Diameter: 0.01}.ForDuration(milk, 20, 200, time.Microsecond)
	for i, err := range []error{e1, e2, e3, e4, e5} {
		var r *honestplate.RangeError
		if !errors.As(err, &r) || !(r.Value < r.Low || r.Value > r.High) {
			t.Errorf("%d: %v", i+1, err)
		}
	}
	_, e6 := lip.ForDuration(nil, 20, 200, time.Second)
	_, e7 := lip.ForDuration(milk, 20, 200, -time.Second)
	_, e8 := lip.ForRate(milk, 20, 0)
	_, e9 := lip.Calibrate(milk, 20, -1, time.Second)
	for i, err := range []error{e6, e7, e8, e9} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%d: %v", i+6, err)
		}
	}
}

// One timed pour of water finds the hand's head, and halves what is not known of the rate.
func TestATimedPourOfWaterCalibratesAJug(t *testing.T) {
	hand := pour.Lip{Width: 0.015, Length: 0.008, Head: 0.011}
	water, err := hand.Pour(rheology.Water{}, 20, 300)
	if err != nil {
		t.Fatal(err)
	}
	jug, err := pour.Lip{Width: 0.015, Length: 0.008}.Calibrate(rheology.Water{}, 20, 300, water.Duration.Likely.After)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "head", jug.Head, hand.Head, 1e-6)
	before, err := hand.Pour(milk, 20, 200)
	if err != nil {
		t.Fatal(err)
	}
	after, err := jug.Pour(milk, 20, 200)
	if err != nil {
		t.Fatal(err)
	}
	if w, n := before.Rate.High/before.Rate.Low, after.Rate.High/after.Rate.Low; n > 1+(w-1)*0.6 {
		t.Errorf("band of the rate: %g before, %g after", w, n)
	}
}
