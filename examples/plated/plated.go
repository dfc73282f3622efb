// Package plated draws what [example.org/honestplate/portion/plate] lays, for the bench:
// the dish from above with what goes where, in the order of placing, and the grams to
// weigh out. Every page reads at 700 pixels and on A4, without colour too, and its
// bytes depend on what is laid alone.
package plated

import (
	"strconv"

	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
)

// Strips lays strips and draws their sheet as SVG: the dish with its cuts, the strips
// numbered in the order of placing, the camera's side, a scale bar, and a table of the
// grams of every strip on every slice with both sums. Errors are those of
// [plate.Strips.Lay].
func Strips(how plate.Strips, on plate.Dish, d portion.Declaration) ([]byte, error) {
	l, err := how.Lay(on, d)
	if err != nil {
		return nil, err
	}
	return newSheet(l, how).draw(), nil
}

// Spread does for an item without shape what [Strips] does for strips. Errors are those
// of [plate.Spread.Lay].
func Spread(how plate.Spread, on plate.Dish, d portion.Declaration) ([]byte, error) {
	l, err := how.Lay(on, d)
	if err != nil {
		return nil, err
	}
	return newSheet(l, plate.Strips{Favour: how.Favour, Weights: how.Weights}).draw(), nil
}

// Pieces places pieces and draws them at their size, numbered in the order of placing.
// The item is their common name and may be empty. Each piece weighed stands with its
// name and grams in a table below; without pieces the spots alone are drawn. Errors are
// those of [plate.Scatter.Place] and [plate.Placing.Assign].
func Pieces(item string, s plate.Scatter, on plate.Dish, weighed []portion.Piece) ([]byte, error) {
	p, err := s.Place(on)
	if err == nil && len(weighed) > 0 {
		p, err = p.Assign(weighed)
	}
	if err != nil {
		return nil, err
	}
	return placing{p, item, outlineOf(on)}.draw(), nil
}

// plain prints all the digits of a number.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
