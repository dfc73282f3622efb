package portion

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Assign gives every spot a piece, so that the slices weigh as nearly alike for
// their number of spots as a simple rule makes them: the heaviest piece left goes
// to the slice that is furthest behind. Within a slice the best-looking piece lies
// nearest to the camera. Ties go to the earlier piece and the lower slice. No piece
// is left over and none is added: the total is that of the pieces.
//
// It fails with an *InputError unless there is one piece a spot, each of a mass
// above 0.
func (p Placing) Assign(pieces []Piece) (Placing, error) {
	if len(pieces) != len(p.Spots) {
		return Placing{}, &InputError{"number of pieces", float64(len(pieces)), "", fmt.Sprintf("one for each of the %d spots", len(p.Spots))}
	}
	total := 0.0
	for k, x := range pieces {
		field := Pick{Pieces: pieces}.field
		if err := cmp.Or(positive(field("mass", k), x.Grams, "g"), within(field("mass", k), x.Grams, 0, mostGrams, "g", "limit of this package")); err != nil {
			return Placing{}, err
		}
		if err := finite(field("score", k), x.Score, ""); err != nil {
			return Placing{}, err
		}
		total += x.Grams
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
	given, weight := make(map[int][]int), make(map[int]float64)
	for _, piece := range order {
		to, behind := 0, math.Inf(-1)
		for _, k := range numbers {
			if len(given[k]) == len(spots[k]) {
				continue
			}
			// Behind by how much a spot that is still free.
			fair := total * float64(len(spots[k])) / float64(len(pieces))
			if short := (fair - weight[k]) / float64(len(spots[k])-len(given[k])); short > behind {
				to, behind = k, short
			}
		}
		given[to], weight[to] = append(given[to], piece), weight[to]+pieces[piece].Grams
	}
	for _, k := range numbers {
		slices.SortStableFunc(given[k], func(a, b int) int {
			return cmp.Or(cmp.Compare(pieces[b].Score, pieces[a].Score), cmp.Compare(a, b))
		})
		for i, spot := range spots[k] {
			p.Spots[spot].Piece = given[k][i]
		}
	}
	return p, nil
}

// Grams returns the total of every slice, g, by slice: index 0 is slice 1. It is all
// zeros before Assign. Of spots that Place has not made, those on no slice do not
// count.
func (p Placing) Grams() []float64 {
	out := make([]float64, len(p.plate.slices))
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

// Counts returns the number of pieces on every slice: index 0 is slice 1. Of spots
// that Place has not made, those on no slice do not count.
func (p Placing) Counts() []int {
	out := make([]int, len(p.plate.slices))
	for _, s := range p.Spots {
		if s.Slice >= 1 && s.Slice <= len(out) {
			out[s.Slice-1]++
		}
	}
	return out
}

// Nearest returns the least distance between the centres of two pieces, m; 0 for
// fewer than two.
func (p Placing) Nearest() float64 {
	least := 0.0
	for i, s := range p.Spots {
		for _, t := range p.Spots[:i] {
			if d := s.At.minus(t.At).norm(); least == 0 || d < least {
				least = d
			}
		}
	}
	return least
}

// Evenness returns the index of Clark and Evans (1954, Distance to nearest neighbor
// as a measure of spatial relationships in populations; from memory): the mean
// distance from a point to its nearest neighbour over 0.5/sqrt(n/area), what random
// points would have. 0 is clumped, 1 random, 2.1491 a perfect hexagonal lattice.
// Points near the edge of the area have fewer neighbours, which raises the index of
// small sets somewhat.
//
// It fails with an *InputError for fewer than two points, for points that are not
// finite and for an area that is not above 0, m2.
func Evenness(points []Point, area float64) (float64, error) {
	if len(points) < 2 {
		return 0, &InputError{"number of points", float64(len(points)), "", "at least 2"}
	}
	if err := positive("area", area, "m2"); err != nil {
		return 0, err
	}
	sum := 0.0
	for i, x := range points {
		if err := cmp.Or(finite("x of a point", x.X, "m"), finite("y of a point", x.Y, "m")); err != nil {
			return 0, err
		}
		least := math.Inf(1)
		for j, y := range points {
			if i != j {
				least = min(least, x.minus(y).norm())
			}
		}
		sum += least
	}
	n := float64(len(points))
	e := sum / n * 2 * math.Sqrt(n/area)
	return e, within("evenness", e, 0, math.MaxFloat64, "", "what a float64 holds")
}
