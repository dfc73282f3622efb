package portion

import (
	"errors"
	"slices"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/subset"
)

// A Piece is one weighed and scored thing that may be chosen.
type Piece struct {
	Name  string  `json:"name,omitzero"`  // for the crew; may be empty
	Grams float64 `json:"grams,omitzero"` // as weighed; above 0, a whole number of the scale's steps
	// Score says how well the piece looks; higher is better, any scale, may be
	// negative. All equal (or left at 0) means looks do not matter.
	Score float64 `json:"score,omitzero"`
	// Group is the set the piece is a candidate for, such as "slice 3". Used only
	// when Pick.Groups is set.
	Group string `json:"group,omitzero"`
}

// A Group is a set of pieces of which exactly Count are chosen: with one group a
// slice and Count 1, each slice gets one.
type Group struct {
	Name  string `json:"name,omitzero"`  // as in Piece.Group
	Count int    `json:"count,omitzero"` // pieces to choose from this group, 0 or more
}

// A Pick asks for the pieces to show: so many, weighing together what is
// declared, looking their best.
//
// Masses are counted in whole steps of the scale and scores in whole ScoreSteps,
// both as integers, so the answer is exact: no rounding error can prefer a wrong
// set. Sets equal in score and total are told apart by the stated order: of two
// sets the better holds the earliest piece that the other lacks (with Groups:
// group by group, each in stated order).
type Pick struct {
	Pieces []Piece `json:"pieces,omitzero"` // to choose from, 1 to a million
	// Count is how many pieces are chosen; 0 leaves the number free. With Groups
	// it must be 0 or the sum of the groups' counts.
	Count int `json:"count,omitzero"`
	// Grams is the declared mass of the chosen pieces together, a whole number of
	// steps. 0, with StepGrams 0 too, declares only a count: any total is right.
	Grams     float64 `json:"grams,omitzero"`
	StepGrams float64 `json:"step_grams,omitzero"` // the scale's step, g; 0 means 1 g
	// Tolerance is how far the total may be from Grams on either side, g; 0 wants
	// the declared mass to the step. A legal tolerance is an input here, not a
	// right to show less: see [Pick.NeverBelow].
	Tolerance float64 `json:"tolerance_grams,omitzero"`
	// NeverBelow refuses totals below the declared mass.
	NeverBelow bool `json:"never_below,omitzero"`
	// NeverAbove refuses totals above it. Both together want it exactly, as for an
	// advertised item, which is neither thinned nor exceeded.
	NeverAbove bool `json:"never_above,omitzero"`
	// Closest wants the total closest to the declared mass within the tolerance, among
	// equals the highest total score. Unset wants the highest score, among equals the
	// closest total.
	Closest bool `json:"closest,omitzero"`
	// LeastFirst wants, of several sets ([Pick.Sets]), the best score for the least of
	// them before the best total: no hero that looks much worse than the others.
	LeastFirst bool `json:"least_first,omitzero"`
	// Groups, where given, fix how many of each set are chosen; they must name every
	// piece's group once.
	Groups []Group `json:"groups,omitzero"`
	// ScoreStep is the resolution of scores; they are rounded to whole ScoreSteps.
	// 0 means one millionth.
	ScoreStep float64 `json:"score_step,omitzero"`
	// Effort bounds the work and the memory, in steps of the search; the same
	// effort gives the same answer on any machine. 0 means 10 million: some tenths of
	// a second and some tens of megabytes, a second or two for a million pieces. When it
	// runs out, a set is still found, which can take some times as much again, and Picked
	// says how far from the best it can be.
	Effort int `json:"effort,omitzero"`
}

// A PieceSet is a chosen set of pieces.
type PieceSet struct {
	Chosen []int   `json:"chosen"`     // indices into Pick.Pieces, ascending
	Pieces []Piece `json:"pieces"`     // those pieces
	Grams  float64 `json:"grams"`      // their total, g
	Over   float64 `json:"over_grams"` // Grams less the declared mass, g; negative when short
	Score  float64 `json:"score"`      // their total score, of the rounded scores
}

// Picked is the answer to a Pick.
type Picked struct {
	PieceSet
	// What is known about the answer; with Pick.Closest about the score among the sets of
	// the closest total.
	Optimal bool    `json:"optimal"` // no permitted set is better, by score and by closeness
	First   bool    `json:"first"`   // also no equal set comes earlier in stated order
	Bound   float64 `json:"bound"`   // a total score that no permitted set exceeds
	Gap     float64 `json:"gap"`     // Bound less the answer's score: 0 when Optimal
	Work    int     `json:"work"`    // search steps spent, in the unit of Pick.Effort
}

// Best returns the best permitted set of pieces with the proof of how good it is.
//
// It fails with an [honestplate.InputError] on input that makes no sense, an
// [InfeasibleError] that names the nearest totals the pieces can reach when no set is
// permitted, and an [honestplate.InputError] about Effort when that ran out before any set was found.
//
// Method: the Lagrangian relaxation of the mass gives every piece a reduced score;
// any set scoring within B of the relaxed optimum differs from the relaxed set by
// pieces whose reduced scores add up to at most B. Those differences are enumerated
// by dynamic programming over (count, mass) with B growing until a set is found
// inside it, which proves it best. Where all scores are equal, the reachable totals
// are listed instead, one bit each. The relaxation is Geoffrion's (1974, Lagrangean
// relaxation for integer programming); growing a core of undecided items follows
// Pisinger (1997, A minimal algorithm for the 0-1 knapsack problem). Both from
// memory. All in integers.
func (p Pick) Best() (Picked, error) {
	q, err := p.problem()
	if err != nil {
		return Picked{}, err
	}
	s, err := q.Best()
	switch {
	case errors.Is(err, subset.ErrNone):
		return Picked{}, p.infeasible(q)
	case err != nil:
		return Picked{}, noneFound(q.Effort)
	}
	points := q.scoreStep.Times
	out := Picked{PieceSet: p.set(q, s.Chosen), Optimal: s.Proven, First: s.First, Work: s.Work}
	out.Bound, out.Gap = points(s.Bound), points(s.Bound-s.Score)
	return out, nil
}

// noneFound says that an effort was spent before a set was found.
func noneFound(effort int) error {
	return check.Input("Effort", effort, "steps", "more: they ended with no set found and no proof that there is none")
}

// set returns the set of some positions.
func (p Pick) set(q pickProblem, chosen []int) PieceSet {
	out := PieceSet{Chosen: make([]int, len(chosen)), Pieces: make([]Piece, len(chosen))}
	var sum, score int64
	for i, pos := range chosen {
		out.Chosen[i] = q.at[pos]
		sum, score = sum+q.Masses[pos], score+q.Scores[pos]
	}
	slices.Sort(out.Chosen)
	for i, k := range out.Chosen {
		out.Pieces[i] = p.Pieces[k]
	}
	out.Score = q.scoreStep.Times(score)
	if q.massless {
		for _, piece := range out.Pieces {
			out.Grams += piece.Grams
		}
		return out
	}
	out.Grams = q.step.Times(sum)
	out.Over = q.step.Times(sum - q.Target)
	return out
}
