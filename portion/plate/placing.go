package plate

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/internal/check"
)

// A Spot is where a piece goes.
type Spot struct {
	Number int   `json:"number"` // from 1, in the order of placing: far side first, nearest last
	At     Point `json:"at"`     // the piece's centre
	Slice  int   `json:"slice"`  // number of the slice that holds the centre
	Piece  int   `json:"piece"`  // index into Placing.Pieces; -1 before Assign
}

// A Placing is the spots for the pieces of one dish.
type Placing struct {
	Scatter Scatter         // as asked for
	Dish    Dish            // what the pieces lie on
	Spots   []Spot          // one a piece, in the order of placing
	Pieces  []portion.Piece // what Assign was given; nil before
	Slices  []Slice         // with the mass that each carries, 0 before Assign
}

// MarshalJSON refuses: a Placing is a result that only Place can make. Send what it was
// made from.
func (p Placing) MarshalJSON() ([]byte, error) {
	return nil, check.Input("Placing", "a result, not to be sent", "", "the scatter, the dish and the pieces, and place again")
}

const mostPieceGrams = 1e6

// Assign gives every spot a piece, so that the slices weigh as nearly alike for
// their number of spots as a simple rule makes them: the heaviest piece left goes
// to the slice that is furthest behind. Within a slice the best-looking piece lies
// nearest to the camera. Ties go to the earlier piece and the lower slice. No piece
// is left over and none is added: the total is that of the pieces.
//
// It fails with an [honestplate.InputError] unless there is one piece a spot, each of a mass
// above 0.
func (p Placing) Assign(pieces []portion.Piece) (Placing, error) {
	if len(pieces) != len(p.Spots) {
		return Placing{}, check.Input("Pieces", len(pieces), "pieces", fmt.Sprintf("one for each of the %d spots", len(p.Spots)))
	}
	// Masses in micrograms: sums and ties are exact.
	micrograms, total := make([]int64, len(pieces)), int64(0)
	for k, x := range pieces {
		field := func(name string) string { return fmt.Sprintf("Pieces[%d].%s", k, name) }
		err := cmp.Or(check.Sized(field("Grams"), x.Grams, 0, mostPieceGrams, "g", "a tonne: no piece on a dish"),
			honestplate.Finite(field("Score"), x.Score, ""))
		if err != nil {
			return Placing{}, err
		}
		micrograms[k] = int64(math.Round(x.Grams * 1e6))
		total += micrograms[k]
	}
	p.Pieces, p.Spots = slices.Clone(pieces), slices.Clone(p.Spots)
	spots := make(map[int][]int) // by slice, nearest to the camera first
	var numbers []int
	for i := len(p.Spots) - 1; i >= 0; i-- {
		k := p.Spots[i].Slice
		if spots[k] == nil {
			numbers = append(numbers, k)
		}
		spots[k] = append(spots[k], i)
	}
	slices.Sort(numbers)
	order := make([]int, len(pieces))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(pieces[b].Grams, pieces[a].Grams) })
	given, weight := make(map[int][]int), make(map[int]int64)
	for _, piece := range order {
		to, behind := 0, math.Inf(-1)
		for _, k := range numbers {
			if len(given[k]) == len(spots[k]) {
				continue
			}
			// Behind by how much a spot that is still free.
			fair := total*int64(len(spots[k])) - weight[k]*int64(len(pieces))
			if short := float64(fair) / float64(len(spots[k])-len(given[k])); short > behind {
				to, behind = k, short
			}
		}
		given[to], weight[to] = append(given[to], piece), weight[to]+micrograms[piece]
	}
	for _, k := range numbers {
		slices.SortStableFunc(given[k], func(a, b int) int {
			return cmp.Or(cmp.Compare(pieces[b].Score, pieces[a].Score), cmp.Compare(a, b))
		})
		for i, spot := range spots[k] {
			p.Spots[spot].Piece = given[k][i]
		}
	}
	p.Slices = slices.Clone(p.Slices)
	for k, g := range p.grams() {
		p.Slices[k].Grams = g
	}
	return p, nil
}

// grams returns the total of every slice, g, by slice: index 0 is slice 1. It is all
// zeros before Assign. Of spots that Place has not made, those on no slice do not
// count.
func (p Placing) grams() []float64 {
	out := make([]float64, len(p.Slices))
	for _, s := range p.Spots {
		if s.Slice >= 1 && s.Slice <= len(out) && s.Piece >= 0 && s.Piece < len(p.Pieces) {
			out[s.Slice-1] += p.Pieces[s.Piece].Grams
		}
	}
	for i := range out {
		out[i] = math.Round(out[i]*1e6) / 1e6 // the dust of adding decimals
	}
	return out
}
