package portion

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/honestplate"
)

// bruteBest tries every subset, in its own way: floats are avoided by using whole
// grams and whole scores.
func bruteBest(p Pick) (best []int, found bool) {
	n := len(p.Pieces)
	value := func(set []int) (score, over float64, ok bool) {
		count := map[string]int{}
		for _, i := range set {
			score += p.Pieces[i].Score
			over += p.Pieces[i].Grams
			count[p.Pieces[i].Group]++
		}
		over -= p.Grams
		ok = max(over, -over) <= p.Tolerance && (!p.NeverBelow || over >= 0) && (!p.NeverAbove || over <= 0)
		if p.Count > 0 {
			ok = ok && len(set) == p.Count
		}
		for _, g := range p.Groups {
			ok = ok && count[g.Name] == g.Count
		}
		return score, max(over, -over), ok
	}
	// In the order of groups, then as given.
	rank := make([]int, n)
	for i := range n {
		rank[i] = i
		for k, g := range p.Groups {
			if g.Name == p.Pieces[i].Group {
				rank[i] += k * n
			}
		}
	}
	ranked := func(set []int) []int {
		var out []int
		for _, i := range set {
			out = append(out, rank[i])
		}
		slices.Sort(out)
		return out
	}
	var bestScore, bestOver float64
	for bits := range 1 << n {
		var set []int
		for i := range n {
			if bits>>i&1 == 1 {
				set = append(set, i)
			}
		}
		score, over, ok := value(set)
		if !ok {
			continue
		}
		less := !found
		if found {
			a, b := [2]float64{-score, over}, [2]float64{-bestScore, bestOver}
			if p.Closest {
				a, b = [2]float64{over, -score}, [2]float64{bestOver, -bestScore}
			}
			c := slices.Compare(a[:], b[:])
			less = c < 0 || c == 0 && slices.Compare(ranked(set), ranked(best)) < 0
		}
		if less {
			best, bestScore, bestOver, found = set, score, over, true
		}
	}
	return best, found
}

func randomPick(r *rand.Rand) Pick {
	n := 1 + r.IntN(11)
	p := Pick{StepGrams: 1, Tolerance: float64(r.IntN(6)), NeverBelow: r.IntN(4) == 0, NeverAbove: r.IntN(4) == 0, Closest: r.IntN(2) == 1}
	scores := 1 + r.IntN(12)
	spread := 1 + r.IntN(30)
	groups := []string{"a", "b", "c"}[:1+r.IntN(3)]
	members := map[string]int{}
	for range n {
		g := groups[r.IntN(len(groups))]
		members[g]++
		p.Pieces = append(p.Pieces, Piece{Grams: float64(5 + r.IntN(spread)), Score: float64(r.IntN(scores) - 2), Group: g})
	}
	expected := 0
	switch r.IntN(3) {
	case 0:
		p.Count = r.IntN(n + 1)
		expected = p.Count
		if p.Count == 0 {
			expected = n / 2
		}
	case 1:
		for _, g := range groups {
			if members[g] > 0 {
				c := r.IntN(members[g] + 1)
				expected += c
				p.Groups = append(p.Groups, Group{g, c})
			}
		}
		r.Shuffle(len(p.Groups), func(i, j int) { p.Groups[i], p.Groups[j] = p.Groups[j], p.Groups[i] })
	default:
		p.Count = 0
		expected = r.IntN(n + 1)
	}
	p.Grams = float64(max(1, expected*(5+spread/2)+r.IntN(11)-5))
	return p
}

func TestBestAgreesWithTryingEverySet(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	feasible := 0
	for k := range 1000 {
		p := randomPick(r)
		want, ok := bruteBest(p)
		got, err := p.Best()
		if !ok {
			if !errors.Is(err, honestplate.ErrInfeasible) {
				t.Fatalf("case %d: want infeasible, have %v, %v\n%+v", k, got.Chosen, err, p)
			}
			continue
		}
		feasible++
		if err != nil || !slices.Equal(got.Chosen, want) || !got.Optimal || !got.First || got.Gap != 0 {
			t.Fatalf("case %d: want %v, have %v, %+v, %v\n%+v", k, want, got.Chosen, got.Gap, err, p)
		}
	}
	if feasible < 400 {
		t.Errorf("only %d cases had an answer", feasible)
	}
}

