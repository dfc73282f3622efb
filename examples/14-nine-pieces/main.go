// Command 14-nine-pieces redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"math"
	"math/bits"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/examples/plated"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/plate"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

var chapter = notebook.Chapter{
	Title: "Nine pieces that weigh what the label says",
	Line:  "From eighteen weighed pieces, the nine that look best and still weigh the declared 120 g, with proof that no better nine exist.",
	Figures: []notebook.Figure{
		{
			Name:    "looks-by-total",
			Caption: "All 48 620 ways to take nine of the eighteen: the looks they reach at every total. Only the upper edge is worth showing, and only at 120 g is it honest.",
			Draw:    drawLooks,
		},
		{
			Name:    "nine-on-the-plate",
			Caption: "The nine on their plate, seen from above, numbered in the order of placing: far side first.",
			Draw:    drawPlate,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// figs returns the eighteen pieces of the story: weighed to 0.1 g, looks scored
// from 0 to 100.
func figs() []portion.Piece {
	return []portion.Piece{
		{Name: "A1", Grams: 13.4, Score: 71}, {Name: "A2", Grams: 14.6, Score: 88}, {Name: "A3", Grams: 12.5, Score: 93},
		{Name: "A4", Grams: 15.1, Score: 64}, {Name: "A5", Grams: 13.9, Score: 79}, {Name: "A6", Grams: 13.6, Score: 85},
		{Name: "B1", Grams: 15.8, Score: 97}, {Name: "B2", Grams: 12.1, Score: 58}, {Name: "B3", Grams: 14.3, Score: 96},
		{Name: "B4", Grams: 13.8, Score: 67}, {Name: "B5", Grams: 14.8, Score: 92}, {Name: "B6", Grams: 12.9, Score: 74},
		{Name: "C1", Grams: 14.4, Score: 91}, {Name: "C2", Grams: 13.3, Score: 77}, {Name: "C3", Grams: 15.4, Score: 90},
		{Name: "C4", Grams: 14.0, Score: 69}, {Name: "C5", Grams: 12.3, Score: 80}, {Name: "C6", Grams: 14.5, Score: 84},
	}
}

// moreFigs returns the eighteen and ten more.
func moreFigs() []portion.Piece {
	return append(figs(), []portion.Piece{
		{Name: "D1", Grams: 13.1, Score: 82}, {Name: "D2", Grams: 12.7, Score: 66}, {Name: "D3", Grams: 14.9, Score: 87}, {Name: "D4", Grams: 13.0, Score: 90},
		{Name: "D5", Grams: 12.4, Score: 72}, {Name: "E1", Grams: 13.8, Score: 94}, {Name: "E2", Grams: 12.6, Score: 61}, {Name: "E3", Grams: 15.2, Score: 83},
		{Name: "E4", Grams: 11.9, Score: 76}, {Name: "E5", Grams: 13.5, Score: 89},
	}...)
}

// everyNine calls f with the total, in tenths of a gram, and the looks of every
// set of nine figs.
func everyNine(f func(tenths, looks int)) {
	all := figs()
	for set := range 1 << len(all) {
		if bits.OnesCount(uint(set)) != 9 {
			continue
		}
		tenths, looks := 0, 0
		for i, fig := range all {
			if set>>i&1 == 1 {
				tenths += int(math.Round(10 * fig.Grams))
				looks += int(fig.Score)
			}
		}
		f(tenths, looks)
	}
}

func drawLooks() ([]byte, error) {
	p := figure.New("", "nine pieces together, g", "looks, points")
	type span struct{ low, high int }
	byTotal := map[int]span{}
	least, most := math.MaxInt, 0
	everyNine(func(tenths, looks int) {
		s, seen := byTotal[tenths]
		if !seen {
			s = span{looks, looks}
		}
		byTotal[tenths] = span{min(s.low, looks), max(s.high, looks)}
		least, most = min(least, tenths), max(most, tenths)
	})
	var grams, low, high []float64
	for t := least; t <= most; t++ {
		if s, ok := byTotal[t]; ok {
			grams = append(grams, float64(t)/10)
			low, high = append(low, float64(s.low)), append(high, float64(s.high))
		}
	}
	exact, err := portion.Pick{Pieces: figs(), Count: 9, Grams: 120, StepGrams: 0.1}.Best()
	if err != nil {
		return nil, err
	}
	prettiest, err := portion.Pick{Pieces: figs(), Count: 9}.Best()
	if err != nil {
		return nil, err
	}
	for _, err := range []error{
		figure.Band(p, 0, "every nine there is", grams, low, high),
		figure.Line(p, 0, "the best-looking nine of each total", figure.XY(grams, high)),
		figure.Line(p, 2, "declared: 120 g", figure.XY([]float64{120, 120}, []float64{600, 850})),
		mark(p, draw.CircleGlyph{}, "the best nine of 120.0 g", exact),
		mark(p, draw.PyramidGlyph{}, "the best-looking nine, whatever they weigh", prettiest),
	} {
		if err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 116, 134, 600, 960
	return figure.SVG(p, figure.Width, figure.Height)
}

// mark sets one answer large enough to be found on the edge of the band.
func mark(p *plot.Plot, shape draw.GlyphDrawer, name string, answer portion.Picked) error {
	s, err := plotter.NewScatter(plotter.XYs{{X: answer.Grams, Y: answer.Score}})
	if err != nil {
		return err
	}
	s.GlyphStyle = draw.GlyphStyle{Color: figure.Colour(1), Radius: vg.Points(5), Shape: shape}
	p.Add(s)
	p.Legend.Add(name, s)
	return nil
}

func drawPlate() ([]byte, error) {
	best, err := portion.Pick{Pieces: figs(), Count: 9, Grams: 120, StepGrams: 0.1}.Best()
	if err != nil {
		return nil, err
	}
	return plated.Pieces("filled figs", scatter, dish, best.Pieces)
}

var (
	scatter = plate.Scatter{Count: 9, Diameter: 0.036, Gap: 0.008, Seed: 1}
	dish    = plate.Round{Diameter: 0.24, Edge: 0.025}
)
