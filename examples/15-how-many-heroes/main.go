// Command 15-how-many-heroes redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/portion"
	"example.org/honestplate/testdata"
)

var chapter = notebook.Chapter{
	Title: "How many heroes to prepare",
	Line:  "Three good pulls are wanted and three in five succeed: why five breads are too few, eight may do, and five past takes make it thirteen.",
	Figures: []notebook.Figure{
		{
			Name:    "chance-of-three",
			Caption: "The chance of three good pulls by the number of breads. The band is every success rate that 3 good takes of 5 leave open, nine times in ten.",
			Draw:    drawChance,
		},
		{
			Name:    "chance-of-five",
			Caption: "The same calculation beside a published table: at least five successes, each with a chance of 40 %.",
			Draw:    drawPublished,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// chances returns the chance, in per cent, of h for every number of units.
func chances(h portion.Heroes, units []float64) ([]float64, error) {
	var percent []float64
	for _, n := range units {
		c, err := h.Chance(int(n))
		if err != nil {
			return nil, err
		}
		percent = append(percent, 100*c)
	}
	return percent, nil
}

func drawChance() ([]byte, error) {
	p := figure.New("", "breads baked", "chance of three good pulls, %")
	var breads []float64
	for n := 3.0; n <= 20; n++ {
		breads = append(breads, n)
	}
	few := portion.Heroes{Takes: 5, Good: 3, Wanted: 3, Confidence: 0.95}
	lowest, err := few.LowestRate()
	if err != nil {
		return nil, err
	}
	few.Confidence = 0.05 // one time in twenty the rate is above this one
	highest, err := few.LowestRate()
	if err != nil {
		return nil, err
	}
	low, err := chances(portion.Heroes{SuccessRate: lowest, Wanted: 3}, breads)
	if err != nil {
		return nil, err
	}
	high, err := chances(portion.Heroes{SuccessRate: highest, Wanted: 3}, breads)
	if err != nil {
		return nil, err
	}
	if err := figure.Band(p, 1, "rates that 3 good takes of 5 leave open", breads, low, high); err != nil {
		return nil, err
	}
	for i, way := range []struct {
		name string
		how  portion.Heroes
	}{
		{"success rate known: 60 %", portion.Heroes{SuccessRate: 0.6, Wanted: 3}},
		{"3 good takes of 5", portion.Heroes{Takes: 5, Good: 3, Wanted: 3}},
		{"12 good takes of 20", portion.Heroes{Takes: 20, Good: 12, Wanted: 3}},
	} {
		percent, err := chances(way.how, breads)
		if err != nil {
			return nil, err
		}
		if err := figure.Line(p, i, way.name, figure.XY(breads, percent)); err != nil {
			return nil, err
		}
	}
	if err := figure.Line(p, 3, "wanted: 95 %", figure.XY([]float64{3, 20}, []float64{95, 95})); err != nil {
		return nil, err
	}
	p.Legend.Top, p.Legend.YOffs = false, -p.Legend.YOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 2, 20, 0, 100
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawPublished() ([]byte, error) {
	p := figure.New("", "trials", "chance of at least five successes, %")
	table, err := testdata.Load("chance_of_five")
	if err != nil {
		return nil, err
	}
	var trials, published []float64
	for _, row := range table.Rows {
		n, err := row.Float("trials")
		if err != nil {
			return nil, err
		}
		c, err := row.Float("probability")
		if err != nil {
			return nil, err
		}
		trials, published = append(trials, n), append(published, 100*c)
	}
	percent, err := chances(portion.Heroes{SuccessRate: 0.4, Wanted: 5}, trials)
	if err != nil {
		return nil, err
	}
	for _, err := range []error{
		figure.Line(p, 0, "this library", figure.XY(trials, percent)),
		figure.Points(p, 1, "published table", figure.XY(trials, published)),
	} {
		if err != nil {
			return nil, err
		}
	}
	p.Legend.Top, p.Legend.YOffs = false, -p.Legend.YOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 4, 30, 0, 100
	return figure.SVG(p, figure.Width, figure.Height)
}
