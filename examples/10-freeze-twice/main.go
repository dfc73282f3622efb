// Command 10-freeze-twice redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/testdata"
	"example.org/honestplate/thermal"
	"example.org/honestplate/thermal/food"
	"example.org/honestplate/thermal/light"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
)

var chapter = notebook.Chapter{
	Title: "Freezing a scoop twice",
	Line:  "What a second, deeper freeze buys a scoop under the lamps, when it must go in, and how much of it is lost on the way to the plate.",
	Figures: []notebook.Figure{
		{
			Name:    "hold",
			Caption: "When the lit side goes soft and when the shape is lost, by the temperature at which the scoop comes out. A stabilised ice cream; areas are 95 % bands, cut off at 40 min; one tungsten head of 5000 lx, room at 23 degC.",
			Draw:    drawHold,
		},
		{
			Name:    "freezing-curve",
			Caption: "The share of the water that is ice: the library's curve of a mix and the published one. Below -18 degC little is left to freeze.",
			Draw:    drawCurve,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawHold() ([]byte, error) {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	key := light.Lamp{Source: light.Tungsten, Lux: 5000}
	const most = 40.0
	var start []float64
	var softens, slumps [3][]float64
	add := func(to *[3][]float64, w honestplate.Window) {
		for i, m := range []honestplate.Moment{w.Earliest, w.Likely, w.Latest} {
			minutes := most // what may never come leaves the figure
			if !m.Never {
				minutes = min(most, m.After.Minutes())
			}
			to[i] = append(to[i], minutes)
		}
	}
	for c := -36.0; c <= -12; c += 2 {
		scoop := thermal.Scoop{Mix: food.Recipes().VanillaIceCream, Diameter: 0.055, StartC: c, Structure: food.StabilisedStructure}
		clock, err := scoop.Clock(room, key)
		if err != nil {
			return nil, err
		}
		start = append(start, c)
		add(&softens, clock.Softens.Window)
		add(&slumps, clock.Slumps.Window)
	}
	p := figure.New("", "temperature of the scoop as it comes out, degC", "time under the lamp, min")
	series := []struct {
		name  string
		times [3][]float64
	}{{"loses its shape", slumps}, {"lit side goes soft", softens}}
	for i, s := range series {
		if err := figure.Band(p, i, "", start, s.times[0], s.times[2]); err != nil {
			return nil, err
		}
	}
	for i, s := range series {
		if err := figure.Line(p, i, s.name, figure.XY(start, s.times[1])); err != nil {
			return nil, err
		}
		// The bands overlap: thin edges show each whole.
		for _, edge := range [][]float64{s.times[0], s.times[2]} {
			l, err := plotter.NewLine(figure.XY(start, edge))
			if err != nil {
				return nil, err
			}
			l.Color, l.Width = figure.Colour(i), vg.Points(0.5)
			p.Add(l)
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -36, -12, 0, most
	return figure.SVG(p, figure.Width, figure.Height)
}

// drawCurve draws the mix whose freezing curve is published.
func drawCurve() ([]byte, error) {
	mix := food.FrozenMix{MSNFPercent: 10, WheySolidsPercent: 2, SucrosePercent: 12, GlucoseSyrupPercent: 4, FatPercent: 12}
	var tempC, share []float64
	for frozen := 0.0; frozen < 0.88; frozen += 0.01 {
		t, err := mix.FrozenAtC(frozen)
		if err != nil {
			return nil, err
		}
		tempC, share = append(tempC, t), append(share, 100*frozen)
	}
	table, err := testdata.Load("ice_cream_freezing_curve")
	if err != nil {
		return nil, err
	}
	var x, y []float64
	for _, r := range table.Rows {
		t, err := r.Float("temp_c")
		if err != nil {
			return nil, err
		}
		frozen, err := r.Float("water_frozen_percent")
		if err != nil {
			return nil, err
		}
		x, y = append(x, t), append(y, frozen)
	}
	p := figure.New("", "temperature, degC", "share of the water that is ice, %")
	if err := figure.Line(p, 0, "honestplate", figure.XY(tempC, share)); err != nil {
		return nil, err
	}
	if err := figure.Points(p, 1, "Goff and Hartel 2013, Table 6.2", figure.XY(x, y)); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -30, 0, 0, 100
	return figure.SVG(p, figure.Width, figure.Height)
}
