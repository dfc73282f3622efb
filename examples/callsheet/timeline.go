package main

import (
	"image/color"
	"math"
	"time"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"

	"example.org/honestplate/examples/internal/figure"
	"example.org/honestplate/thermal"
)

// An Event is something that happens to a dish after it lands on the set.
type Event struct {
	Name   string
	Window thermal.Window
	Ends   bool // the picture is over when it happens
}

// lane is one line of the timeline: an event under its dish.
type lane struct {
	dish string // on the dish's first lane only
	event
}

type event = Event

// timelineSVG draws when things happen on the set, on a logarithmic clock that
// starts when the dish lands: bars are 95 % bands, the upright mark the likely
// time. What ends the picture is drawn in the darker ink.
func timelineSVG(shots []Shot) ([]byte, error) {
	var lanes []lane
	for _, s := range shots {
		for i, e := range s.Events {
			l := lane{event: e}
			if i == 0 {
				l.dish = s.Dish.Name
			}
			lanes = append(lanes, l)
		}
	}
	p := figure.New("", "time since the dish landed on the set", "")
	p.X.Scale, p.X.Tick.Marker = plot.LogScale{}, clockTicks{}
	p.X.Min, p.X.Max = 5, 4*3600
	p.Y.Min, p.Y.Max = -0.7, math.Max(1, float64(len(lanes)))-0.3
	p.Y.Tick.Marker = plot.ConstantTicks(nil)
	p.Y.LineStyle.Width = 0
	p.Add(bars(lanes))
	height := vg.Length(len(lanes))*0.62*vg.Centimeter + 2.2*vg.Centimeter
	return figure.SVG(p, 18*vg.Centimeter, height)
}

// clockTicks marks times of day-to-day speech.
type clockTicks struct{}

func (clockTicks) Ticks(low, high float64) []plot.Tick {
	var out []plot.Tick
	for _, t := range []struct {
		s     float64
		label string
	}{{5, "5 s"}, {15, "15 s"}, {30, "30 s"}, {60, "1 min"}, {120, "2"}, {300, "5"}, {600, "10"}, {1200, "20 min"}, {3600, "1 h"}, {7200, "2"}, {14400, "4 h"}} {
		if low <= t.s && t.s <= high {
			out = append(out, plot.Tick{Value: t.s, Label: t.label})
		}
	}
	return out
}

// bars is the plotter of the lanes, first lane on top.
type bars []lane

func (b bars) Plot(c draw.Canvas, p *plot.Plot) {
	trX, trY := p.Transforms(&c)
	x := func(d time.Duration) vg.Length {
		return trX(math.Min(math.Max(d.Seconds(), p.X.Min), p.X.Max))
	}
	words := draw.TextStyle{Color: figure.Ink, Font: p.X.Tick.Label.Font, Handler: p.X.Tick.Label.Handler}
	bold := words
	bold.Font.Weight = 3 // bold
	for i, l := range b {
		y := trY(float64(len(b) - 1 - i))
		if l.dish != "" {
			c.StrokeLine2(draw.LineStyle{Color: color.Gray{0xc8}, Width: vg.Points(0.5)}, c.Min.X, y+vg.Points(11), c.Max.X, y+vg.Points(11))
			c.FillText(bold, vg.Point{X: c.Min.X + vg.Points(2), Y: y + vg.Points(1)}, l.dish)
		}
		ink, tint := figure.Colour(2), figure.Tint(2)
		if l.Ends {
			ink, tint = figure.Colour(0), figure.Tint(0)
		}
		c.FillText(words, vg.Point{X: c.Min.X + vg.Points(2), Y: y - vg.Points(8)}, "")
		if !l.Window.MayHappen() {
			c.FillText(words, vg.Point{X: trX(3600 * 1.1), Y: y - vg.Points(3)}, l.Name+": never")
			continue
		}
		left, right, h := x(l.Window.Earliest), x(l.Window.Latest), vg.Points(4)
		c.FillPolygon(tint, []vg.Point{{X: left, Y: y - h}, {X: right, Y: y - h}, {X: right, Y: y + h}, {X: left, Y: y + h}})
		if l.Window.Likely != thermal.Never {
			at := x(l.Window.Likely)
			c.FillPolygon(ink, []vg.Point{{X: at - 1.2, Y: y - 1.4*h}, {X: at + 1.2, Y: y - 1.4*h}, {X: at + 1.2, Y: y + 1.4*h}, {X: at - 1.2, Y: y + 1.4*h}})
		}
		label := words
		at := vg.Point{X: right + vg.Points(5), Y: y - vg.Points(3)}
		if right > c.Min.X+(c.Max.X-c.Min.X)*0.72 {
			label.XAlign = draw.XRight
			at.X = left - vg.Points(5)
		}
		c.FillText(label, at, l.Name+" "+thermal.Clock(l.Window.Likely))
	}
}
