package main

import (
	"image/color"
	"math"

	"golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"example.org/honestplate"
	"example.org/honestplate/examples/internal/figure"
)

// An Event is something that happens to a dish after it lands on the set.
type Event struct {
	Name   string
	Window honestplate.Window
	Ends   bool // the picture is over when it happens
}

// A lane is one line of the timeline: a dish's name, or an event under it.
type lane struct {
	heading string
	Event
}

const laneHeight = 0.58 * vg.Centimeter

// The timeline's clock runs from axisStart to axisEnd seconds; what comes later is
// said in words at its end.
const (
	axisStart = 1
	axisEnd   = 4 * 3600
)

// timelineSVG draws when things happen on the set, on a logarithmic clock that
// starts when the dish lands: bars are 95 % bands, the upright mark the likely
// time. What ends the picture is drawn in the darker ink.
func timelineSVG(shots []Shot) ([]byte, error) {
	var lanes []lane
	for _, s := range shots {
		name := s.At.Format("15:04") + "  " + s.Dish.Name
		if len(s.Events) == 0 {
			name += ": holds as long as it is fresh"
		}
		lanes = append(lanes, lane{heading: name})
		for _, e := range s.Events {
			lanes = append(lanes, lane{Event: e})
		}
	}
	p := figure.New("bar: earliest to latest; mark: likely; dark: the picture is over", "time since the dish landed on the set", "")
	p.Title.TextStyle.Font.Size = 9
	p.X.Scale, p.X.Tick.Marker = plot.LogScale{}, clockTicks{}
	p.X.Min, p.X.Max = axisStart, axisEnd
	p.Y.Min, p.Y.Max = -0.6, float64(len(lanes))-0.4
	p.Y.Tick.Marker = plot.ConstantTicks(nil)
	p.Y.LineStyle.Width = 0
	p.Add(bars(lanes))
	return figure.SVG(p, 18*vg.Centimeter, vg.Length(len(lanes))*laneHeight+2.4*vg.Centimeter)
}

// clockTicks marks times of everyday speech.
type clockTicks struct{}

// Ticks implements plot.Ticker.
func (clockTicks) Ticks(low, high float64) []plot.Tick {
	var out []plot.Tick
	for _, t := range []struct {
		s     float64
		label string
	}{{1, "1 s"}, {2, "2"}, {5, "5"}, {10, "10 s"}, {30, "30"}, {60, "1 min"}, {120, "2"}, {300, "5"}, {600, "10 min"}, {1800, "30"}, {3600, "1 h"}, {7200, "2"}, {14400, "4 h"}} {
		if low <= t.s && t.s <= high {
			out = append(out, plot.Tick{Value: t.s, Label: t.label})
		}
	}
	return out
}

// bars is the plotter of the lanes, the first on top.
type bars []lane

// Plot implements plot.Plotter.
func (b bars) Plot(c draw.Canvas, p *plot.Plot) {
	trX, trY := p.Transforms(&c)
	x := func(m honestplate.Moment) vg.Length {
		if m.Never {
			return trX(p.X.Max)
		}
		return trX(math.Min(math.Max(m.After.Seconds(), p.X.Min), p.X.Max))
	}
	words := draw.TextStyle{Color: figure.Ink, Font: p.X.Tick.Label.Font, Handler: p.X.Tick.Label.Handler, YAlign: draw.YCenter}
	bold := words
	bold.Font.Weight = font.WeightBold
	rule := draw.LineStyle{Color: color.Gray{0xc8}, Width: vg.Points(0.5)}
	for i, l := range b {
		y := trY(float64(len(b) - 1 - i))
		if l.heading != "" {
			c.StrokeLine2(rule, c.Min.X, y+laneHeight/2, c.Max.X, y+laneHeight/2)
			c.FillText(bold, vg.Point{X: c.Min.X, Y: y}, l.heading)
			continue
		}
		ink, tint := figure.Colour(2), figure.Tint(2)
		if l.Ends {
			ink, tint = figure.Colour(0), figure.Tint(0)
		}
		label := l.Name + " " + l.Window.Likely.String()
		if l.Window.Likely.Never && l.Window.MayHappen() {
			label = l.Name + ", most likely never"
		}
		if !l.Window.MayHappen() {
			end := words
			end.XAlign = draw.XRight
			c.FillText(end, vg.Point{X: c.Max.X, Y: y}, label)
			continue
		}
		left, right, h := x(l.Window.Earliest), x(l.Window.Latest), laneHeight*0.25
		rect(c, tint, left, right, y-h, y+h)
		if !l.Window.Likely.Never {
			at := x(l.Window.Likely)
			rect(c, ink, at-vg.Points(1.2), at+vg.Points(1.2), y-1.4*h, y+1.4*h)
		}
		at := vg.Point{X: right + vg.Points(5), Y: y}
		if right > c.Min.X+(c.Max.X-c.Min.X)*0.72 {
			words := words
			words.XAlign = draw.XRight
			c.FillText(words, vg.Point{X: left - vg.Points(5), Y: y}, label)
			continue
		}
		c.FillText(words, at, label)
	}
}

func rect(c draw.Canvas, ink color.Color, left, right, bottom, top vg.Length) {
	c.FillPolygon(ink, []vg.Point{{X: left, Y: bottom}, {X: right, Y: bottom}, {X: right, Y: top}, {X: left, Y: top}})
}
