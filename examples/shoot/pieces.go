package shoot

import (
	"errors"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

// pieces chooses the sets for all units from one tray.
func (d *day) pieces(j *job, t *Thing, p *PlannedThing) error {
	q := t.Pieces
	plan := &PiecesPlan{OnTray: len(q.Weighed)}
	p.Pieces = plan
	need := max(j.shot.Units.Need, 1)
	plan.Weigh = need * t.Count
	if len(q.Weighed) == 0 {
		plan.Missing = need
		return nil
	}
	pick := portion.Pick{Count: t.Count, Grams: t.Grams, StepGrams: d.step(), Tolerance: q.ToleranceGrams, NeverBelow: q.NeverBelow}
	for _, w := range q.Weighed {
		pick.Pieces = append(pick.Pieces, portion.Piece{Name: w.Name, Grams: w.Grams, Score: w.Looks})
	}
	for len(plan.Sets) < need {
		best, err := pick.Best()
		if errors.Is(err, honestplate.ErrInfeasible) || len(pick.Pieces) < t.Count {
			break
		}
		if err != nil {
			return err
		}
		set := PieceSet{Grams: best.Grams, Looks: best.Score}
		for _, k := range best.Pieces {
			set.Names = append(set.Names, k.Name)
		}
		plan.Sets = append(plan.Sets, set)
		pick.Pieces = slices.DeleteFunc(pick.Pieces, func(k portion.Piece) bool { return slices.Contains(set.Names, k.Name) })
	}
	plan.Missing = max(need-len(plan.Sets), 0)
	if q.PlateMM > 0 && q.PieceMM > 0 && len(plan.Sets) > 0 {
		return plan.lay(t, q)
	}
	return nil
}

// lay draws where the first set lies.
func (plan *PiecesPlan) lay(t *Thing, q *Pieces) error {
	placing, err := portion.Scatter{Count: t.Count, Diameter: q.PieceMM / 1000}.Place(portion.Round{Diameter: q.PlateMM / 1000, Slices: 1})
	if errors.Is(err, honestplate.ErrRange) || errors.Is(err, honestplate.ErrInfeasible) {
		return nil // the plate is too small to draw: the eye decides
	}
	if err != nil {
		return err
	}
	plan.SVG = string(placing.SVG())
	return nil
}
