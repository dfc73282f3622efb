package portion

import (
	"errors"
	"strings"
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

// The rule is about what is declared in all, not about one ingredient.
func TestTheDeclaredTotalDecides(t *testing.T) {
	parts := []Ingredient{{"a", 60}, {"b", 40}, {"c", 30}}
	for finished, want := range map[float64]string{
		110: "54.5 g per 100 g, 36.4 g per 100 g, 27.3 g per 100 g",
		130: "46.2 %, 30.8 %, 23.1 %",
		0:   "46.2 %, 30.8 %, 23.1 %",
		200: "30 %, 20 %, 15 %",
	} {
		lines, err := Quid(parts, finished)
		if err != nil {
			t.Fatal(err)
		}
		var text []string
		for _, l := range lines {
			text = append(text, l.Text)
		}
		if got := strings.Join(text, ", "); got != want {
			t.Errorf("%g g: %s, want %s", finished, got, want)
		}
	}
	for percent, want := range map[float64]string{0.04: "0.04 %", 99.96: "99.96 %", 100: "100 %", 0: "0 %", 62.449: "62.4 %", 1e-12: "1e-12 %"} {
		lines, err := Quid([]Ingredient{{"x", percent}}, 100)
		if percent == 0 {
			lines, err = Quid([]Ingredient{{"x", 0}, {"y", 1}}, 100)
		}
		if err != nil || lines[0].Text != want {
			t.Errorf("%g: %v, %v", percent, lines, err)
		}
	}
}

func TestBadContents(t *testing.T) {
	one := []Ingredient{{Grams: 1}}
	for name, c := range map[string]struct {
		err  error
		kind error
	}{
		"no ingredients": {failure(Quid(nil, 100)), honestplate.ErrInput},
		"negative":       {failure(Quid([]Ingredient{{"x", -1}}, 100)), honestplate.ErrInput},
		"nothing":        {failure(Quid([]Ingredient{{}}, 100)), honestplate.ErrInput},
		"finished":       {failure(Quid(one, -1)), honestplate.ErrInput},
		"overflow":       {failure(Quid([]Ingredient{{Grams: 1e300}}, 1e-300)), honestplate.ErrInput},
		"batch":          {failure(Formula{Parts: one}.For(0)), honestplate.ErrInput},
		"no parts":       {failure(Formula{}.For(10)), honestplate.ErrInput},
		"step":           {failure(Formula{Parts: one, StepGrams: -1}.For(10)), honestplate.ErrInput},
	} {
		if !errors.Is(c.err, c.kind) {
			t.Errorf("%s: %v", name, c.err)
		}
	}
}
