package published

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
	"example.org/honestplate/testdata"
)

// Checks of pieces, layouts and the record.
var portionPieces = []Check{
	{
		Table: "pieces_subset_sum", Package: "portion", Quantity: "best total not above the target, chosen weights", Unit: "steps", Claim: "equal",
		Points: subsetSum,
	},
	{
		Table: "pieces_partition", Package: "portion", Quantity: "difference of the halves, and a half", Unit: "steps", Claim: "equal",
		Points: partition,
	},
	{
		Table: "pieces_knapsack", Package: "portion", Quantity: "best value", Claim: "equal",
		Points: knapsack,
	},
	{
		Table: "pieces_change_making", Package: "portion", Quantity: "fewest coins", Unit: "coins", Claim: "equal",
		Points: changeMaking,
	},
	{
		Table: "pieces_generated", Package: "portion", Quantity: "best score", Claim: "equal",
		Points: generatedPieces,
	},
	{
		Table: "circles_in_a_circle", Package: "portion", Quantity: "smallest dish on which pieces find room", Unit: "piece radii",
		Claim: "no less than the smallest there is, and up to 10 % more: they lie at random", Points: circlesInACircle,
	},
}

// pieces turns weights into pieces of so many grams, to be chosen in steps of 1 g.
func pieces(weights []float64) []portion.Piece {
	out := make([]portion.Piece, len(weights))
	for i, w := range weights {
		out[i].Grams = w
	}
	return out
}

func subsetSum(r testdata.Row) ([]Point, error) {
	weights, err := r.Floats("weights")
	if err != nil {
		return nil, err
	}
	target, err := r.Float("target")
	if err != nil {
		return nil, err
	}
	best, err := r.Float("best_sum")
	if err != nil {
		return nil, err
	}
	got, err := portion.Pick{Pieces: pieces(weights), Grams: target, StepGrams: 1, Tolerance: target, NeverAbove: true, Closest: true}.Best()
	if err != nil {
		return nil, err
	}
	points := []Point{Same(r.Text("instance"), best, got.Grams)}
	if r.Text("solutions") != "1" {
		return append(points, Skip(r.Text("instance")+" selection", "several are right; the printed one is not the first in stated order by rule")), nil
	}
	want, err := r.Floats("selection")
	if err != nil {
		return nil, err
	}
	var have []float64
	for _, p := range got.Pieces {
		have = append(have, p.Grams)
	}
	return append(points, elements(r.Text("instance"), want, have)...), nil
}

// elements compares two sets element by element, in order of size.
func elements(label string, want, have []float64) []Point {
	slices.Sort(want)
	slices.Sort(have)
	points := []Point{Same(label+" size", float64(len(want)), float64(len(have)))}
	for i := range min(len(want), len(have)) {
		points = append(points, Same(fmt.Sprintf("%s element %d", label, i+1), want[i], have[i]))
	}
	return points
}

func partition(r testdata.Row) ([]Point, error) {
	weights, err := r.Floats("weights")
	if err != nil {
		return nil, err
	}
	want, err := r.Float("difference")
	if err != nil {
		return nil, err
	}
	total := 0.0
	for _, w := range weights {
		total += w
	}
	half := math.Floor(total / 2)
	got, err := portion.Pick{Pieces: pieces(weights), Grams: half, StepGrams: 1, Tolerance: half, Closest: true}.Best()
	if err != nil {
		return nil, err
	}
	part, err := r.Floats("part")
	if err != nil {
		return nil, err
	}
	printed := 0.0
	for _, w := range part {
		printed += w
	}
	// Which half the printed part is, is open; all printed differences are 0.
	return []Point{
		Same(r.Text("instance")+" difference", want, math.Abs(total-2*got.Grams)),
		Same(r.Text("instance")+" half", printed, got.Grams),
	}, nil
}

