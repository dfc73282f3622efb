package sets

import (
	"math"
	"math/rand/v2"
	"reflect"
	"runtime"
	"testing"
	"time"

	"example.org/honestplate/portion/internal/subset"
)

// drawn is a tray of n pieces of about 18 g weighed to 0.1 g with scores of 0 to 100, and
// k wanted sets of a count, within a tolerance of what they weigh on average.
func drawn(seed uint64, n, k, count int, tolerance int64) Problem {
	r := rand.New(rand.NewPCG(seed, 7))
	target := int64(180 * count)
	p := Problem{Sets: k}
	p.Groups, p.Effort = []subset.Group{{To: n, Count: count}}, 10_000_000
	p.Low, p.High, p.Target = target-tolerance, target+tolerance, target
	for range n {
		p.Masses = append(p.Masses, int64(max(80, math.Round(180+15*r.NormFloat64()))))
		p.Scores = append(p.Scores, int64(r.IntN(101)))
	}
	return p
}

// On trays whose sets are too many to list, all sets wanted are found, their score is
// within half a percent of the bound (3 % where the least set counts), and the same tray
// gives the same answer.
func TestLargerTrays(t *testing.T) {
	sizes := [][3]int{{40, 3, 9}, {60, 5, 9}, {200, 12, 9}, {1000, 20, 12}}
	if testing.Short() {
		sizes = sizes[:2]
	}
	for _, c := range sizes {
		for _, tolerance := range []int64{0, 10} {
			for _, goal := range []Goal{Total, Least} {
				p := drawn(3, c[0], c[1], c[2], tolerance)
				p.Goal, p.Effort = goal, 1_500_000
				a := p.Solve()
				checkAnswer(t, p, a)
				value := a.Score
				if goal == Least {
					value = a.Least
				}
				if len(a.Sets) != c[1] || float64(value) < 0.97*float64(a.Bound) || goal == Total && float64(value) < 0.995*float64(a.Bound) {
					t.Errorf("%v within %d, goal %d: %d sets, %d of at most %d", c, tolerance, goal, len(a.Sets), value, a.Bound)
				}
				if again := p.Solve(); !reflect.DeepEqual(a, again) {
					t.Errorf("%v: another answer the second time", c)
				}
			}
		}
	}
}

// Where the total of a tray decides, the number is proven without a list: too heavy a
// tray cannot fill all sets.
func TestMassBoundsTheNumber(t *testing.T) {
	p := drawn(1, 38, 4, 9, 0)
	for i := range p.Masses {
		p.Masses[i] += 8
	}
	a := p.Solve()
	checkAnswer(t, p, a)
	if a.Most > 3 {
		t.Errorf("at most %d sets, but 36 pieces of this tray weigh more than 4 sets may", a.Most)
	}
}

// Even masses and an odd total: proven at once, at any size.
func TestParity(t *testing.T) {
	p := drawn(1, 500, 6, 9, 0)
	for i := range p.Masses {
		p.Masses[i] *= 2
	}
	p.Low, p.High, p.Target = 3241, 3241, 3241
	a := p.Solve()
	if len(a.Sets) != 0 || a.Most != 0 || !a.Proven || a.Work > 1000 {
		t.Errorf("%+v: want no set, proven", a)
	}
}

// Effort bounds work and memory: at ten times the effort no more than about ten times
// the work is spent, and a tray of a million pieces needs no more than a small multiple
// of the memory that holds it.
func TestEffortBounds(t *testing.T) {
	for _, effort := range []int{10_000, 100_000, 1_000_000} {
		for _, c := range [][3]int{{24, 2, 11}, {30, 4, 6}, {60, 5, 9}, {300, 20, 12}} {
			for _, goal := range []Goal{Total, Least, Closest} {
				p := drawn(5, c[0], c[1], c[2], 2)
				p.Effort, p.Goal = effort, goal
				a := p.Solve()
				checkAnswer(t, p, a)
				// Beyond the effort: a part that was begun, and the ordering of the pieces.
				if limit := effort + 6*partEffort + 100*c[0]; a.Work > limit {
					t.Errorf("%v, goal %d: %d steps of %d", c, goal, a.Work, effort)
				}
			}
		}
	}
	if testing.Short() {
		return
	}
	p := drawn(5, 1_000_000, 3, 1000, 0)
	p.Effort = 1_000_000
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	start := time.Now()
	a := p.Solve()
	runtime.ReadMemStats(&after)
	checkAnswer(t, p, a)
	t.Logf("a million pieces: %d sets in %v, %d MiB", len(a.Sets), time.Since(start), (after.TotalAlloc-before.TotalAlloc)>>20)
	if got := (after.TotalAlloc - before.TotalAlloc) >> 20; got > 200 {
		t.Errorf("%d MiB for a million pieces", got)
	}
}

func BenchmarkTray24(b *testing.B)     { benchmarkDrawn(b, 24, 4, 4, 1) }
func BenchmarkTray60(b *testing.B)     { benchmarkDrawn(b, 60, 5, 9, 0) }
func BenchmarkTrayOf1000(b *testing.B) { benchmarkDrawn(b, 1000, 20, 12, 0) }

func benchmarkDrawn(b *testing.B, n, k, count int, tolerance int64) {
	var trays []Problem
	for seed := range uint64(10) {
		trays = append(trays, drawn(seed, n, k, count, tolerance))
	}
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		trays[i%10].Solve()
	}
}
