package sets

import (
	"slices"
	"strings"
	"testing"

	"example.org/honestplate/portion/internal/subset"
	"example.org/honestplate/testdata"
)

// whole returns the numbers of a field as integers.
func whole(t testing.TB, r testdata.Row, column string) []int64 {
	t.Helper()
	values, err := r.Floats(column)
	if err != nil {
		t.Fatal(err)
	}
	out := make([]int64, len(values))
	for i, v := range values {
		out[i] = int64(v)
	}
	return out
}

// trayOf reads an instance of disjoint_sets.csv.
func trayOf(t testing.TB, r testdata.Row) Problem {
	p := Problem{Sets: int(whole(t, r, "sets_wanted")[0])}
	p.Masses, p.Scores, p.Effort = whole(t, r, "masses_tenth_g"), whole(t, r, "scores"), 10_000_000
	p.Low, p.High = whole(t, r, "sum_from_tenth_g")[0], whole(t, r, "sum_to_tenth_g")[0]
	p.Target = p.Low
	if kinds := r.Text("kinds"); kinds != "" {
		// One of the first kind and two of the second; the pieces come in this order.
		a := strings.Count(kinds, "a")
		p.Groups = []subset.Group{{From: 0, To: a, Count: 1}, {From: a, To: len(p.Masses), Count: 2}}
	} else {
		p.Groups = []subset.Group{{To: len(p.Masses), Count: int(whole(t, r, "pieces_in_a_set")[0])}}
	}
	return p
}

// bestFirst takes the best set, then the best of what is left, as long as there is one.
func bestFirst(p Problem) (number int, score int64) {
	wanted := p.Sets
	for p.Sets = 1; number < wanted; number++ {
		a := p.Solve()
		if len(a.Sets) == 0 {
			break
		}
		score += a.Score
		var rest subset.Problem
		for _, g := range p.Groups {
			from := len(rest.Masses)
			for i := g.From; i < g.To; i++ {
				if !slices.Contains(a.Sets[0], i) {
					rest.Masses, rest.Scores = append(rest.Masses, p.Masses[i]), append(rest.Scores, p.Scores[i])
				}
			}
			rest.Groups = append(rest.Groups, subset.Group{From: from, To: len(rest.Masses), Count: g.Count})
		}
		p.Masses, p.Scores, p.Groups = rest.Masses, rest.Scores, rest.Groups
	}
	return number, score
}

// Every tray of disjoint_sets.csv gives the most sets and the best total, and the best
// least score where it is listed; choosing the best set first does not.
func TestTraysOfThePack(t *testing.T) {
	table, err := testdata.Load("disjoint_sets")
	if err != nil {
		t.Fatal(err)
	}
	fewer, lower := 0, 0
	for _, r := range table.Rows {
		name, p := r.Text("instance"), trayOf(t, r)
		most, total := int(whole(t, r, "most_sets")[0]), whole(t, r, "best_total")[0]
		a := p.Solve()
		checkAnswer(t, p, a)
		if len(a.Sets) != most || a.Most != most || a.Score != total || !a.Proven || !a.First {
			t.Errorf("%s: %+v, want %d sets and %d, proven", name, a, most, total)
		}
		p.Goal = Least
		b := p.Solve()
		checkAnswer(t, p, b)
		if least := whole(t, r, "best_least"); len(least) > 0 && b.Least != least[0] || len(b.Sets) != most || !b.Proven {
			t.Errorf("%s: least %d of %d sets, want %v of %d", name, b.Least, len(b.Sets), least, most)
		}
		p.Goal = Total
		number, score := bestFirst(p)
		switch {
		case number < most:
			fewer++
		case score < total:
			lower++
		case number > most || score > total:
			t.Errorf("%s: the best first gives %d sets and %d, better than %d and %d", name, number, score, most, total)
		}
	}
	// The table says where: 9 trays get fewer sets and 9 more a lower total.
	if fewer != 9 || lower != 9 {
		t.Errorf("the best set first: fewer sets in %d trays and a lower total in %d, want 9 and 9", fewer, lower)
	}
}

// Knapsacks at once, subset sums at once, packing and covering of bins.
func TestSetsAtOnceOfThePack(t *testing.T) {
	table, err := testdata.Load("sets_at_once")
	if err != nil {
		t.Fatal(err)
	}
	asked := 0
	for _, r := range table.Rows {
		if r.Text("family") == "generalised assignment" {
			continue // a piece looks alike wherever it goes
		}
		p := Problem{Sets: 3}
		p.Masses, p.Scores, p.Effort = whole(t, r, "weights"), whole(t, r, "profits"), 10_000_000
		if len(p.Scores) == 0 {
			p.Scores = make([]int64, len(p.Masses))
		}
		p.Groups = []subset.Group{{To: len(p.Masses), Count: subset.AnyCount}}
		targets, optimum := whole(t, r, "capacities_or_target"), whole(t, r, "optimum")[0]
		if slices.Min(targets) != slices.Max(targets) {
			continue // sets of different sizes are another question
		}
		asked++
		if of := exactly(r.Text("pieces_in_a_set")); of > 0 {
			p.Groups[0].Count = of
		}
		p.High, p.Target = targets[0], targets[0]
		switch r.Text("family") {
		case "bin packing, least bins":
			// Three bins of 100 would hold the total of 300 only if all were full.
			p.Low, p.High, p.Target = 100, 100, 100
			optimum = 2
		case "bin covering":
			p.Sets, p.Low, p.High = len(p.Masses), targets[0], 1<<40
		default:
			p.Sets = len(targets)
		}
		a := p.Solve()
		checkAnswer(t, p, a)
		switch r.Text("family") {
		case "bin packing, least bins":
			if len(a.Sets) > int(optimum) || !a.Proven {
				t.Errorf("%s: %d full bins of 3, proven %v: they cannot all be", r.Text("instance"), len(a.Sets), a.Proven)
			}
		case "bin covering":
			if len(a.Sets) != int(optimum) || a.Most != int(optimum) {
				t.Errorf("%s: %d sets of at most %d, want %d", r.Text("instance"), len(a.Sets), a.Most, optimum)
			}
		default:
			if a.Score != optimum || !a.Proven {
				t.Errorf("%s: %d proven %v, want %d", r.Text("instance"), a.Score, a.Proven, optimum)
			}
		}
	}
}

// exactly reads the exact count of a covering; "at most 3" leaves it free, and does not
// bind there.
func exactly(s string) int {
	if s == "exactly 2" {
		return 2
	}
	return 0
}

func BenchmarkTraysOfThePack(b *testing.B) {
	table, err := testdata.Load("disjoint_sets")
	if err != nil {
		b.Fatal(err)
	}
	for _, r := range table.Rows {
		p := trayOf(b, r)
		b.Run(r.Text("instance"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				p.Solve()
			}
		})
	}
}
