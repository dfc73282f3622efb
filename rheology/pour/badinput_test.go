package pour_test

import (
	"errors"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

// A troublesome liquid answers with an error at one of its questions.
type troublesome struct {
	stiff
	at string
}

var errAsked = errors.New("asked")

func (l troublesome) say(q string, e honestplate.Estimate) (honestplate.Estimate, error) {
	if l.at == q {
		return honestplate.Estimate{}, errAsked
	}
	return e, nil
}

func (l troublesome) Viscosity(float64) (honestplate.Estimate, error) {
	return l.say("viscosity", honestplate.Within(l.eta, 0.1))
}

func (l troublesome) Density(float64) (honestplate.Estimate, error) {
	return l.say("density", honestplate.Exactly(l.rho))
}

func (l troublesome) SurfaceTension(float64) (honestplate.Estimate, error) {
	return l.say("tension", honestplate.Exactly(l.sigma))
}

func (l troublesome) YieldStress(float64) (honestplate.Estimate, error) {
	return l.say("yield", honestplate.Within(l.yield, 0.2))
}

func (l troublesome) ViscosityAtRate(c, rate float64) (honestplate.Estimate, error) {
	e, _ := l.stiff.ViscosityAtRate(c, rate)
	return l.say("rate", e)
}

func TestALiquidsErrorIsPassedOn(t *testing.T) {
	for _, at := range []string{"viscosity", "density", "tension", "yield", "rate"} {
		l := troublesome{stiff{given{eta: 0.5, rho: 1100, sigma: 0.05, band: 0.2}, 5}, at}
		_, e1 := pour.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1}.Pour(l, 20, 100)
		_, e2 := pour.Lip{Width: 0.03, Length: 0.02, Head: 0.03}.Pour(l, 20, 100)
		_, e3 := pour.Wall{Height: 0.1}.Drain(l, 20, time.Second)
		_, e4 := pour.BubbleRise(l, 20, 0.02)
		_, e5 := pour.BubblesClear(l, 20, 0.02, 0.1)
		for i, err := range []error{e1, e2, e3, e4, e5} {
			if !errors.Is(err, errAsked) {
				t.Errorf("%s, %d: %v", at, i+1, err)
			}
		}
	}
}

// A liquid whose flow curve has a range pours inside it and is refused outside.
type ranged struct{ stiff }

func (l ranged) Describe() rheology.Description {
	return rheology.Description{Name: "ranged", LowRate: 1, HighRate: 100}
}

func (l ranged) ViscosityAtRate(c, rate float64) (honestplate.Estimate, error) {
	if rate < 1 || rate > 100 {
		return honestplate.Estimate{}, &honestplate.RangeError{Field: "ShearRate", Value: rate, Low: 1, High: 100, Unit: "1/s", Source: "a test"}
	}
	return l.stiff.ViscosityAtRate(c, rate)
}

func TestAFlowCurvesRangeHolds(t *testing.T) {
	slow := ranged{stiff{given{eta: 3, rho: 1100, sigma: 0.05, band: 0.2}, 5}}
	inside, err := pour.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1}.Pour(slow, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	if inside.ShearRate < 1 || inside.ShearRate > 100 {
		t.Errorf("rate %g", inside.ShearRate)
	}
	free, err := pour.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1}.Pour(slow.stiff, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rate, with the curve's foot as Casson's", inside.Rate.Likely, free.Rate.Likely, 0.02)
	for name, s := range map[string]pour.Spout{
		"too fast": {Diameter: 0.02, Length: 0.02, Head: 1},
		"too slow": {Diameter: 0.003, Length: 0.05, Head: 0.048},
	} {
		var r *honestplate.RangeError
		if _, err := s.Pour(slow, 20, 1); !errors.As(err, &r) || r.Field != "ShearRate" {
			t.Errorf("%s: %v", name, err)
		}
	}
	// A falling head that ends too slowly is refused as well.
	var r *honestplate.RangeError
	if _, err := (pour.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1, SurfaceArea: 0.002}).Pour(slow, 20, 200); !errors.As(err, &r) || r.Field != "ShearRate" {
		t.Errorf("to the end: %v", err)
	}
}
