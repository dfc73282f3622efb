package rheology_test

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	. "example.org/honestplate/rheology"
)

func TestSensitivityIsWhatTheStepDoes(t *testing.T) {
	b, err := kitchen(500, 1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	s, err := b.Sensitivity()
	if err != nil {
		t.Fatal(err)
	}
	viscosity := func(fat, thick, tempC float64) float64 {
		m, err := Blend(Part{Dairy{FatPercent: 3.5}, 500 - thick}, Part{Dairy{FatPercent: fat}, thick})
		if err != nil {
			t.Fatal(err)
		}
		v, err := m.Viscosity(tempC)
		if err != nil {
			t.Fatal(err)
		}
		return v.Likely
	}
	here := viscosity(36, b.ThickGrams, 6)
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"one gram", s.OneGram, viscosity(36, b.ThickGrams+1, 6)/here - 1},
		{"warmer", s.Warmer, viscosity(36, b.ThickGrams, 7)/here - 1},
		{"one % fat", s.OneFatPercent, viscosity(37, b.ThickGrams, 6)/here - 1},
	} {
		if math.Abs(c.got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.name, c.got, c.want)
		}
	}
	if s.OneGram <= 0 || s.Warmer >= 0 {
		t.Errorf("%+v", s)
	}
	colder := viscosity(36, b.ThickGrams+s.GramsADegree, 6)
	if math.Abs(colder/viscosity(36, b.ThickGrams, 5)-1) > 1e-3 {
		t.Errorf("%v g are not a degree", s.GramsADegree)
	}
}

func TestSensitivityAtTheEdgesTurnsTheStepRound(t *testing.T) {
	r := Recipe{Thin: Dairy{FatPercent: 3.5}, Thick: Dairy{FatPercent: 50}, BatchGrams: 100, StepGrams: 1, TempC: 0}
	_, high, err := r.Reach()
	if err != nil {
		t.Fatal(err)
	}
	b, err := r.For(high.Likely)
	if err != nil || b.ThinGrams != 0 {
		t.Fatal(b, err)
	}
	s, err := b.Sensitivity()
	if err != nil || s.OneGram <= 0 || s.Warmer >= 0 || s.OneFatPercent <= 0 {
		t.Errorf("%+v, %v", s, err)
	}
	r.TempC = 80
	if b, err = r.For(0.001); err != nil {
		t.Fatal(err)
	}
	if s, err = b.Sensitivity(); err != nil || s.Warmer >= 0 {
		t.Errorf("%+v, %v", s, err)
	}
}

func TestSensitivityKnowsFatOnlyOfMilkAndCream(t *testing.T) {
	cream := Measured{Liquid: Dairy{FatPercent: 36}, TempC: 6, PaS: honestplate.Factor(0.03, 1.05)}
	for _, c := range []struct {
		thin, thick Liquid
		known       bool
	}{
		{Dairy{FatPercent: 3.5}, cream, true},
		{Water{}, Sucrose{Brix: 60}, false},
		{Water{}, Measured{Liquid: Sucrose{Brix: 60}, TempC: 20, PaS: honestplate.Exactly(0.05)}, false},
	} {
		r := Recipe{Thin: c.thin, Thick: c.thick, BatchGrams: 500, StepGrams: 1, TempC: 20}
		low, high, err := r.Reach()
		if err != nil {
			t.Fatal(err)
		}
		b, err := r.For(math.Sqrt(low.Likely * high.Likely))
		if err != nil {
			t.Fatal(err)
		}
		s, err := b.Sensitivity()
		if err != nil || (s.OneFatPercent != 0) != c.known {
			t.Errorf("%v: %+v, %v", c.thick, s, err)
		}
	}
}

func TestSensitivityThatMakesNoSenseIsRefused(t *testing.T) {
	good, err := kitchen(500, 0.1).For(0.012)
	if err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(*Batch){
		"tiny":      func(b *Batch) { b.ThinGrams, b.ThickGrams = 0.1, 0.2 },
		"negative":  func(b *Batch) { b.ThinGrams = -1 },
		"NaN":       func(b *Batch) { b.ThickGrams = math.NaN() },
		"no liquid": func(b *Batch) { b.Recipe.Thin = nil },
	} {
		b := good
		change(&b)
		if _, err := b.Sensitivity(); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
