package main

import (
	"fmt"
	"image/color"
	"math"
	"slices"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/examples/published"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// A drawing is a figure of the page.
type drawing struct{ file, title string }

// A tier is an axis of ratios.
type tier struct {
	most         float64 // ratio on it
	file, suffix string
	even         bool // ticks in even steps: the axis is too short for 1, 2 and 5
}

// tiers are the axes: a set is drawn on the finest that holds all its points and bands.
var tiers = []tier{
	{1.025, "-finest", ", where all lie within 2.5 %", true},
	{1.25, "-fine", ", where all lie within a quarter", true},
	{math.Inf(1), "", "", false},
}

// drawAll draws, for each package and for the timed courses, the sets by tier.
func drawAll(e evidence) (map[string][]byte, map[string][]drawing, error) {
	files, figures := map[string][]byte{}, map[string][]drawing{}
	for _, g := range []struct {
		name, title string
		meant       func(published.Set) bool
	}{
		{"rheology", "Measured values over the likely, liquids", func(s published.Set) bool { return s.Package == "rheology" && still(s) }},
		{"thermal", "Measured values over the likely, heat", func(s published.Set) bool { return s.Package == "thermal" && still(s) }},
		{"courses", "Measured times over the likely, unfitted", courses},
	} {
		split := make([][]published.Set, len(tiers))
		for _, s := range e.sets {
			if !g.meant(s) || s.Floor > 0 || slices.ContainsFunc(s.Points, notPositive) {
				continue
			}
			i := slices.IndexFunc(tiers, func(t tier) bool { return largest(s) <= t.most })
			split[i] = append(split[i], s)
		}
		for i, sets := range split {
			if len(sets) == 0 {
				continue
			}
			d := drawing{g.name + tiers[i].file + ".svg", g.title + tiers[i].suffix}
			svg, err := ratios(d.title, tiers[i].even, sets)
			if err != nil {
				return nil, nil, err
			}
			files[d.file] = svg
			figures[g.name] = append(figures[g.name], d)
		}
	}
	return files, figures, nil
}

func notPositive(p published.Point) bool { return p.Published <= 0 || p.Predicted <= 0 }

// largest is the largest ratio, up or down, of a set's points and of the ends of its
// bands that are not endless.
func largest(s published.Set) float64 {
	m := 1.0
	for _, p := range s.Points {
		for _, v := range []float64{p.Published, p.Low, p.High} {
			if r := v / p.Predicted; r > 0 && !math.IsInf(r, 0) {
				m = max(m, r, 1/r)
			}
		}
	}
	return m
}

// ratios draws a row a set: the mean band as a bar, what was read as dots, what was
// remembered as squares, what lies outside its own band ringed and the furthest of it
// named.
func ratios(title string, even bool, sets []published.Set) ([]byte, error) {
	p := figure.New(title, "published / likely", "")
	figure.LogX(p)
	p.Legend.TextStyle.Font.Size = vg.Points(8)
	low, high := extent(sets)
	var read, memory, out plotter.XYs
	var ticks []plot.Tick
	for i, s := range sets {
		y := -float64(i)
		ticks = append(ticks, plot.Tick{Value: y, Label: rowName(s)})
		bandLow, bandHigh := meanBand(s)
		if err := bar(p, y, bandLow, bandHigh); err != nil {
			return nil, err
		}
		right := max(1, bandHigh)
		for _, pt := range s.Points {
			xy := plotter.XY{X: pt.Published / pt.Predicted, Y: y}
			right = max(right, xy.X)
			if pt.Known == "memory" {
				memory = append(memory, xy)
			} else {
				read = append(read, xy)
			}
			if !pt.Inside() {
				out = append(out, xy)
			}
		}
		if name := furthest(s); name != "" {
			if err := figure.Note(p, right*math.Pow(high/low, 0.02), y-0.3, name); err != nil {
				return nil, err
			}
		}
	}
	one, err := plotter.NewLine(plotter.XYs{{X: 1, Y: 0.6}, {X: 1, Y: 0.4 - float64(len(sets))}})
	if err != nil {
		return nil, err
	}
	one.Color, one.Width = figure.Ink, vg.Points(0.6)
	p.Add(one)
	for _, m := range []struct {
		name  string
		pts   plotter.XYs
		style draw.GlyphStyle
	}{
		{"read, or worked out", read, draw.GlyphStyle{Color: figure.Colour(0), Radius: vg.Points(1.7), Shape: draw.CircleGlyph{}}},
		{"from memory", memory, draw.GlyphStyle{Color: figure.Colour(2), Radius: vg.Points(1.9), Shape: draw.SquareGlyph{}}},
		{"outside its own band", out, draw.GlyphStyle{Color: figure.Colour(1), Radius: vg.Points(3.6), Shape: draw.RingGlyph{}}},
	} {
		if len(m.pts) == 0 {
			continue
		}
		s, err := plotter.NewScatter(m.pts)
		if err != nil {
			return nil, err
		}
		s.GlyphStyle = m.style
		p.Add(s)
		p.Legend.Add(m.name, s)
	}
	p.Y.Tick.Marker = plot.ConstantTicks(ticks)
	// Marks that are not seen, for their room: a font wider than the one named needs it.
	p.Y.Tick.Length, p.Y.Tick.LineStyle.Color, p.Y.Tick.Label.Font.Size = vg.Points(18), figure.Paper, vg.Points(8)
	p.Y.Tick.Label.Color = figure.Ink
	// Above the rows stands the legend, to their right the names of what is outside.
	p.Y.Min, p.Y.Max = 0.4-float64(len(sets)), 3.4
	span := high / low
	p.X.Min, p.X.Max = low/math.Pow(span, 0.03), high*math.Pow(span, 0.5)
	if even {
		p.X.Tick.Marker = plot.ConstantTicks(figure.Ticks{}.Ticks(p.X.Min, high))
	}
	return figure.SVG(p, 19*vg.Centimeter, vg.Length(len(sets)+8)*vg.Points(13))
}

// extent is from the least to the largest ratio of the sets' points and mean bands.
func extent(sets []published.Set) (low, high float64) {
	low, high = 1, 1
	for _, s := range sets {
		a, b := meanBand(s)
		low, high = min(low, a), max(high, b)
		for _, p := range s.Points {
			low, high = min(low, p.Published/p.Predicted), max(high, p.Published/p.Predicted)
		}
	}
	return low, high
}

func rowName(s published.Set) string {
	name := s.Table
	switch s.Quantity {
	case "viscosity", "kinematic viscosity", "time to cool to the reading":
	default:
		if s.Table == "glycerol_water" || s.Table == "dairy_more" || s.Table == "bubble_rise" {
			name += ", " + s.Quantity
		}
	}
	if s.Class != "" {
		name += ", " + s.Class
	}
	return fmt.Sprintf("%s (%d)", name, len(s.Points))
}

// meanBand is the geometric mean of a set's bands over the likely value; an endless
// band is left out of it.
func meanBand(s published.Set) (low, high float64) {
	var lows, highs, n float64
	for _, p := range s.Points {
		if p.Low > 0 && !math.IsInf(p.High, 1) {
			lows, highs, n = lows+math.Log(p.Low/p.Predicted), highs+math.Log(p.High/p.Predicted), n+1
		}
	}
	if n == 0 {
		return 1, 1
	}
	return math.Exp(lows / n), math.Exp(highs / n)
}

// bar draws a band as a bar in its row.
func bar(p *plot.Plot, y, low, high float64) error {
	const half = 0.32
	poly, err := plotter.NewPolygon(plotter.XYs{{X: low, Y: y - half}, {X: high, Y: y - half}, {X: high, Y: y + half}, {X: low, Y: y + half}})
	if err != nil {
		return err
	}
	poly.Color, poly.LineStyle.Width, poly.LineStyle.Color = figure.Tint(0), 0, color.Transparent
	p.Add(poly)
	return nil
}

// furthest names the point furthest outside its band, and how many more there are.
func furthest(s published.Set) string {
	if s.Outside == 0 {
		return ""
	}
	var far published.Point
	off := -1.0
	for _, p := range s.Points {
		if d := math.Abs(s.Residual(p)); !p.Inside() && d > off {
			far, off = p, d
		}
	}
	name := far.Label
	if r := []rune(name); len(r) > 40 {
		name = string(r[:38]) + "..."
	}
	if s.Outside > 1 {
		name = fmt.Sprintf("%s, %d more", name, s.Outside-1)
	}
	return name
}
