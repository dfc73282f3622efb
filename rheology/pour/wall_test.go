package pour_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology/pour"
)

func TestAWallDrainsAsJeffreysSays(t *testing.T) {
	wall := pour.Wall{Height: 0.1}
	c, err := wall.Drain(cream, 20, 10*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "foot", c.Foot.Likely, math.Sqrt(cream.eta*0.1/(cream.rho*g0*10)), 1e-9)
	near(t, "mean", c.Mean.Likely, c.Foot.Likely*2/3, 1e-9)
	later, err := wall.Drain(cream, 20, 40*time.Second)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "four times as long", later.Mean.Likely, c.Mean.Likely/2, 1e-9)

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
	keeps := ketchup.yield / (ketchup.rho * g0)
	if !stands.Stands {
		t.Errorf("%+v", stands)
	}
	near(t, "standing", stands.Mean.Likely, keeps, 1e-9)
	for name, w := range map[string]pour.Wall{"none": {}, "high": {Height: 20}} {
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
	// What still runs as a thick sheet is an answer.
	if c, err := (pour.Wall{Height: 0.1}).Drain(honey, 20, time.Second/2); err != nil || c != (pour.Coat{Draining: true}) {
		t.Errorf("honey after a second: %+v, %v", c, err)
	}
	if c, err := (pour.Wall{Height: 0.1}).Drain(honey, 20, 10*time.Minute); err != nil || c.Draining || c.Mean.Likely <= 0 {
		t.Errorf("honey after ten minutes: %+v, %v", c, err)
	}
}
