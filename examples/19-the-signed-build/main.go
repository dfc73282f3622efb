// Command 19-the-signed-build redraws this chapter: its page and its figures.
package main

import (
	"fmt"
	"os"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/internal/notebook"
	"example.org/honestplate/portion"
	"example.org/honestplate/portion/record"
)

var chapter = notebook.Chapter{
	Title: "The signed build",
	Line:  "What the technician signed, layer by layer, against what lies on the scale: agrees, differs, or cannot tell.",
	Figures: []notebook.Figure{
		{
			Name:    "which-scale-can-tell",
			Caption: "The width of each tolerance over four standard uncertainties of the weighing, for scales that show 0.1 to 5 g and were checked with a weight. At 1 and below nothing can agree; from 4 on it is comfortable.",
			Draw:    drawScales,
		},
		{
			Name:    "layers-of-the-hero",
			Caption: "The hero that was built first: each layer's mass less what is declared, with what the scale may be wrong by, between the limits that are signed.",
			Draw:    drawLayers,
		},
	},
}

func main() {
	if err := chapter.Main("."); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

// cheeseburger is invented, like its technician.
func cheeseburger() record.Specification {
	layer := func(name string, grams, minus, plus float64) record.Layer {
		return record.Layer{Name: name, Declared: portion.Amount{Grams: grams, StepGrams: 0.5, MinusGrams: minus, PlusGrams: plus}}
	}
	s := record.Specification{
		Product: "cheeseburger (invented)", Version: "2026-2",
		Layers: []record.Layer{
			layer("heel", 28, 2, 2), layer("sauce", 11, 1.5, 1.5), layer("patty", 113, 4, 4),
			layer("cheese", 14, 1, 1), layer("pickles", 5.5, 1, 1), layer("crown", 27, 2, 2),
		},
		Ratios:     []record.Ratio{{Layer: "cheese", To: "patty", Least: 0.11, Most: 0.14}},
		Signed:     record.Signature{Name: "T. Invented", Role: "product technician", Date: "2026-09-01"},
		ValidUntil: "2026-12-31",
	}
	s.Layers[2].Basis, s.Layers[2].Yield = record.Raw, honestplate.Within(0.75, 0.02)
	s.Layers[4].Declared.Count, s.Layers[4].Declared.PlusCount = 3, 1
	return s
}

// benchScale shows a step; it was checked with 200 g this morning.
func benchScale(step float64) portion.Scale {
	return portion.Scale{StepGrams: step, Check: portion.CheckWeight{Grams: 200, Reading: 200}}
}

// hero is the build of take 1: what the scale showed after each layer.
func hero() record.Build {
	b := record.Build{Scale: benchScale(0.1)}
	for _, reading := range []float64{28.4, 39.3, 152.8, 169.3, 175.7, 202.6} {
		b.Layers = append(b.Layers, record.Placed{Reading: reading})
	}
	b.Layers[4].Pieces = 3
	return b
}

func drawScales() ([]byte, error) {
	p := figure.New("", "the scale shows steps of, g", "tolerance over four times the doubt")
	figure.LogX(p)
	figure.LogY(p)
	s := cheeseburger()
	steps := []float64{0.1, 0.2, 0.5, 1, 2, 5}
	for k, name := range []string{"patty", "heel", "sauce", "cheese"} {
		var y []float64
		for _, step := range steps {
			found, err := s.BeforeWeighing(benchScale(step))
			if err != nil {
				return nil, err
			}
			for _, f := range found.Layers {
				if f.Name != name {
					continue
				}
				c, err := f.Limits.Capability(f.Standard)
				if err != nil {
					return nil, err
				}
				y = append(y, c)
			}
		}
		if err := figure.Line(p, k, name, figure.XY(steps, y)); err != nil {
			return nil, err
		}
	}
	if err := figure.Line(p, 4, "below: nothing can agree", figure.XY([]float64{0.1, 5}, []float64{1, 1})); err != nil {
		return nil, err
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0.1, 5, 0.1, 100
	return figure.SVG(p, figure.Width, figure.Height)
}

func drawLayers() ([]byte, error) {
	p := figure.New("", "", "weighed less declared, g")
	s := cheeseburger()
	found, err := s.Check(hero())
	if err != nil {
		return nil, err
	}
	var names []string
	allowed, doubt, weighed := "what is signed", "what the scale may be wrong by", "weighed"
	for i, f := range found.Layers {
		x, declared := float64(i), s.Layers[i].Declared
		names = append(names, f.Name)
		d, u := f.Found-declared.Grams, 2*f.Standard
		wide, narrow := []float64{x - 0.35, x + 0.35}, []float64{x - 0.2, x + 0.2}
		if err := figure.Band(p, 1, allowed, wide, []float64{-declared.MinusGrams, -declared.MinusGrams}, []float64{declared.PlusGrams, declared.PlusGrams}); err != nil {
			return nil, err
		}
		if err := figure.Band(p, 0, doubt, narrow, []float64{d - u, d - u}, []float64{d + u, d + u}); err != nil {
			return nil, err
		}
		if err := figure.Points(p, 0, weighed, figure.XY([]float64{x}, []float64{d})); err != nil {
			return nil, err
		}
		allowed, doubt, weighed = "", "", ""
	}
	p.NominalX(names...)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -0.6, float64(len(names))-0.4, -6, 8
	return figure.SVG(p, figure.Width, figure.Height)
}
