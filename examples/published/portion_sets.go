package published

import (
	"errors"
	"fmt"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

// Checks of several sets from one tray.
var portionSets = []Check{
	{
		Table: "disjoint_sets", Package: "portion", Quantity: "sets from one tray, their total and least score", Claim: "equal",
		Points: disjointSets,
	},
	{
		Table: "sets_at_once", Package: "portion", Quantity: "total, or number of sets", Claim: "equal",
		Points: setsAtOnce,
	},
}

// disjointSets asks for the sets of a tray twice: for the best total, then for the best
// least score.
func disjointSets(r testdata.Row) ([]Point, error) {
	p, err := trayOf(r)
	if err != nil {
		return nil, err
	}
	k, err := r.Float("sets_wanted")
	if err != nil {
		return nil, err
	}
	most, err := r.Float("most_sets")
	if err != nil {
		return nil, err
	}
	name := r.Text("instance")
	got, err := p.Sets(int(k))
	if errors.Is(err, honestplate.ErrInfeasible) {
		return []Point{Same(name+" sets", most, 0)}, nil
	} else if err != nil {
		return nil, err
	}
	total, err := r.Float("best_total")
	if err != nil {
		return nil, err
	}
	points := []Point{Same(name+" sets", most, float64(len(got.Sets))), Same(name+" total", total, got.Score)}
	if !got.Optimal || got.Most != int(most) {
		return nil, fmt.Errorf("%s: not proven", name)
	}
	if r.Text("best_least") == "" {
		return append(points, Skip(name+" least", "not computed by the source")), nil
	}
	least, err := r.Float("best_least")
	if err != nil {
		return nil, err
	}
	p.LeastFirst = true
	if got, err = p.Sets(int(k)); err != nil {
		return nil, err
	}
	return append(points, Same(name+" least", least, got.Least)), nil
}

// trayOf reads a tray: masses in tenths of a gram, the window of a set as a declared
// mass and what it may be over.
func trayOf(r testdata.Row) (portion.Pick, error) {
	masses, err := r.Floats("masses_tenth_g")
	if err != nil {
		return portion.Pick{}, err
	}
	scores, err := r.Floats("scores")
	if err != nil {
		return portion.Pick{}, err
	}
	from, err := r.Float("sum_from_tenth_g")
	if err != nil {
		return portion.Pick{}, err
	}
	to, err := r.Float("sum_to_tenth_g")
	if err != nil {
		return portion.Pick{}, err
	}
	p := portion.Pick{Pieces: pieces(masses), Grams: from / 10, StepGrams: 0.1, Tolerance: (to - from) / 10, NeverBelow: true}
	kinds := strings.Fields(r.Text("kinds"))
	for i := range p.Pieces {
		p.Pieces[i].Grams /= 10
		p.Pieces[i].Score = scores[i]
		if len(kinds) > 0 {
			p.Pieces[i].Group = kinds[i]
		}
	}
	if len(kinds) > 0 {
		p.Groups = []portion.Group{{Name: "a", Count: 1}, {Name: "b", Count: 2}}
		return p, nil
	}
	count, err := r.Float("pieces_in_a_set")
	p.Count = int(count)
	return p, err
}

// setsAtOnce asks for coverings: so many pieces that weigh a target at least. Sacks of
// different sizes, and packing all pieces, are other questions than a tray's; the tests of
// the search itself take those rows.
func setsAtOnce(r testdata.Row) ([]Point, error) {
	name := r.Text("instance")
	if r.Text("family") != "bin covering" {
		return []Point{Skip(name, "sacks of their own sizes: taken by the tests of the search")}, nil
	}
	weights, err := r.Floats("weights")
	if err != nil {
		return nil, err
	}
	target, err := r.Float("capacities_or_target")
	if err != nil {
		return nil, err
	}
	want, err := r.Float("optimum")
	if err != nil {
		return nil, err
	}
	p := portion.Pick{Pieces: pieces(weights), Grams: target, StepGrams: 1, Tolerance: 1e6, NeverBelow: true}
	if r.Text("pieces_in_a_set") == "exactly 2" {
		p.Count = 2 // "at most 3" does not bind
	}
	got, err := p.Sets(len(weights))
	if err != nil {
		return nil, err
	}
	return []Point{Same(name, want, float64(len(got.Sets)))}, nil
}