func TestBestDoesNotDependOnTheOrderGiven(t *testing.T) {
	r := rand.New(rand.NewPCG(25, 26))
	for k := range 1000 {
		p := randomPick(r)
		q := p
		q.Pieces = slices.Clone(p.Pieces)
		r.Shuffle(len(q.Pieces), func(i, j int) { q.Pieces[i], q.Pieces[j] = q.Pieces[j], q.Pieces[i] })
		a, errA := p.Best()
		b, errB := q.Best()
		if (errA == nil) != (errB == nil) || a.Score != b.Score || math.Abs(a.Over) != math.Abs(b.Over) {
			t.Fatalf("case %d: %v %v, shuffled %v %v", k, a, errA, b, errB)
		}
		if errA != nil && errA.Error() != errB.Error() {
			t.Fatalf("case %d: %v, shuffled %v", k, errA, errB)
		}
	}
}

func TestMoreToleranceNeverScoresLess(t *testing.T) {
	r := rand.New(rand.NewPCG(27, 28))
	for k := range 1000 {
		p := randomPick(r)
		p.Closest = false
		a, err := p.Best()
		if err != nil {
			continue
		}
		p.Tolerance++
		b, err := p.Best()
		if err != nil || b.Score < a.Score {
			t.Fatalf("case %d: %v, with more tolerance %v, %v", k, a.Score, b.Score, err)
		}
		if strict := p; strict.Tolerance > 0 {
			strict.NeverBelow = true
			if c, err := strict.Best(); err == nil && (c.Over < 0 || c.Score > b.Score) {
				t.Fatalf("case %d: never below gives %v over, %v points", k, c.Over, c.Score)
			}
		}
	}
}

// Scores that are multiples of a thousandth choose as the same scores in whole
// numbers do, though their sums as float64 differ in the last place.
func TestDecimalScoresAreExact(t *testing.T) {
	r := rand.New(rand.NewPCG(29, 30))
	for k := range 2000 {
		p := randomPick(r)
		a, err := p.Best()
		if err != nil {
			continue
		}
		q := p
		q.Pieces = slices.Clone(p.Pieces)
		for i := range q.Pieces {
			q.Pieces[i].Score /= 1000
			q.Pieces[i].Grams /= 10
		}
		q.Grams, q.StepGrams, q.Tolerance = p.Grams/10, 0.1, p.Tolerance/10
		b, err := q.Best()
		if err != nil || !slices.Equal(a.Chosen, b.Chosen) || b.Score != a.Score/1000 || b.Grams != a.Grams/10 {
			t.Fatalf("case %d: %v, in tenths %v, %v", k, a, b, err)
		}
	}
}

func TestCountAloneTakesTheBestLooking(t *testing.T) {
	p := Pick{Pieces: weighed(30, 5), Count: 7}
	got, err := p.Best()
	if err != nil {
		t.Fatal(err)
	}
	var scores []float64
	for _, x := range p.Pieces {
		scores = append(scores, x.Score)
	}
	slices.Sort(scores)
	want := 0.0
	for _, s := range scores[23:] {
		want += s
	}
	if got.Score != want || len(got.Chosen) != 7 || !got.Optimal || got.Over != 0 {
		t.Errorf("%+v, want %v points", got, want)
	}
}

