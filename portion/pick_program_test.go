package portion

import (
	"math"
	"math/rand/v2"
	"testing"
)

// fullProgram fills the whole table of count and mass, the textbook way, and returns
// the best score and, for it, the least distance from the target.
func fullProgram(w []int, v []int64, count, target, tol int) (score int64, off int, ok bool) {
	const none = math.MinInt64
	top := target + tol
	best := make([][]int64, count+1)
	for c := range best {
		best[c] = make([]int64, top+1)
		for s := range best[c] {
			best[c][s] = none
		}
	}
	best[0][0] = 0
	for i := range w {
		for c := count; c >= 1; c-- {
			for s := top; s >= w[i]; s-- {
				if before := best[c-1][s-w[i]]; before != none {
					best[c][s] = max(best[c][s], before+v[i])
				}
			}
		}
	}
	score = none
	for s := max(target-tol, 0); s <= top; s++ {
		if x := best[count][s]; x != none && (x > score || x == score && max(s-target, target-s) < off) {
			score, off, ok = x, max(s-target, target-s), true
		}
	}
	return score, off, ok
}

// At sizes where trying every set is out of the question, a full table decides.
func TestBestAgreesWithAFullTable(t *testing.T) {
	r := rand.New(rand.NewPCG(37, 38))
	for k := range 400 {
		n := 20 + r.IntN(80)
		count := 1 + r.IntN(min(n, 16))
		spread, scores := 1+r.IntN(100), []int{2, 10, 101, 100_000}[r.IntN(4)]
		w, v := make([]int, n), make([]int64, n)
		p := Pick{Count: count, StepGrams: 1}
		for i := range n {
			w[i], v[i] = 20+r.IntN(spread), int64(r.IntN(scores))
			if k%3 == 0 {
				v[i] += int64(w[i]) // looks go with mass
			}
			p.Pieces = append(p.Pieces, Piece{Grams: float64(w[i]), Score: float64(v[i]) / 8})
		}
		target, tol := count*(20+spread/2)+r.IntN(41)-20, r.IntN(3)*r.IntN(20)
		if target < 1 {
			continue
		}
		p.Grams, p.Tolerance = float64(target), float64(tol)
		score, off, ok := fullProgram(w, v, count, target, tol)
		got, err := p.Best()
		if ok != (err == nil) {
			t.Fatalf("case %d: a set exists: %v, but %v", k, ok, err)
		}
		if ok && (got.Score != float64(score)/8 || math.Abs(got.Over) != float64(off) || !got.Optimal) {
			t.Fatalf("case %d: %v points %v g off, want %v and %v\n%+v", k, got.Score, got.Over, float64(score)/8, off, got.Gap)
		}
	}
}
