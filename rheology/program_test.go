package rheology_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

func larder() Program {
	return Program{
		Stock: []Stock{
			{Liquid: Dairy{FatPercent: 0.1}, CostPerKg: 0.8},
			{Liquid: Dairy{FatPercent: 3.5}, CostPerKg: 1.2},
			{Liquid: Dairy{FatPercent: 12}, CostPerKg: 3},
			{Liquid: Dairy{FatPercent: 36}, CostPerKg: 7},
		},
		BatchGrams: 500, StepGrams: 1, TempC: 6,
	}
}

func total(grams []float64) float64 {
	var sum float64
	for _, g := range grams {
		sum += g
	}
	return sum
}

func TestAProgramOfTwoLiquidsIsTheRecipe(t *testing.T) {
	p := larder()
	p.Stock = []Stock{p.Stock[1], p.Stock[3]}
	for _, pas := range []float64{0.004, 0.008, 0.02} {
		plan, err := p.For(pas)
		if err != nil {
			t.Fatal(err)
		}
		b, err := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 36}, BatchGrams: 500, StepGrams: 1, TempC: 6}.For(pas)
		if err != nil || plan.Grams[0] != b.ThinGrams || plan.Grams[1] != b.ThickGrams {
			t.Errorf("%v: %v, recipe %v + %v (%v)", pas, plan.Grams, b.ThinGrams, b.ThickGrams, err)
		}
	}
}

func TestAProgramKeepsItsLimitsAndItsSum(t *testing.T) {
	p := larder()
	p.Stock[1].MinGrams, p.Stock[2].MaxGrams, p.Stock[3].MaxGrams = 100, 150, 200
	low, high, err := p.Reach()
	if err != nil {
		t.Fatal(err)
	}
	for i := range 51 {
		want := low.Likely * math.Pow(high.Likely/low.Likely, float64(i)/50)
		plan, err := p.For(want)
		if err != nil {
			t.Fatalf("%v: %v", want, err)
		}
		g := plan.Grams
		if total(g) != 500 || g[1] < 100 || g[2] > 150 || g[3] > 200 || math.Abs(plan.Predicted.Likely/want-1) > 0.01 {
			t.Errorf("%v: %v, %v", want, g, plan.Predicted)
		}
		again, err := p.LeastOf(3, want)
		if err != nil || again.Grams[3] > g[3]+1 || total(again.Grams) != 500 {
			t.Errorf("least of the cream: %v, %v; cheapest has %v", again.Grams, err, g)
		}
		if plan.Cost > again.Cost+0.02 {
			t.Errorf("the cheapest costs %v, another %v", plan.Cost, again.Cost)
		}
	}
}

func TestAProgramOutOfReachSaysWhatCanBeReached(t *testing.T) {
	p := larder()
	p.Stock[3].MaxGrams = 50
	low, high, err := p.Reach()
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []float64{low.Likely / 2, high.Likely * 1.01} {
		var r *honestplate.RangeError
		if _, err := p.For(want); !errors.As(err, &r) || math.Abs(r.Low/low.Likely-1) > 1e-9 || math.Abs(r.High/high.Likely-1) > 1e-9 {
			t.Errorf("%v: %v, want reach %v..%v", want, err, low, high)
		}
	}
}

func TestAProgramThatMakesNoSenseIsRefused(t *testing.T) {
	for name, change := range map[string]func(*Program){
		"empty":         func(p *Program) { p.Stock = nil },
		"nil":           func(p *Program) { p.Stock[0].Liquid = nil },
		"minima":        func(p *Program) { p.Stock[0].MinGrams, p.Stock[1].MinGrams = 300, 201 },
		"maxima":        func(p *Program) { p.Stock = p.Stock[:1]; p.Stock[0].MaxGrams = 20 },
		"contradiction": func(p *Program) { p.Stock[0].MinGrams, p.Stock[0].MaxGrams = 20, 10 },
		"over":          func(p *Program) { p.Stock[0].MinGrams = 501 },
		"negative":      func(p *Program) { p.Stock[0].MinGrams = -1 },
		"NaN":           func(p *Program) { p.Stock[0].MaxGrams = math.NaN() },
		"cost":          func(p *Program) { p.Stock[0].CostPerKg = -1 },
		"steps":         func(p *Program) { p.StepGrams = 0.3 },
		"batch":         func(p *Program) { p.BatchGrams = 0 },
		"too many": func(p *Program) {
			for len(p.Stock) < 40 {
				p.Stock = append(p.Stock, p.Stock[0])
			}
		},
	} {
		p := larder()
		change(&p)
		if _, err := p.For(0.008); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
		if _, _, err := p.Reach(); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("reach of %s: %v", name, err)
		}
	}
	for _, pas := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := larder().For(pas); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%v: %v", pas, err)
		}
	}
	for _, i := range []int{-1, 4} {
		if _, err := larder().LeastOf(i, 0.008); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("liquid %d: %v", i, err)
		}
	}
	p := larder()
	p.Stock[2].Advertised = true
	if _, err := p.For(0.008); !errors.Is(err, honestplate.ErrAdvertised) {
		t.Errorf("advertised: %v", err)
	}
	p = larder()
	p.TempC = 90
	if _, err := p.For(0.008); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("90 degC: %v", err)
	}
}

func TestAProgramWithoutFreedomIsItsLimits(t *testing.T) {
	one := Program{Stock: []Stock{{Liquid: Dairy{FatPercent: 20}}}, BatchGrams: 100, StepGrams: 1, TempC: 6}
	v, _ := Dairy{FatPercent: 20}.Viscosity(6)
	plan, err := one.For(v.Likely)
	if err != nil || plan.Grams[0] != 100 || plan.Predicted != v {
		t.Errorf("%v, %v", plan, err)
	}
	fixed := larder()
	for i := range fixed.Stock {
		fixed.Stock[i].MinGrams, fixed.Stock[i].MaxGrams = 125, 125
	}
	low, _, err := fixed.Reach()
	if err != nil {
		t.Fatal(err)
	}
	if plan, err = fixed.For(low.Likely); err != nil || total(plan.Grams) != 500 {
		t.Errorf("%v, %v", plan, err)
	}
	free := larder()
	free.Stock = append(free.Stock[:0:0], free.Stock...)
	for i := range free.Stock[:3] {
		free.Stock[i].MinGrams, free.Stock[i].MaxGrams = 125, 125
	}
	if plan, err = free.For(low.Likely); err != nil || total(plan.Grams) != 500 {
		t.Errorf("one free: %v, %v", plan, err)
	}
}

func BenchmarkProgramOfFourLiquids(b *testing.B) {
	p := larder()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.For(0.008); err != nil {
			b.Fatal(err)
		}
	}
}
