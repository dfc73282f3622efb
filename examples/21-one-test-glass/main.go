// Command 21-one-test-glass redraws this chapter: its page and its figure.
package main

import (
	"fmt"
	"os"
	"time"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/thermal"
	"gonum.org/v1/plot/vg"
)

var chapter = notebook.Chapter{
	Title: "One test glass teaches the day",
	Line:  "What the eye calls beads, a watch and one glass settle; the next glass is known to a third of the width, and what was learned of the room goes to the other clocks.",
	Figures: []notebook.Figure{{
		Name:    "dew",
		Caption: "Bars: when beads come, before anything was seen, and on the next glass after beads were called on the first at 14 min; a mark where they are likely. Below, the dew itself: grey-blue area and dashed edges are the 95 % bands before and after. The word was learned, the dew hardly.",
		Draw:    drawDew,
	}},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// The room and the glass of this chapter.
var room = thermal.Air{TempC: 23, RH: 0.50, Speed: 0.15}

func iced() thermal.Glass {
	return thermal.Glass{Diameter: 0.075, Height: 0.14, DrinkGrams: 200, IceGrams: 120, DrinkC: honestplate.Some(4), WallC: honestplate.Some(4)}
}

// called is what the crew saw on the test glass.
var called = []thermal.Seen{{Event: "beads", At: 14 * time.Minute, Within: time.Minute}}

func drawDew() ([]byte, error) {
	before, err := iced().Clock(room)
	if err != nil {
		return nil, err
	}
	_, lesson, err := iced().Observe(thermal.Lesson{}, called, room)
	if err != nil {
		return nil, err
	}
	next, err := iced().Knowing(lesson, room)
	if err != nil {
		return nil, err
	}
	var times []time.Duration
	var minutes []float64
	for m := 0.5; m <= 42; m += 0.5 {
		minutes = append(minutes, m)
		times = append(times, time.Duration(m*float64(time.Minute)))
	}
	p := figure.New("", "time since filling, min", "dew, g/m2")
	const last, top = 42.0, 125.0
	for i, c := range []struct {
		name  string
		clock thermal.GlassClock
	}{{"before the test", before}, {"the next glass", next}} {
		bands, err := c.clock.Kept.Course("dew_g_m2", times...)
		if err != nil {
			return nil, err
		}
		var low, likely, high []float64
		for _, b := range bands {
			low, likely, high = append(low, b.Low), append(likely, b.Likely), append(high, b.High)
		}
		// The band of the next glass lies in that of the first: the one as an area, the
		// other by its two edges.
		lines := [][]float64{likely}
		name := "dew before, likely"
		if i == 0 {
			if err := figure.Band(p, i, "dew before, 95 %", minutes, low, high); err != nil {
				return nil, err
			}
		} else {
			lines, name = [][]float64{low, high}, "dew next, 95 %"
		}
		for _, y := range lines {
			if err := figure.Line(p, i, name, figure.XY(minutes, y)); err != nil {
				return nil, err
			}
			name = ""
		}
		// Above them, when beads come.
		y, w := top-9-13*float64(i), c.clock.Beads.Window
		from, until := w.Earliest.After.Minutes(), w.Latest.After.Minutes()
		if err := figure.Band(p, i, "", []float64{from, until}, []float64{y - 5, y - 5}, []float64{y + 5, y + 5}); err != nil {
			return nil, err
		}
		if err := figure.Points(p, i, "", figure.XY([]float64{w.Likely.After.Minutes()}, []float64{y})); err != nil {
			return nil, err
		}
		if err := figure.Note(p, []float64{17, until + 0.5}[i], y-2, fmt.Sprintf("beads, %s: %.0f to %.0f min", c.name, from, until)); err != nil {
			return nil, err
		}
	}
	if err := figure.Line(p, 3, "beads called", figure.XY([]float64{14, 14}, []float64{0, top - 28})); err != nil {
		return nil, err
	}
	p.Legend.Left, p.Legend.XOffs, p.Legend.YOffs = true, -p.Legend.XOffs, -2.1*vg.Centimeter
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, 0, top
	return figure.SVG(p, figure.Width, figure.Height)
}
