package portion_test

import (
	"errors"
	"math/rand/v2"
	"strings"
	"testing"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

// Common practice, no source: cheese laid over the cuts of a flatbread before
// baking still totals the declared grams, no more and no less, whatever the slices
// and strips and whatever the camera favours.
func TestCheeseOverTheCutsTotalsWhatIsDeclared(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 12))
	for range 1000 {
		cheese := portion.Declaration{Item: "smoked cheese", Grams: float64(20+rng.IntN(200)) / 2, StepGrams: 0.5, Advertised: true}
		table := portion.Table{Declaration: cheese, Rows: make([]portion.Zone, 2+rng.IntN(7)), Columns: make([]portion.Zone, 2+rng.IntN(4))}
		for i := range table.Rows {
			table.Rows[i].Weight = 1
		}
		for j := range table.Columns {
			table.Columns[j].Weight = 1 + rng.Float64()
		}
		g, err := table.Share()
		if err != nil {
			t.Fatal(err)
		}
		total := 0.0
		for i := range g.Steps {
			for j := range g.Steps[i] {
				total += g.Grams[i][j] // halves: exact
			}
		}
		if total != cheese.Grams {
			t.Fatalf("%v g on the cuts, %v declared", total, cheese.Grams)
		}
	}
}

// Common practice, no source: favouring the camera moves grams, it never adds any.
// Raising one zone's weight raises or keeps its share and lowers or keeps the
// others' (largest remainder may also move a step between two others), and the total
// stays.
func TestFavouringTheCameraMovesGrams(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 12))
	for range 1000 {
		d := portion.Declaration{Grams: float64(10 + rng.IntN(100)), StepGrams: 1, Advertised: true}
		zones := make([]portion.Zone, 2+rng.IntN(6))
		for i := range zones {
			zones[i].Weight = 1 + rng.Float64()
		}
		before, err := d.Share(zones)
		if err != nil {
			t.Fatal(err)
		}
		zones[0].Weight *= 1 + 2*rng.Float64()
		after, err := d.Share(zones)
		if err != nil {
			t.Fatal(err)
		}
		if allSteps(before) != allSteps(after) || after[0].Steps < before[0].Steps {
			t.Fatalf("%+v became %+v", before, after)
		}
	}
}

// Common practice, no source: ratios signed off by the maker's technician are
// constraints, not wishes. A batch that does not hold them is found out.
func TestSignedOffRatiosAreConstraints(t *testing.T) {
	dressing := portion.Formula{Parts: []portion.Ingredient{{Name: "oil", Grams: 3}, {Name: "vinegar", Grams: 1}}, StepGrams: 0.5}
	signed := record.Specification{Product: "dressing", Version: "1", Ratios: []record.Ratio{{Layer: "oil", To: "vinegar", Least: 2.9, Most: 3.1}}}
	for batch, want := range map[float64]portion.Verdict{26: portion.Agrees, 25: portion.Differs} {
		shares, err := dressing.For(batch)
		if err != nil {
			t.Fatal(err)
		}
		s, b, so := signed, record.Build{Scale: portion.Scale{StepGrams: 0.01, Check: portion.CheckWeight{Grams: 50, Reading: 50}}}, 0.0
		for k, p := range shares {
			if batch == 25 && k == 0 {
				p.Grams++ // poured by eye
			}
			so += p.Grams
			s.Layers = append(s.Layers, record.Layer{Name: p.Name, Declared: portion.Amount{Grams: p.Grams, StepGrams: 0.5, MinusGrams: 2, PlusGrams: 2}})
			b.Layers = append(b.Layers, record.Placed{Reading: so})
		}
		got, err := s.Check(b)
		if err != nil || got.Ratios[0].Verdict != want {
			t.Errorf("%g g: %v, %v", batch, got.Ratios, err)
		}
	}
}

// Common practice, no source: an advertised item is neither replaced nor thinned
// nor exceeded; what only dresses the picture may be.
func TestAdvertisedItemsAreShownAsTheyAre(t *testing.T) {
	cheese := portion.Declaration{Item: "smoked cheese", Grams: 62, Count: 9, Advertised: true}
	garnish := portion.Declaration{Item: "herbs", Grams: 5, Count: 9}
	for _, act := range []string{portion.Replace, portion.Thin, portion.Exceed, portion.Reduce} {
		var e *honestplate.RefusedError
		if err := cheese.Allows(act); !errors.As(err, &e) || !strings.Contains(e.Reason, string(act)) || !errors.Is(err, honestplate.ErrAdvertised) {
			t.Errorf("cheese %s: %v", act, err)
		}
		if err := garnish.Allows(act); err != nil {
			t.Errorf("herbs %s: %v", act, err)
		}
	}
	const want = "honestplate: Advertised: smoked cheese is the advertised product and must not be replaced; show the real product in its declared amount"
	if err := cheese.Allows(portion.Replace); err.Error() != want {
		t.Errorf("%q, want %q", err, want)
	}
	for pieces, kind := range map[int]error{9: nil, 10: honestplate.ErrAdvertised, 8: honestplate.ErrAdvertised, -1: honestplate.ErrInput} {
		if err := cheese.JudgeCount(pieces); !errors.Is(err, kind) {
			t.Errorf("%d pieces: %v", pieces, err)
		}
		if err := garnish.JudgeCount(pieces); pieces >= 0 && err != nil {
			t.Errorf("%d herbs: %v", pieces, err)
		}
	}
	for name, d := range map[string]portion.Declaration{"invalid": {}, "no count": {Grams: 3}} {
		if err := d.JudgeCount(1); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func allSteps(s []portion.Portion) (sum int64) {
	for _, p := range s {
		sum += p.Steps
	}
	return sum
}
