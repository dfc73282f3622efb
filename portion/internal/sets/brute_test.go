package sets

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/honestplate/portion/internal/subset"
)

// everyAnswer tries every way to give pieces to wants and returns the best by the goal,
// and of equals the first, as masks in stated order.
func everyAnswer(p Problem) (number int, score, off, least int64, sets []set) {
	n := len(p.Masses)
	place := make([]int, n) // 0 for none
	number = -1
	for {
		var got []set
		score1, off1, least1, ok := int64(0), int64(0), int64(math.MaxInt64), true
		for k := range p.Sets {
			s, mass, any := set{}, int64(0), false
			counts := make([]int, len(p.Groups))
			for i, at := range place {
				if at == k+1 {
					any = true
					s.mask |= bit(i)
					mass += p.Masses[i]
					s.score += p.Scores[i]
					for g, sp := range p.Groups {
						if i >= sp.From && i < sp.To {
							counts[g]++
						}
					}
				}
			}
			if !any {
				continue
			}
			for g, sp := range p.Groups {
				ok = ok && (sp.Count == subset.AnyCount || sp.Count == counts[g])
			}
			if ok = ok && mass >= p.Low && mass <= p.High; !ok {
				break
			}
			s.off = gap(mass, p.Target)
			score1, off1, least1 = score1+s.score, off1+s.off, min(least1, s.score)
			got = append(got, s)
		}
		if ok {
			slices.SortFunc(got, stated)
			if better := func() bool {
				switch {
				case len(got) != number:
					return len(got) > number
				case p.Goal == Least && least1 != least:
					return least1 > least
				case p.Goal == Closest && off1 != off:
					return off1 < off
				case score1 != score:
					return score1 > score
				case off1 != off:
					return off1 < off
				}
				return slices.CompareFunc(got, sets, stated) < 0
			}(); better {
				number, score, off, least, sets = len(got), score1, off1, least1, got
			}
		}
		i := 0
		for ; i < n; i++ {
			if place[i]++; place[i] <= p.Sets {
				break
			}
			place[i] = 0
		}
		if i == n {
			return number, score, off, least, sets
		}
	}
}

// randomTray draws a small problem of one or two groups, scores of
// either sign and often equal.
func randomTray(r *rand.Rand, n int) Problem {
	p := Problem{Goal: Goal(r.IntN(3)), Sets: 1 + r.IntN(3)}
	p.Effort = 1_000_000
	scores := []int{1, 3, 40}[r.IntN(3)]
	even := 1 + int64(r.IntN(2))
	for range n {
		p.Masses = append(p.Masses, even*int64(5+r.IntN(12)))
		p.Scores = append(p.Scores, int64(r.IntN(scores)-scores/4))
	}
	p.Groups = []subset.Group{{To: n}}
	if r.IntN(2) == 0 {
		at := 1 + r.IntN(n-1)
		p.Groups = []subset.Group{{To: at}, {From: at, To: n}}
	}
	for g := range p.Groups {
		c := 1 + r.IntN(2)
		if p.Target += int64(c) * 10 * even; r.IntN(5) == 0 {
			c = subset.AnyCount
		}
		p.Groups[g].Count = c
	}
	p.Target += int64(r.IntN(9)) - 4
	tol := int64(r.IntN(7))
	p.Low, p.High = p.Target-tol, p.Target+tol
	return p
}

// On trays small enough to try everything the answer is the best one, the first of its
// equals, and said to be both.
func TestSolveAgreesWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 14))
	cases := 5000
	if testing.Short() {
		cases = 300
	}
	found := 0
	for k := range cases {
		p := randomTray(r, 4+r.IntN(5))
		a := p.Solve()
		number, score, off, least, sets := everyAnswer(p)
		if number == 0 {
			least = 0
		} else {
			found++
		}
		if len(a.Sets) != number || a.Most != number || a.Score != score || a.Off != off || a.Least != least || !a.Proven || !a.First {
			t.Fatalf("case %d: %+v\nwant %d sets, score %d, off %d, least %d\n%+v", k, a, number, score, off, least, p)
		}
		var got, want []uint64
		for _, s := range sets {
			want = append(want, s.mask)
		}
		for _, s := range a.Sets {
			m := uint64(0)
			for _, i := range s {
				m |= bit(i)
			}
			got = append(got, m)
		}
		if !slices.Equal(got, want) {
			t.Fatalf("case %d: sets %b, want %b, of equal answers the first\n%+v", k, got, want, p)
		}
	}
	if found < cases/3 {
		t.Errorf("only %d of %d cases had sets", found, cases)
	}
}

