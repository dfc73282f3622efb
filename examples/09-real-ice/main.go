// Command 09-real-ice redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/thermal"
	"gonum.org/v1/gonum/interp"
)

var chapter = notebook.Chapter{
	Title: "Real ice or not",
	Line:  "Real ice chills, waters, fogs and goes; acrylic ice at room temperature does none of the four. Both are counted here, in grams and minutes.",
	Figures: []notebook.Figure{
		{
			Name:    "melt",
			Caption: "The water that six cubes and one large ball have given to the drink, by time. The area is the 95 % band of the cubes: its edges are a warm, draughty room and a cool, still one.",
			Draw:    drawMelt,
		},
		{
			Name:    "dew",
			Caption: "Dew on the outside of the four glasses, likely course. The grey area is what counts as beads; where a line stays below it, no bead is seen.",
			Draw:    drawDew,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// drawMelt asks the clock when each share of the drink has been added as melt and
// reads the answers the other way round: how much, at each minute.
func drawMelt() ([]byte, error) {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	p := figure.New("", "time since the ice went in, min", "melt in the drink, g")
	const last = 60.0
	for i, ice := range []struct {
		name  string
		shape thermal.IceShape
		size  float64
	}{
		{"six cubes of 28 mm", thermal.IceCube, 0.028},
		{"one ball of 63 mm", thermal.IceBall, 0.063},
	} {
		drink := thermal.Glass{
			DrinkGrams: 180, DrinkC: honestplate.Some(6), Diameter: 0.07, WallC: honestplate.Some(23),
			IceGrams: 120, IceC: honestplate.Some(-12), IceShape: ice.shape, IceSize: ice.size,
		}
		grams := []float64{0}
		early, likely, late := []float64{0}, []float64{0}, []float64{0}
		for share := 0.01; share < 0.6; share += max(0.01, share/6) {
			drink.DilutionShare = honestplate.Exactly(share)
			c, err := drink.Clock(room)
			if err != nil {
				return nil, err
			}
			w := c.Watered
			if w.Latest.Never {
				break
			}
			grams = append(grams, share*drink.DrinkGrams)
			early, likely, late = append(early, w.Earliest.After.Minutes()), append(likely, w.Likely.After.Minutes()), append(late, w.Latest.After.Minutes())
		}
		var x, low, mid, high []float64
		for t := 0.0; t <= last; t++ {
			x = append(x, t)
			low, mid, high = append(low, gramsAt(late, grams, t)), append(mid, gramsAt(likely, grams, t)), append(high, gramsAt(early, grams, t))
		}
		if i == 0 {
			if err := figure.Band(p, i, "cubes, 95 % band", x, low, high); err != nil {
				return nil, err
			}
		}
		if err := figure.Line(p, i, ice.name, figure.XY(x, mid)); err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, 0, 80
	return figure.SVG(p, figure.Width, figure.Height)
}

// gramsAt reads the grams at a minute off a rising row of minutes.
func gramsAt(minutes, grams []float64, at float64) float64 {
	var line interp.PiecewiseLinear
	n := 1
	for n < len(minutes) && minutes[n] > minutes[n-1] {
		n++
	}
	if err := line.Fit(minutes[:n], grams[:n]); err != nil {
		return 0
	}
	return line.Predict(at)
}

func drawDew() ([]byte, error) {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	p := figure.New("", "time since filling, min", "dew on the glass, g/m2")
	beads := thermal.DefaultStages().Beads
	const last = 45.0
	if err := figure.Band(p, 0, "beads begin (estimate)", []float64{0, last}, []float64{beads.Low, beads.Low}, []float64{beads.High, beads.High}); err != nil {
		return nil, err
	}
	for i, g := range glasses() {
		c, err := g.glass.Likely(room)
		if err != nil {
			return nil, err
		}
		var x, y []float64
		for _, s := range c.Series {
			if s.Time.Minutes() <= last {
				x, y = append(x, s.Time.Minutes()), append(y, s.DewGM2)
			}
		}
		if err := figure.Line(p, i, g.name, figure.XY(x, y)); err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, 0, 100
	return figure.SVG(p, figure.Width, figure.Height)
}

// A namedGlass is a glass of the story.
type namedGlass struct {
	name  string
	glass thermal.Glass
}

// glasses returns the four glasses of the story.
// 180 g of drink and 120 g of acrylic hold as much heat as 222 g of water.
func glasses() []namedGlass {
	return []namedGlass{
		{"real ice, glass from the shelf", thermal.Glass{Diameter: 0.07, DrinkGrams: 180, DrinkC: honestplate.Some(6), IceGrams: 120, IceC: honestplate.Some(-12), WallC: honestplate.Some(23)}},
		{"acrylic in a cold drink", thermal.Glass{Diameter: 0.07, DrinkGrams: 222, DrinkC: honestplate.Some(9), WallC: honestplate.Some(23)}},
		{"acrylic, drink and glass chilled", thermal.Glass{Diameter: 0.07, DrinkGrams: 222, DrinkC: honestplate.Some(6), WallC: honestplate.Some(6)}},
		{"all as warm as the room", thermal.Glass{Diameter: 0.07, DrinkGrams: 222, DrinkC: honestplate.Some(23), WallC: honestplate.Some(23)}},
	}
}
