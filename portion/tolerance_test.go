package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
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
	for range 1000 {
		a := math.Exp(rng.Float64() * 14)
		b := a * (1 + rng.Float64())
		ta, err := TolerableNegativeError(a)
		if err != nil {
			t.Fatal(err)
		}
		tb, err := TolerableNegativeError(b)
		if err != nil {
			t.Fatal(err)
		}
		if ta > tb+1e-9 || ta > 0.09*a+0.1 || ta < 0.01*a-1e-9 {
			t.Fatalf("%v g at %v, %v g at %v", ta, a, tb, b)
		}
	}
}

func TestTolerancesRefuseNonsense(t *testing.T) {
	for _, v := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := TolerableNegativeError(v); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("tolerable negative error of %v: %v", v, err)
		}
	}
	if _, err := TolerableNegativeError(1e12); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("1e12 g: %v", err)
	}
}

// failure returns the error of a call.
func failure[T any](_ T, err error) error { return err }