// Union by union, parted exactly, the answer is the same.
func TestPartingAgreesWithTryingEverything(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 14))
	tried, found := 0, [4]int{}
	for tried < 1500 {
		p := randomTray(r, 4+r.IntN(5))
		p.Goal = Total
		tray := newTray(&p)
		most := tray.mostSets()
		if most == 0 || !tray.partable(len(p.Masses), tray.widest(), tray.hi, 1<<20) {
			continue
		}
		tried++
		a := tray.manySets(most)
		number, score, off, _, sets := everyAnswer(p)
		if !a.Proven || len(a.Sets) != number || a.Most != number || a.Score != score || a.Off != off {
			t.Fatalf("%+v\nwant %d sets, score %d, off %d\n%+v", a, number, score, off, p)
		}
		found[number]++
		checkAnswer(t, p, a)
		var got []uint64
		for _, s := range a.Sets {
			m := uint64(0)
			for _, i := range s {
				m |= bit(i)
			}
			got = append(got, m)
		}
		for k, s := range sets {
			if got[k] != s.mask {
				t.Fatalf("sets %b, want %b, of equal answers the first\n%+v", got, sets, p)
			}
		}
	}
	if found[2] < 50 || found[3] < 5 {
		t.Errorf("trays by number of sets: %v", found)
	}
}

// check fails the test unless every set is permitted and none share a piece,
// and the sums are those of the pieces.
func checkAnswer(t *testing.T, p Problem, a Answer) {
	t.Helper()
	used := map[int]bool{}
	score, off, number, least := int64(0), int64(0), 0, int64(math.MaxInt64)
	for k, s := range a.Sets {
		number++
		mass, points := int64(0), int64(0)
		for _, i := range s {
			if used[i] {
				t.Fatalf("piece %d is in two sets", i)
			}
			used[i] = true
			mass, points = mass+p.Masses[i], points+p.Scores[i]
		}
		for g, sp := range p.Groups {
			n := 0
			for _, i := range s {
				if i >= sp.From && i < sp.To {
					n++
				}
			}
			if sp.Count != subset.AnyCount && sp.Count != n {
				t.Fatalf("set %d holds %d of group %d, want %d", k, n, g, sp.Count)
			}
		}
		if mass < p.Low || mass > p.High || !slices.IsSorted(s) {
			t.Fatalf("set %d %v weighs %d, outside %d..%d", k, s, mass, p.Low, p.High)
		}
		score, off, least = score+points, off+gap(mass, p.Target), min(least, points)
	}
	if number != len(a.Sets) || score != a.Score || off != a.Off || number > 0 && least != a.Least {
		t.Fatalf("%+v does not add up: %d sets, score %d, off %d, least %d", a, number, score, off, least)
	}
	if len(a.Sets) > a.Most || p.Goal == Total && a.Score > a.Bound || p.Goal == Least && number > 0 && a.Least > a.Bound {
		t.Fatalf("%+v is beyond its own bound", a)
	}
}

// With too little effort the answer is still sound, its bounds hold, and what is called
// proven is the answer with effort enough.
func TestLittleEffortStaysHonest(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 14))
	cases := 2000
	if testing.Short() {
		cases = 100
	}
	unproven := 0
	for range cases {
		p := randomTray(r, 8+r.IntN(8))
		full := p.Solve()
		checkAnswer(t, p, full)
		p.Effort = 1 + r.IntN(3000)
		a := p.Solve()
		checkAnswer(t, p, a)
		if !a.Proven {
			unproven++
		}
		if !full.Proven {
			continue
		}
		if a.Most < len(full.Sets) || len(a.Sets) > len(full.Sets) || a.Proven && (len(a.Sets) != len(full.Sets) || a.Score != full.Score || a.Off != full.Off) {
			t.Fatalf("little effort: %+v\nenough: %+v\n%+v", a, full, p)
		}
		if len(a.Sets) == len(full.Sets) && (p.Goal == Total && a.Bound < full.Score || p.Goal == Least && a.Bound < full.Least) {
			t.Fatalf("bound %d, but %+v can be had", a.Bound, full)
		}
	}
	if unproven == 0 {
		t.Error("no case ran out of effort: the test shows nothing")
	}
}
