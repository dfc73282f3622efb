// Package sets finds disjoint sets of pieces at once: so many of a tray, each weighing
// what is wanted, most sets first and then the best looks.
//
// Everything is counted in integers. Trays of up to 64 pieces are solved exactly: where
// the permitted sets are few, or the goal wants it, they are listed, then packed by branch
// and bound with a table of what was seen; else the pieces used at all come union by union
// in order of score, and each union is parted exactly. On larger trays, and where the
// effort ends before, sets are built one by one and improved by solving small parts
// exactly, and a bound says how far from the best the answer can be.
//
// problem.go says what is asked, solve.go chooses the way; family.go, pack.go and exact.go
// list and pack, union.go, parting.go and halves.go go by unions, relax.go prices mass for
// both, built.go, grow.go and improve.go build, part.go solves a part, easy.go has what is
// found at once, exist.go asks only whether sets exist, supply.go simulates trays.
package sets

import "example.org/honestplate/portion/internal/subset"

// A Goal says what is best among answers with the most sets.
type Goal int

const (
	Total   Goal = iota // the highest total score, then the least distance of the totals
	Least               // the highest score of the least set, then as Total
	Closest             // the least distance of the totals, then the highest total score
	Exist               // only that so many exist: of one group with a count, or part of such
)

// A Problem is a tray, what one set of it is to be, and how many are wanted.
type Problem struct {
	subset.Problem
	Sets int // 1 or more
	Goal Goal
}

// An Answer is what was found.
//
// Of answers equal in number, goal and what breaks its ties, the one stands whose sets
// come first: sets are listed by their earliest piece, and at the first set in which two
// answers differ the better holds the earliest piece that the other's lacks.
type Answer struct {
	Sets  [][]int // positions, ascending
	Most  int     // no answer has more sets than this
	Score int64   // of all sets together
	Least int64   // of the set with the lowest
	Off   int64   // distances of the totals from what is wanted, together
	// Bound is what no answer with as many sets exceeds: of Score, or of Least where the
	// goal is Least.
	Bound  int64
	Proven bool // no answer is better
	First  bool // and no equal one comes earlier
	Work   int  // steps spent
}

// Solve returns the best answer that the effort finds, with what is known about it. An
// answer with no set at all is an answer; Most says whether that is proven.
func (p Problem) Solve() Answer {
	t := newTray(&p)
	a := t.solve()
	a.Work = t.work
	return a
}