func TestInfeasibleNamesTheNearestTotals(t *testing.T) {
	even := Pick{Pieces: []Piece{{Grams: 10}, {Grams: 12}, {Grams: 20}, {Grams: 14}}, Count: 2, StepGrams: 1}
	none, some := honestplate.Optional{}, honestplate.Some
	for _, c := range []struct {
		grams        float64
		below, above honestplate.Optional
		text         string
	}{
		{23, some(22), some(24), "the nearest they reach are 22 g and 24 g"},
		{60, some(34), none, "the most they reach is 34 g"},
		{5, none, some(22), "the least they reach is 22 g"},
	} {
		p := even
		p.Grams = c.grams
		_, err := p.Best()
		var e *InfeasibleError
		if !errors.As(err, &e) || !errors.Is(err, honestplate.ErrInfeasible) || e.Below != c.below || e.Above != c.above || !strings.HasSuffix(e.Error(), c.text) {
			t.Errorf("%v g: have %+v", c.grams, err)
		}
	}
	never := even
	never.Grams, never.Tolerance, never.NeverBelow = 27, 2, true
	if _, err := never.Best(); err == nil || !strings.Contains(err.Error(), "no 2 of the pieces weigh 27 g within 2 g, never below") {
		t.Errorf("have %v", err)
	}
	never.Count, never.Tolerance, never.NeverBelow, never.NeverAbove = 0, 0, false, true
	if _, err := never.Best(); err == nil || !strings.Contains(err.Error(), "no set of the pieces weighs 27 g, to the step, never above; the nearest they reach are 26 g and 30 g") {
		t.Errorf("have %v", err)
	}
	if unknown := (&InfeasibleError{Pick: even}); !strings.Contains(unknown.Error(), "allow more Effort") {
		t.Errorf("have %v", unknown)
	}
}

// Totals too many to list and scores that hardly differ from mass leave the search
// with nothing to prune: the effort ends it, with a gap that holds.
func TestEffortBoundsTheSearchAndTheGapHolds(t *testing.T) {
	if testing.Short() {
		t.Skip("seconds")
	}
	r := rand.New(rand.NewPCG(31, 32))
	p := Pick{Count: 30, StepGrams: 0.001}
	for range 200 {
		steps := 10_000_000 + r.Int64N(90_000_000)
		p.Pieces = append(p.Pieces, Piece{Grams: float64(steps) / 1000, Score: float64(steps+r.Int64N(1000)) / 1000})
	}
	p.Grams, p.Tolerance, p.Effort = 1_500_000, 0.5, 50_000
	short, err := p.Best()
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(short.Over) > 0.5 || len(short.Chosen) != 30 || short.Gap < 0 || short.Bound < short.Score {
		t.Errorf("%+v", short)
	}
	if short.Work > 4_000_000 {
		t.Errorf("%d steps of work for an effort of 50 000", short.Work)
	}
	again, err := p.Best()
	if err != nil || !reflect.DeepEqual(short, again) {
		t.Errorf("another answer the second time: %v", err)
	}
	p.Effort = 3_000_000
	long, err := p.Best()
	if err != nil {
		t.Fatal(err)
	}
	if long.Score > short.Bound || short.Score > long.Bound {
		t.Errorf("bounds contradict: %v of %v, %v of %v", short.Score, short.Bound, long.Score, long.Bound)
	}
	// Closest total where the totals cannot be listed.
	p.Closest, p.Tolerance = true, 1000
	p.Effort = 50_000
	if got, err := p.Best(); err != nil || math.Abs(got.Over) > 1000 {
		t.Errorf("%+v, %v", got.Over, err)
	}
	// Nothing scored: the totals are all that counts, and still too many.
	for i := range p.Pieces {
		p.Pieces[i].Score = 0
	}
	p.Closest = false
	if got, err := p.Best(); err != nil || math.Abs(got.Over) > 1000 {
		t.Errorf("%+v, %v", got.Over, err)
	}
}

// Where many sets are equal the effort may end before their order is settled; the
// score and the total are proven all the same.
func TestManyEqualSetsAreStillProvenBest(t *testing.T) {
	p := Pick{Pieces: weighed(500, 1), Count: 40, Grams: 720, StepGrams: 0.1, Effort: 200_000}
	for i := range p.Pieces {
		p.Pieces[i].Score = p.Pieces[i].Grams // so every permitted set scores 720
	}
	got, err := p.Best()
	if err != nil || !got.Optimal || got.First || got.Score != 720 || got.Over != 0 {
		t.Errorf("%+v, %v", got.Gap, err)
	}
	// No count, no scores, and more totals than can be listed.
	p.Pieces, p.Count, p.Grams = weighed(100_000, 2), 0, 100_000
	for i := range p.Pieces {
		p.Pieces[i].Score = 0
	}
	if got, err := p.Best(); err != nil || got.Over != 0 || !got.Optimal {
		t.Errorf("%+v, %v", got.Gap, err)
	}
}

