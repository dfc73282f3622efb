package sets

import (
	"math/bits"
	"math/rand/v2"
	"testing"

	"example.org/honestplate/portion/internal/subset"
)

// oneGroup draws a tray of up to 12 pieces of one group.
func oneGroup(r *rand.Rand, count int) *tray {
	n := count + r.IntN(13-count)
	p := &Problem{Sets: 20, Goal: Goal(r.IntN(3))}
	p.Groups, p.Effort = []subset.Group{{To: n, Count: count}}, 100_000
	for range n {
		p.Masses = append(p.Masses, 50+r.Int64N(30))
		p.Scores = append(p.Scores, r.Int64N(5))
	}
	p.Target = int64(count) * (50 + r.Int64N(30))
	p.Low, p.High = p.Target-r.Int64N(6), p.Target+r.Int64N(6)
	return newTray(p)
}

// mostPairs tries all ways to pair what is left.
func mostPairs(t *tray, left uint) int {
	if left == 0 {
		return 0
	}
	i := bits.TrailingZeros(left)
	left &^= 1 << i
	most := mostPairs(t, left)
	for rest := left; rest != 0; rest &= rest - 1 {
		k := bits.TrailingZeros(rest)
		if sum := t.mass[i] + t.mass[k]; sum >= t.lo && sum <= t.hi {
			most = max(most, 1+mostPairs(t, left&^(1<<k)))
		}
	}
	return most
}

func TestNoPairingHasMorePairs(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 30))
	for range 2000 {
		tr := oneGroup(r, 2)
		sets, _ := tr.easy()
		used := map[int]bool{}
		for _, s := range sets {
			if sum := tr.massOf(s); s[0] >= s[1] || used[s[0]] || used[s[1]] || sum < tr.lo || sum > tr.hi {
				t.Fatalf("%v of %v in %d..%d", s, tr.mass, tr.lo, tr.hi)
			}
			used[s[0]], used[s[1]] = true, true
		}
		if want := mostPairs(tr, 1<<len(tr.mass)-1); len(sets) != want {
			t.Fatalf("%d pairs of %v in %d..%d, want %d", len(sets), tr.mass, tr.lo, tr.hi, want)
		}
	}
}

// A set that is one piece is chosen at once; the search that lists and packs says the same.
func TestSinglePiecesAreChosenAsBySearch(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 31))
	for range 2000 {
		tr := oneGroup(r, 1)
		tr.Sets = 1 + r.IntN(5)
		got := tr.solve()
		if got.Most == 0 {
			continue
		}
		want := newTray(tr.Problem).small(got.Most)
		if len(got.Sets) != len(want.Sets) || !got.Proven {
			t.Fatalf("%+v, want %+v", got, want)
		}
		if got.Score != want.Score || got.Off != want.Off || got.Least != want.Least || tr.Goal != Closest && got.Bound != want.Bound {
			t.Fatalf("goal %d: %+v, want %+v", tr.Goal, got, want)
		}
		for k, s := range got.Sets {
			if want.First && got.First && s[0] != want.Sets[k][0] {
				t.Fatalf("goal %d: %v, want %v", tr.Goal, got.Sets, want.Sets)
			}
		}
	}
}

func TestAnySetIsFoundWhereThereIsOne(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 32))
	found := 0
	for range 2000 {
		tr := oneGroup(r, 1+r.IntN(11))
		order, there := r.Perm(len(tr.mass)), false
		for mask := range 1 << len(tr.mass) {
			sum := int64(0)
			for i, w := range tr.mass {
				sum += int64(mask>>i&1) * w
			}
			there = there || bits.OnesCount(uint(mask)) == tr.Groups[0].Count && sum >= tr.lo && sum <= tr.hi
		}
		set, known := tr.anyOf(order)
		if !known || there != (set != nil) {
			t.Fatalf("%v, %t; want %t", set, known, there)
		}
		if !there {
			continue
		}
		found++
		if sum := tr.massOf(set); len(set) != tr.Groups[0].Count || sum < tr.lo || sum > tr.hi {
			t.Fatalf("%v weighs %d", set, sum)
		}
	}
	if found < 300 {
		t.Errorf("only %d trays hold a set", found)
	}
}
