package portion

import (
	"cmp"
	"fmt"
	"math"
	"strconv"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/decimal"
	"example.org/honestplate/portion/internal/subset"
)

// Limits that keep every sum of the search inside 64-bit integers.
const (
	maxScore  = 1e17 // in ScoreSteps, over the number of pieces
	maxPieces = 1_000_000

	defaultEffort = 10_000_000
)

// A pickProblem is a Pick in integers: pieces in the order of groups, masses in steps,
// scores in ScoreSteps.
type pickProblem struct {
	subset.Problem
	at        []int           // position to index in Pick.Pieces
	step      decimal.Decimal // of the scale, g
	scoreStep decimal.Decimal // a ScoreStep, points
	massless  bool
}

// field names a piece's field in an error.
func (p Pick) field(name string, k int) string { return fmt.Sprintf("Pieces[%d].%s", k, name) }

func (p Pick) problem() (pickProblem, error) {
	n := len(p.Pieces)
	var q pickProblem
	switch {
	case n == 0:
		return q, check.Input("Pieces", "empty", "", "at least one")
	case n > maxPieces:
		return q, check.Beyond("Pieces", float64(n), maxPieces, "pieces", effortReason)
	case p.Effort < 0:
		return q, check.Input("Effort", p.Effort, "steps", "0 or more")
	}
	q.Effort = cmp.Or(p.Effort, defaultEffort)
	q.Closest = p.Closest
	scoreStep := cmp.Or(p.ScoreStep, 1e-6)
	if err := honestplate.InRange("ScoreStep", scoreStep, 1e-12, 1e12, "", "scores are counted in whole steps of it"); err != nil {
		return q, err
	}
	q.scoreStep = decimal.Of(scoreStep)
	return q, cmp.Or(p.groupsInto(&q), p.massesInto(&q), p.scoresInto(&q))
}

// groupsInto sets the order of positions and the counts.
func (p Pick) groupsInto(q *pickProblem) error {
	n := len(p.Pieces)
	if p.Count < 0 || p.Count > n {
		return check.Input("Count", p.Count, "", fmt.Sprintf("0 to the %d pieces given", n))
	}
	q.at = make([]int, 0, n)
	if len(p.Groups) == 0 {
		for i := range n {
			q.at = append(q.at, i)
		}
		q.Groups = []subset.Group{{From: 0, To: n, Count: cmp.Or(p.Count, subset.AnyCount)}}
		return nil
	}
	members := make(map[string][]int, len(p.Groups))
	for i, piece := range p.Pieces {
		members[piece.Group] = append(members[piece.Group], i)
	}
	total := 0
	for k, g := range p.Groups {
		own, ok := members[g.Name]
		if !ok {
			return check.Input(fmt.Sprintf("Groups[%d].Name", k), strconv.Quote(g.Name), "", "the group of at least one piece, named once")
		}
		if g.Count < 0 || g.Count > len(own) {
			return check.Input(fmt.Sprintf("Groups[%d].Count", k), g.Count, "", fmt.Sprintf("0 to its %d pieces", len(own)))
		}
		q.Groups = append(q.Groups, subset.Group{From: len(q.at), To: len(q.at) + len(own), Count: g.Count})
		q.at = append(q.at, own...)
		total += g.Count
		delete(members, g.Name)
	}
	if len(q.at) != n {
		for i, piece := range p.Pieces {
			if _, left := members[piece.Group]; left {
				return check.Input(fmt.Sprintf("Pieces[%d].Group", i), strconv.Quote(piece.Group), "", "a group listed in Groups")
			}
		}
	}
	if p.Count != 0 && p.Count != total {
		return check.Input("Count", p.Count, "", fmt.Sprintf("0 or the groups' sum, %d", total))
	}
	return nil
}

// massesInto sets the masses and the target.
func (p Pick) massesInto(q *pickProblem) error {
	q.Masses = make([]int64, len(p.Pieces))
	q.massless = p.Grams == 0 && p.StepGrams == 0
	for k := range p.Pieces {
		if g := p.Pieces[k].Grams; !(g > 0) || g > mostGrams {
			return check.Sized(p.field("Grams", k), g, 0, mostGrams, "g", massReason)
		}
	}
	if q.massless {
		return nil
	}
	d := Declaration{Grams: p.Grams, StepGrams: p.StepGrams}
	if p.Grams == 0 {
		return check.NoMass("or StepGrams 0 too where only a count is declared")
	}
	target, err := d.inSteps()
	if err != nil {
		return err
	}
	q.step = d.step()
	total := int64(0)
	for i, k := range q.at {
		g := p.Pieces[k].Grams
		floor, ceil, ok := decimal.Around(g, q.step)
		if !ok || floor != ceil || floor == 0 {
			_, err := steps(p.field("Grams", k), g, q.step)
			return cmp.Or[error](err, check.Input(p.field("Grams", k), g, "g", "at least one step of the scale"))
		}
		if total += floor; total > maxSteps {
			return check.Beyond("Pieces", float64(total), maxSteps, "steps in all", stepsReason)
		}
		q.Masses[i] = floor
	}
	q.Target = target
	return p.windowInto(q)
}

// windowInto sets the permitted totals about the target.
func (p Pick) windowInto(q *pickProblem) error {
	if err := honestplate.NotNegative("Tolerance", p.Tolerance, "g"); err != nil {
		return err
	}
	// A tolerance between steps permits the whole steps inside it; one beyond any
	// total permits all.
	tol, _, ok := decimal.Around(min(p.Tolerance, mostGrams), q.step)
	if !ok {
		tol = maxSteps
	}
	q.Low, q.High = max(q.Target-tol, 0), q.Target+tol
	if p.NeverBelow {
		q.Low = q.Target
	}
	if p.NeverAbove {
		q.High = q.Target
	}
	return nil
}

// scoresInto sets the scores in units of their common divisor.
func (p Pick) scoresInto(q *pickProblem) error {
	q.Scores = make([]int64, len(q.at))
	step := q.scoreStep.Times(1)
	limit := math.Floor(maxScore / float64(len(q.at)))
	for i, k := range q.at {
		s := p.Pieces[k].Score
		if math.IsNaN(s) || math.IsInf(s, 0) {
			return honestplate.Finite(p.field("Score", k), s, "")
		}
		n := math.Round(s / step)
		if math.Abs(n) > limit {
			return &honestplate.RangeError{Field: p.field("Score", k), Value: s, Low: -limit * step, High: limit * step,
				Source: "sums of so many whole ScoreSteps stay exact up to here: take a larger ScoreStep"}
		}
		q.Scores[i] = int64(n)
	}
	return nil
}
