package shoot

import (
	"errors"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
)

// A trayKey is a thing made of pieces, and for how many units.
type trayKey struct {
	of   *Thing
	need int
}

// pieces chooses the sets for all units from one tray at once, and says how many pieces
// to weigh for those that are missing.
func (d *day) pieces(j *job, t *Thing, p *PlannedThing) error {
	q := t.Pieces
	need := min(max(j.shot.Units.Need, 1), mostUnits)
	key := trayKey{t, need}
	if p.Pieces = d.trays[key]; p.Pieces != nil {
		return nil
	}
	plan := &PiecesPlan{OnTray: len(q.Weighed)}
	p.Pieces = plan
	pick := portion.Pick{Count: t.Count, Grams: t.Grams, StepGrams: d.step(), Tolerance: q.ToleranceGrams, NeverBelow: q.NeverBelow}
	for _, w := range q.Weighed {
		pick.Pieces = append(pick.Pieces, portion.Piece{Name: w.Name, Grams: w.Grams, Score: w.Looks})
	}
	if len(pick.Pieces) >= t.Count {
		sets, err := pick.Sets(need)
		if err != nil && !errors.Is(err, honestplate.ErrInfeasible) {
			return err
		}
		for _, s := range sets.Sets {
			set := PieceSet{Grams: s.Grams, Looks: s.Score}
			for _, k := range s.Chosen {
				set.Names = append(set.Names, pick.Pieces[k].Name)
			}
			plan.Sets = append(plan.Sets, set)
		}
		// The best-looking hero goes first.
		slices.SortStableFunc(plan.Sets, func(a, b PieceSet) int {
			switch {
			case a.Looks > b.Looks:
				return -1
			case a.Looks < b.Looks:
				return 1
			}
			return 0
		})
		plan.Proven = sets.Optimal
	}
	plan.Missing = max(need-len(plan.Sets), 0)
	if err := d.toWeigh(plan, pick, need, t); err != nil {
		return err
	}
	if q.PlateMM > 0 && q.PieceMM > 0 && len(plan.Sets) > 0 {
		if err := plan.lay(t, q); err != nil {
			return err
		}
	}
	d.trays[key] = plan
	return nil
}

// weighChance is the chance with which the pieces that are weighed hold all sets: common
// practice, no source.
const weighChance = 0.9

// toWeigh says how many pieces to have on the tray in all, for the sets that are missing.
func (d *day) toWeigh(plan *PiecesPlan, pick portion.Pick, need int, t *Thing) error {
	plan.Weigh = plan.OnTray
	if plan.Missing == 0 {
		return nil
	}
	of := portion.PieceMass{MeanGrams: t.Grams / float64(t.Count), SDGrams: 0.07 * t.Grams / float64(t.Count)}
	if n := float64(len(pick.Pieces)); n >= 6 {
		sum, squares := 0.0, 0.0
		for _, p := range pick.Pieces {
			sum += p.Grams
		}
		for _, p := range pick.Pieces {
			squares += (p.Grams - sum/n) * (p.Grams - sum/n)
		}
		of = portion.PieceMass{MeanGrams: sum / n, SDGrams: math.Sqrt(squares / (n - 1))}
	}
	if s := t.Pieces.SpreadGrams; s > 0 {
		of.SDGrams = s
	}
	if need*t.Count > 200 { // more than can be simulated: half as many again
		plan.Weigh = need * t.Count * 3 / 2
		return nil
	}
	w, err := pick.ToWeigh(need, weighChance, of)
	switch {
	case errors.Is(err, honestplate.ErrInfeasible):
		plan.Weigh = 4 * need * t.Count
		return nil
	case err != nil && t.Pieces.SpreadGrams == 0:
		return refielded(err, func(string) string { return "weighed" }) // they gave the spread
	case err != nil:
		return err
	}
	plan.Weigh = plan.OnTray + int(math.Ceil(w.Pieces.High))
	plan.Chance = w.Chance
	return nil
}

// lay finds where the first set lies.
func (plan *PiecesPlan) lay(t *Thing, q *Pieces) error {
	placing, err := plate.Scatter{Count: t.Count, Diameter: q.PieceMM / 1000}.Place(plate.Round{Diameter: q.PlateMM / 1000, Slices: 1})
	if errors.Is(err, honestplate.ErrRange) || errors.Is(err, honestplate.ErrInfeasible) {
		return nil // the plate is too small: the eye decides
	}
	if err != nil {
		return err
	}
	var pieces []portion.Piece
	for _, name := range plan.Sets[0].Names {
		for _, w := range q.Weighed {
			if w.Name == name {
				pieces = append(pieces, portion.Piece{Name: w.Name, Grams: w.Grams, Score: w.Looks})
				break
			}
		}
	}
	if placing, err = placing.Assign(pieces); err != nil {
		return err
	}
	plan.PlateMM, plan.PieceMM = q.PlateMM, q.PieceMM
	for _, s := range placing.Spots {
		plan.Spots = append(plan.Spots, PieceSpot{placing.Pieces[s.Piece].Name, spotOf(s.At)})
	}
	return nil
}
