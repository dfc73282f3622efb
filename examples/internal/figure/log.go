package figure

import (
	"math"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// LogX puts the horizontal axis on a logarithmic scale.
func LogX(p *plot.Plot) { p.X.Scale, p.X.Tick.Marker = plot.LogScale{}, LogTicks{} }

// LogY puts the vertical axis on a logarithmic scale.
func LogY(p *plot.Plot) { p.Y.Scale, p.Y.Tick.Marker = plot.LogScale{}, LogTicks{} }

// drawPlot draws the plot with the labels of logarithmic axes set by hand. The
// drawing library keeps room for a label round the mean of the axis's ends, which
// on a logarithmic axis lies near its far end, and so shrinks the plot.
func drawPlot(p *plot.Plot, c draw.Canvas) {
	x, y := p.X.Label.Text, p.Y.Label.Text
	defer func() { p.X.Label.Text, p.Y.Label.Text = x, y }()
	inner := c
	down, right := p.X.Label.TextStyle, p.Y.Label.TextStyle
	right.Rotation += math.Pi / 2
	_, logX := p.X.Scale.(plot.LogScale)
	_, logY := p.Y.Scale.(plot.LogScale)
	if logX = logX && x != ""; logX {
		p.X.Label.Text = ""
		inner = draw.Crop(inner, 0, 0, down.Height(x)+p.X.Label.Padding, 0)
	}
	if logY = logY && y != ""; logY {
		p.Y.Label.Text = ""
		inner = draw.Crop(inner, right.FontExtents().Descent+p.Y.Label.TextStyle.Height(y)+p.Y.Label.Padding, 0, 0, 0)
	}
	legend := p.Legend
	p.Legend = plot.NewLegend()
	p.Draw(inner)
	p.Legend = legend
	data := p.DataCanvas(inner)
	drawLegend(legend, data)
	if logX {
		c.FillText(down, vg.Point{X: data.Center().X, Y: c.Min.Y + down.FontExtents().Descent}, x)
	}
	if logY {
		at := c.Min.X + p.Y.Label.TextStyle.Height(y) - right.FontExtents().Descent
		c.FillText(right, vg.Point{X: at, Y: data.Center().Y}, y)
	}
}
