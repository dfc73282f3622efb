package portion

import (
	"errors"
	"math/rand/v2"
	"testing"
)

// Where nothing is permitted the error names the totals on either side, as trying
// every set finds them.
func TestInfeasibleNamesTheTotalsOnEitherSide(t *testing.T) {
	r := rand.New(rand.NewPCG(61, 62))
	refused := 0
	for k := range 2000 {
		p := randomPick(r)
		p.Tolerance = float64(r.IntN(2))
		if r.IntN(2) == 0 {
			for i := range p.Pieces {
				p.Pieces[i].Grams = 7 * float64(1+r.IntN(40)) // gaps between the totals
				p.Pieces[i].Score = 0
			}
			p.Grams = float64(1 + r.IntN(800))
		}
		_, err := p.Best()
		if err == nil {
			continue
		}
		var e *InfeasibleError
		if !errors.As(err, &e) {
			t.Fatalf("case %d: %v", k, err)
		}
		refused++
		if below, above := totalsAround(p); e.Below.Value != below || e.Above.Value != above || e.Below.Given != (below > 0) || e.Above.Given != (above > 0) {
			t.Fatalf("case %d: %v and %v, want %v and %v\n%+v", k, e.Below, e.Above, below, above, p)
		}
	}
	if refused < 400 {
		t.Errorf("only %d cases were refused", refused)
	}
}

// totalsAround tries every set: the nearest total at or below what is declared, and
// at or above it; 0 where there is none.
func totalsAround(p Pick) (below, above float64) {
	at := map[string]int{}
	for g := range p.Groups {
		at[p.Groups[g].Name] = g
	}
	for bits := range 1 << len(p.Pieces) {
		sum, n := 0.0, 0
		count := make([]int, len(p.Groups))
		for i, piece := range p.Pieces {
			if bits>>i&1 == 1 {
				sum += piece.Grams
				n++
				if len(count) > 0 {
					count[at[piece.Group]]++
				}
			}
		}
		ok := p.Count == 0 || n == p.Count
		for g := range count {
			ok = ok && count[g] == p.Groups[g].Count
		}
		if !ok {
			continue
		}
		if sum <= p.Grams && sum > below {
			below = sum
		}
		if sum >= p.Grams && (above == 0 || sum < above) {
			above = sum
		}
	}
	return below, above
}

// Where looks do not matter and the totals are too many to list, a set is still found: any
// start is taken to the declared mass by exchanging pieces.
func TestMostOfManyPiecesAreChosen(t *testing.T) {
	p := Pick{Pieces: weighed(2000, 1), Count: 1292, Grams: 18 * 1292, StepGrams: 0.1}
	for i := range p.Pieces {
		p.Pieces[i].Score = 0
	}
	got, err := p.Best()
	if err != nil || len(got.Chosen) != 1292 || got.Over != 0 || !got.Optimal {
		t.Errorf("%d pieces of %v g, optimal %t, %v", len(got.Chosen), got.Grams, got.Optimal, err)
	}
}
