// Command 12-cheese-pull redraws this chapter: its page and its figure.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/thermal"
)

var chapter = notebook.Chapter{
	Title: "The stretch of melted cheese",
	Line:  "When the pull opens and closes, what keeps it open, and why the cheese itself decides more than the set does.",
	Figures: []notebook.Figure{{
		Name:    "pull",
		Caption: "The mean temperature of the cheese after the oven, likely course. It strings between the two areas: where it stops running and where it begins to tear, each with its 95 % band.",
		Draw:    drawPull,
	}},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawPull() ([]byte, error) {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	p := figure.New("", "time after the oven, min", "mean temperature of the cheese, degC")
	const last = 5.0
	across := func(i int, name string, low, high float64) error {
		return figure.Band(p, i, name, []float64{0, last}, []float64{low, low}, []float64{high, high})
	}
	// The limits are the defaults of Cheese.RunnyC and Cheese.SetC.
	if err := across(1, "runs above", 79, 91); err != nil {
		return nil, err
	}
	if err := across(0, "tears below", 45, 65); err != nil {
		return nil, err
	}
	for i, c := range []struct {
		name   string
		cheese thermal.Cheese
	}{
		{"wooden board", thermal.Cheese{Grams: 150, Diameter: 0.28}},
		{"cold steel table", thermal.Cheese{Grams: 150, Diameter: 0.28, UndersideH: 150}},
		{"stone at 150 degC", thermal.Cheese{Grams: 150, Diameter: 0.28, UndersideH: 100, UndersideRiseC: 127}},
		{"board, twice the cheese", thermal.Cheese{Grams: 300, Diameter: 0.28}},
	} {
		k, err := c.cheese.Likely(room)
		if err != nil {
			return nil, err
		}
		var x, y []float64
		for _, s := range k.Series {
			if s.Time.Minutes() <= last {
				x, y = append(x, s.Time.Minutes()), append(y, s.MeanC)
			}
		}
		if err := figure.Line(p, i, c.name, figure.XY(x, y)); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, 35, 125
	return figure.SVG(p, figure.Width, figure.Height)
}
