package portion_test

import (
	"errors"
	"fmt"
	"math/rand/v2"

	"example.org/honestplate/portion"
)

// tarts is an invented tray: weighed to a gram, scored for looks.
var tarts = []portion.Piece{
	{Name: "A", Grams: 38, Score: 9}, {Name: "B", Grams: 43, Score: 10}, {Name: "C", Grams: 41, Score: 6},
	{Name: "D", Grams: 39, Score: 8}, {Name: "E", Grams: 42, Score: 9}, {Name: "F", Grams: 37, Score: 7},
	{Name: "G", Grams: 40, Score: 5}, {Name: "H", Grams: 44, Score: 8},
}

// Three tarts are declared at 120 g together. The best-looking three weigh 123 g, so
// they may not all be shown.
func ExamplePick_Best() {
	best, err := portion.Pick{Pieces: tarts, Count: 3, Grams: 120, StepGrams: 1}.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range best.Pieces {
		fmt.Printf("%s %v g\n", p.Name, p.Grams)
	}
	fmt.Printf("together %v g, score %v, proven best: %v\n", best.Grams, best.Score, best.Optimal)
	// Output:
	// A 38 g
	// B 43 g
	// D 39 g
	// together 120 g, score 27, proven best: true
}

// Within a gram there is more choice, but never less than declared.
func ExamplePick_neverBelow() {
	best, err := portion.Pick{Pieces: tarts, Count: 3, Grams: 122, StepGrams: 1, Tolerance: 1, NeverBelow: true}.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v g, %+.0f g over, score %v\n", best.Grams, best.Over, best.Score)
	// Output:
	// 123 g, +1 g over, score 28
}

// Each slice gets one of its own candidates, and together they weigh what is declared.
func ExamplePick_groups() {
	candidates := make([]portion.Piece, len(tarts))
	for i, p := range tarts {
		p.Group = []string{"slice 1", "slice 2"}[i/4]
		candidates[i] = p
	}
	best, err := portion.Pick{
		Pieces: candidates, Grams: 80, StepGrams: 1,
		Groups: []portion.Group{{Name: "slice 1", Count: 1}, {Name: "slice 2", Count: 1}},
	}.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range best.Pieces {
		fmt.Println(p.Group, p.Name, p.Grams)
	}
	// Output:
	// slice 1 A 38
	// slice 2 E 42
}

// What cannot be had says what can.
func ExampleInfeasibleError() {
	_, err := portion.Pick{Pieces: tarts, Count: 2, Grams: 90, StepGrams: 1}.Best()
	fmt.Println(err)
	var e *portion.InfeasibleError
	if errors.As(err, &e) {
		fmt.Println("closest:", e.Below.Value, "g")
	}
	// Output:
	// honestplate: Pieces: no 2 of the pieces weigh 90 g, to the step; the most they reach is 87 g
	// closest: 87 g
}

// With a bound on the effort a hard choice ends early, and the answer says how far
// from the best it can be. Here looks go with mass to a thousandth, so that hardly
// any set can be ruled out.
func ExamplePick_effort() {
	r := rand.New(rand.NewPCG(1, 1))
	p := portion.Pick{Count: 30, Grams: 1500, Tolerance: 0.001, StepGrams: 0.001, Effort: 20_000}
	for range 200 {
		steps := 10_000 + r.IntN(90_000)
		p.Pieces = append(p.Pieces, portion.Piece{Grams: float64(steps) / 1000, Score: float64(steps+r.IntN(50)) / 1000})
	}
	best, err := p.Best()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.3f g, %.3f points, at most %.3f from the best; proven best: %v\n", best.Grams, best.Score, best.Gap, best.Optimal)
	// Output:
	// 1499.999 g, 1501.328 points, at most 0.002 from the best; proven best: false
}
