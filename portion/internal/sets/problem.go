// Package sets finds disjoint sets of pieces at once: so many of a tray, each weighing
// what is wanted, most sets first and then the best looks.
//
// Everything is counted in integers. Trays of up to 64 pieces are solved exactly: where
// the permitted sets are few they are listed, then packed by branch and bound with a table
// of what was seen; where they are many the pieces used at all come union by union in
// order of score, and each union is parted exactly. On larger trays, and where the effort
// ends before, sets are built one by one and improved by solving small parts exactly, and
// a bound says how far from the best the answer can be.
//
// problem.go says what is asked, solve.go chooses the way; family.go, pack.go and exact.go
// list and pack, union.go, parting.go and halves.go go by unions, relax.go prices mass for
// both, built.go and improve.go build, part.go solves a part, supply.go simulates trays.
package sets

import (
	"fmt"
	"slices"

	"example.org/honestplate"
)

// Any as a count leaves the number of pieces of a group free.
const Any = -1

// A Goal says what is best among answers with the most sets.
type Goal int

const (
	Total   Goal = iota // the highest total score, then the least distance of the totals
	Least               // the highest score of the least set, then as Total
	Closest             // the least distance of the totals, then the highest total score
	Exist               // only the number counts
)

// A Want is one wanted set.
type Want struct {
	Lo, Hi, Target int64 // permitted totals and the declared one, in steps of the scale
	Counts         []int // pieces of each group, or Any
}

// A Span is a group: the positions From up to but without To.
type Span struct{ From, To int }

// A Problem is a tray and the sets wanted from it.
type Problem struct {
	Mass, Score []int64 // of each piece; masses above 0
	Groups      []Span  // one after the other, together all pieces
	Wants       []Want
	Goal        Goal
	Effort      int // steps of the search
}

// An Answer is what was found.
//
// Of answers equal in number, goal and what breaks its ties, the one stands whose sets
// come first: sets are listed by their earliest piece, and at the first set in which two
// answers differ the better holds the earliest piece that the other's lacks.
type Answer struct {
	Sets   [][]int // by want: positions, ascending; nil where there is none
	Number int     // of sets found
	Most   int     // no answer has more sets than this
	Score  int64   // of all sets together
	Least  int64   // of the set with the lowest
	Off    int64   // distances of the totals from what is wanted, together
	// Bound is what no answer with Number sets exceeds: of Score, or of Least where the
	// goal is Least.
	Bound  int64
	Proven bool // no answer is better
	First  bool // and no equal one comes earlier
	Work   int  // steps spent
}

// limits of a problem, so that sums stay inside 64 bits.
const (
	maxWants = 1000
	maxSum   = 1 << 60
)

func (p *Problem) check() error {
	if len(p.Mass) != len(p.Score) || len(p.Mass) == 0 {
		return &honestplate.InputError{Field: "Pieces", Got: fmt.Sprintf("%d masses and %d scores", len(p.Mass), len(p.Score)), Want: "one of each for every piece"}
	}
	if len(p.Wants) == 0 || len(p.Wants) > maxWants {
		return &honestplate.InputError{Field: "Sets", Got: fmt.Sprint(len(p.Wants)), Want: fmt.Sprintf("1 to %d sets", maxWants)}
	}
	var mass, score int64
	for i, w := range p.Mass {
		v := max(p.Score[i], -p.Score[i])
		if w < 0 || v < 0 || w > maxSum-mass || v > maxSum-score {
			return &honestplate.InputError{Field: "Pieces", Got: "masses or scores beyond counting", Want: "sums below 2^60"}
		}
		mass, score = mass+w, score+v
	}
	at := 0
	for _, g := range p.Groups {
		if g.From != at || g.To < g.From {
			return &honestplate.InputError{Field: "Groups", Got: "groups with gaps", Want: "groups one after the other"}
		}
		at = g.To
	}
	if at != len(p.Mass) {
		return &honestplate.InputError{Field: "Groups", Got: fmt.Sprintf("%d pieces in groups", at), Want: "all pieces"}
	}
	for _, w := range p.Wants {
		if len(w.Counts) != len(p.Groups) {
			return &honestplate.InputError{Field: "Sets", Got: fmt.Sprintf("%d counts", len(w.Counts)), Want: "one for each group"}
		}
	}
	return nil
}

// Solve returns the best answer that the effort finds, with what is known about it. An
// answer with no set at all is an answer; Most says whether that is proven.
func (p Problem) Solve() (Answer, error) {
	if err := p.check(); err != nil {
		return Answer{}, err
	}
	t := newTray(&p)
	a := t.solve()
	a.Work = t.work
	return a, nil
}

// sameWant reports whether two wants ask for the same.
func sameWant(a, b Want) bool {
	return a.Lo == b.Lo && a.Hi == b.Hi && a.Target == b.Target && slices.Equal(a.Counts, b.Counts)
}
