// Command 07-dew-point redraws this chapter: its page and its figure.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/thermal"
)

var chapter = notebook.Chapter{
	Title: "Will it fog? Reading the room",
	Line:  "One temperature, the dew point, says which cold things fog on this set and which never will.",
	Figures: []notebook.Figure{{
		Name:    "dew-point",
		Caption: "The dew point of a room by its humidity. A surface below the line of its room fogs; above it, never.",
		Draw:    drawDewPoint,
	}},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawDewPoint() ([]byte, error) {
	p := figure.New("", "relative humidity, %", "dew point, degC")
	for i, room := range []float64{19, 23, 27} {
		var rh, dew []float64
		for percent := 20.0; percent <= 80; percent++ {
			d, err := thermal.Air{TempC: room, RH: percent / 100}.DewPointC()
			if err != nil {
				return nil, err
			}
			rh, dew = append(rh, percent), append(dew, d)
		}
		if err := figure.Line(p, i, fmt.Sprintf("room at %g degC", room), figure.XY(rh, dew)); err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 20, 80, -5, 25
	return figure.SVG(p, figure.Width, figure.Height)
}
