// Command 09-real-ice redraws this chapter: its page and its figures.
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
	Title: "Real ice or not",
	Line:  "Real ice chills, waters, fogs and goes; acrylic ice at room temperature does none of the four. Both are counted here, in grams and minutes.",
	Figures: []notebook.Figure{
		{
			Name:    "melt",
			Caption: "The water that six cubes and one large ball have given to the drink, by time. The area is the 95 % band of the cubes. Below 0 a little of the drink freezes onto the cold ice first.",
			Draw:    drawMelt,
		},
		{
			Name:    "dew",
			Caption: "Dew on the outside of three glasses, likely courses, with the 95 % bands of the first and the third. The pale area is what counts as beads (estimate). The fourth glass, as warm as the room, stays dry.",
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

func drawMelt() ([]byte, error) {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	p := figure.New("", "time since the ice went in, min", "melt in the drink, g")
	const last = 60
	var x []float64
	var times []time.Duration
	for t := 0; t <= last; t++ {
		x, times = append(x, float64(t)), append(times, time.Duration(t)*time.Minute)
	}
	for i, ice := range []struct {
		name  string
		shape thermal.IceShape
		size  float64
	}{
		{"six cubes of 28 mm", thermal.IceCube, 0.028},
		{"one ball of 63 mm", thermal.IceBall, 0.063},
	} {
		c, err := thermal.Glass{
			DrinkGrams: 180, DrinkC: honestplate.Some(6), Diameter: 0.07, WallC: honestplate.Some(23),
			IceGrams: 120, IceC: honestplate.Some(-12), IceShape: ice.shape, IceSize: ice.size,
		}.Clock(room)
		if err != nil {
			return nil, err
		}
		course, err := c.Kept.Course("melt_grams", times...)
		if err != nil {
			return nil, err
		}
		var low, likely, high []float64
		for _, e := range course {
			low, likely, high = append(low, e.Low), append(likely, e.Likely), append(high, e.High)
		}
		if i == 0 {
			if err := figure.Band(p, i, "cubes, 95 % band", x, low, high); err != nil {
				return nil, err
			}
		}
		if err := figure.Line(p, i, ice.name, figure.XY(x, likely)); err != nil {
			return nil, err
		}
	}
	p.Legend.Left, p.Legend.XOffs = true, -p.Legend.XOffs
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, -10, 80
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawDew() ([]byte, error) {
	room := thermal.Air{TempC: 23, RH: 0.5, Speed: 0.15}
	p := figure.New("", "time since filling, min", "dew on the glass, g/m2")
	beads := thermal.DefaultStages().Beads
	const last = 45
	if err := figure.Band(p, 3, "", []float64{0, last}, []float64{beads.Low, beads.Low}, []float64{beads.High, beads.High}); err != nil {
		return nil, err
	}
	var x []float64
	var times []time.Duration
	for t := 0; t <= last; t++ {
		x, times = append(x, float64(t)), append(times, time.Duration(t)*time.Minute)
	}
	var lines []func() error
	for i, g := range glasses()[:3] {
		c, err := g.glass.Clock(room)
		if err != nil {
			return nil, err
		}
		course, err := c.Kept.Course("dew_g_m2", times...)
		if err != nil {
			return nil, err
		}
		var low, likely, high []float64
		for _, e := range course {
			low, likely, high = append(low, e.Low), append(likely, e.Likely), append(high, e.High)
		}
		if i == 0 || i == 2 {
			if err := figure.Band(p, i, "", x, low, high); err != nil {
				return nil, err
			}
		}
		lines = append(lines, func() error { return figure.Line(p, i, g.name, figure.XY(x, likely)) })
	}
	for _, draw := range lines {
		if err := draw(); err != nil {
			return nil, err
		}
	}
	if err := figure.Note(p, 1, 44, "beads begin"); err != nil {
		return nil, err
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
