package portion

import (
	"fmt"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/sets"
	"example.org/honestplate/portion/internal/subset"
)

// PickedSets is the answer to [Pick.Sets]: disjoint sets from one tray.
type PickedSets struct {
	Sets  []PieceSet `json:"sets"`        // those found, by their earliest piece
	Most  int        `json:"most"`        // no more sets than this can be had at once
	Score float64    `json:"score"`       // of all sets together
	Least float64    `json:"least_score"` // of the set with the lowest
	// What is known about the answer among those with as many sets.
	Optimal bool    `json:"optimal"` // none has more sets or is better
	First   bool    `json:"first"`   // also no equal one comes earlier in stated order
	Bound   float64 `json:"bound"`   // what none exceeds: Score, or Least with Pick.LeastFirst
	Gap     float64 `json:"gap"`     // Bound less the answer's: 0 when Optimal
	Work    int     `json:"work"`    // search steps spent, in the unit of Pick.Effort
}

// mostSets is how many sets are chosen at once.
const mostSets = 1000

// Sets returns up to k disjoint sets, each as [Pick.Best] wants one: all heroes from one
// tray. Most sets come first, then the highest total score, or with LeastFirst the
// highest score of the least set, then totals closest to what is declared; with Closest
// these come before the scores. Best set first, then the best of what is left, is not the
// same: it can leave pieces that make no further set.
//
// Fewer sets than k are an answer, and Most says whether more are possible. Equal answers
// are told apart by the stated order: sets are listed by their earliest piece, and at the
// first difference the better holds the earliest piece that the other's set lacks.
//
// Trays of up to 64 pieces are searched exactly: branch and bound over the permitted sets
// where they are few, else over the pieces used at all, in order of score, each such union
// parted exactly. On larger ones, or where the effort ends before, sets are built one by
// one and improved in small parts, and the bound says how far from the best the answer can
// be. Effort, as in Pick, bounds both work and memory;
// hundreds of sets may take 1.6 times of it, since each gets a little.
//
// Errors are those of [Pick.Best]; InfeasibleError where not even one set exists.
func (p Pick) Sets(k int) (PickedSets, error) {
	if k < 1 || k > mostSets {
		return PickedSets{}, check.Input("Sets", k, "", fmt.Sprintf("1 to %d", mostSets))
	}
	q, err := p.problem()
	if err != nil {
		return PickedSets{}, err
	}
	a := sets.Problem{Problem: q.Problem, Sets: k, Goal: p.goal()}.Solve()
	switch {
	case a.Most == 0:
		return PickedSets{}, p.infeasible(q)
	case len(a.Sets) == 0:
		return PickedSets{}, noneFound(q.Effort)
	}
	points := q.scoreStep.Times
	out := PickedSets{
		Most: a.Most, Score: points(a.Score), Least: points(a.Least), Optimal: a.Proven, First: a.First,
		Bound: points(a.Bound), Gap: points(a.Bound - a.Score), Work: a.Work,
	}
	if p.LeastFirst {
		out.Gap = points(a.Bound - a.Least)
	}
	for _, s := range a.Sets {
		out.Sets = append(out.Sets, p.set(q, s))
	}
	return out, nil
}

// goal is what is best among as many sets.
func (p Pick) goal() sets.Goal {
	switch {
	case p.Closest:
		return sets.Closest
	case p.LeastFirst:
		return sets.Least
	}
	return sets.Total
}

// A PieceMass says what pieces of a kind weigh: normally spread about a mean. Weigh some
// and take their mean and standard deviation.
type PieceMass struct {
	MeanGrams float64 `json:"mean_grams"` // above 0
	SDGrams   float64 `json:"sd_grams"`   // standard deviation, g; up to half the mean
}

// ToWeigh is the answer to [Pick.ToWeigh].
type ToWeigh struct {
	// Pieces is how many more to weigh for the chance wanted, with the 95 % band that the
	// simulation leaves. Take the upper end.
	Pieces honestplate.Estimate `json:"pieces"`
	// Chance is the share of the simulated trays that hold the sets with the likely
	// number of pieces, with its 95 % band.
	Chance honestplate.Estimate `json:"chance"`
	Trays  int                  `json:"trays"` // simulated
}

// What is simulated: trays, pieces that all sets hold together, steps of search a tray.
const (
	simulatedTrays  = 512
	simulatedPieces = 200
	simulatedEffort = 10_000
)

