// Command 17-white-enough redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/rheology/look"
)

var chapter = notebook.Chapter{
	Title: "White enough",
	Line:  "Cream whitens a thin coat and yellows a deep pool. How thin still hides, how much cream that takes, and when an eye sees it.",
	Figures: []notebook.Figure{
		{
			Name:    "swatches",
			Caption: "Milk, a blend of four parts with one of cream, and cream, under three lights: a coat of 0.3 mm over black, one of 1 mm, and a deep pool. Each as a camera shows it that was balanced for its light.",
			Draw:    drawSwatches,
		},
		{
			Name:    "hiding",
			Caption: "Contrast ratio of black and white ground through a coat of the depth below. Band: what is known of the scattering.",
			Draw:    drawHiding,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func drawSwatches() ([]byte, error) {
	milk, blend, cream, err := liquids(usualCarotene)
	if err != nil {
		return nil, err
	}
	scenes := []look.Scene{{Depth: honestplate.Some(0.3e-3)}, {Depth: honestplate.Some(1e-3)}, {}}
	grid := figure.Swatches{Rows: []string{"milk", "blend", "cream"}, Columns: []string{"0.3 mm", "1 mm", "pool"}}
	for _, light := range lights {
		grid.Groups = append(grid.Groups, string(light))
		for _, o := range []*look.Optics{&milk, &blend, &cream} {
			for _, s := range scenes {
				s.Light = light
				a, err := o.Appear(s)
				if err != nil {
					return nil, err
				}
				grid.Patches = append(grid.Patches, figure.Patch{
					R: a.Swatch.R, G: a.Swatch.G, B: a.Swatch.B,
					Text: fmt.Sprintf("L* %.0f b* %.0f", a.Lab.L, a.Lab.B),
				})
			}
		}
	}
	return grid.SVG()
}

func drawHiding() ([]byte, error) {
	milk, blend, cream, err := liquids(usualCarotene)
	if err != nil {
		return nil, err
	}
	p := figure.New("", "depth of the coat, mm", "contrast ratio")
	figure.LogX(p)
	var lines []func() error
	for i, c := range []struct {
		name string
		o    *look.Optics
	}{{"milk, 3.5 % fat", &milk}, {"blend, 4 to 1", &blend}, {"cream, 36 % fat", &cream}} {
		var depth, low, likely, high []float64
		at, err := c.o.At(550)
		if err != nil {
			return nil, err
		}
		for mm := 0.05; mm < 20.5; mm *= 1.12 {
			// A liquid that scatters f times as much is one f times as deep.
			f := at.ReducedScattering.High / at.ReducedScattering.Likely
			var v [3]float64
			for k, d := range []float64{mm / f, mm, mm * f} {
				if v[k], err = c.o.Contrast(look.Scene{}, d/1000, look.Black, look.White); err != nil {
					return nil, err
				}
			}
			depth, low, likely, high = append(depth, mm), append(low, v[0]), append(likely, v[1]), append(high, v[2])
		}
		// One band would cover the other's line: bands first.
		if i != 1 {
			if err := figure.Band(p, i, "", depth, low, high); err != nil {
				return nil, err
			}
		}
		lines = append(lines, func() error { return figure.Line(p, i, c.name, figure.XY(depth, likely)) })
	}
	for _, draw := range lines {
		if err := draw(); err != nil {
			return nil, err
		}
	}
	if err := figure.Line(p, 3, "0.98: hidden", figure.XY([]float64{0.05, 20}, []float64{look.Hidden, look.Hidden})); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0.05, 20, 0, 1
	p.Legend.Top = false
	p.Legend.YOffs = -p.Legend.YOffs
	return figure.SVG(p, figure.Width, figure.Height)
}
