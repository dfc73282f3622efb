package plate

import (
	"slices"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/controlled"
	"example.org/honestplate/portion/internal/decimal"
)

// place numbers the strips in the order of placing and cuts them into segments.
func (l *Layout) place(paths []path) {
	slices.SortStableFunc(paths, func(c, d path) int { return l.plate.farFirst(c.at(0.5), d.at(0.5)) })
	for i, c := range paths {
		l.Strips = append(l.Strips, Strip{Number: i + 1, Length: c.length(), path: c})
		l.cut(i+1, c)
	}
}

// cut splits a strip's path where it crosses the cuts.
func (l *Layout) cut(number int, c path) {
	tolerance := l.plate.tolerance()
	at := []float64{0, 1}
	for _, k := range l.plate.cuts {
		if u, ok := c.crossing(k, tolerance); ok && u > 0 && u < 1 {
			at = append(at, u)
		}
	}
	slices.Sort(at)
	// Two cuts that meet on the strip leave a segment of no length between them.
	for i := 1; i < len(at); i++ {
		part := path{c.at(at[i-1]), c.at(at[i])}
		length := part.length()
		if length <= tolerance {
			continue
		}
		// A strip that runs along a cut lies half on either side of it.
		middle, d := part.at(0.5), part.q.minus(part.p)
		side := Point{-d.Y, d.X}.times(tolerance / length)
		holders := []int{l.plate.sliceAt(middle.plus(side)), l.plate.sliceAt(middle.minus(side))}
		if holders[0] == holders[1] {
			holders = holders[:1]
		}
		share := 1 / float64(len(holders))
		for _, h := range holders {
			weight := length * (1 - float64(l.how.Favour*middle.Y)/l.plate.b) * share
			if len(l.how.Weights) > 0 {
				weight *= l.how.Weights[h]
			}
			l.Segments = append(l.Segments, Segment{Strip: number, Slice: h + 1, Length: length * share,
				From: part.p, To: part.q, weight: weight})
		}
	}
}

// share spreads the steps over the table of strips and slices, then over the
// segments where a strip has several on one slice, and sums up.
func (l *Layout) share(total int64) error {
	weights := make([]float64, len(l.Segments))
	for i, s := range l.Segments {
		weights[i] = s.weight
	}
	parts, all := wholeParts(weights)
	if all == 0 {
		return check.Input("Weights", 0, "on every slice that carries a strip", "at least one above 0")
	}
	ideal := func(parts int64) controlled.Amount { return controlled.Quotient(parts*total, all) }
	table := make([][]int64, len(l.Strips))
	byStrip, bySlice := make([]int64, len(l.Strips)), make([]int64, len(l.plate.slices))
	for i := range table {
		table[i] = make([]int64, len(bySlice))
	}
	cells := make(map[[2]int][]int)
	for i, s := range l.Segments {
		at := [2]int{s.Strip - 1, s.Slice - 1}
		cells[at] = append(cells[at], i)
		table[at[0]][at[1]] += parts[i]
		byStrip[at[0]] += parts[i]
		bySlice[at[1]] += parts[i]
	}
	ideals := make([][]controlled.Amount, len(table))
	for i := range table {
		ideals[i] = each(table[i], ideal)
	}
	whole, ok := controlled.Round(ideals, each(byStrip, ideal), each(bySlice, ideal), controlled.Whole(total))
	if !ok {
		return check.Input("Weights", all, "parts", "weights whose sums agree")
	}
	if m, ok := l.mirror(table); ok {
		whole = controlled.Mirrored(ideals, each(byStrip, ideal), each(bySlice, ideal), controlled.Whole(total), m, whole)
	}
	strips, slices := make([]int64, len(byStrip)), make([]int64, len(bySlice))
	for at, own := range cells {
		n := whole[at[0]][at[1]]
		strips[at[0]] += n
		slices[at[1]] += n
		if n == 0 {
			continue
		}
		lengths := make([]float64, len(own))
		for i, k := range own {
			lengths[i] = float64(parts[k])
		}
		got, _ := shareByParts(n, lengths) // the cell has a share, so something weighs
		for i, k := range own {
			l.Segments[k].steps, l.Segments[k].Grams = got[i], l.grams(got[i])
		}
	}
	for i, n := range strips {
		l.Strips[i].Grams = l.grams(n)
	}
	for k, n := range slices {
		l.Slices = append(l.Slices, l.plate.slices[k].carrying(l.grams(n)))
	}
	return nil
}

func (l *Layout) grams(steps int64) float64 {
	return decimal.Step(l.Declaration.StepGrams).Times(steps)
}

// carrying returns the slice with the mass on it.
func (s Slice) carrying(grams float64) Slice {
	s.Grams = grams
	return s
}

func each[T any](parts []int64, f func(int64) T) []T {
	out := make([]T, len(parts))
	for i, n := range parts {
		out[i] = f(n)
	}
	return out
}
