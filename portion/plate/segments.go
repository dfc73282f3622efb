package plate

import (
	"slices"

	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/controlled"
	"example.org/honestplate/portion/internal/decimal"
)

// place lays the strips, numbers them in the order of placing and cuts them into segments.
func (l *Layout) place(s Strips) {
	var paths []path
	for _, cut := range l.plate.cuts {
		if line, ok := s.along(l.plate, cut); ok {
			paths = append(paths, line)
		}
	}
	slices.SortStableFunc(paths, func(c, d path) int { return l.plate.farFirst(c.at(0.5), d.at(0.5)) })
	for i, c := range paths {
		l.Strips = append(l.Strips, Strip{Number: i + 1, Length: c.length(), path: c})
		l.cut(i+1, c, s)
	}
}

// cut splits a strip's path where it crosses the cuts. No slice has two segments of a
// strip, for the cuts it crosses are at right angles to it.
func (l *Layout) cut(number int, c path, s Strips) {
	tolerance := l.plate.tolerance()
	at := []float64{0, 1}
	for _, k := range l.plate.cuts {
		if u, ok := c.crossing(k, tolerance); ok && u > 0 && u < 1 {
			at = append(at, u)
		}
	}
	slices.Sort(at)
	for i := 1; i < len(at); i++ {
		part := path{c.at(at[i-1]), c.at(at[i])}
		length := part.length()
		if length <= tolerance {
			continue // it begins or ends at a cut
		}
		// The strip runs along a cut and lies half on either side of it.
		middle, d := part.at(0.5), part.q.minus(part.p)
		side := Point{-d.Y, d.X}.times(tolerance / length)
		for _, x := range [2]Point{middle.plus(side), middle.minus(side)} {
			k := l.plate.sliceAt(x)
			l.Segments = append(l.Segments, Segment{Strip: number, Slice: k + 1, Length: length / 2, From: part.p, To: part.q,
				weight: l.plate.weight(k, length/2, middle, s.Favour, s.Weights)})
		}
	}
}

// share spreads the steps over the table of strips and slices, and sums up.
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
	for i, s := range l.Segments {
		table[s.Strip-1][s.Slice-1] = parts[i]
		byStrip[s.Strip-1] += parts[i]
		bySlice[s.Slice-1] += parts[i]
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
	for i, s := range l.Segments {
		n := whole[s.Strip-1][s.Slice-1]
		l.Segments[i].Grams = l.grams(n)
		strips[s.Strip-1] += n
		slices[s.Slice-1] += n
	}
	for i, n := range strips {
		l.Strips[i].Grams = l.grams(n)
	}
	l.carry(slices)
	return nil
}

// carry lists the slices with the steps that lie on each.
func (l *Layout) carry(steps []int64) {
	for k, s := range l.plate.slices {
		s.Grams = l.grams(steps[k])
		l.Slices = append(l.Slices, s)
	}
}

func (l *Layout) grams(steps int64) float64 {
	return decimal.Step(l.Declaration.StepGrams).Times(steps)
}

func each[T any](parts []int64, f func(int64) T) []T {
	out := make([]T, len(parts))
	for i, n := range parts {
		out[i] = f(n)
	}
	return out
}
