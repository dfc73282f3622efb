package portion

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/honestplate"
)

// Sets hold what Best holds of each: count, window, groups; no piece twice; sums that add
// up; and one set is the best one.
func TestSetsArePermittedAndDisjoint(t *testing.T) {
	for seed := range uint64(20) {
		p := Pick{Pieces: weighed(20, seed), Count: 4, Grams: 72, StepGrams: 0.1, Tolerance: 0.3}
		for i := range p.Pieces {
			p.Pieces[i].Group = []string{"left", "right"}[i%2]
		}
		if seed%2 == 1 {
			p.Groups = []Group{{"right", 1}, {"left", 3}}
		}
		best, err := p.Best()
		if err != nil {
			t.Fatal(err)
		}
		one, err := p.Sets(1)
		if err != nil || !slices.Equal(one.Sets[0].Chosen, best.Chosen) || one.Sets[0].Score != best.Score {
			t.Errorf("one set is %v, the best is %v, %v", one.Sets, best.Chosen, err)
		}
		for _, leastFirst := range []bool{false, true} {
			p.LeastFirst = leastFirst
			got, err := p.Sets(3)
			if err != nil {
				t.Fatal(err)
			}
			used, score, least := map[int]bool{}, 0.0, math.Inf(1)
			for _, s := range got.Sets {
				grams, groups := 0.0, map[string]int{}
				for i, k := range s.Chosen {
					if used[k] || s.Pieces[i] != p.Pieces[k] {
						t.Fatalf("piece %d is in two sets, or is another", k)
					}
					used[k] = true
					grams += p.Pieces[k].Grams
					groups[p.Pieces[k].Group]++
				}
				if math.Abs(grams-s.Grams) > 1e-9 || math.Abs(s.Over) > 0.3+1e-9 || len(s.Chosen) != 4 {
					t.Fatalf("%+v weighs %g g", s, grams)
				}
				if len(p.Groups) > 0 && (groups["right"] != 1 || groups["left"] != 3) {
					t.Fatalf("groups %v", groups)
				}
				score, least = score+s.Score, min(least, s.Score)
			}
			if got.Score != score || got.Least != least || len(got.Sets) > got.Most || got.Gap < 0 || got.Optimal && got.Gap != 0 {
				t.Errorf("%+v does not add up: %g, %g", got, score, least)
			}
		}
	}
}

func TestSetsRefuse(t *testing.T) {
	good := Pick{Pieces: weighed(12, 1), Count: 3, Grams: 54, StepGrams: 0.1, Tolerance: 2}
	for _, k := range []int{0, -1, 1001} {
		if _, err := good.Sets(k); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%d sets: %v", k, err)
		}
		if _, err := good.ToWeigh(k, 0.9, PieceMass{18, 1}); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("to weigh for %d sets: %v", k, err)
		}
	}
	far := good
	far.Grams, far.Tolerance = 20, 0
	var none *InfeasibleError
	if _, err := far.Sets(2); !errors.As(err, &none) || !none.Above.Given {
		t.Errorf("three pieces of 18 g for 20 g: %v", err)
	}
	for name, c := range map[string]struct {
		pick   Pick
		chance float64
		of     PieceMass
		kind   error
	}{
		"chance 1":     {good, 1, PieceMass{18, 1}, honestplate.ErrInput},
		"chance NaN":   {good, math.NaN(), PieceMass{18, 1}, honestplate.ErrInput},
		"no mean":      {good, 0.9, PieceMass{0, 1}, honestplate.ErrInput},
		"wide":         {good, 0.9, PieceMass{18, 10}, honestplate.ErrRange},
		"infinite":     {good, 0.9, PieceMass{math.Inf(1), 1}, honestplate.ErrInput},
		"below a step": {good, 0.9, PieceMass{0.01, 0}, honestplate.ErrRange},
		"no count":     {Pick{Grams: 54, StepGrams: 0.1}, 0.9, PieceMass{18, 1}, honestplate.ErrInput},
		"no mass":      {Pick{Count: 3}, 0.9, PieceMass{18, 1}, honestplate.ErrInput},
		"groups":       {Pick{Count: 3, Grams: 54, Groups: []Group{{"a", 3}}}, 0.9, PieceMass{18, 1}, honestplate.ErrInput},
		"too large":    {Pick{Count: 150, Grams: 2700}, 0.9, PieceMass{18, 1}, honestplate.ErrRange},
		"too heavy":    {Pick{Count: 3, Grams: 54, StepGrams: 0.1}, 0.9, PieceMass{25, 0.5}, honestplate.ErrInfeasible},
	} {
		if _, err := c.pick.ToWeigh(2, c.chance, c.of); !errors.Is(err, c.kind) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What was weighed already spares weighing.
func TestToWeighCountsWhatIsThere(t *testing.T) {
	p := Pick{Count: 3, Grams: 54, StepGrams: 0.1, Tolerance: 0.5}
	bare, err := p.ToWeigh(2, 0.9, PieceMass{18, 1.5})
	if err != nil {
		t.Fatal(err)
	}
	p.Pieces = []Piece{{Grams: 17}, {Grams: 18.5}, {Grams: 19}}
	more, err := p.ToWeigh(2, 0.9, PieceMass{18, 1.5})
	if err != nil || more.Pieces.Likely >= bare.Pieces.Likely || more.Pieces.Likely < 3 {
		t.Errorf("%v from nothing, %v more with three weighed, %v", bare.Pieces, more.Pieces, err)
	}
}

func FuzzToWeigh(f *testing.F) {
	f.Add(1, 3, 54.0, 0.1, 0.5, 0.9, 18.0, 1.5)
	f.Add(2, 2, 30.0, 1.0, 0.0, 0.5, 20.0, 8.0)
	f.Fuzz(func(t *testing.T, k, count int, grams, step, tolerance, chance, mean, sd float64) {
		if k > 2 || count > 3 {
			t.Skip("slow")
		}
		n, err := Pick{Count: count, Grams: grams, StepGrams: step, Tolerance: tolerance}.ToWeigh(k, chance, PieceMass{mean, sd})
		if err != nil {
			return
		}
		if n.Pieces.Check("Pieces") != nil || n.Chance.Check("Chance") != nil || n.Pieces.Low < float64(k*count) || n.Chance.Likely < chance {
			t.Fatalf("%+v", n)
		}
	})
}

// As many sets as a tray of 2,000 pieces holds are built within 1.6 times the effort,
// also where each is sought twice: at the declared mass, then next to it.
func TestManySetsKeepToTheEffort(t *testing.T) {
	if testing.Short() {
		t.Skip("a second")
	}
	p := Pick{Count: 9, Grams: 162, StepGrams: 0.1, Tolerance: 1, Closest: true}
	for i := range 2000 {
		p.Pieces = append(p.Pieces, Piece{Grams: 15 + float64(i%60)/10, Score: float64(i % 100)})
	}
	got, err := p.Sets(400)
	if err != nil || len(got.Sets) < 210 || got.Work > defaultEffort*8/5 {
		t.Errorf("%d sets of %d with %d steps, %v", len(got.Sets), got.Most, got.Work, err)
	}
}
