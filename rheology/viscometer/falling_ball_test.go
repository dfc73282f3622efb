package viscometer_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
	. "example.org/honestplate/rheology/viscometer"
)

// A 3 mm steel ball in a 50 mm tube.
var ball = FallingBall{Diameter: 0.003, Density: 7800, TubeDiameter: 0.05, Distance: 0.1}

func TestAFallingBallTellsBackTheViscosity(t *testing.T) {
	for tempC := 20.0; tempC <= 40; tempC += 5 {
		honey := Honey{MoisturePercent: 17}
		eta, err := honey.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		rho, _ := honey.Density(tempC)
		// Stokes with Faxen's wall, turned round.
		x := ball.Diameter / ball.TubeDiameter
		wall := 1 - 2.104*x + 2.09*math.Pow(x, 3) - 0.95*math.Pow(x, 5)
		speed := wall * (ball.Density - rho.Likely) * 9.80665 * ball.Diameter * ball.Diameter / (18 * eta.Likely)
		at := time.Duration(ball.Distance / speed * 1e9)
		got, err := ball.Viscosity(at, rho.Likely)
		if err != nil || math.Abs(got.Likely/eta.Likely-1) > 1e-6 || !(got.Low < got.Likely && got.Likely < got.High) {
			t.Errorf("%v degC: %v, %v, want %v", tempC, got, err, eta.Likely)
		}
	}
}

func TestAFallingBallInAWideTubeIsStokesLaw(t *testing.T) {
	wide := ball
	wide.TubeDiameter = 1e6
	got, err := wide.Viscosity(20*time.Second, 1400)
	// 2/9 r^2 g (rho_s - rho)/v
	want := 2. / 9 * 0.0015 * 0.0015 * 9.80665 * 6400 / (0.1 / 20)
	if err != nil || math.Abs(got.Likely/want-1) > 1e-6 {
		t.Errorf("%v, %v, want %v", got, err, want)
	}
	narrow, err := ball.Viscosity(20*time.Second, 1400)
	if err != nil || narrow.Likely >= got.Likely {
		t.Errorf("the wall must hold the ball back: %v, without it %v (%v)", narrow.Likely, got.Likely, err)
	}
}

func TestAFallingBallOutsideStokesLawIsRefused(t *testing.T) {
	var r *honestplate.RangeError
	if _, err := ball.Viscosity(200*time.Millisecond, 1000); !errors.As(err, &r) || r.Field != "Reynolds" {
		t.Errorf("0.2 s: %v", err)
	}
	for name, change := range map[string]func(*FallingBall){
		"ball":     func(b *FallingBall) { b.Diameter = 0 },
		"light":    func(b *FallingBall) { b.Density = 900 },
		"NaN":      func(b *FallingBall) { b.Density = math.NaN() },
		"tube":     func(b *FallingBall) { b.TubeDiameter = -1 },
		"distance": func(b *FallingBall) { b.Distance = math.Inf(1) },
		"reading":  func(b *FallingBall) { b.Reading = -1 },
	} {
		b := ball
		change(&b)
		if _, err := b.Viscosity(20*time.Second, 1400); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	tight := ball
	tight.TubeDiameter = 0.006
	if _, err := tight.Viscosity(20*time.Second, 1400); !errors.As(err, &r) {
		t.Errorf("tight tube: %v", err)
	}
	if _, err := ball.Viscosity(0, 1400); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("0 s: %v", err)
	}
	if _, err := ball.Viscosity(20*time.Second, 0); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("no density: %v", err)
	}
}

func TestABallTimedToNoBetterThanItsHourIsAnError(t *testing.T) {
	b := FallingBall{Diameter: 100, Density: 1e306, TubeDiameter: 1e300, Distance: 0.05, Reading: 1000 * time.Hour}
	if _, err := b.Viscosity(time.Minute, 0.004); !errors.Is(err, honestplate.ErrInput) {
		t.Error(err)
	}
}
