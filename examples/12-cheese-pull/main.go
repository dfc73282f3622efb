// Command 12-cheese-pull redraws this chapter: its page and its figure.
package main

import (
	"fmt"
	"os"
	"time"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/thermal"
	"gonum.org/v1/plot"
)

var chapter = notebook.Chapter{
	Title: "The stretch of melted cheese",
	Line:  "When the pull opens and closes, what keeps it open, and why the cheese itself decides more than the set does.",
	Figures: []notebook.Figure{{
		Name:    "pull",
		Caption: "The mean temperature of the cheese after the oven, likely courses, and the 95 % band of the first. It strings between the two pale areas, where it stops running and where it begins to tear; each is as wide as that is known.",
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
	// The limits are the defaults of Cheese.RunnyC and Cheese.SetC.
	for _, limit := range [][2]float64{{79, 91}, {45, 65}} {
		if err := figure.Band(p, 3, "", []float64{0, last}, []float64{limit[0], limit[0]}, []float64{limit[1], limit[1]}); err != nil {
			return nil, err
		}
	}
	board := thermal.Cheese{Grams: 150, Diameter: 0.28}
	if err := drawBand(p, board, room, last); err != nil {
		return nil, err
	}
	for i, c := range []struct {
		name   string
		cheese thermal.Cheese
	}{
		{"wooden board", board},
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
			x, y = append(x, s.Time.Minutes()), append(y, s.MeanC)
			if s.Time.Minutes() > last {
				break
			}
		}
		if err := figure.Line(p, i, c.name, figure.XY(x, y)); err != nil {
			return nil, err
		}
	}
	for _, n := range []struct {
		x, y float64
		text string
	}{{3.5, 84, "stops running"}, {0.1, 47, "begins to tear"}} {
		if err := figure.Note(p, n.x, n.y, n.text); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, 35, 125
	return figure.SVG(p, figure.Width, figure.Height)
}

// drawBand draws the 95 % band of the mean temperature.
func drawBand(p *plot.Plot, cheese thermal.Cheese, room thermal.Air, last float64) error {
	k, err := cheese.Clock(room)
	if err != nil {
		return err
	}
	var x, low, high []float64
	var times []time.Duration
	for t := 0.0; t <= last; t += 0.125 {
		x, times = append(x, t), append(times, time.Duration(t*float64(time.Minute)))
	}
	course, err := k.Kept.Course("mean_c", times...)
	if err != nil {
		return err
	}
	for _, e := range course {
		low, high = append(low, e.Low), append(high, e.High)
	}
	return figure.Band(p, 0, "wooden board, 95 % band", x, low, high)
}
