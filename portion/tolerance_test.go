package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// The table of the directive joins at every break point, and a percentage is
// rounded up to the next tenth. 250 g: 9 g is printed; the rest is worked out.
func TestTolerableNegativeErrorRoundsUp(t *testing.T) {
	for nominal, want := range map[float64]float64{
		25: 2.3, 33: 3, 50: 4.5, 85: 4.5, 100: 4.5, 125: 5.7, 150: 6.8, 200: 9, 250: 9, 300: 9, 330: 9.9, 333: 10,
		400: 12, 500: 15, 750: 15, 1000: 15, 1250: 18.8, 5000: 75, 10_000: 150, 12_500: 150, 15_000: 150, 20_000: 200,
	} {
		if got, err := TolerableNegativeError(nominal); err != nil || got != want {
			t.Errorf("%v g: %v, %v; want %v", nominal, got, err, want)
		}
	}
}

func TestTolerancesGrowWithTheQuantity(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 5))
	for range 10_000 {
		a := math.Exp(rng.Float64() * 14)
		b := a * (1 + rng.Float64())
		for name, f := range map[string]func(float64) (float64, error){
			"tolerable negative error": TolerableNegativeError,
			"fill deviation":           func(v float64) (float64, error) { return FillDeviation(v, 0) },
		} {
			ta, err := f(a)
			if err != nil {
				t.Fatal(err)
			}
			tb, err := f(b)
			if err != nil {
				t.Fatal(err)
			}
			if ta > tb+1e-9 || ta > 0.09*a+0.1 || ta < 0.01*a-1e-9 {
				t.Fatalf("%s: %v g at %v, %v g at %v", name, ta, a, tb, b)
			}
		}
	}
}

func TestLargePiecesWidenTheFill(t *testing.T) {
	for _, c := range []struct{ fill, piece, want float64 }{
		{500, 1.5, 15}, {500, 4, 21}, {500, 40, 45}, {40, 10, 3.6},
	} {
		if got, err := FillDeviation(c.fill, c.piece); err != nil || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%+v: %v, %v", c, got, err)
		}
	}
	if _, err := FillDeviation(100, -1); !errors.Is(err, ErrInput) {
		t.Errorf("negative piece: %v", err)
	}
}

func TestTolerancesRefuseNonsense(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := TolerableNegativeError(v); !errors.Is(err, ErrInput) {
			t.Errorf("tolerable negative error of %v: %v", v, err)
		}
		if _, err := MaximumAllowableVariation(v); !errors.Is(err, ErrInput) {
			t.Errorf("variation of %v: %v", v, err)
		}
		if _, err := FillDeviation(v, 0); !errors.Is(err, ErrInput) {
			t.Errorf("fill deviation of %v: %v", v, err)
		}
	}
	if _, err := TolerableNegativeError(1e12); !errors.Is(err, ErrRange) {
		t.Errorf("1e12 g: %v", err)
	}
	if _, err := MaximumAllowableVariation(2000); !errors.Is(err, ErrRange) {
		t.Errorf("2000 g: %v", err)
	}
}

// 113 g: 7.2 g, so a division of at most 1.2 g (NIST Handbook 133, chapter 2).
func TestScaleFineEnoughForATolerance(t *testing.T) {
	for _, c := range []struct {
		tolerance, err, step float64
		eu, us               bool
	}{{7.2, 1.4, 1, true, true}, {7.2, 1.5, 2, false, false}, {7.2, 1.44, 1.2, true, true}} {
		eu, us, err := CheckScale(c.tolerance, c.err, c.step)
		if err != nil || eu != c.eu || us != c.us {
			t.Errorf("%+v: %v, %v, %v", c, eu, us, err)
		}
	}
	for _, c := range [][3]float64{{0, 1, 1}, {1, -1, 1}, {1, 1, 0}} {
		if _, _, err := CheckScale(c[0], c[1], c[2]); !errors.Is(err, ErrInput) {
			t.Errorf("%v: %v", c, err)
		}
	}
}

func TestStandingOfOnePackage(t *testing.T) {
	for _, c := range []struct {
		system            System
		nominal, contents float64
		want              Standing
	}{
		{AverageEU, 500, 500, Full}, {AverageEU, 500, 485, Tolerated}, {AverageEU, 500, 484.9, Defective},
		{AverageEU, 500, 470, Defective}, {AverageEU, 500, 469.9, Inadequate},
		{Minimum, 500, 500, Full}, {Minimum, 500, 499.9, Defective},
		{AverageUS, 113, 113, Full}, {AverageUS, 113, 105.8, Tolerated}, {AverageUS, 113, 105, Defective},
		{AverageUS, 454, 460, Full}, {AverageUS, 454, 453, Undecided}, {AverageUS, 454, 100, Undecided},
	} {
		v, err := c.system.JudgePackage(c.nominal, c.contents, 0)
		if err != nil || v.Standing != c.want || !v.Sure {
			t.Errorf("%+v: %+v, %v", c, v, err)
		}
	}
	v, err := AverageEU.JudgePackage(500, 485.2, 0.5)
	if err != nil || v.Standing != Tolerated || v.Sure {
		t.Errorf("near the limit: %+v, %v", v, err)
	}
	for name, err := range map[string]error{
		"contents":    failure(AverageEU.JudgePackage(500, math.NaN(), 0)),
		"uncertainty": failure(AverageEU.JudgePackage(500, 1, -1)),
		"nominal":     failure(Minimum.JudgePackage(0, 1, 0)),
		"system":      failure(System(9).JudgePackage(500, 1, 0)),
	} {
		if !errors.Is(err, ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// failure returns the error of a call.
func failure[T any](_ T, err error) error { return err }

func TestAShorterPackageNeverStandsBetter(t *testing.T) {
	rank := map[Standing]int{Full: 0, Tolerated: 1, Undecided: 1, Defective: 2, Inadequate: 3}
	rng := rand.New(rand.NewPCG(2, 5))
	for range 10_000 {
		nominal := 1 + 1000*rng.Float64()
		a, b := nominal*rng.Float64()*1.2, nominal*rng.Float64()*1.2
		a, b = min(a, b), max(a, b)
		for _, s := range []System{AverageEU, Minimum, AverageUS} {
			va, err := s.JudgePackage(nominal, a, 0)
			if err != nil {
				t.Fatal(err)
			}
			vb, err := s.JudgePackage(nominal, b, 0)
			if err != nil {
				t.Fatal(err)
			}
			if rank[va.Standing] < rank[vb.Standing] {
				t.Fatalf("%v of %v: %v g is %q, %v g %q", s, nominal, a, va.Standing, b, vb.Standing)
			}
		}
	}
}
