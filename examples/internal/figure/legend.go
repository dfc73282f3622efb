package figure

import (
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg/draw"
)

// drawLegend draws the legend with its words after their samples, in room for a wider font
// than the one named. The drawing library lets words at the right end at their samples, and
// run over them where a viewer's font is wider.
func drawLegend(l plot.Legend, data draw.Canvas) {
	const wider = 1.2
	if !l.Left {
		l.Left = true
		data.Min.X = data.Max.X - wider*l.Rectangle(data).Size().X
	}
	l.Draw(data)
}
