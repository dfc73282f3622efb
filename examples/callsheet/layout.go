package main

import "example.org/honestplate/portion"

// place draws where pieces of a diameter (m) go on a round plate, bowl or glass
// seen from above, each with its grams.
func (s *Shot) place(item string, plate, diameter float64, pieces []portion.Piece) error {
	arrangement := portion.Ring
	if len(pieces) == 1 {
		arrangement = portion.Spiral
	}
	placing, err := portion.Scatter{
		Item: item, Arrangement: arrangement, Count: len(pieces), Diameter: diameter,
	}.Place(portion.Round{Diameter: plate, Edge: min(0.01, plate/20)})
	if err != nil {
		return err
	}
	if placing, err = placing.Assign(pieces); err != nil {
		return err
	}
	s.Layout = placing.SVG()
	return nil
}
