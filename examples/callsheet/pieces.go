package main

import (
	"errors"
	"fmt"
	"strings"

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
		if errors.Is(err, portion.ErrInfeasible) {
			return &FieldError{field + ".weighed", err}
		}
		return &FieldError{field, err}
	}
	decimals := stepDecimals(it.StepGrams)
	var names []string
	for _, piece := range best.Pieces {
		names = append(names, piece.Name)
	}
	proof := "no better-looking set weighs as declared"
	if !best.Proof.Optimal {
		proof = fmt.Sprintf("at most %.3g points of looks from the best", best.Proof.Gap)
	}
	s.add("Choose", fmt.Sprintf("%s of the %d weighed: %.*f g for %.*f g declared; %s",
		strings.Join(names, " "), len(d.Weighed), decimals, best.Grams, decimals, it.Grams, proof))
	s.Planned[d.Item] = fmt.Sprintf("%s, %.*f g", strings.Join(names, " "), decimals, best.Grams)
	if err := s.place(d.Item, d.PlateMM/1000, d.PieceMM/1000, best.Pieces); err != nil {
		return &FieldError{field + ".plate_mm", err}
	}
	return nil
}