func knapsack(r testdata.Row) ([]Point, error) {
	weights, err := r.Floats("weights")
	if err != nil {
		return nil, err
	}
	profits, err := r.Floats("profits")
	if err != nil {
		return nil, err
	}
	capacity, err := r.Float("capacity")
	if err != nil {
		return nil, err
	}
	optimum, err := r.Float("optimum")
	if err != nil {
		return nil, err
	}
	p := portion.Pick{Pieces: pieces(weights), Grams: capacity, StepGrams: 1, Tolerance: capacity, NeverAbove: true}
	for i := range p.Pieces {
		p.Pieces[i].Score = profits[i]
	}
	got, err := p.Best()
	if err != nil {
		return nil, err
	}
	if !got.Optimal {
		return nil, errors.New("no proof of optimality")
	}
	points := []Point{Same(r.Text("instance"), optimum, got.Score)}
	if r.Text("selection_from_1") == "" {
		return points, nil
	}
	want, err := r.Floats("selection_from_1")
	if err != nil {
		return nil, err
	}
	var have []float64
	for _, k := range got.Chosen {
		have = append(have, float64(k+1))
	}
	return append(points, elements(r.Text("instance"), want, have)...), nil
}

// changeMaking offers as many coins of each value as the amount could need and
// scores every coin -1.
func changeMaking(r testdata.Row) ([]Point, error) {
	values, err := r.Floats("coin_values")
	if err != nil {
		return nil, err
	}
	amount, err := r.Float("amount")
	if err != nil {
		return nil, err
	}
	p := portion.Pick{Grams: amount, StepGrams: 1}
	for _, v := range values {
		for range int(amount / v) {
			p.Pieces = append(p.Pieces, portion.Piece{Grams: v, Score: -1})
		}
	}
	got, err := p.Best()
	label := "instance " + r.Text("instance")
	if r.Text("fewest_coins") == "infeasible" {
		// 1 for "cannot be paid", on both sides.
		if errors.Is(err, honestplate.ErrInfeasible) {
			return []Point{Same(label+", infeasible", 1, 1)}, nil
		}
		return []Point{Same(label+", infeasible", 1, 0)}, nil
	}
	if err != nil {
		return nil, err
	}
	want, err := r.Float("fewest_coins")
	if err != nil {
		return nil, err
	}
	return []Point{Same(label, want, float64(len(got.Chosen)))}, nil
}

func generatedPieces(r testdata.Row) ([]Point, error) {
	masses, err := r.Floats("masses_tenth_g")
	if err != nil {
		return nil, err
	}
	scores, err := r.Floats("scores")
	if err != nil {
		return nil, err
	}
	p := portion.Pick{Pieces: pieces(masses), Count: 12, Grams: 216, StepGrams: 0.1}
	for i := range p.Pieces {
		p.Pieces[i].Grams /= 10
		p.Pieces[i].Score = scores[i]
	}
	var points []Point
	for _, c := range []struct {
		column    string
		tolerance float64
	}{{"best_within_2_g", 2}, {"best_at_216_g", 0}} {
		want, err := r.Float(c.column)
		if err != nil {
			return nil, err
		}
		p.Tolerance = c.tolerance
		got, err := p.Best()
		if err != nil {
			return nil, err
		}
		points = append(points, Same(fmt.Sprintf("instance %s, %s", r.Text("instance"), c.column), want, got.Score))
	}
	return points, nil
}

// circlesInACircle finds the smallest dish, in steps of a per cent, on which scattered
// pieces find room.
func circlesInACircle(r testdata.Row) ([]Point, error) {
	n, err := strconv.Atoi(r.Text("circles"))
	if err != nil {
		return nil, err
	}
	printed, err := r.Float("ratio_truncated")
	if err != nil {
		return nil, err
	}
	const diameter = 0.02
	for ratio := 0.95 * printed; ; ratio *= 1.01 {
		_, err := plate.Scatter{Count: n, Diameter: diameter}.Place(plate.Round{Diameter: ratio * diameter})
		switch {
		case err == nil:
			// Cut off, not rounded: the value lies up to a thousandth above the print.
			return []Point{{Label: fmt.Sprintf("%d circles", n), Published: printed, Predicted: ratio, Low: ratio / 1.1, High: ratio}}, nil
		case !errors.Is(err, honestplate.ErrInfeasible):
			return nil, err
		}
	}
}
