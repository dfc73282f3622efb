package portion

import (
	"errors"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"
)

func TestTablesShareExactlyWhatIsDeclared(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 4))
	for range 1000 {
		d := Declaration{Grams: float64(1+rng.IntN(400)) / 2, StepGrams: 0.5}
		table := Table{Declaration: d, Rows: make([]Zone, 1+rng.IntN(6)), Columns: make([]Zone, 1+rng.IntN(4))}
		for i := range table.Rows {
			table.Rows[i].Weight = 0.1 + rng.Float64()
		}
		for j := range table.Columns {
			table.Columns[j].Weight = float64(1 + rng.IntN(5))
		}
		want, err := d.inSteps()
		if err != nil {
			t.Fatal(err)
		}
		for name, share := range map[string]func() (Grid, error){"Share": table.Share} {
			g, err := share()
			if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			var total int64
			columns := make([]int64, len(g.Columns))
			for i, row := range g.Steps {
				var sum int64
				for j, x := range row {
					sum += x
					columns[j] += x
				}
				if sum != g.Rows[i].Steps {
					t.Fatalf("%s: row %d holds %d of %d steps", name, i, sum, g.Rows[i].Steps)
				}
				total += sum
			}
			if total != want {
				t.Fatalf("%s: %d of %d steps", name, total, want)
			}
			for j, c := range g.Columns {
				if columns[j] != c.Steps {
					t.Fatalf("%s: column %d holds %d of %d steps", name, j, columns[j], c.Steps)
				}
			}
		}
	}
}

func TestTableOfPieces(t *testing.T) {
	g, err := Table{Declaration: Declaration{Count: 9}, Rows: []Zone{{Weight: 1}, {Weight: 2}}, Columns: []Zone{{Weight: 1}, {Weight: 1}, {Weight: 1}}}.Share()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([][]int64{{1, 1, 1}, {2, 2, 2}}, g.Steps); diff != "" {
		t.Error(diff)
	}
	if g.Grams != nil {
		t.Errorf("pieces weigh %v g", g.Grams)
	}
}

func TestTableErrorsUseNames(t *testing.T) {
	table := Table{
		Declaration: Declaration{Grams: 10},
		Rows:        []Zone{{Name: "slice A", Weight: 1}, {Name: "slice B", Weight: 1}},
		Columns:     []Zone{{Name: "front", Weight: 1}, {Name: "back", Weight: 4}},
		Weights:     [][]float64{{1, 0}, {1, 1}},
	}
	for name, share := range map[string]func() (Grid, error){"Share": table.Share} {
		_, err := share()
		const want = "honestplate: Rows: row slice A must hold 5 g, but may use only column front with 2 g; move 3 g to other rows, or let these use more columns"
		if err == nil || err.Error() != want {
			t.Errorf("%s: got %v, want %v", name, err, want)
		}
	}
	for what, bad := range map[string]Table{
		"declaration": {},
		"no rows":     {Declaration: table.Declaration, Columns: table.Columns},
		"no columns":  {Declaration: table.Declaration, Rows: table.Rows},
		"shape":       {Declaration: table.Declaration, Rows: table.Rows, Columns: table.Columns, Weights: [][]float64{{1}}},
	} {
		for name, share := range map[string]func() (Grid, error){"Share": bad.Share} {
			if _, err := share(); !errors.Is(err, honestplate.ErrInput) {
				t.Errorf("%s, %s: %v", what, name, err)
			}
		}
	}
}
