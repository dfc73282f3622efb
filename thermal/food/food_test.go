package food

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
)

var lean = Food{Water: 0.73, Protein: 0.2, Fat: 0.06, Ash: 0.01, FreezeC: -1.2}

// randomFood is a made-up composition from a fixed seed.
func randomFood(r *rand.Rand) Food {
	f := Food{Water: 0.3 + 0.6*r.Float64(), FreezeC: -0.5 - 8*r.Float64(), Porosity: 0.5 * r.Float64()}
	rest := 1 - f.Water
	f.Protein = rest * 0.5 * r.Float64()
	f.Fat = (rest - f.Protein) * r.Float64()
	f.Ash = (rest - f.Protein - f.Fat) * 0.1
	f.Fibre = (rest - f.Protein - f.Fat) * 0.1
	f.Carbohydrate = rest - f.Protein - f.Fat - f.Ash - f.Fibre
	return f
}

func TestPropertiesLieBetweenTheirComponents(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 200 {
		f := randomFood(r)
		f.Porosity = 0
		for _, temp := range []float64{-35, -10, f.FreezeC, 0.5, 30, 120} {
			rho, err := f.Density(temp)
			if err != nil {
				t.Fatal(err)
			}
			c, err := f.SpecificHeat(temp)
			if err != nil {
				t.Fatal(err)
			}
			k, err := f.Conductivity(temp)
			if err != nil {
				t.Fatal(err)
			}
			if !(rho > 850 && rho < 1700) || !(c > 1000 && c < 4300) || !(k > 0.1 && k < 2.7) {
				t.Fatalf("%+v at %g: density %g, heat %g, conductivity %g", f, temp, rho, c, k)
			}
		}
	}
}

func TestIceGrowsWithColdAndLeavesTheBoundWater(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 200 {
		f := randomFood(r)
		last := 0.0
		for temp := 5.0; temp >= -40; temp -= 0.5 {
			ice, err := f.IceFraction(temp)
			if err != nil {
				t.Fatal(err)
			}
			if ice < last || ice > max(0, f.Water-0.4*f.Protein)+1e-12 || (temp >= f.FreezeC && ice != 0) {
				t.Fatalf("%+v at %g: ice %g after %g", f, temp, ice, last)
			}
			last = ice
		}
	}
}

func TestFatFreeDryAndAiryLimits(t *testing.T) {
	water := Food{Water: 1, FreezeC: -0.1}
	k, err := water.Conductivity(20)
	if err != nil {
		t.Fatal(err)
	}
	if want := waterPart.conductivityFit().at(20); math.Abs(k-want) > 1e-12 {
		t.Errorf("water alone: %g, want %g", k, want)
	}
	airy := water
	airy.Porosity = 0.5
	rho, _ := airy.Density(20)
	full, _ := water.Density(20)
	if math.Abs(rho-full/2) > 1e-9 {
		t.Errorf("half air: %g, full %g", rho, full)
	}
	if foam, _ := airy.Conductivity(20); !(foam > 0.1 && foam < k/2) {
		t.Errorf("half air conducts %g, full %g", foam, k)
	}
}

func TestFoodWithoutFreezingPointIsForAboveZero(t *testing.T) {
	oil := Food{Fat: 1}
	if _, err := oil.Density(20); err != nil {
		t.Error(err)
	}
	for _, f := range []func(float64) (float64, error){oil.Density, oil.SpecificHeat, oil.Conductivity, oil.IceFraction} {
		if _, err := f(-5); !errors.Is(err, honestplate.ErrRange) {
			t.Error(err)
		}
	}
	for _, f := range []func(float64) (float64, error){oil.Enthalpy} {
		if _, err := f(-5); !errors.Is(err, honestplate.ErrInput) {
			t.Error(err)
		}
	}
}

func TestFoodRefusesNonsense(t *testing.T) {
	for name, spoil := range map[string]func(*Food){
		"negative":       func(f *Food) { f.Protein = -0.1 },
		"NaN":            func(f *Food) { f.Ash = math.NaN() },
		"sum":            func(f *Food) { f.Carbohydrate = 0.3 },
		"freezing point": func(f *Food) { f.FreezeC = 2 },
		"porosity":       func(f *Food) { f.Porosity = 0.9 },
	} {
		f := lean
		spoil(&f)
		if _, err := f.Enthalpy(-5); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: enthalpy: %v", name, err)
		}
	}
	for name, spoil := range map[string]func(*Food){
		"negative": func(f *Food) { f.Fat = -0.1 },
		"sum":      func(f *Food) { f.Water = 0.3 },
	} {
		f := lean
		spoil(&f)
		for i, call := range []func(float64) (float64, error){
			f.Density, f.SpecificHeat, f.Conductivity, f.IceFraction, f.Enthalpy,
		} {
			if _, err := call(-5); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
				t.Errorf("%s, call %d: %v", name, i, err)
			}
		}
	}
	for _, temp := range []float64{-41, 151, math.NaN()} {
		for i, call := range []func(float64) (float64, error){lean.Density, lean.SpecificHeat, lean.Conductivity, lean.IceFraction, lean.Enthalpy} {
			if _, err := call(temp); err == nil {
				t.Errorf("call %d at %g: no error", i, temp)
			}
		}
	}
}

// Enthalpy rises with temperature, and conductivity stays above 0.
func TestEnthalpyOfFoodsRises(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 14))
	for i := range 300 {
		f := randomFood(r)
		if i%3 == 0 {
			f.FreezeC = -30
		}
		last := math.Inf(-1)
		for temp := -40.0; temp <= 60; temp += 0.5 {
			h, err := f.Enthalpy(temp)
			if err != nil || h <= last {
				t.Fatalf("%+v at %g: %g after %g, %v", f, temp, h, last, err)
			}
			last = h
		}
	}
}

func FuzzFood(f *testing.F) {
	f.Add(0.6, 0.1, 0.1, 0.15, 0.03, 0.02, -2.0, 0.1, -10.0)
	f.Add(0.6, 0.1, 0.1, 0.15, 0.03, 0.02, 0.0, 0.0, 80.0)
	f.Fuzz(func(t *testing.T, w, p, fat, c, fibre, ash, freeze, air, temp float64) {
		x := Food{w, p, fat, c, fibre, ash, freeze, air}
		for i, call := range []func(float64) (float64, error){x.Density, x.SpecificHeat, x.Conductivity, x.IceFraction} {
			if v, err := call(temp); err == nil && !(v >= 0) {
				t.Fatalf("%+v at %g, call %d: %g", x, temp, i, v)
			}
		}
		if v, err := x.Enthalpy(temp); err == nil && math.IsNaN(v) {
			t.Fatal("NaN enthalpy")
		}
	})
}

func BenchmarkFoodConductivity(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := lean.Conductivity(-18); err != nil {
			b.Fatal(err)
		}
	}
}
