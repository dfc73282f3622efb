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
)

var chapter = notebook.Chapter{
	Title: "One test glass teaches the day",
	Line:  "What the eye calls beads, a watch and one glass settle; the next glass is known to a third of the width, and what was learned of the room goes to the other clocks.",
	Figures: []notebook.Figure{{
		Name:    "dew",
		Caption: "Dew on the glass, 95 % band over the runs: before anything was seen, and for the next glass after beads were called on the first at 14 min. The rule is where the crew said: beads.",
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
	for m := 0.5; m <= 40; m += 0.5 {
		minutes = append(minutes, m)
		times = append(times, time.Duration(m*float64(time.Minute)))
	}
	p := figure.New("", "time since filling, min", "dew, g/m2")
	for i, c := range []struct {
		name  string
		clock thermal.GlassClock
	}{{"before", before}, {"the next glass", next}} {
		bands, err := c.clock.Kept.Course("dew_g_m2", times...)
		if err != nil {
			return nil, err
		}
		var low, likely, high []float64
		for _, b := range bands {
			low, likely, high = append(low, b.Low), append(likely, b.Likely), append(high, b.High)
		}
		if err := figure.Band(p, i, "", minutes, low, high); err != nil {
			return nil, err
		}
		if err := figure.Line(p, i, c.name, figure.XY(minutes, likely)); err != nil {
			return nil, err
		}
	}
	if err := figure.Line(p, 3, "", figure.XY([]float64{14, 14}, []float64{0, 90})); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 40, 0, 90
	return figure.SVG(p, figure.Width, figure.Height)
}
