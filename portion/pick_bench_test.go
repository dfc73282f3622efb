package portion

import (
	"math"
	"math/rand/v2"
	"testing"
)

// weighed draws n pieces of about 18 g (normal, 3 g) weighed to 0.1 g, with whole
// scores 0..100, as off a tray.
func weighed(n int, seed uint64) []Piece {
	r := rand.New(rand.NewPCG(seed, 0))
	out := make([]Piece, n)
	for i := range out {
		out[i] = Piece{
			Grams: float64(max(80, int64(math.Round(180+30*r.NormFloat64())))) / 10,
			Score: float64(r.IntN(101)),
		}
	}
	return out
}

func benchmarkPick(b *testing.B, n, count int, tolerance float64, closest bool) {
	picks := make([]Pick, 10)
	for i := range picks {
		picks[i] = Pick{Pieces: weighed(n, uint64(i)), Count: count, Grams: 18 * float64(count), StepGrams: 0.1, Tolerance: tolerance, Closest: closest}
	}
	b.ReportAllocs()
	work, i := 0, 0
	for b.Loop() {
		got, err := picks[i%len(picks)].Best()
		if err != nil || !got.Optimal {
			b.Fatal(got.Gap, err)
		}
		work += got.Work
		i++
	}
	b.ReportMetric(float64(work)/float64(i), "steps/op")
}

// The closest total with the best score there; the best score within 2 g; the
// best score at exactly the declared mass.
func BenchmarkPick12Of60Closest(b *testing.B) { benchmarkPick(b, 60, 12, 216, true) }
func BenchmarkPick12Of60Within(b *testing.B)  { benchmarkPick(b, 60, 12, 2, false) }
func BenchmarkPick12Of60Exact(b *testing.B)   { benchmarkPick(b, 60, 12, 0, false) }
func BenchmarkPick40Of500Closest(b *testing.B) {
	benchmarkPick(b, 500, 40, 720, true)
}
func BenchmarkPick40Of500Within(b *testing.B) { benchmarkPick(b, 500, 40, 2, false) }
func BenchmarkPick40Of500Exact(b *testing.B)  { benchmarkPick(b, 500, 40, 0, false) }

// Without scores only the total counts.
func BenchmarkPick12Of60Unscored(b *testing.B) {
	p := Pick{Pieces: weighed(60, 1), Count: 12, Grams: 216, StepGrams: 0.1}
	for i := range p.Pieces {
		p.Pieces[i].Score = 0
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Best(); err != nil {
			b.Fatal(err)
		}
	}
}
