package main

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/portion"
)

func (p *Plan) planPieces(s *Shot, d *Pieces) error {
	field := s.Field + ".pieces"
	it := s.Dish.find(d.Item)
	pick := portion.Pick{
		Count: it.Count, Grams: it.Grams, StepGrams: it.StepGrams,
		Tolerance: d.ToleranceGrams, NeverBelow: d.NeverBelow,
	}
	seen := map[string]bool{}
	for i, w := range d.Weighed {
		if seen[w.Name] {
			return fieldErrorf(fmt.Sprintf("%s.weighed[%d].name", field, i), "%q names two pieces", w.Name)
		}
		seen[w.Name] = true
		pick.Pieces = append(pick.Pieces, portion.Piece{Name: w.Name, Grams: w.Grams, Score: w.Looks})
	}
	best, err := pick.Best()
	if err != nil {
		if errors.Is(err, honestplate.ErrInfeasible) {
			return &FieldError{field + ".weighed", err}
		}
		return &FieldError{field, err}
	}
	decimals := stepDecimals(it.StepGrams)
	proof := "no better-looking set weighs as declared"
	if !best.Optimal {
		proof = fmt.Sprintf("at most %s points of looks from the best", digits(best.Gap, 2))
	}
	set := func(p portion.Picked) string {
		names := make([]string, len(p.Pieces))
		for i, piece := range p.Pieces {
			names[i] = piece.Name
		}
		return fmt.Sprintf("%s, %.*f g", strings.Join(names, " "), decimals, p.Grams)
	}
	s.Planned[d.Item] = set(best)
	s.add("Choose", fmt.Sprintf("of the %d weighed, for %.*f g declared: %s; %s", len(d.Weighed), decimals, it.Grams, set(best), proof))
	// The other heroes come from what is left on the tray.
	units, next := 1, best
	for units < s.Units {
		pick.Pieces = without(pick.Pieces, next.Chosen)
		if next, err = pick.Best(); err != nil {
			break
		}
		units++
		s.add("", "then "+set(next))
	}
	if missing := s.Units - units; missing > 0 {
		s.add("", fmt.Sprintf("then weigh %d more for the other %d heroes", max(0, missing*it.Count-len(pick.Pieces)), missing))
	}
	if err := s.place(d.Item, d.PlateMM/1000, d.PieceMM/1000, best.Pieces); err != nil {
		return &FieldError{field + ".plate_mm", err}
	}
	return nil
}

// without returns the pieces but for the chosen.
func without(pieces []portion.Piece, chosen []int) []portion.Piece {
	var left []portion.Piece
	for i, p := range pieces {
		if !slices.Contains(chosen, i) {
			left = append(left, p)
		}
	}
	return left
}
