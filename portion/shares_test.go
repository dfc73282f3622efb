package portion

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestDeclaredMassInWholeSteps(t *testing.T) {
	for _, c := range []struct {
		grams, step float64
		want        int64
	}{
		{62, 0.5, 124}, {0.3, 0.1, 3}, {0.1 + 0.2, 0.1, 3}, {1.1, 0.1, 11}, {62, 0, 62}, {0.07, 0.01, 7}, {1e9, 1e-3, 1e12}, {4.35, 0.05, 87},
	} {
		got, err := Declaration{Grams: c.grams, StepGrams: c.step}.Steps()
		if err != nil || got != c.want {
			t.Errorf("%v g in steps of %v g = %v, %v; want %v", c.grams, c.step, got, err, c.want)
		}
	}
}

func TestMassBetweenStepsNamesTheNeighbours(t *testing.T) {
	_, err := Declaration{Grams: 62.3, StepGrams: 0.5}.Steps()
	var e *StepError
	if !errors.As(err, &e) || !errors.Is(err, ErrInput) {
		t.Fatalf("got %v, want a StepError", err)
	}
	if diff := cmp.Diff(StepError{"Grams", 62.3, 0.5, 62, 62.5}, *e); diff != "" {
		t.Error(diff)
	}
	const want = "portion: Grams is 62.3 g, not a whole number of 0.5 g steps; the nearest are 62 g and 62.5 g"
	if err.Error() != want {
		t.Errorf("got %q, want %q", err, want)
	}
}

func TestBadDeclarations(t *testing.T) {
	for name, c := range map[string]struct {
		d    Declaration
		kind error
	}{
		"nothing":       {Declaration{}, ErrInput},
		"NaN mass":      {Declaration{Grams: math.NaN()}, ErrInput},
		"negative mass": {Declaration{Grams: -1}, ErrInput},
		"endless mass":  {Declaration{Grams: math.Inf(1)}, ErrInput},
		"huge mass":     {Declaration{Grams: 1e10}, ErrRange},
		"NaN step":      {Declaration{Grams: 1, StepGrams: math.NaN()}, ErrInput},
		"negative step": {Declaration{Grams: 1, StepGrams: -0.5}, ErrInput},
		"tiny step":     {Declaration{Grams: 1, StepGrams: 1e-9}, ErrRange},
		"many steps":    {Declaration{Grams: 1e9, StepGrams: 1e-6}, ErrRange},
		"minus a piece": {Declaration{Count: -1}, ErrInput},
		"huge count":    {Declaration{Count: 1e13}, ErrRange},
	} {
		if err := c.d.Validate(); !errors.Is(err, c.kind) {
			t.Errorf("%s: got %v, want %v", name, err, c.kind)
		}
		if _, err := c.d.Share([]Zone{{Weight: 1}}); err == nil {
			t.Errorf("%s: shared", name)
		}
	}
}

// The 47 g that the maximum of the side leaves are shared 3 to 1: 35.25 to 11.75 g,
// a tie that goes to the larger weight.
func TestSharesAreExact(t *testing.T) {
	d := Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
	s, err := d.Share([]Zone{{Name: "front", Weight: 3}, {Name: "side", Weight: 2, MaxGrams: 15}, {Name: "back", Weight: 1, MinGrams: 8.2}})
	if err != nil {
		t.Fatal(err)
	}
	want := []Portion{{"front", 71, 35.5, 0}, {"side", 30, 15, 0}, {"back", 23, 11.5, 0}}
	if diff := cmp.Diff(want, s.Portions); diff != "" {
		t.Error(diff)
	}
	if s.TotalSteps() != 124 {
		t.Errorf("total %d steps, want 124", s.TotalSteps())
	}
}
