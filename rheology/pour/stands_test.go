package pour_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

const mayonnaise, mustard, ketchupSauce = rheology.Food("mayonnaise"), rheology.Food("mustard"), rheology.Food("tomato ketchup")

// Campanella & Peleg 1987 measured a yield stress of mayonnaise and mustard (abstract read;
// figures from memory): they stay in a neck and stand as a dollop. That one stands about 15
// mm is common practice, no source.
func TestMayonnaiseStands(t *testing.T) {
	neck := pour.Spout{Diameter: 0.020, Length: 0.030, Head: 0.060}
	if _, err := neck.Pour(mayonnaise, 20, 20); !errors.Is(err, honestplate.ErrNoFlow) {
		t.Errorf("mayonnaise from a neck: %v", err)
	}
	// Pushed out by a head that moves it, it lies as it stands.
	neck.Head = 0.4
	for _, l := range []rheology.Food{mayonnaise, mustard} {
		p, err := neck.Pour(l, 20, 20)
		if err != nil {
			t.Fatal(err)
		}
		lies, err := p.Settled(60)
		if err != nil {
			t.Fatal(err)
		}
		if lies.Held != "yield stress" || lies.Depth < 0.008 || lies.Depth > 0.02 || lies.Radius.Likely > 0.03 {
			t.Errorf("%s: %+v", l, lies)
		}
		if c, err := (pour.Wall{Height: 0.1}).Drain(l, 20, 1e11); err != nil || !c.Stands {
			t.Errorf("%s on a wall: %+v, %v", l, c, err)
		}
		if v, err := pour.BubbleRise(l, 20, 1e-3); err != nil || v.Likely != 0 {
			t.Errorf("a bubble in %s: %v, %v", l, v, err)
		}
	}
}

// Ketchup that has stood does not start where stirred ketchup runs; a tap makes it. Its band
// spans more than ten times, and the pour says so.
func TestKetchupStaysOrGushes(t *testing.T) {
	neck := pour.Spout{Diameter: 0.020, Length: 0.030, Head: 0.045}
	stirred, err := neck.Pour(ketchupSauce, 20, 20)
	if err != nil {
		t.Fatal(err)
	}
	if !stirred.MayGush {
		t.Errorf("stirred: %v, may stay %v, may gush %v", stirred.Duration, stirred.MayStay, stirred.MayGush)
	}
	neck.Rested = true
	_, err = neck.Pour(ketchupSauce, 20, 20)
	if !errors.Is(err, honestplate.ErrNoFlow) || !strings.Contains(err.Error(), "a tap breaks it") {
		t.Errorf("rested: %v", err)
	}
	neck.Head = 0.12
	if _, err := neck.Pour(ketchupSauce, 20, 20); err != nil {
		t.Errorf("rested, under a high head: %v", err)
	}
	lip := pour.Lip{Width: 0.03, Length: 0.02, Head: 0.02}
	if _, err := lip.Pour(ketchupSauce, 20, 20); err != nil {
		t.Error(err)
	}
	lip.Rested = true
	if _, err := lip.Pour(ketchupSauce, 20, 20); !errors.Is(err, honestplate.ErrNoFlow) {
		t.Errorf("rested over a lip: %v", err)
	}
	// What has no yield stress may not stay, however little is known of it.
	p, err := pour.Spout{Diameter: 0.02, Length: 0.03, Head: 0.1, Rested: true}.Pour(rheology.Syrup{Of: "invert"}, 20, 20)
	if err != nil || p.MayGush || p.MayStay {
		t.Errorf("invert syrup: %+v, %v", p, err)
	}
}

// A spoon of water does not turn ketchup into a liquid: its puddle changes by as little.
func TestAThinnedSauceStillStands(t *testing.T) {
	radius := func(l rheology.Liquid) (float64, string) {
		p, err := pour.Spout{Diameter: 0.02, Length: 0.01, Head: 0.06}.Pour(l, 20, 20)
		if err != nil {
			t.Fatal(err)
		}
		lies, err := p.Settled(60)
		if err != nil {
			t.Fatal(err)
		}
		return lies.Radius.Likely, lies.Held
	}
	whole, _ := radius(ketchupSauce)
	last := 0.0
	for _, water := range []float64{0.001, 0.01, 0.1, 0.3} {
		m, err := rheology.Blend(rheology.Part{Liquid: ketchupSauce, Grams: 1 - water}, rheology.Part{Liquid: rheology.Water{}, Grams: water})
		if err != nil {
			t.Fatal(err)
		}
		r, held := radius(m)
		if water < 0.05 && (held != "yield stress" || math.Abs(r/whole-1) > 3*water) {
			t.Errorf("%g of water: %g m, %q; without %g", water, r, held, whole)
		}
		if r <= last {
			t.Errorf("%g of water: %g m after %g", water, r, last)
		}
		last = r
	}
}
