package thermal

import (
	"errors"
	"math"
	"testing"
	"time"
)

func TestStefanLambdaKnownValue(t *testing.T) {
	// Ste = 1: 0.620063, the value usually quoted as 0.6201 (from memory).
	l, err := StefanLambda(1)
	if err != nil || math.Abs(l-0.620063) > 1e-6 {
		t.Errorf("lambda(1) = %.8f, %v", l, err)
	}
	for ste := 1e-6; ste <= 100; ste *= 3 {
		l, err := StefanLambda(ste)
		if err != nil {
			t.Fatal(err)
		}
		closeRel(t, "the equation", math.Sqrt(math.Pi)*l*math.Exp(l*l)*math.Erf(l), ste, 1e-9)
	}
}

// With the far phase at the melting point Neumann's problem is Stefan's; with it
// away from there the front is slower.
func TestNeumannReducesToStefan(t *testing.T) {
	ice, water := Phase{iceK, iceCp}, Phase{waterK, waterCp}
	for _, d := range []float64{1, 5, 20, 40} {
		want, err1 := StefanLambda(iceCp * d / iceFusion)
		got, err2 := NeumannLambda(ice, water, d, 0, iceFusion)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		closeRel(t, "lambda", got, want, 1e-9)
		last := got
		for _, far := range []float64{1, 10, 100, 1000} {
			l, err := NeumannLambda(ice, water, d, far, iceFusion)
			if err != nil || !(l < last) || !(l > 0) {
				t.Errorf("far %g K: lambda %g after %g, %v", far, l, last, err)
			}
			last = l
		}
	}
}

// At small Stefan numbers the quasi-steady sheet is exact.
func TestSheetTimeIsStefanInTheLimit(t *testing.T) {
	const dT = 0.01
	l, err := StefanLambda(iceCp * dT / iceFusion)
	if err != nil {
		t.Fatal(err)
	}
	got, err := SheetTime(0, 0.01, dT, iceK, iceFusion)
	if err != nil {
		t.Fatal(err)
	}
	want := 0.01 * 0.01 / (4 * l * l * iceK / iceCp)
	closeRel(t, "time", got.Seconds(), want, 1e-4)
}

func TestBallMeltTimeClosedForms(t *testing.T) {
	const r0, dT, latent, h0 = 0.03, 20.0, 3.06e8, 9.0
	whole, err := BallMeltTime(2*r0, 1, dT, latent, func(float64) float64 { return h0 })
	if err != nil {
		t.Fatal(err)
	}
	closeRel(t, "constant h", whole.Seconds(), latent*r0/(h0*dT), 1e-9)
	quarter, err := BallMeltTime(2*r0, 1, dT, latent, func(d float64) float64 { return h0 * math.Pow(2*r0/d, 0.25) })
	if err != nil {
		t.Fatal(err)
	}
	closeRel(t, "h as D^-1/4", quarter.Seconds(), 0.8*latent*r0/(h0*dT), 1e-4)
	half, err := BallMeltTime(2*r0, 0.5, dT, latent, func(float64) float64 { return h0 })
	if err != nil {
		t.Fatal(err)
	}
	closeRel(t, "half the mass", half.Seconds(), latent*r0*(1-math.Cbrt(0.5))/(h0*dT), 1e-9)
}

func TestAnalyticFormulasRefuseNonsense(t *testing.T) {
	nan := math.NaN()
	ok := Phase{1, 1e6}
	first := func(_ any, err error) error { return err }
	for i, err := range []error{
		first(StefanLambda(nan)), first(StefanLambda(0)), first(StefanLambda(1e9)),
		first(NeumannLambda(Phase{}, ok, 1, 1, 1e8)), first(NeumannLambda(ok, Phase{1, nan}, 1, 1, 1e8)),
		first(NeumannLambda(ok, ok, 0, 1, 1e8)), first(NeumannLambda(ok, ok, 1, -1, 1e8)), first(NeumannLambda(ok, ok, 1, 1, 0)),
		first(SheetTime(-1, 1, 1, 1, 1e8)), first(SheetTime(1, 0.5, 1, 1, 1e8)), first(SheetTime(0, 1, 0, 1, 1e8)),
		first(SheetTime(0, 1, 1, 0, 1e8)), first(SheetTime(0, 1, 1, 1, nan)),
		first(BallMeltTime(0, 1, 1, 1e8, nil)), first(BallMeltTime(1, 2, 1, 1e8, nil)), first(BallMeltTime(1, 1, 0, 1e8, nil)),
		first(BallMeltTime(1, 1, 1, 0, nil)), first(BallMeltTime(1, 1, 1, 1e8, nil)),
		first(BallMeltTime(1, 1, 1, 1e8, func(float64) float64 { return 0 })),
		first(BallMeltTime(1, 1, 1, 1e8, func(float64) float64 { return nan })),
	} {
		if !errors.Is(err, ErrInput) && !errors.Is(err, ErrRange) {
			t.Errorf("case %d: %v", i, err)
		}
	}
	if d := seconds(math.Inf(1)); d != Never {
		t.Errorf("infinite: %v", d)
	}
}

func FuzzStefan(f *testing.F) {
	f.Add(1.0, 2.0, 1e6, 0.5, 4e6, 10.0, 5.0, 3e8, 0.03, 0.5)
	f.Add(1e-6, 1e-4, 1e8, 1e5, 1e2, 1e-3, 1000.0, 1e11, 1e-4, 1.0)
	f.Fuzz(func(t *testing.T, ste, k1, c1, k2, c2, near, far, latent, size, share float64) {
		check := func(v float64, err error) {
			if err == nil && !(v >= 0 && v <= 5) {
				t.Fatalf("lambda %g", v)
			}
		}
		check(StefanLambda(ste))
		check(NeumannLambda(Phase{k1, c1}, Phase{k2, c2}, near, far, latent))
		sound := func(d time.Duration, err error) {
			if err == nil && d < 0 {
				t.Fatalf("time %v", d)
			}
		}
		sound(SheetTime(size*share, size, near, k1, latent))
		sound(BallMeltTime(size, share, near, latent, func(d float64) float64 { return k1 / d }))
	})
}
