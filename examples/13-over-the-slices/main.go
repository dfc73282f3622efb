// Command 13-over-the-slices redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/examples/plated"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
	"gonum.org/v1/plot/plotter"
)

var chapter = notebook.Chapter{
	Title: "Sixty-two grams over eight slices",
	Line:  "Cheese laid over the cuts before baking, more of it where the camera looks, and still exactly what is declared.",
	Figures: []notebook.Figure{
		{
			Name:    "cheese-over-the-cuts",
			Caption: "The bench sheet: one strip over every cut, in the order of placing, with the grams of every strip and every slice.",
			Draw:    drawLayout,
		},
		{
			Name:    "favour",
			Caption: "What three slices carry as the camera is favoured more: the steps are what is weighed out, the bands one step either side of the exact share.",
			Draw:    drawFavour,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// The bread and the cheese of the story.
var (
	bread  = plate.Round{Diameter: 0.28, Edge: 0.02, Slices: 8}
	cheese = portion.Declaration{Item: "smoked cheese", Grams: 62, StepGrams: 0.5, Advertised: true}
)

func overCuts(favour float64) plate.Strips {
	return plate.Strips{Hub: 0.02, Width: 0.018, Favour: favour}
}

func drawLayout() ([]byte, error) {
	return plated.Strips(overCuts(0.4), bread, cheese)
}

// drawFavour lays the cheese twice at every favour: in half grams, as it is
// weighed, and in milligrams, which is the exact share for any eye.
func drawFavour() ([]byte, error) {
	p := figure.New("", "favour of the near edge, %", "cheese on the slice, g")
	fine := cheese
	fine.StepGrams = 0.001
	var stairs []plotter.XYs
	slices := []struct {
		number int
		name   string
	}{{1, "slice 1, faces the camera"}, {7, "slice 7, at the side"}, {5, "slice 5, at the back"}}
	for i, slice := range slices {
		var percent, weighed, low, high []float64
		for f := 0.0; f <= 80; f += 0.25 {
			steps, err := overCuts(f/100).Lay(bread, cheese)
			if err != nil {
				return nil, err
			}
			exact, err := overCuts(f/100).Lay(bread, fine)
			if err != nil {
				return nil, err
			}
			share := exact.Slices[slice.number-1].Grams
			percent = append(percent, f)
			weighed = append(weighed, steps.Slices[slice.number-1].Grams)
			low, high = append(low, share-cheese.StepGrams), append(high, share+cheese.StepGrams)
		}
		if err := figure.Band(p, i, "", percent, low, high); err != nil {
			return nil, err
		}
		stairs = append(stairs, figure.XY(percent, weighed))
	}
	for i, slice := range slices { // over all the bands
		if err := figure.Line(p, i, slice.name, stairs[i]); err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 80, 4, 12
	return figure.SVG(p, figure.Width, figure.Height)
}
