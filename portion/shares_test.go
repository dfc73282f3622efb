package portion

import (
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"
)

func TestDeclaredMassInWholeSteps(t *testing.T) {
	for _, c := range []struct {
		grams, step float64
		want        int64
	}{
		{62, 0.5, 124}, {0.3, 0.1, 3}, {0.1 + 0.2, 0.1, 3}, {1.1, 0.1, 11}, {62, 0, 62}, {0.07, 0.01, 7}, {1e9, 1e-3, 1e12}, {4.35, 0.05, 87},
	} {
		got, err := Declaration{Grams: c.grams, StepGrams: c.step}.inSteps()
		if err != nil || got != c.want {
			t.Errorf("%v g in steps of %v g = %v, %v; want %v", c.grams, c.step, got, err, c.want)
		}
	}
}

func TestMassBetweenStepsNamesTheNeighbours(t *testing.T) {
	_, err := Declaration{Grams: 62.3, StepGrams: 0.5}.inSteps()
	if !errors.Is(err, honestplate.ErrInput) {
		t.Fatalf("got %v, want an InputError", err)
	}
	const want = "honestplate: Grams is 62.3 g, want a whole number of 0.5 g steps, such as 62 g or 62.5 g"
	if err.Error() != want {
		t.Errorf("got %q, want %q", err, want)
	}
}

func TestBadDeclarations(t *testing.T) {
	for name, c := range map[string]struct {
		d    Declaration
		kind error
	}{
		"nothing":         {Declaration{}, honestplate.ErrInput},
		"NaN mass":        {Declaration{Grams: math.NaN()}, honestplate.ErrInput},
		"negative mass":   {Declaration{Grams: -1}, honestplate.ErrInput},
		"endless mass":    {Declaration{Grams: math.Inf(1)}, honestplate.ErrInput},
		"huge mass":       {Declaration{Grams: 1e10}, honestplate.ErrRange},
		"NaN step":        {Declaration{Grams: 1, StepGrams: math.NaN()}, honestplate.ErrInput},
		"negative step":   {Declaration{Grams: 1, StepGrams: -0.5}, honestplate.ErrInput},
		"tiny step":       {Declaration{Grams: 1, StepGrams: 1e-9}, honestplate.ErrRange},
		"many steps":      {Declaration{Grams: 1e9, StepGrams: 1e-6}, honestplate.ErrRange},
		"minus a piece":   {Declaration{Count: -1}, honestplate.ErrInput},
		"huge mass steps": {Declaration{Grams: 1e9, StepGrams: 1e-5}, honestplate.ErrRange},
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
	if diff := cmp.Diff(want, s); diff != "" {
		t.Error(diff)
	}
	if sumOfSteps(s) != 124 {
		t.Errorf("total %d steps, want 124", sumOfSteps(s))
	}
}

func TestSharingPieces(t *testing.T) {
	d := Declaration{Item: "dumplings", Count: 9}
	zones := []Zone{{Name: "front", Weight: 3}, {Name: "middle", Weight: 2, MaxCount: 2}, {Name: "back", Weight: 1, MinCount: 2}}
	s, err := d.Share(zones)
	if err != nil {
		t.Fatal(err)
	}
	want := []Portion{{"front", 5, 0, 5}, {"middle", 2, 0, 2}, {"back", 2, 0, 2}}
	if diff := cmp.Diff(want, s); diff != "" {
		t.Error(diff)
	}
	for name, c := range map[string]struct {
		d     Declaration
		zones []Zone
	}{
		"no declaration": {Declaration{}, zones},
		"negative":       {d, []Zone{{Weight: 1, MinCount: -1}}},
		"below 0":        {d, []Zone{{Weight: 1, MaxCount: -1}}},
		"no zones":       {d, nil},
		"minima":         {d, []Zone{{Weight: 1, MinCount: 10}}},
	} {
		if _, err := c.d.Share(c.zones); !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrInfeasible) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestBadZonesAreNamed(t *testing.T) {
	d := Declaration{Grams: 10, StepGrams: 0.5}
	for want, zones := range map[string][]Zone{
		`honestplate: Zones[0].Weight is not a number, want a finite number, 0 or more`:                                                     {{Name: "front", Weight: math.NaN()}},
		`honestplate: Zones[1].Weight is -1, want a finite number, 0 or more`:                                                               {{Weight: 1}, {Weight: -1}},
		`honestplate: Zones[0].MinGrams is -1 g, want a finite number, 0 or more`:                                                           {{Weight: 1, MinGrams: -1}},
		`honestplate: Zones[0].MaxGrams is +Inf g, want a finite number, 0 or more`:                                                         {{Weight: 1, MaxGrams: math.Inf(1)}},
		`honestplate: Zones[0].MaxGrams is 2 g, want at least MinGrams, 3 g`:                                                                {{Weight: 1, MinGrams: 3, MaxGrams: 2}},
		`honestplate: Zones[0].MaxGrams is 3.3 g, want a whole step of 0.5 g between MinGrams and MaxGrams`:                                 {{Weight: 1, MinGrams: 3.1, MaxGrams: 3.3}},
		`honestplate: Zones: the minima sum to 11 g, and there is 10 g; take 1 g off them`:                                                  {{Weight: 1, MinGrams: 5.5}, {Weight: 1, MinGrams: 5.5}},
		`honestplate: Zones[0].MinGrams is 2e+12 steps, outside 0..1e+12 steps (counts of steps are exact up to here: take a coarser step)`: {{Weight: 1, MinGrams: 1e12}},
		`honestplate: Zones is empty, want at least one`:                                                                                    nil,
	} {
		if _, err := d.Share(zones); err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
	s, err := d.Share([]Zone{{Weight: 1}, {Weight: 1, MaxGrams: 0.3}, {Weight: 1, MaxGrams: 1e300}})
	if err != nil || s[1].Steps != 0 {
		t.Errorf("a maximum below one step, and one beyond all: %+v, %v", s, err)
	}
}

func TestNoWeightAtAll(t *testing.T) {
	s, err := Declaration{Grams: 3}.Share([]Zone{{MinGrams: 2}, {MinGrams: 1}})
	if err != nil || s[0].Steps != 2 || s[1].Steps != 1 {
		t.Errorf("minima that are the total: %+v, %v", s, err)
	}
}

func sumOfSteps(s []Portion) (sum int64) {
	for _, p := range s {
		sum += p.Steps
	}
	return sum
}
