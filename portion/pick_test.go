package portion

import (
	"errors"
	"math/rand/v2"
	"slices"
	"testing"
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
			if p.Aim == ClosestTotal {
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
	p := Pick{StepGrams: 1, Tolerance: float64(r.IntN(6)), NeverBelow: r.IntN(4) == 0, NeverAbove: r.IntN(4) == 0, Aim: Aim(r.IntN(2))}
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
	for k := range 10_000 {
		p := randomPick(r)
		want, ok := bruteBest(p)
		got, err := p.Best()
		if !ok {
			if !errors.Is(err, ErrInfeasible) {
				t.Fatalf("case %d: want infeasible, have %v, %v\n%+v", k, got.Chosen, err, p)
			}
			continue
		}
		feasible++
		if err != nil || !slices.Equal(got.Chosen, want) || !got.Proof.Optimal || got.Proof.Gap != 0 {
			t.Fatalf("case %d: want %v, have %v, %+v, %v\n%+v", k, want, got.Chosen, got.Proof, err, p)
		}
	}
	if feasible < 4000 {
		t.Errorf("only %d cases had an answer", feasible)
	}
}
