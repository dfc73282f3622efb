package rheology_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

func TestAPreparedRecipeAnswersAsTheRecipe(t *testing.T) {
	for _, r := range []Recipe{kitchen(1000, 0.1), measuredRecipe()} {
		p, err := r.Prepare()
		if err != nil {
			t.Fatal(err)
		}
		low, high, err := r.Reach()
		if err != nil {
			t.Fatal(err)
		}
		for i := range 50 {
			pas := low.Likely * math.Pow(high.Likely/low.Likely, float64(i)/49)
			one, err := r.For(pas)
			if err != nil {
				t.Fatal(err)
			}
			two, err := p.For(pas)
			if err != nil || one != two {
				t.Errorf("%v Pa s: %v, prepared %v, %v", pas, one, two, err)
			}
		}
		for _, pas := range []float64{low.Likely / 2, high.Likely * 2, 0, math.NaN()} {
			_, want := r.For(pas)
			if _, err := p.For(pas); err == nil || err.Error() != want.Error() {
				t.Errorf("%v Pa s: %v, prepared %v", pas, want, err)
			}
		}
	}
}

func TestARecipeThatCannotBeMadeCannotBePrepared(t *testing.T) {
	if _, err := new(Prepared).For(0.01); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("the zero Prepared: %v", err)
	}
	for _, r := range []Recipe{{}, kitchen(1000, 0.3), kitchen(0, 0.1), {Thin: Dairy{36}, Thick: Dairy{1}, BatchGrams: 1, StepGrams: 1}} {
		_, want := r.For(0.01)
		if _, err := r.Prepare(); err == nil || err.Error() != want.Error() {
			t.Errorf("%v, prepared %v", want, err)
		}
	}
}

// Whatever the curve, no other step comes nearer. A strong interaction makes it
// flat at one end, a skew at both.
func TestABentRecipeIsTheNearestOfAllItsSteps(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 8))
	for range 400 {
		thin, ratio := 0.002, math.Exp(6*rng.Float64())
		d := (2*rng.Float64() - 1) * math.Log(ratio)
		e := (2*rng.Float64() - 1) * (math.Log(ratio) - math.Abs(d))
		n := 1 + rng.IntN(300)
		r := Recipe{
			Thin:       Measured{Liquid: Water{}, TempC: 20, PaS: honestplate.Exactly(thin)},
			Thick:      Measured{Liquid: Sucrose{Brix: 70}, TempC: 20, PaS: honestplate.Exactly(thin * ratio)},
			BatchGrams: float64(n), StepGrams: 1, TempC: 20,
			Rule: []Rule{LogMass, LogVolume, Interaction{D: d}, Interaction{D: d, E: e}, Interaction{E: e}}[rng.IntN(5)],
		}
		pas := thin * math.Pow(ratio, rng.Float64())
		b, err := r.For(pas)
		if err != nil {
			t.Fatalf("%+v: %v", r, err)
		}
		best, at := math.Inf(1), 0
		for k := range n + 1 {
			m, err := Batch{Recipe: r, ThinGrams: float64(n - k), ThickGrams: float64(k)}.Mix()
			if err != nil {
				t.Fatal(err)
			}
			v, err := m.Viscosity(20)
			if err != nil {
				t.Fatal(err)
			}
			if off := math.Abs(math.Log(v.Likely / pas)); off < best-1e-12 {
				best, at = off, k
			}
			if float64(k) == b.ThickGrams && math.Abs(v.Likely/b.Predicted.Likely-1)+math.Abs(v.Low/b.Predicted.Low-1)+math.Abs(v.High/b.Predicted.High-1) > 1e-12 {
				t.Errorf("%v: predicted %v, the mix has %v", r.Rule, b.Predicted, v)
			}
		}
		if off := math.Abs(math.Log(b.Predicted.Likely / pas)); off > best+1e-12 {
			t.Errorf("%v, ratio %v, %d steps, %v Pa s: %v g is off by %v, %d g by %v", r.Rule, ratio, n, pas, b.ThickGrams, off, at, best)
		}
	}
}
