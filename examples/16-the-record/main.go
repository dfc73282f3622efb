// Command 16-the-record redraws this chapter: its page and its figure.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

var chapter = notebook.Chapter{
	Title: "Writing the record",
	Line:  "What was declared, planned and weighed, what stood in for what and why, and who says so: written once, readable by people and programs, and sealed.",
	Figures: []notebook.Figure{{
		Name:    "weighed-less-declared",
		Caption: "The five weighed items of the day: the box is what the scale may be wrong by, the dotted lines are what the maker allows. A box inside agrees, one outside differs, one across cannot tell.",
		Draw:    drawDay,
	}},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawDay() ([]byte, error) {
	p := figure.New("", "", "weighed less declared, g")
	var names []string
	for k, item := range day().Items {
		if item.Weighed == nil || item.Weighed.Grams == 0 {
			continue
		}
		x, d := float64(len(names)), item.Weighed.Grams-item.Declared.Grams
		names = append(names, item.Item)
		wide, e := []float64{x - 0.3, x + 0.3}, item.Weighed.ErrorGrams
		band, mark, limit := "", "", ""
		if k == 0 {
			band, mark, limit = "what the scale may be wrong by", "weighed", "what the maker allows"
		}
		for _, y := range []float64{-item.Declared.MinusGrams, item.Declared.PlusGrams} {
			if err := figure.Line(p, 2, limit, figure.XY([]float64{x - 0.4, x + 0.4}, []float64{y, y})); err != nil {
				return nil, err
			}
			limit = ""
		}
		if err := figure.Band(p, 0, band, wide, []float64{d - e, d - e}, []float64{d + e, d + e}); err != nil {
			return nil, err
		}
		if err := figure.Points(p, 0, mark, figure.XY([]float64{x}, []float64{d})); err != nil {
			return nil, err
		}
	}
	if err := figure.Line(p, 1, "declared", figure.XY([]float64{-0.5, float64(len(names)) - 0.5}, []float64{0, 0})); err != nil {
		return nil, err
	}
	p.NominalX(names...)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -0.5, float64(len(names))-0.5, -5, 8
	return figure.SVG(p, figure.Width, figure.Height)
}

// day returns the record of an invented day. The errors are what Scale.Weigh gives
// for scales of class III in service that show 0.5, 0.1, 0.5, 1 and 2 g, rounded up to
// 0.1 g.
func day() record.Record {
	item := func(name string, declared, step, tolerance, weighed, wrongBy float64) record.Item {
		return record.Item{
			Item: name, Advertised: true,
			Declared: portion.Amount{Grams: declared, StepGrams: step, MinusGrams: tolerance, PlusGrams: tolerance},
			Weighed:  &record.Weighed{Grams: weighed, ErrorGrams: wrongBy, LeastGrams: 20 * step},
		}
	}
	return record.Record{
		Revision: 1,
		Picture:  "Five plates, one day",
		Date:     "2026-10-14",
		Items: []record.Item{
			item("cheese", 62, 0.5, 1, 62, 0.8),
			item("figs", 120, 0.1, 1, 120.1, 0.3),
			item("syrup", 45, 0.5, 1, 43, 0.8),
			item("scoop", 62, 1, 2, 63, 1.5),
			item("porridge", 240, 2, 4, 240, 2.9),
		},
	}
}
