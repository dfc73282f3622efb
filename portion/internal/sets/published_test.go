package sets

import (
	"slices"
	"strings"
	"testing"

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
	p := Problem{Mass: whole(t, r, "masses_tenth_g"), Score: whole(t, r, "scores"), Effort: 10_000_000}
	p.Groups = []Span{{0, len(p.Mass)}}
	w := Want{Lo: whole(t, r, "sum_from_tenth_g")[0], Hi: whole(t, r, "sum_to_tenth_g")[0]}
	w.Target = w.Lo
	if kinds := r.Text("kinds"); kinds != "" {
		// One of the first kind and two of the second; the pieces come in this order.
		a := strings.Count(kinds, "a")
		p.Groups, w.Counts = []Span{{0, a}, {a, len(p.Mass)}}, []int{1, 2}
	} else {
		w.Counts = []int{int(whole(t, r, "pieces_in_a_set")[0])}
	}
	for range whole(t, r, "sets_wanted")[0] {
		p.Wants = append(p.Wants, w)
	}
	return p
}

// bestFirst takes the best set, then the best of what is left, as long as there is one.
func bestFirst(t testing.TB, p Problem) (number int, score int64) {
	wants := p.Wants
	for range wants {
		p.Wants = wants[:1]
		a, err := p.Solve()
		if err != nil {
			t.Fatal(err)
		}
		if a.Number == 0 {
			break
		}
		number, score = number+1, score+a.Score
		var rest Problem
		for _, sp := range p.Groups {
			from := len(rest.Mass)
			for i := sp.From; i < sp.To; i++ {
				if !slices.Contains(a.Sets[0], i) {
					rest.Mass, rest.Score = append(rest.Mass, p.Mass[i]), append(rest.Score, p.Score[i])
				}
			}
			rest.Groups = append(rest.Groups, Span{from, len(rest.Mass)})
		}
		p.Mass, p.Score, p.Groups = rest.Mass, rest.Score, rest.Groups
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
		a, err := p.Solve()
		if err != nil {
			t.Fatal(err)
		}
		checkAnswer(t, p, a)
		if a.Number != most || a.Most != most || a.Score != total || !a.Proven || !a.First {
			t.Errorf("%s: %+v, want %d sets and %d, proven", name, a, most, total)
		}
		p.Goal = Least
		b, err := p.Solve()
		if err != nil {
			t.Fatal(err)
		}
		checkAnswer(t, p, b)
		if least := whole(t, r, "best_least"); len(least) > 0 && b.Least != least[0] || b.Number != most || !b.Proven {
			t.Errorf("%s: least %d of %d sets, want %v of %d", name, b.Least, b.Number, least, most)
		}
		p.Goal = Total
		number, score := bestFirst(t, p)
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
	for _, r := range table.Rows {
		if r.Text("family") == "generalised assignment" {
			continue // a piece looks alike wherever it goes
		}
		p := Problem{Mass: whole(t, r, "weights"), Score: whole(t, r, "profits"), Effort: 10_000_000}
		if len(p.Score) == 0 {
			p.Score = make([]int64, len(p.Mass))
		}
		p.Groups = []Span{{0, len(p.Mass)}}
		targets, optimum, of := whole(t, r, "capacities_or_target"), whole(t, r, "optimum")[0], Any
		if fixed := exactly(r.Text("pieces_in_a_set")); fixed > 0 {
			of = fixed
		}
		switch r.Text("family") {
		case "bin packing, least bins":
			// Three bins of 100 would hold the total of 300 only if all were full.
			for range 3 {
				p.Wants = append(p.Wants, Want{Lo: 100, Hi: 100, Target: 100, Counts: []int{Any}})
			}
			optimum = 2
		case "bin covering":
			for range len(p.Mass) {
				p.Wants = append(p.Wants, Want{Lo: targets[0], Hi: 1 << 40, Target: targets[0], Counts: []int{of}})
			}
		default:
			for _, capacity := range targets {
				p.Wants = append(p.Wants, Want{Hi: capacity, Target: capacity, Counts: []int{Any}})
			}
		}
		a, err := p.Solve()
		if err != nil {
			t.Fatal(err)
		}
		checkAnswer(t, p, a)
		switch r.Text("family") {
		case "bin packing, least bins":
			if a.Number > int(optimum) || !a.Proven {
				t.Errorf("%s: %d full bins of 3, proven %v: they cannot all be", r.Text("instance"), a.Number, a.Proven)
			}
		case "bin covering":
			if a.Number != int(optimum) || a.Most != int(optimum) {
				t.Errorf("%s: %d sets of at most %d, want %d", r.Text("instance"), a.Number, a.Most, optimum)
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
				if _, err := p.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
