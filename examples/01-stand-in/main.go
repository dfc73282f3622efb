// Command 01-stand-in redraws this chapter: its page and its figure.
package main

import (
	"fmt"
	"os"
	"strconv"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
	"gonum.org/v1/plot/plotter"
)

var chapter = notebook.Chapter{
	Title: "What may be a stand-in",
	Line:  "What is sold in this picture is shown as it is; what only dresses it may be something else, and is written down.",
	Figures: []notebook.Figure{{
		Name:    "picture-and-package",
		Caption: "How far what is shown may be from what is declared. One package in a shop may be short by the wide band; in the picture it is what its maker allows, and the doubt of the scale, the narrow band.",
		Draw:    drawLatitude,
	}},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawLatitude() ([]byte, error) {
	p := figure.New("", "declared, g", "shown less declared, g")
	scale := portion.Scale{StepGrams: 0.5}
	var grams, box, exact, short, over []float64
	for g := 10.0; g <= 500; g += 0.5 {
		tolerable, err := portion.TolerableNegativeError(g)
		if err != nil {
			return nil, err
		}
		weighed, err := scale.Weigh(g)
		if err != nil {
			return nil, err
		}
		grams, box, exact = append(grams, g), append(box, -tolerable), append(exact, 0)
		short, over = append(short, -weighed.Expanded), append(over, weighed.Expanded)
	}
	table, err := testdata.Load("tolerable_negative_error")
	if err != nil {
		return nil, err
	}
	// The rows given in grams are flat: a point at either end. Of the others the
	// law prints a percentage, which has no one place here.
	var printed plotter.XYs
	for _, row := range table.Rows {
		if row.Text("error_g") == "" || row.Text("nominal_to_g") == "" {
			continue
		}
		tolerable, err := row.Float("error_g")
		if err != nil {
			return nil, err
		}
		for _, end := range []string{"nominal_above_g", "nominal_to_g"} {
			g, err := strconv.ParseFloat(row.Text(end), 64)
			if err != nil {
				return nil, err
			}
			if g <= 500 {
				printed = append(printed, plotter.XY{X: g, Y: -tolerable})
			}
		}
	}
	for _, err := range []error{
		figure.Band(p, 1, "one package in a shop, EU average system", grams, box, exact),
		figure.Band(p, 0, "the picture, weighed on a scale of 0.5 g", grams, short, over),
		figure.Line(p, 0, "as declared", figure.XY(grams, exact)),
		figure.Points(p, 1, "limits that the directive prints in grams", printed),
	} {
		if err != nil {
			return nil, err
		}
	}
	p.Legend.Top, p.Legend.YOffs = false, -p.Legend.YOffs
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 500, -25, 5
	return figure.SVG(p, figure.Width, figure.Height)
}