func TestEffortSpentWithoutAnAnswerIsAnError(t *testing.T) {
	// Multiples of 997 steps, one of them 500 more, never make a total one off them, and
	// the totals are too many to list at this effort.
	r := rand.New(rand.NewPCG(33, 34))
	p := Pick{Count: 20, StepGrams: 1, Grams: 20*997*50_000 + 1, Effort: 1000}
	for range 60 {
		p.Pieces = append(p.Pieces, Piece{Grams: float64(997 * (1000 + r.IntN(99_000))), Score: float64(r.IntN(10))})
	}
	p.Pieces[7].Grams += 500
	for _, closest := range []bool{false, true} {
		p.Closest = closest
		var e *honestplate.InputError
		if _, err := p.Best(); !errors.As(err, &e) || e.Field != "Effort" || e.Got != "1000 steps" {
			t.Errorf("have %v", err)
		}
	}
}

// A scale of 0.2 g read at 0.1 g: no choice of even masses weighs an odd total, and that
// is known without a search, with the totals next to it.
func TestEvenMassesHaveNoOddTotal(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for _, count := range []int{0, 40} {
		p := Pick{Count: count, Grams: 760.1, StepGrams: 0.1}
		for range 500 {
			p.Pieces = append(p.Pieces, Piece{Grams: float64(2*(80+r.IntN(30))) / 10, Score: float64(r.IntN(100))})
		}
		_, err := p.Best()
		var e *InfeasibleError
		if !errors.As(err, &e) {
			t.Fatalf("count %d: %v", count, err)
		}
		if e.Below.Value != 760 || e.Above.Value != 760.2 {
			t.Errorf("count %d: next to it %v and %v, want 760 and 760.2", count, e.Below, e.Above)
		}
		p.Grams = 760.2
		if got, err := p.Best(); err != nil || got.Grams != 760.2 {
			t.Errorf("count %d: %g g, %v", count, got.Grams, err)
		}
	}
}

// Effort bounds the work: at most eight times as much is spent, for once it is over a set
// must still be found.
func TestEffortBoundsTheWork(t *testing.T) {
	for _, n := range []int{500, 20_000} {
		for _, effort := range []int{50_000, 1_000_000} {
			p := Pick{Pieces: weighed(n, 3), Count: n / 10, Grams: 1.8 * float64(n), StepGrams: 0.1, Effort: effort}
			for i := range p.Pieces {
				p.Pieces[i].Score = 10 * p.Pieces[i].Grams // looks go with mass: the hard kind
			}
			got, err := p.Best()
			if err != nil {
				t.Fatal(err)
			}
			if got.Work > 8*effort+10*n {
				t.Errorf("%d pieces: %d steps of %d", n, got.Work, effort)
			}
		}
	}
}

