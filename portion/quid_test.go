package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
)

func TestQuidLines(t *testing.T) {
	got, err := Quid([]Ingredient{{"fish", 70}, {"batter", 20}, {"crumb", 20}}, 112)
	if err != nil {
		t.Fatal(err)
	}
	want := []string{"62.5 %", "17.9 %", "17.9 %"}
	for i, line := range got {
		if line.Text != want[i] {
			t.Errorf("%s: %q, want %q", line.Name, line.Text, want[i])
		}
	}
	salami, err := Quid([]Ingredient{{"pork", 115}}, 100)
	if err != nil || salami[0].Text != "115 g per 100 g" {
		t.Errorf("%v, %v", salami, err)
	}
	even, err := Quid([]Ingredient{{"a", 1}, {"b", 3}}, 0)
	if err != nil || even[1].Percent != 75 {
		t.Errorf("%v, %v", even, err)
	}
}

func TestLockedRatiosAreConstraints(t *testing.T) {
	f := Formula{Parts: []Ingredient{{"cream", 12.5}, {"milk", 37.5}, {"sugar", 5}}, StepGrams: 0.5, Locked: true}
	least, err := f.leastExact()
	if err != nil || least != 11 {
		t.Fatalf("least exact batch %v g, %v; want 11", least, err)
	}
	s, err := f.For(220)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{50, 150, 20} {
		if s[i].Grams != want {
			t.Errorf("%s: %v g, want %v", s[i].Name, s[i].Grams, want)
		}
	}
	var e *StepError
	if _, err := f.For(200); !errors.As(err, &e) || e.Below != 198 || e.Above != 209 {
		t.Errorf("200 g: %v", err)
	}
	f.Locked = false
	if s, err := f.For(200); err != nil || sumOfSteps(s) != 400 {
		t.Errorf("200 g, not locked: %v, %v", s, err)
	}
}

func TestFormulasScaleExactly(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 10))
	for range 1000 {
		f := Formula{Parts: make([]Ingredient, 1+rng.IntN(6)), StepGrams: 0.5, Locked: true}
		for i := range f.Parts {
			f.Parts[i].Grams = float64(1+rng.IntN(40)) / 2
		}
		least, err := f.leastExact()
		if err != nil {
			t.Fatal(err)
		}
		n := 1 + rng.IntN(9)
		s, err := f.For(least * float64(n))
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range s {
			// All ratios to the first part are kept exactly.
			if p.Grams*f.Parts[0].Grams != s[0].Grams*f.Parts[i].Grams {
				t.Fatalf("%v became %v", f.Parts, s)
			}
		}
	}
}

func TestBadContents(t *testing.T) {
	one := []Ingredient{{Grams: 1}}
	for name, c := range map[string]struct {
		err  error
		kind error
	}{
		"no ingredients":     {failure(Quid(nil, 100)), honestplate.ErrInput},
		"negative":           {failure(Quid([]Ingredient{{"x", -1}}, 100)), honestplate.ErrInput},
		"nothing":            {failure(Quid([]Ingredient{{}}, 100)), honestplate.ErrInput},
		"finished":           {failure(Quid(one, -1)), honestplate.ErrInput},
		"overflow":           {failure(Quid([]Ingredient{{Grams: 1e300}}, 1e-300)), honestplate.ErrInput},
		"batch":              {failure(Formula{Parts: one}.For(0)), honestplate.ErrInput},
		"no parts":           {failure(Formula{}.For(10)), honestplate.ErrInput},
		"no parts, locked":   {failure(Formula{Locked: true}.For(10)), honestplate.ErrInput},
		"step":               {failure(Formula{Parts: one, StepGrams: -1}.For(10)), honestplate.ErrInput},
		"step, locked":       {failure(Formula{Parts: one, StepGrams: -1, Locked: true}.For(10)), honestplate.ErrInput},
		"tiny step, locked":  {failure(Formula{Parts: one, StepGrams: 1e-9, Locked: true}.For(10)), honestplate.ErrRange},
		"no exact batch":     {failure(Formula{Parts: []Ingredient{{Grams: 1}, {Grams: math.Pi}}}.leastExact()), honestplate.ErrRange},
		"batch far too long": {failure(Formula{Parts: []Ingredient{{Grams: 1e-12}, {Grams: 7}}}.leastExact()), honestplate.ErrRange},
	} {
		if !errors.Is(c.err, c.kind) {
			t.Errorf("%s: %v", name, c.err)
		}
	}
}
