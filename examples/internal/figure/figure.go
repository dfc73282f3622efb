// Package figure draws the project's figures with gonum/plot in one look: light
// paper, thin axes with units, bands drawn as bands, published points as points.
// Colours are told apart by lightness as well as hue, and every series also has
// its own dash or mark.
package figure

import (
	"bytes"
	"fmt"
	"image/color"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// Size of a figure: readable at 700 px wide and in print.
const (
	Width  = 16 * vg.Centimeter
	Height = 9.5 * vg.Centimeter
)

// The inks, dark to light; Paper is the ground.
var (
	Paper = color.RGBA{0xfd, 0xfc, 0xf8, 0xff}
	Ink   = color.RGBA{0x22, 0x26, 0x2b, 0xff}
	Grey  = color.RGBA{0x8a, 0x8f, 0x94, 0xff}
	inks  = []color.RGBA{
		{0x1b, 0x3a, 0x5c, 0xff}, // deep blue
		{0xc4, 0x5a, 0x11, 0xff}, // burnt orange
		{0x3f, 0x8f, 0x7f, 0xff}, // sea green
		{0xa8, 0x8b, 0xc9, 0xff}, // lilac
		{0xd9, 0xa4, 0x2b, 0xff}, // ochre
	}
	dashes = [][]vg.Length{nil, {vg.Points(6), vg.Points(3)}, {vg.Points(2), vg.Points(2)}, {vg.Points(8), vg.Points(2), vg.Points(2), vg.Points(2)}, {vg.Points(12), vg.Points(4)}}
	marks  = []draw.GlyphDrawer{draw.CircleGlyph{}, draw.SquareGlyph{}, draw.TriangleGlyph{}, draw.CrossGlyph{}, draw.PlusGlyph{}}
)

// Colour returns the ink of the i-th series.
func Colour(i int) color.RGBA { return inks[i%len(inks)] }

// New returns an empty plot in the project's look. Axis labels carry their units.
func New(title, x, y string) *plot.Plot {
	p := plot.New()
	p.BackgroundColor = Paper
	sans := font.Font{Typeface: "Liberation", Variant: "Sans"}
	style := func(s *draw.TextStyle, size vg.Length) {
		s.Font = sans
		s.Font.Size = size
		s.Color = Ink
	}
	p.Title.Text, p.X.Label.Text, p.Y.Label.Text = title, x, y
	style(&p.Title.TextStyle, 12)
	p.Title.Padding = vg.Points(6)
	style(&p.X.Label.TextStyle, 10)
	style(&p.Y.Label.TextStyle, 10)
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		style(&a.Tick.Label, 9)
		a.LineStyle.Color, a.LineStyle.Width = Grey, vg.Points(0.6)
		a.Tick.LineStyle.Color, a.Tick.LineStyle.Width = Grey, vg.Points(0.6)
		a.Padding = vg.Points(4)
		a.Tick.Marker = Ticks{}
	}
	style(&p.Legend.TextStyle, 9)
	p.Legend.Padding = vg.Points(2)
	p.Legend.YPosition = draw.PosCenter
	p.Legend.ThumbnailWidth = vg.Points(26)
	p.Legend.Top = true
	p.Legend.XOffs, p.Legend.YOffs = vg.Points(-6), vg.Points(-6)
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = color.Gray{0xe6}, color.Gray{0xe6}
	grid.Vertical.Width, grid.Horizontal.Width = vg.Points(0.4), vg.Points(0.4)
	p.Add(grid)
	return p
}

// XY makes plottable points of two columns.
func XY(x, y []float64) plotter.XYs {
	pts := make(plotter.XYs, len(x))
	for i := range pts {
		pts[i].X, pts[i].Y = x[i], y[i]
	}
	return pts
}

// Line adds the i-th series as a line with its own ink and dash; an empty name
// leaves it out of the legend.
func Line(p *plot.Plot, i int, name string, pts plotter.XYs) error {
	l, err := plotter.NewLine(pts)
	if err != nil {
		return err
	}
	l.Color, l.Width, l.Dashes = Colour(i), vg.Points(1.8), dashes[i%len(dashes)]
	p.Add(l)
	if name != "" {
		p.Legend.Add(name, l)
	}
	return nil
}

// Points adds the i-th series as marks: published or measured values.
func Points(p *plot.Plot, i int, name string, pts plotter.XYs) error {
	s, err := plotter.NewScatter(pts)
	if err != nil {
		return err
	}
	s.GlyphStyle = draw.GlyphStyle{Color: Colour(i), Radius: vg.Points(3), Shape: marks[i%len(marks)]}
	p.Add(s)
	if name != "" {
		p.Legend.Add(name, s)
	}
	return nil
}

// Band adds the area between low and high over x in a light tint of the i-th ink.
func Band(p *plot.Plot, i int, name string, x, low, high []float64) error {
	pts := XY(x, high)
	for j := len(x) - 1; j >= 0; j-- {
		pts = append(pts, plotter.XY{X: x[j], Y: low[j]})
	}
	poly, err := plotter.NewPolygon(pts)
	if err != nil {
		return err
	}
	poly.Color, poly.LineStyle.Width = Tint(i), 0
	p.Add(poly)
	if name != "" {
		p.Legend.Add(name, poly)
	}
	return nil
}

// Tint returns the i-th ink mixed with the paper, for areas.
func Tint(i int) color.RGBA {
	c := Colour(i)
	mix := func(a, b uint8) uint8 { return uint8((int(a)*28 + int(b)*72) / 100) }
	return color.RGBA{mix(c.R, Paper.R), mix(c.G, Paper.G), mix(c.B, Paper.B), 0xff}
}

// SVG draws the plot. The same plot gives the same bytes.
func SVG(p *plot.Plot, w, h vg.Length) ([]byte, error) {
	c := vgsvg.NewWith(vgsvg.UseWH(w, h))
	full, m := draw.New(c), vg.Points(8)
	full.FillPolygon(Paper, []vg.Point{{}, {X: w}, {X: w, Y: h}, {Y: h}})
	drawPlot(p, draw.Crop(full, m, -2*m, m, -m))
	var b bytes.Buffer
	if _, err := c.WriteTo(&b); err != nil {
		return nil, fmt.Errorf("drawing %q: %w", p.Title.Text, err)
	}
	return anyFont(b.Bytes()), nil
}

// anyFont lets a viewer without the named font fall back to its own sans serif,
// which the drawing library does not.
func anyFont(svg []byte) []byte {
	return bytes.ReplaceAll(svg, []byte("font-family:Liberation Sans"),
		[]byte("font-family:Liberation Sans,Arial,Helvetica,sans-serif"))
}
