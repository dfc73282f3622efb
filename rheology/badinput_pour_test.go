package rheology_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/rheology"
)

// Every closed form takes its sensible arguments, and refuses each of them when it is NaN,
// infinite, negative or huge.
func TestClosedFormsRefuseNonsense(t *testing.T) {
	gas := rheology.RibouxGordillo{Air: rheology.RoomAir()}
	for name, c := range map[string]struct {
		args []float64
		f    func(a []float64) error
	}{
		"OrificeTime": {[]float64{0.01, 1e-4, 0.6, 0.3, 0.1}, func(a []float64) error {
			_, err := rheology.OrificeTime(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"BowlTime": {[]float64{0.1, 0.1, 1e-4, 0.6}, func(a []float64) error {
			_, err := rheology.BowlTime(a[0], a[1], a[2], a[3])
			return err
		}},
		"TubeTime": {[]float64{1e-3, 0.1, 0.005, 0.01, 0.3, 0.2}, func(a []float64) error {
			_, err := rheology.TubeTime(a[0], a[1], a[2], a[3], a[4], a[5])
			return err
		}},
		"TubeFlow": {[]float64{1e-3, 0.1, 0.005, 0.3, 2}, func(a []float64) error {
			_, err := rheology.TubeFlow(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"TubeViscosity": {[]float64{1e-7, 0.1, 0.005, 0.3, 2}, func(a []float64) error {
			_, err := rheology.TubeViscosity(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"WeirFlow": {[]float64{0.1, 0.02, 0.6}, func(a []float64) error {
			_, err := rheology.WeirFlow(a[0], a[1], a[2])
			return err
		}},
		"NotchFlow": {[]float64{90, 0.02, 0.6}, func(a []float64) error {
			_, err := rheology.NotchFlow(a[0], a[1], a[2])
			return err
		}},
		"LandauLevich": {[]float64{0.002, 1000, 0.05, 0.01}, func(a []float64) error {
			_, err := rheology.LandauLevich(a[0], a[1], a[2], a[3])
			return err
		}},
		"NusseltFilm": {[]float64{1e-5, 1e-5, 60}, func(a []float64) error {
			_, err := rheology.NusseltFilm(a[0], a[1], a[2])
			return err
		}},
		"NusseltFlow": {[]float64{1e-4, 1e-5, 60}, func(a []float64) error {
			_, err := rheology.NusseltFlow(a[0], a[1], a[2])
			return err
		}},
		"ReleasedPuddle": {[]float64{1e-4, 1e-3, 10}, func(a []float64) error {
			_, err := rheology.ReleasedPuddle(a[0], a[1], a[2])
			return err
		}},
		"FedPuddle": {[]float64{1e-6, 1e-3, 10}, func(a []float64) error {
			_, err := rheology.FedPuddle(a[0], a[1], a[2])
			return err
		}},
		"DepositFront": {[]float64{20, 1000, 10, 0.002}, func(a []float64) error {
			_, err := rheology.DepositFront(a[0], a[1], a[2], a[3])
			return err
		}},
		"StandingFilm": {[]float64{20, 1000, 10}, func(a []float64) error {
			_, err := rheology.StandingFilm(a[0], a[1], a[2])
			return err
		}},
		"DrippingWeber": {[]float64{0.002, 0.003, 1000, 0.07}, func(a []float64) error {
			_, err := rheology.DrippingWeber(a[0], a[1], a[2], a[3])
			return err
		}},
		"DropTerminalSpeed": {[]float64{0.002}, func(a []float64) error {
			_, err := rheology.DropTerminalSpeed(a[0])
			return err
		}},
		"DropFromSpout": {[]float64{0.002, 1000, 0.07}, func(a []float64) error {
			_, err := rheology.DropFromSpout(a[0], a[1], a[2])
			return err
		}},
		"DropWeightFactor": {[]float64{0.8}, func(a []float64) error {
			_, err := rheology.DropWeightFactor(a[0])
			return err
		}},
		"YarinWeiss": {[]float64{2, 100, 0.001, 1000, 0.07}, func(a []float64) error {
			_, err := rheology.YarinWeiss(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"Lift": {[]float64{0.004, 2, 0.001, 1000, 0.07}, func(a []float64) error {
			_, _, err := gas.Lift(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"Threshold": {[]float64{0.004, 2, 0.001, 1000, 0.07, 1.2, 1.8e-5, 7e-8}, func(a []float64) error {
			r := rheology.RibouxGordillo{Air: rheology.Gas{Density: a[5], Viscosity: a[6], MeanFreePath: a[7]}}
			_, err := r.Threshold(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"Jet": {[]float64{0.004, 1, 0.001, 1000, 0.07, 0.2}, func(a []float64) error {
			_, err := rheology.Jet{Diameter: a[0], Speed: a[1], Viscosity: a[2], Density: a[3], SurfaceTension: a[4]}.Fall(a[5])
			return err
		}},
		"Discharges": {[]float64{0.01, 0.02, 0.1, 0.1, 0.1, 0.6, 1000}, func(a []float64) error {
			_, err := rheology.Spout{Diameter: a[0], Length: a[1], Head: a[2], SurfaceArea: a[3], WallArea: a[4], Discharge: a[5]}.Discharges(a[6])
			return err
		}},
		"StokesBubble": {[]float64{0.001, 1, 1300}, func(a []float64) error {
			_, err := rheology.StokesBubble(a[0], a[1], a[2], false)
			return err
		}},
		"RigidBubble": {[]float64{0.0004, 1000, 1.2, 0.001}, func(a []float64) error {
			_, err := rheology.RigidBubble(a[0], a[1], a[2], a[3])
			return err
		}},
		"EllipsoidBubble": {[]float64{0.003, 1000, 1.2, 0.001, 0.07}, func(a []float64) error {
			_, err := rheology.EllipsoidBubble(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"CleanBubble": {[]float64{0.003, 1000, 1.2, 0.001, 0.07}, func(a []float64) error {
			_, err := rheology.CleanBubble(a[0], a[1], a[2], a[3], a[4])
			return err
		}},
		"CapBubble": {[]float64{0.02, 1000, 1.2}, func(a []float64) error {
			_, err := rheology.CapBubble(a[0], a[1], a[2])
			return err
		}},
	} {
		if err := c.f(c.args); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		for i := range c.args {
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 1e300} {
				args := append([]float64(nil), c.args...)
				args[i] = bad
				err := c.f(args)
				if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
					t.Errorf("%s, argument %d of %g: %v", name, i+1, bad, err)
				}
			}
		}
	}
	for name, err := range map[string]error{
		"a level that rises":          second(rheology.OrificeTime(0.01, 1e-4, 0.6, 0.1, 0.2)),
		"the last drop of a tube":     second(rheology.TubeTime(1e-3, 0.1, 0.005, 0.01, 0.3, 0)),
		"a bowl over its brim":        second(rheology.BowlTime(0.1, 0.2, 1e-4, 0.6)),
		"a turbulent film":            second(rheology.NusseltFlow(0.01, 1e-6, 90)),
		"a large bubble as a sphere":  second(rheology.RigidBubble(0.05, 1000, 1.2, 0.001)),
		"a wobbling bubble in syrup":  second(rheology.EllipsoidBubble(0.01, 1300, 1.2, 1, 0.07)),
		"too large to wobble":         second(rheology.EllipsoidBubble(0.03, 1000, 1.2, 0.001, 0.07)),
		"too small to wobble":         second(rheology.EllipsoidBubble(0.0002, 1000, 1.2, 0.001, 0.07)),
		"a fast bubble by Stokes":     second(rheology.StokesBubble(0.01, 0.001, 1000, false)),
		"a wall thinner than nothing": second(rheology.DrippingWeber(0.003, 0.002, 1000, 0.07)),
	} {
		if !errors.Is(err, honestplate.ErrRange) && !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func second(_ float64, err error) error { return err }

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
		_, e1 := rheology.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1}.Pour(l, 20, 100)
		_, e2 := rheology.Lip{Width: 0.03, Length: 0.02, Head: 0.03}.Pour(l, 20, 100)
		_, e3 := rheology.Wall{Height: 0.1}.Drain(l, 20, time.Second)
		_, e4 := rheology.BubbleRise(l, 20, 0.02)
		_, e5 := rheology.BubblesClear(l, 20, 0.02, 0.1)
		for i, err := range []error{e1, e2, e3, e4, e5} {
			if !errors.Is(err, errAsked) {
				t.Errorf("%s, %d: %v", at, i+1, err)
			}
		}
	}
}

// A liquid whose flow curve has a range pours inside it and is refused outside.
type ranged struct{ stiff }

func (l ranged) ViscosityAtRate(c, rate float64) (honestplate.Estimate, error) {
	if rate < 1 || rate > 100 {
		return honestplate.Estimate{}, &honestplate.RangeError{Field: "shear rate", Value: rate, Low: 1, High: 100, Unit: "1/s", Source: "a test"}
	}
	return l.stiff.ViscosityAtRate(c, rate)
}

func TestAFlowCurvesRangeHolds(t *testing.T) {
	slow := ranged{stiff{given{eta: 3, rho: 1100, sigma: 0.05, band: 0.2}, 5}}
	inside, err := rheology.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1}.Pour(slow, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	if inside.ShearRate < 1 || inside.ShearRate > 100 {
		t.Errorf("rate %g", inside.ShearRate)
	}
	free, err := rheology.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1}.Pour(slow.stiff, 20, 100)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rate, with the curve's foot as Casson's", inside.Rate.Likely, free.Rate.Likely, 0.02)
	for name, s := range map[string]rheology.Spout{
		"too fast": {Diameter: 0.02, Length: 0.02, Head: 1},
		"too slow": {Diameter: 0.003, Length: 0.05, Head: 0.048},
	} {
		var r *honestplate.RangeError
		if _, err := s.Pour(slow, 20, 1); !errors.As(err, &r) || r.Field != "shear rate" {
			t.Errorf("%s: %v", name, err)
		}
	}
	// A falling head that ends too slowly is refused as well.
	var r *honestplate.RangeError
	if _, err := (rheology.Spout{Diameter: 0.02, Length: 0.05, Head: 0.1, SurfaceArea: 0.002}).Pour(slow, 20, 200); !errors.As(err, &r) || r.Field != "shear rate" {
		t.Errorf("to the end: %v", err)
	}
}
