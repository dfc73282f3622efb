package portion

import (
	"cmp"
	"fmt"
	"math"
)

// Limits that keep every sum of the search inside 64-bit integers.
const (
	maxScore  = 1e17 // in ScoreSteps, over the number of pieces
	maxPieces = 1_000_000

	defaultEffort = 10_000_000
	anyCount      = -1 // the number of pieces is free
)

// An instance is a Pick in integers: pieces in the order of groups, masses in
// steps, scores in ScoreSteps over their common divisor.
type instance struct {
	w, v   []int64
	at     []int // position to index in Pick.Pieces
	groups []span
	// lo and hi bound the total, target is what is declared.
	lo, hi, target int64
	unit           int64   // common divisor of the scores
	step           decimal // of the scale, g
	scoreStep      decimal // a ScoreStep, points
	massless       bool
	effort, work   int
}

// A span is a group's positions from..to, of which count are chosen.
type span struct{ from, to, count int }

func (in *instance) points(v int64) float64 { return in.scoreStep.times(v * in.unit) }

func (p Pick) instance() (*instance, error) {
	n := len(p.Pieces)
	if n == 0 {
		return nil, &InputError{"number of pieces", 0, "", "at least 1"}
	}
	if n > maxPieces {
		return nil, &InputError{"number of pieces", float64(n), "", fmt.Sprintf("at most %d", maxPieces)}
	}
	if p.Aim != BestScore && p.Aim != ClosestTotal {
		return nil, &InputError{"aim", float64(p.Aim), "", "BestScore or ClosestTotal"}
	}
	if p.Effort < 0 {
		return nil, &InputError{"effort", float64(p.Effort), "", "0 or more"}
	}
	in := &instance{effort: p.Effort}
	if in.effort == 0 {
		in.effort = defaultEffort
	}
	scoreStep := p.ScoreStep
	if scoreStep == 0 {
		scoreStep = 1e-6
	}
	if err := within("score step", scoreStep, 1e-12, 1e12, "", "limit of this package"); err != nil {
		return nil, err
	}
	in.scoreStep = toDecimal(scoreStep)
	if err := p.groupsInto(in); err != nil {
		return nil, err
	}
	if err := p.massesInto(in); err != nil {
		return nil, err
	}
	return in, p.scoresInto(in)
}

// groupsInto sets the order of positions and the counts.
func (p Pick) groupsInto(in *instance) error {
	n := len(p.Pieces)
	if p.Count < 0 || p.Count > n {
		return &InputError{"count of pieces to choose", float64(p.Count), "", fmt.Sprintf("0 to the %d pieces given", n)}
	}
	in.at = make([]int, 0, n)
	if len(p.Groups) == 0 {
		for i := range n {
			in.at = append(in.at, i)
		}
		count := p.Count
		if count == 0 {
			count = anyCount
		}
		in.groups = []span{{0, n, count}}
		return nil
	}
	members := make(map[string][]int, len(p.Groups))
	for i, piece := range p.Pieces {
		members[piece.Group] = append(members[piece.Group], i)
	}
	total := 0
	for _, g := range p.Groups {
		own, ok := members[g.Name]
		if !ok {
			return &InputError{fmt.Sprintf("pieces of group %q", g.Name), 0, "", "at least 1, and each group named once"}
		}
		if g.Count < 0 || g.Count > len(own) {
			return &InputError{fmt.Sprintf("count of group %q", g.Name), float64(g.Count), "", fmt.Sprintf("0 to its %d pieces", len(own))}
		}
		in.groups = append(in.groups, span{len(in.at), len(in.at) + len(own), g.Count})
		in.at = append(in.at, own...)
		total += g.Count
		delete(members, g.Name)
	}
	if len(in.at) != n {
		for i, piece := range p.Pieces {
			if _, left := members[piece.Group]; left {
				return &InputError{p.field("group", i), float64(i + 1), "", "a group listed in Groups"}
			}
		}
	}
	if p.Count != 0 && p.Count != total {
		return &InputError{"count of pieces to choose", float64(p.Count), "", fmt.Sprintf("0 or the groups' sum, %d", total)}
	}
	return nil
}

// massesInto sets the masses and the window of permitted totals.
func (p Pick) massesInto(in *instance) error {
	in.w = make([]int64, len(p.Pieces))
	in.massless = p.Grams == 0 && p.StepGrams == 0
	for k := range p.Pieces {
		if g := p.Pieces[k].Grams; !(g > 0) || g > mostGrams {
			return cmp.Or(positive(p.field("mass", k), g, "g"),
				within(p.field("mass", k), g, 0, mostGrams, "g", "limit of this package"))
		}
	}
	if in.massless {
		return nil
	}
	d := Declaration{Grams: p.Grams, StepGrams: p.StepGrams}
	if p.Grams == 0 {
		return &InputError{"declared mass (Grams)", 0, "g", "above 0, or StepGrams 0 too where only a count is declared"}
	}
	target, err := d.Steps()
	if err != nil {
		return err
	}
	in.step = d.step()
	total := int64(0)
	for i, k := range in.at {
		g := p.Pieces[k].Grams
		floor, ceil, ok := floorCeil(g, in.step)
		if !ok || floor != ceil || floor == 0 {
			_, err := steps(p.field("mass", k), g, in.step)
			return cmp.Or[error](err, &InputError{p.field("mass", k), g, "g", "at least one step of the scale"})
		}
		if total += floor; total > maxSteps {
			return &RangeError{"mass of all pieces in steps", float64(total), 0, maxSteps, "steps", "limit of this package"}
		}
		in.w[i] = floor
	}
	if err := notNegative("tolerance", p.Tolerance, "g"); err != nil {
		return err
	}
	// A tolerance between steps permits the whole steps inside it; one beyond any
	// total permits all.
	tol, _, ok := floorCeil(min(p.Tolerance, mostGrams), in.step)
	if !ok {
		tol = maxSteps
	}
	in.target, in.lo, in.hi = target, max(target-tol, 0), target+tol
	if p.NeverBelow {
		in.lo = target
	}
	if p.NeverAbove {
		in.hi = target
	}
	return nil
}

// field names a piece's field in a message.
func (p Pick) field(what string, k int) string {
	if name := p.Pieces[k].Name; name != "" {
		return fmt.Sprintf("%s of piece %q", what, name)
	}
	return fmt.Sprintf("%s of piece %d", what, k+1)
}

// scoresInto sets the scores in units of their common divisor.
func (p Pick) scoresInto(in *instance) error {
	in.v = make([]int64, len(in.at))
	step := in.scoreStep.times(1)
	limit := math.Floor(maxScore / float64(len(in.at)))
	for i, k := range in.at {
		s := p.Pieces[k].Score
		if math.IsNaN(s) || math.IsInf(s, 0) {
			return finite(p.field("score", k), s, "")
		}
		q := math.Round(s / step)
		if math.Abs(q) > limit {
			return &RangeError{p.field("score", k), s, -limit * step, limit * step, "", "limit of this package for so many pieces at this ScoreStep"}
		}
		in.v[i] = int64(q)
		in.unit = gcd(in.unit, in.v[i])
	}
	in.unit = max(in.unit, 1)
	for i := range in.v {
		in.v[i] /= in.unit
	}
	return nil
}

func gcd(a, b int64) int64 {
	a, b = max(a, -a), max(b, -b)
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// flat reports that every permitted choice has the same score.
func (in *instance) flat() bool {
	for _, g := range in.groups {
		for i := g.from; i < g.to; i++ {
			if in.v[i] != in.v[g.from] || (g.count == anyCount && in.v[i] != 0) {
				return false
			}
		}
	}
	return true
}
