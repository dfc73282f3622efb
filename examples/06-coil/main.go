// Command 06-coil redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"
	"time"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/rheology"
	"example.org/honestplate/rheology/pour"
)

var chapter = notebook.Chapter{
	Title: "The coil of something thick",
	Line:  "Whether honey coils, which way the coil moves, how far it spreads and how long its bubbles stay: ranges and directions, few numbers.",
	Figures: []notebook.Figure{
		{
			Name:    "where-it-coils",
			Caption: "Honey from a 12 mm spout: from which heights it coils, by its temperature. Outside the two areas it does not. The edges are sharp in the formulas, not in honey.",
			Draw:    drawMap,
		},
		{
			Name:    "spread",
			Caption: "How wide 40 g of honey have spread on a level plate, with 95 % bands. They level off where surface tension stops them.",
			Draw:    drawSpread,
		},
		{
			Name:    "bubbles",
			Caption: "How long bubbles take to rise through 8 cm of honey, with 95 % bands.",
			Draw:    drawBubbles,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

var spout = pour.Spout{Diameter: 0.012, Length: 0.020, Head: 0.060}

// drawMap scans the heights of each temperature for where coiling begins, turns
// inertial and ends.
func drawMap() ([]byte, error) {
	var at, begin, turn, end []float64
	for tempC := 5.0; tempC <= 45; tempC += 0.25 {
		poured, err := spout.Pour(rheology.Honey{}, tempC, 40)
		if err != nil {
			return nil, err
		}
		first, inertial, last := 0.0, 0.0, 0.0
		for drop := 0.01; drop <= 1; drop *= 1.01 {
			stream, err := poured.Stream(drop)
			if err != nil {
				return nil, err
			}
			coil, err := stream.Coil()
			if err != nil {
				return nil, err
			}
			if !coil.Coils {
				continue
			}
			if last = 100 * drop; first == 0 {
				first = last
			}
			if coil.Regime == "inertial" && inertial == 0 {
				inertial = last
			}
		}
		if first == 0 {
			break
		}
		at, begin, end = append(at, tempC), append(begin, first), append(end, last)
		turn = append(turn, inertial)
	}
	p := figure.New("", "temperature of the honey, degC", "height of the fall, cm")
	figure.LogY(p)
	if err := figure.Band(p, 1, "inertial: fast and small, faster from higher", at, turn, end); err != nil {
		return nil, err
	}
	if err := figure.Band(p, 0, "inertio-gravitational: slow, and may jump", at, begin, turn); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 5, 45, 2, 300
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawSpread() ([]byte, error) {
	p := figure.New("", "time since the honey first landed, min", "width of the puddle, mm")
	figure.LogX(p)
	// The bands go under all of the lines.
	var lines []func() error
	for i, tempC := range []float64{40, 20, 10} {
		poured, err := spout.Pour(rheology.Honey{}, tempC, 40)
		if err != nil {
			return nil, err
		}
		var at, likely, low, high []float64
		for s := 3.0; s <= 4*3600; s *= 1.1 {
			puddle, err := poured.Puddle(time.Duration(s*float64(time.Second)), 40)
			if err != nil {
				return nil, err
			}
			at, likely = append(at, s/60), append(likely, 2000*puddle.Radius.Likely)
			low, high = append(low, 2000*puddle.Radius.Low), append(high, 2000*puddle.Radius.High)
		}
		if err := figure.Band(p, i, "", at, low, high); err != nil {
			return nil, err
		}
		lines = append(lines, func() error {
			return figure.Line(p, i, fmt.Sprintf("honey at %g degC", tempC), figure.XY(at, likely))
		})
	}
	for _, line := range lines {
		if err := line(); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0.05, 240, 0, 200
	p.Legend.Top, p.Legend.YOffs = false, -p.Legend.YOffs
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawBubbles() ([]byte, error) {
	p := figure.New("", "diameter of the bubble, mm", "time to clear, min")
	figure.LogX(p)
	figure.LogY(p)
	for i, tempC := range []float64{20, 40} {
		var at, likely, low, high []float64
		for mm := 0.1; mm <= 5; mm *= 1.1 {
			wait, err := pour.BubblesClear(rheology.Honey{}, tempC, mm/1000, 0.08)
			if err != nil {
				return nil, err
			}
			at, likely = append(at, mm), append(likely, wait.Likely.After.Minutes())
			low, high = append(low, wait.Earliest.After.Minutes()), append(high, wait.Latest.After.Minutes())
		}
		if err := figure.Band(p, i, "", at, low, high); err != nil {
			return nil, err
		}
		if err := figure.Line(p, i, fmt.Sprintf("honey at %g degC", tempC), figure.XY(at, likely)); err != nil {
			return nil, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0.1, 5, 0.03, 10000
	return figure.SVG(p, figure.Width, figure.Height)
}
