package main

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

// A tray of pieces for several sets at once: masses in steps of 0.1 g, whole scores.
type tray struct {
	Weights []int    `json:"weights"`
	Scores  []int    `json:"scores"`
	Groups  [][3]int `json:"groups"` // from, to, pieces of each set
	Sets    int      `json:"sets"`   // at the most
	Low     int      `json:"low"`    // of a set's total
	High    int      `json:"high"`
}

// trays are the jobs of several sets: the published trays, and ten of 24 pieces for four
// sets of four, within a step of their mean.
func trays() map[string][]tray {
	out := map[string][]tray{}
	table, err := testdata.Load("disjoint_sets")
	if err != nil {
		panic(err) // embedded
	}
	ints := func(r testdata.Row, column string) []int {
		values, err := r.Floats(column)
		if err != nil {
			panic(err)
		}
		whole := make([]int, len(values))
		for i, v := range values {
			whole[i] = int(v)
		}
		return whole
	}
	for _, r := range table.Rows {
		t := tray{Weights: ints(r, "masses_tenth_g"), Scores: ints(r, "scores"), Sets: ints(r, "sets_wanted")[0],
			Low: ints(r, "sum_from_tenth_g")[0], High: ints(r, "sum_to_tenth_g")[0]}
		if n := len(t.Weights); r.Text("kinds") != "" {
			a := strings.Count(r.Text("kinds"), "a")
			t.Groups = [][3]int{{0, a, 1}, {a, n, 2}}
		} else {
			t.Groups = [][3]int{{0, n, ints(r, "pieces_in_a_set")[0]}}
		}
		out[publishedTrays] = append(out[publishedTrays], t)
	}
	for k := range uint64(10) {
		r := rand.New(rand.NewPCG(k, 2))
		t := tray{Groups: [][3]int{{0, 24, 4}}, Sets: 4, Low: 719, High: 721}
		for range 24 {
			t.Weights = append(t.Weights, int(math.Round(180+15*r.NormFloat64())))
			t.Scores = append(t.Scores, r.IntN(101))
		}
		out[drawnTrays] = append(out[drawnTrays], t)
	}
	return out
}

const (
	publishedTrays = "all sets of a tray, the 36 published"
	drawnTrays     = "all sets of a tray, 4 x 4 of 24"
)

func (t tray) pick() portion.Pick {
	p := portion.Pick{Grams: float64(t.Low) / 10, StepGrams: 0.1, Tolerance: float64(t.High-t.Low) / 10, NeverBelow: true}
	for k, g := range t.Groups {
		for i := g[0]; i < g[1]; i++ {
			p.Pieces = append(p.Pieces, portion.Piece{Grams: float64(t.Weights[i]) / 10, Score: float64(t.Scores[i]), Group: fmt.Sprint(k)})
		}
		p.Groups = append(p.Groups, portion.Group{Name: fmt.Sprint(k), Count: g[2]})
	}
	return p
}

// setsOf returns the job of some trays, all in one call. Its answer is summed over them:
// 10 000 a set, and the scores.
func setsOf(job string) func(int) (float64, error) {
	var all []portion.Pick
	var sets []int
	for _, t := range trays()[job] {
		all, sets = append(all, t.pick()), append(sets, t.Sets)
	}
	solve := func(k int) (float64, error) {
		got, err := all[k].Sets(sets[k])
		if errors.Is(err, honestplate.ErrInfeasible) {
			return 0, nil
		} else if err != nil {
			return 0, err
		}
		if !got.Optimal {
			return 0, fmt.Errorf("tray %d: not proven best", k)
		}
		return 10_000*float64(len(got.Sets)) + got.Score, nil
	}
	return func(int) (float64, error) {
		total := 0.0
		for k := range all {
			v, err := solve(k)
			if err != nil {
				return 0, err
			}
			total += v
		}
		return total, nil
	}
}
