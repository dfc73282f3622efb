package figure

import (
	"fmt"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
)

// Note writes a few words into the plot, from x to the right and from y up.
func Note(p *plot.Plot, x, y float64, text string) error {
	l, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{{X: x, Y: y}}, Labels: []string{text}})
	if err != nil {
		return fmt.Errorf("note %q: %w", text, err)
	}
	style := p.Legend.TextStyle
	style.Handler = l.TextStyle[0].Handler
	l.TextStyle[0] = style
	p.Add(l)
	return nil
}
