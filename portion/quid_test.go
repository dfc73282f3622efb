package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
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

// Bread 80, margarine 15, cheese 35 of 130: 61 7/13, 11 7/13, 26 12/13. Cheese takes
// the first point; then bread and margarine tie exactly for the last, and the
// larger mass has it.
func TestWholePercentsSumToAHundred(t *testing.T) {
	got, err := WholePercents([]Ingredient{{"bread", 80}, {"margarine", 15}, {"cheese", 35}})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]int64{62, 11, 27}, got); diff != "" {
		t.Error(diff)
	}
	rng := rand.New(rand.NewPCG(1, 10))
	for range 10_000 {
		parts := make([]Ingredient, 1+rng.IntN(12))
		total := 0.0
		for i := range parts {
			parts[i].Grams = float64(1+rng.IntN(999)) / 10
			total += parts[i].Grams
		}
		whole, err := WholePercents(parts)
		if err != nil {
			t.Fatal(err)
		}
		var sum int64
		for i, p := range whole {
			sum += p
			if math.Abs(float64(p)-100*parts[i].Grams/total) >= 1 {
				t.Fatalf("%v: %d %%", parts[i], p)
			}
		}
		if sum != 100 {
			t.Fatalf("%v sums to %d", whole, sum)
		}
	}
}

// Percentages of a mass that is a whole number of hundreds of steps come back from
// grams exactly.
func TestPercentagesToGramsAndBack(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 10))
	for range 10_000 {
		contents := make([]Content, 1+rng.IntN(8))
		left := 100
		for i := range contents {
			p := rng.IntN(left + 1)
			if i == len(contents)-1 {
				p = left
			}
			contents[i].Percent = float64(p)
			left -= p
		}
		d := Declaration{Grams: 10 * float64(1+rng.IntN(50)), StepGrams: 0.1}
		s, err := d.ShareContents(contents)
		if err != nil {
			t.Fatal(err)
		}
		parts := make([]Ingredient, len(contents))
		for i, p := range s.Portions {
			parts[i].Grams = p.Grams
		}
		lines, err := Quid(parts, d.Grams)
		if err != nil {
			t.Fatal(err)
		}
		for i, line := range lines {
			if math.Abs(line.Percent-contents[i].Percent) > 1e-9 {
				t.Fatalf("%v %% became %v", contents[i].Percent, line.Percent)
			}
		}
	}
}

func TestLockedRatiosAreConstraints(t *testing.T) {
	f := Formula{Parts: []Ingredient{{"cream", 12.5}, {"milk", 37.5}, {"sugar", 5}}, StepGrams: 0.5, Locked: true}
	least, err := f.LeastExact()
	if err != nil || least != 11 {
		t.Fatalf("least exact batch %v g, %v; want 11", least, err)
	}
	s, err := f.For(220)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{50, 150, 20} {
		if s.Portions[i].Grams != want {
			t.Errorf("%s: %v g, want %v", s.Portions[i].Name, s.Portions[i].Grams, want)
		}
	}
	var e *StepError
	if _, err := f.For(200); !errors.As(err, &e) || e.Below != 198 || e.Above != 209 {
		t.Errorf("200 g: %v", err)
	}
	f.Locked = false
	if s, err := f.For(200); err != nil || s.TotalSteps() != 400 {
		t.Errorf("200 g, not locked: %v, %v", s, err)
	}
}

func TestFormulasScaleExactly(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 10))
	for range 10_000 {
		f := Formula{Parts: make([]Ingredient, 1+rng.IntN(6)), StepGrams: 0.5, Locked: true}
		for i := range f.Parts {
			f.Parts[i].Grams = float64(1+rng.IntN(40)) / 2
		}
		least, err := f.LeastExact()
		if err != nil {
			t.Fatal(err)
		}
		n := 1 + rng.IntN(9)
		s, err := f.For(least * float64(n))
		if err != nil {
			t.Fatal(err)
		}
		for i, p := range s.Portions {
			// All ratios to the first part are kept exactly.
			if p.Grams*f.Parts[0].Grams != s.Portions[0].Grams*f.Parts[i].Grams {
				t.Fatalf("%v became %v", f.Parts, s.Portions)
			}
		}
	}
}

func TestBadContents(t *testing.T) {
	one := []Ingredient{{Grams: 1}}
	d := Declaration{Grams: 10}
	for name, c := range map[string]struct {
		err  error
		kind error
	}{
		"no ingredients":     {failure(Quid(nil, 100)), ErrInput},
		"negative":           {failure(Quid([]Ingredient{{"x", -1}}, 100)), ErrInput},
		"NaN":                {failure(WholePercents([]Ingredient{{Grams: math.NaN()}})), ErrInput},
		"nothing":            {failure(Quid([]Ingredient{{}}, 100)), ErrInput},
		"finished":           {failure(Quid(one, -1)), ErrInput},
		"overflow":           {failure(Quid([]Ingredient{{Grams: 1e300}}, 1e-300)), ErrInput},
		"declaration":        {failure(Declaration{}.ShareContents([]Content{{"", 100}})), ErrInput},
		"count only":         {failure(Declaration{Count: 3}.ShareContents([]Content{{"", 100}})), ErrInput},
		"percent sum":        {failure(d.ShareContents([]Content{{"", 50}})), ErrInput},
		"percent range":      {failure(d.ShareContents([]Content{{"", 101}})), ErrRange},
		"percent NaN":        {failure(d.ShareContents([]Content{{"", math.NaN()}})), ErrInput},
		"no contents":        {failure(d.ShareContents(nil)), ErrInput},
		"servings":           {failure(AboutServings(0)), ErrInput},
		"many servings":      {failure(AboutServings(1e9)), ErrRange},
		"batch":              {failure(Formula{Parts: one}.For(0)), ErrInput},
		"no parts":           {failure(Formula{}.For(10)), ErrInput},
		"no parts, locked":   {failure(Formula{Locked: true}.For(10)), ErrInput},
		"step":               {failure(Formula{Parts: one, StepGrams: -1}.For(10)), ErrInput},
		"step, locked":       {failure(Formula{Parts: one, StepGrams: -1, Locked: true}.For(10)), ErrInput},
		"tiny step, locked":  {failure(Formula{Parts: one, StepGrams: 1e-9, Locked: true}.For(10)), ErrRange},
		"no exact batch":     {failure(Formula{Parts: []Ingredient{{Grams: 1}, {Grams: math.Pi}}}.LeastExact()), ErrRange},
		"batch far too long": {failure(Formula{Parts: []Ingredient{{Grams: 1e-12}, {Grams: 7}}}.LeastExact()), ErrRange},
	} {
		if !errors.Is(c.err, c.kind) {
			t.Errorf("%s: %v", name, c.err)
		}
	}
}