func TestBestRefusesByName(t *testing.T) {
	good := Pick{Pieces: []Piece{{Name: "tart", Grams: 10}, {Grams: 12}, {Grams: 20}}, Count: 2, Grams: 22, StepGrams: 1}
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name   string
		change func(*Pick)
	}{
		{"Pieces is empty", func(p *Pick) { p.Pieces = nil }},
		{"Pieces is", func(p *Pick) { p.Pieces = make([]Piece, maxPieces+1) }},
		{"Effort", func(p *Pick) { p.Effort = -1 }},
		{"ScoreStep", func(p *Pick) { p.ScoreStep = -1 }},
		{"Count", func(p *Pick) { p.Count = 4 }},
		{"Count", func(p *Pick) { p.Count = -1 }},
		{"Pieces[0].Grams", func(p *Pick) { p.Pieces[0].Grams = nan }},
		{"Pieces[1].Grams", func(p *Pick) { p.Pieces[1].Grams = 0 }},
		{"Pieces[1].Grams", func(p *Pick) { p.Pieces[1].Grams = 1e10 }},
		{"Pieces[1].Grams", func(p *Pick) { p.Pieces[1].Grams = 12.5 }},
		{"Pieces[1].Grams", func(p *Pick) { p.Pieces[1].Grams = 1e-9 }},
		{"steps in all", func(p *Pick) { p.StepGrams, p.Pieces[1].Grams, p.Pieces[2].Grams = 0.001, 6e8, 6e8 }},
		{"Grams", func(p *Pick) { p.Grams = 0 }},
		{"Grams", func(p *Pick) { p.Grams = -1 }},
		{"Grams", func(p *Pick) { p.Grams = 22.5 }},
		{"StepGrams", func(p *Pick) { p.StepGrams = nan }},
		{"Tolerance", func(p *Pick) { p.Tolerance = -1 }},
		{"Tolerance", func(p *Pick) { p.Tolerance = inf }},
		{"Pieces[0].Score", func(p *Pick) { p.Pieces[0].Score = inf }},
		{"Pieces[1].Score", func(p *Pick) { p.Pieces[1].Score = -1e15 }},
		{"Groups[1].Name", func(p *Pick) { p.Groups = []Group{{"", 2}, {"b", 1}} }},
		{"Groups[0].Count", func(p *Pick) { p.Groups = []Group{{"", 4}} }},
		{"Pieces[0].Group", func(p *Pick) { p.Pieces[1].Group = "b"; p.Groups = []Group{{"b", 1}} }},
		{"Count", func(p *Pick) { p.Groups = []Group{{"", 1}} }},
	} {
		p := good
		p.Pieces = slices.Clone(good.Pieces)
		c.change(&p)
		if _, err := p.Best(); err == nil || !strings.Contains(err.Error(), c.name) || !(errors.Is(err, honestplate.ErrInput) || errors.Is(err, honestplate.ErrRange)) {
			t.Errorf("want an error about %s, have %v", c.name, err)
		}
	}
}

func FuzzBest(f *testing.F) {
	f.Add(uint64(1), 8, 3, 50.0, 1.0, 3.0, false, false, 0, 1000, 0.0, 30)
	f.Add(uint64(2), 20, 0, 120.0, 0.1, 0.0, true, false, 1, 10, 1.0, 3000)
	f.Fuzz(func(t *testing.T, seed uint64, n, count int, grams, step, tolerance float64, below, above bool, aim, effort int, scoreStep float64, spread int) {
		if n > 60 || effort > 100_000 || effort == 0 {
			t.Skip("slow")
		}
		r := rand.New(rand.NewPCG(seed, 1))
		p := Pick{Count: count, Grams: grams, StepGrams: step, Tolerance: tolerance, NeverBelow: below, NeverAbove: above, Closest: aim == 1, Effort: effort, ScoreStep: scoreStep}
		for range n {
			p.Pieces = append(p.Pieces, Piece{Grams: step * float64(1+r.IntN(max(spread, 1))), Score: (r.Float64() - 0.3) * 100})
		}
		if all, err := p.Sets(1 + int(seed%4)); err == nil {
			used := map[int]bool{}
			for _, s := range all.Sets {
				for _, k := range s.Chosen {
					if used[k] {
						t.Fatalf("piece %d is in two sets", k)
					}
					used[k] = true
				}
				if math.IsNaN(s.Grams+s.Over+s.Score) || grams != 0 && math.Abs(s.Over) > tolerance*(1+1e-9)+1e-9 {
					t.Fatalf("%+v, tolerance %v", s, tolerance)
				}
			}
			if math.IsNaN(all.Score+all.Bound) || all.Gap < 0 || len(all.Sets) > all.Most {
				t.Fatalf("%+v", all)
			}
		}
		got, err := p.Best()
		if err != nil {
			return
		}
		if count > 0 && len(got.Chosen) != count {
			t.Fatalf("%d pieces, want %d", len(got.Chosen), count)
		}
		if math.IsNaN(got.Score+got.Grams+got.Over+got.Bound+got.Gap) || got.Gap < 0 || (got.Optimal && got.Gap != 0) {
			t.Fatalf("%+v", got)
		}
		if grams != 0 && (math.Abs(got.Over) > tolerance*(1+1e-9)+1e-9 || below && got.Over < 0 || above && got.Over > 0) {
			t.Fatalf("%v g over, tolerance %v", got.Over, tolerance)
		}
	})
}
