package rheology_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

func kitchen(batch, step float64) Recipe {
	return Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 36}, BatchGrams: batch, StepGrams: step, TempC: 6}
}

func TestARecipeIsTheNearestOfAllItsSteps(t *testing.T) {
	for _, rule := range plainRules {
		r := kitchen(50, 0.5)
		r.Rule = rule
		low, high, err := r.Reach()
		if err != nil {
			t.Fatal(err)
		}
		for i := range 41 {
			want := low.Likely * math.Pow(high.Likely/low.Likely, float64(i)/40)
			b, err := r.For(want)
			if err != nil {
				t.Fatalf("%v: %v", rule, err)
			}
			if b.ThinGrams+b.ThickGrams != 50 {
				t.Errorf("%v: %v + %v g", rule, b.ThinGrams, b.ThickGrams)
			}
			off := math.Abs(math.Log(b.Predicted.Likely / want))
			for k := range 101 {
				other := b
				other.ThickGrams = float64(k) / 2
				other.ThinGrams = 50 - other.ThickGrams
				m, err := other.Mix()
				if err != nil {
					t.Fatal(err)
				}
				v, err := m.Viscosity(6)
				if err != nil {
					t.Fatal(err)
				}
				if d := math.Abs(math.Log(v.Likely / want)); d < off-1e-9 {
					t.Errorf("%v for %v: %v g is off by %v, %v g by %v", rule, want, b.ThickGrams, off, other.ThickGrams, d)
				}
				if other.ThickGrams == b.ThickGrams && math.Abs(v.Likely/b.Predicted.Likely-1)+math.Abs(v.Low/b.Predicted.Low-1) > 1e-9 {
					t.Errorf("%v: predicted %v, the mix has %v", rule, b.Predicted, v)
				}
			}
		}
	}
}

func TestAPreparedRecipeAnswersAsTheRecipeDoes(t *testing.T) {
	var none Prepared
	if _, err := none.For(0.01); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("the zero Prepared: %v", err)
	}
	for _, rule := range plainRules {
		r := kitchen(1000, 0.1)
		r.Rule = rule
		ready, err := r.Prepare()
		if err != nil {
			t.Fatal(err)
		}
		for _, pas := range []float64{0.004, 0.01, 0.02, 1e-9, 1e9, -1, math.NaN()} {
			want, err1 := r.For(pas)
			got, err2 := ready.For(pas)
			if !reflect.DeepEqual(got, want) || fmt.Sprint(err1) != fmt.Sprint(err2) {
				t.Errorf("%v, %v Pa s: %+v, %v; prepared %+v, %v", rule, pas, want, err1, got, err2)
			}
		}
	}
}

func TestTheRecipeForAMixesViscosityIsThatMixToAStep(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	for range 300 {
		r := kitchen(1000, 0.1)
		r.TempC = 80 * rng.Float64()
		k := rng.IntN(10001)
		b := Batch{Recipe: r, ThinGrams: float64(10000-k) / 10, ThickGrams: float64(k) / 10}
		m, err := b.Mix()
		if err != nil {
			t.Fatal(err)
		}
		v, _ := m.Viscosity(r.TempC)
		got, err := r.For(v.Likely)
		if err != nil || math.Abs(got.ThickGrams-b.ThickGrams) > 0.1001 {
			t.Fatalf("%v g gives %v Pa s, which gives %v g (%v)", b.ThickGrams, v.Likely, got.ThickGrams, err)
		}
	}
}

func TestGramsShowNoMoreDigitsThanTheScale(t *testing.T) {
	b, err := kitchen(1000, 0.1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	for _, g := range []float64{b.ThinGrams, b.ThickGrams} {
		if g != math.Round(g*10)/10 {
			t.Errorf("%v g on a scale of 0.1 g", g)
		}
	}
}

func TestARecipeOutOfReachSaysWhatCanBeReached(t *testing.T) {
	r := kitchen(500, 1)
	low, high, _ := r.Reach()
	for _, want := range []float64{low.Likely * 0.99, high.Likely * 1.01, 1e9, 1e-300} {
		var e *honestplate.RangeError
		_, err := r.For(want)
		if !errors.As(err, &e) || e.Value != want || math.Abs(e.Low/low.Likely-1) > 1e-9 || math.Abs(e.High/high.Likely-1) > 1e-9 {
			t.Errorf("%v Pa s: %v", want, err)
		}
	}
	for _, want := range []float64{low.Likely, high.Likely} {
		if _, err := r.For(want); err != nil {
			t.Errorf("the end of the reach: %v", err)
		}
	}
}

func TestARecipeThatMakesNoSenseIsRefused(t *testing.T) {
	for name, change := range map[string]func(*Recipe){
		"not whole steps":  func(r *Recipe) { r.BatchGrams = 500.05 },
		"no batch":         func(r *Recipe) { r.BatchGrams = 0 },
		"negative batch":   func(r *Recipe) { r.BatchGrams = -5 },
		"endless batch":    func(r *Recipe) { r.BatchGrams = math.Inf(1) },
		"no step":          func(r *Recipe) { r.StepGrams = 0 },
		"NaN step":         func(r *Recipe) { r.StepGrams = math.NaN() },
		"minute step":      func(r *Recipe) { r.StepGrams = 1e-15 },
		"no thin":          func(r *Recipe) { r.Thin = nil },
		"no thick":         func(r *Recipe) { r.Thick = nil },
		"swapped":          func(r *Recipe) { r.Thin, r.Thick = r.Thick, r.Thin },
		"NaN temperature":  func(r *Recipe) { r.TempC = math.NaN() },
		"unknown rule":     func(r *Recipe) { r.Rule = Rule{NoDeparture: true, D: 1} },
		"wild interaction": func(r *Recipe) { r.Rule = Rule{D: -9} },
	} {
		r := kitchen(500, 0.1)
		change(&r)
		if _, err := r.For(0.01); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, pas := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := kitchen(500, 0.1).For(pas); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%v Pa s: %v", pas, err)
		}
	}
	r := kitchen(500, 0.1)
	r.TempC = 95
	if _, err := r.For(0.01); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("95 degC: %v", err)
	}
}

func TestTheAdvertisedProductIsNotBlended(t *testing.T) {
	r := kitchen(500, 1)
	b, err := r.For(0.008)
	if err != nil {
		t.Fatal(err)
	}
	r.Advertised, b.Recipe.Advertised = true, true
	_, forErr := r.For(0.008)
	_, fatErr := r.ForFat(10)
	_, _, reachErr := r.Reach()
	_, correctErr := Correct(b, 0.01)
	_, mixErr := b.Mix()
	_, chillErr := b.Chill(0.01, 2, 20)
	for _, err := range []error{forErr, fatErr, reachErr, correctErr, mixErr, chillErr} {
		var a *honestplate.RefusedError
		if !errors.Is(err, honestplate.ErrAdvertised) || !errors.As(err, &a) || err.Error() == "" {
			t.Errorf("%v", err)
		}
	}
}