// ToWeigh returns how many pieces to weigh besides p.Pieces, which may be none, so that k
// disjoint sets exist with a chance: trays of such pieces are simulated, deterministically,
// and on each the sets are sought. Looks do not count. A tray on which they are not found
// counts as one without, so that the number leans upwards. It takes some tenths of a
// second at most.
//
// Errors: [honestplate.InputError] for input that makes no sense, for a Pick with Groups
// (ask for one group at a time) or without a Count or a mass; [honestplate.RangeError] for
// more than 200 pieces in all sets; an [honestplate.RefusedError] of the kind
// [honestplate.ErrInfeasible] where four times the pieces of all sets do not give the
// chance: the pieces then weigh too much or too little for what is declared.
func (p Pick) ToWeigh(k int, chance float64, of PieceMass) (ToWeigh, error) {
	q, err := p.supply(k, chance, of)
	if err != nil {
		return ToWeigh{}, err
	}
	n := q.Need()
	if n.High > q.Most {
		return ToWeigh{}, &honestplate.RefusedError{
			Field: "Chance", Kind: honestplate.ErrInfeasible,
			Reason: fmt.Sprintf("%d more pieces of %g g +- %g g do not surely hold %d sets with a chance of %g",
				q.Most, of.MeanGrams, of.SDGrams, k, chance),
			Advice: "make pieces that weigh what is declared, ask for fewer sets, or allow a tolerance",
		}
	}
	return ToWeigh{
		Pieces: honestplate.Estimate{Low: float64(n.Low), Likely: float64(n.Likely), High: float64(n.High)},
		Chance: honestplate.Estimate{Low: n.ShareLow, Likely: n.Share, High: n.ShareHigh},
		Trays:  n.Trays,
	}, nil
}

func (p Pick) supply(k int, chance float64, of PieceMass) (sets.Supply, error) {
	var q pickProblem
	switch {
	case k < 1 || k > mostSets:
		return sets.Supply{}, check.Input("Sets", k, "", fmt.Sprintf("1 to %d", mostSets))
	case !(chance > 0 && chance < 1):
		return sets.Supply{}, check.Input("Chance", chance, "", "above 0 and below 1")
	case len(p.Groups) > 0:
		return sets.Supply{}, check.Input("Groups", len(p.Groups), "groups", "none: ask for the pieces of one group at a time")
	case p.Count < 1:
		return sets.Supply{}, check.Input("Count", p.Count, "", "a number of pieces a set, above 0")
	case p.Count > simulatedPieces/k:
		return sets.Supply{}, check.Beyond("Count", float64(p.Count), float64(simulatedPieces/k), "pieces a set", "simulating larger sets takes minutes")
	case p.Grams == 0:
		return sets.Supply{}, check.NoMass("to weigh sets against")
	case len(p.Pieces) > maxPieces:
		return sets.Supply{}, check.Beyond("Pieces", float64(len(p.Pieces)), maxPieces, "pieces", effortReason)
	}
	if err := honestplate.Positive("MeanGrams", of.MeanGrams, "g"); err != nil {
		return sets.Supply{}, err
	}
	if err := honestplate.InRange("SDGrams", of.SDGrams, 0, of.MeanGrams/2, "g", "a wider normal spread has pieces of no mass"); err != nil {
		return sets.Supply{}, err
	}
	for i := range p.Pieces {
		q.at = append(q.at, i)
	}
	if err := p.massesInto(&q); err != nil {
		return sets.Supply{}, err
	}
	step, all := q.step.Times(1), p.Count*k
	if err := honestplate.InRange("MeanGrams", of.MeanGrams, step, maxMeanSteps*step, "g", "counted in steps of the scale"); err != nil {
		return sets.Supply{}, err
	}
	return sets.Supply{
		Have: q.Masses, Mean: of.MeanGrams / step, SD: of.SDGrams / step,
		Want: subset.Problem{Low: q.Low, High: q.High, Target: q.Target, Groups: []subset.Group{{Count: p.Count}}},
		Sets: k, Chance: chance, Most: 4*all + 40, Trays: max(64, min(simulatedTrays, 800*simulatedTrays/(all*all))), Effort: simulatedEffort,
	}, nil
}

// maxMeanSteps keeps the masses of simulated trays inside 64 bits.
const maxMeanSteps = 1e12
