// Command 18-the-splash-that-is-sharp redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/rheology/look/sharp"
	"gonum.org/v1/plot/plotter"
)

var chapter = notebook.Chapter{
	Title: "The splash that is sharp",
	Line:  "What a flash's printed time leaves out, which setting freezes a stream or a rim, and in which order crown, crater and jet come.",
	Figures: []notebook.Figure{
		{
			Name:    "needed",
			Caption: "The longest light for a blur of 0.03 mm on the sensor, by speed and magnification. Marks: the settings of two flashes, tail included, at half of life size; the brightest on the left.",
			Draw:    drawNeeded,
		},
		{
			Name:    "order",
			Caption: "After the contact of the stream's head with milk: a crown in a film of 0.5 mm, a crater and a jet in 30 mm. Bars are bands, marks the likely moment.",
			Draw:    drawOrder,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawNeeded() ([]byte, error) {
	p := figure.New("", "speed across the view, m/s", "longest light, us")
	figure.LogX(p)
	figure.LogY(p)
	for i, m := range []float64{0.1, 0.5, 1} {
		c := sharp.Camera{Magnification: m, Pixel: camera.Pixel}
		var pts plotter.XYs
		for v := 0.01; v < 10.1; v *= 1.2 {
			s, err := c.Freezes(v, sharp.FullFrameCircle)
			if err != nil {
				return nil, err
			}
			pts = append(pts, plotter.XY{X: v, Y: s * 1e6})
		}
		if err := figure.Line(p, i, fmt.Sprintf("%g of life size", m), pts); err != nil {
			return nil, err
		}
	}
	mark := 0
	for _, u := range sharp.Units() {
		// What one setting alone is known of is named in the text.
		if len(u.Settings) < 2 {
			continue
		}
		var pts plotter.XYs
		for _, s := range u.Settings {
			t, err := s.Exposure.Seconds()
			if err != nil {
				return nil, err
			}
			pts = append(pts, plotter.XY{X: sharp.FullFrameCircle / camera.Magnification / t.Likely, Y: t.Likely * 1e6})
		}
		if err := figure.Points(p, 2*mark, u.Name, pts); err != nil {
			return nil, err
		}
		mark++
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0.01, 10, 3, 5000
	p.Legend.Top, p.Legend.YOffs = false, -p.Legend.YOffs
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawOrder() ([]byte, error) {
	_, crown, err := movers()
	if err != nil {
		return nil, err
	}
	m, err := sharp.Contact{Diameter: crown.Diameter, Speed: crown.Speed, Depth: 0.030}.Moments()
	if err != nil {
		return nil, err
	}
	p := figure.New("", "after contact, ms", "")
	ms := func(at honestplate.Moment) float64 { return at.After.Seconds() * 1000 }
	for i, e := range []struct {
		name   string
		window honestplate.Window
	}{{"jet", m.Jet}, {"crater deepest", m.Crater}, {"crown falls back", crown.Lasts}} {
		y, low, high := float64(i), ms(e.window.Earliest), ms(e.window.Latest)
		if err := figure.Band(p, i, "", []float64{low, high}, []float64{y - 0.25, y - 0.25}, []float64{y + 0.25, y + 0.25}); err != nil {
			return nil, err
		}
		if err := figure.Points(p, i, "", plotter.XYs{{X: ms(e.window.Likely), Y: y}}); err != nil {
			return nil, err
		}
		if err := figure.Note(p, high+4, y-0.05, e.name); err != nil {
			return nil, err
		}
	}
	p.HideY()
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 200, -0.5, 2.5
	return figure.SVG(p, figure.Width, figure.Height*2/3)
}
