package top

import (
	"math/rand/v2"
	"slices"
	"testing"
)

func TestSelectionPutsTheFirstInFront(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 14))
	for c := range 2000 {
		n := rng.IntN(300)
		s := make([]fraction, n)
		for i := range s {
			s[i] = fraction{rest: uint64(rng.IntN(1 + c%50)), weight: float64(rng.IntN(3)), party: i}
		}
		switch c % 4 { // orders that trouble naive pivots
		case 1:
			slices.SortFunc(s, func(a, b fraction) int { return int(a.rest) - int(b.rest) })
		case 2:
			slices.SortFunc(s, func(a, b fraction) int { return int(b.rest) - int(a.rest) })
		}
		want := slices.Clone(s)
		slices.SortFunc(want, func(a, b fraction) int {
			if a.before(b) {
				return -1
			}
			return 1
		})
		k := rng.IntN(n + 1)
		Select(s, k, fraction.before)
		got := s[:k]
		slices.SortFunc(got, func(a, b fraction) int {
			if a.before(b) {
				return -1
			}
			return 1
		})
		if !slices.Equal(got, want[:k]) {
			t.Fatalf("the first %d of %d are wrong", k, n)
		}
	}
}

type fraction struct {
	rest   uint64
	weight float64
	party  int
}

func (f fraction) before(g fraction) bool {
	if f.rest != g.rest {
		return f.rest > g.rest
	}
	if f.weight != g.weight {
		return f.weight > g.weight
	}
	return f.party < g.party
}
