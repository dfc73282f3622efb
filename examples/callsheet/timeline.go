package main

import (
	"math"

	"example.org/honestplate"
)

// An Event is something that happens to a dish after it lands on the set.
type Event struct {
	Name   string
	Window honestplate.Window
	Ends   bool // the picture is over when it happens
}

// A bar is an event as the timeline draws it, in seconds after the dish landed;
// what never happens is at +Inf.
type bar struct {
	label                 string
	early, likely, latest float64
	ends                  bool
}

func barOf(e Event) bar {
	seconds := func(m honestplate.Moment) float64 {
		if m.Never {
			return math.Inf(1)
		}
		return m.After.Seconds()
	}
	b := bar{e.Name + " " + e.Window.Likely.String(), seconds(e.Window.Earliest), seconds(e.Window.Likely), seconds(e.Window.Latest), e.Ends}
	if math.IsInf(b.likely, 1) && !math.IsInf(b.early, 1) {
		b.label = e.Name + ", most likely never"
	}
	return b
}

// The timeline's clock is logarithmic, from clockStart to clockEnd seconds. What
// happens outside is drawn at that end; the label says when.
const (
	clockStart = 1.0
	clockEnd   = 4 * 3600.0
)

// Measures of the drawing, in pixels.
const (
	timelineWidth = 720.0
	clockLeft     = 24.0
	clockRight    = timelineWidth - 24
	laneTop       = 48.0 // below the key
	laneHeight    = 22.0
)

// What ends the picture is drawn dark and its mark thick, so that print without
// colour tells it from what only happens.
const (
	overBar, overMark = `fill="#b9c4cf"`, `fill="#16324f"`
	openBar, openMark = `fill="#f4e3bd"`, `fill="#b07a00"`
)

func clockX(seconds float64) float64 {
	at := math.Log(min(max(seconds, clockStart), clockEnd)/clockStart) / math.Log(clockEnd/clockStart)
	return clockLeft + float64(at*(clockRight-clockLeft))
}

// timelineSVG draws when things happen on the set, on a clock that starts when the
// dish lands: bars are 95 % bands, the upright mark the likely time.
func timelineSVG(shots []Shot) []byte {
	lanes := 0
	for _, s := range shots {
		lanes += 1 + len(s.Events)
	}
	bottom := laneTop + float64(lanes)*laneHeight
	var c canvas
	timelineKey(&c)
	timelineClock(&c, bottom)
	y := laneTop + laneHeight/2
	for _, s := range shots {
		name := s.At.Format("15:04") + "  " + s.Dish.Name
		if len(s.Events) == 0 {
			name += ": holds as long as it is fresh"
		}
		c.line(clockLeft, y-laneHeight/2, clockRight, y-laneHeight/2, `stroke="#b5b5b5"`)
		c.text(clockLeft, y, "start", ` font-weight="bold"`, fit(name, clockRight-clockLeft))
		y += laneHeight
		for _, e := range s.Events {
			barOf(e).draw(&c, y)
			y += laneHeight
		}
	}
	return c.svg(timelineWidth, bottom+56, "Timeline of the day",
		"For each dish when things happen after it landed on the set: a bar from earliest to latest, a mark at the likely time.")
}

// timelineKey says what bars and marks mean.
func timelineKey(c *canvas) {
	const y = 22.0
	x := clockLeft
	for _, k := range []struct {
		bar, mark string
		half      float64
		text      string
	}{
		{openBar, openMark, 1, "happens: earliest to latest, mark: likely"},
		{overBar, overMark, 2, "the picture is over"},
	} {
		c.rect(x, y-5, 40, 10, k.bar)
		c.rect(x+20-k.half, y-8, 2*k.half, 16, k.mark)
		c.text(x+48, y, "start", "", k.text)
		x += 48 + widthOf(k.text) + 24
	}
}

// timelineClock draws the clock under the lanes, at times of everyday speech.
func timelineClock(c *canvas, bottom float64) {
	for _, t := range []struct {
		s     float64
		label string
	}{
		{1, "1 s"}, {2, "2"}, {5, "5"}, {10, "10 s"}, {30, "30"}, {60, "1 min"}, {120, "2"}, {300, "5"},
		{600, "10 min"}, {1800, "30"}, {3600, "1 h"}, {7200, "2"}, {14400, "4 h"},
	} {
		x := clockX(t.s)
		c.line(x, laneTop, x, bottom+5, `stroke="#e4e4e4"`)
		c.text(x, bottom+15, "middle", "", t.label)
	}
	c.line(clockLeft, bottom, clockRight, bottom, `stroke="#5a5a5a"`)
	c.text((clockLeft+clockRight)/2, bottom+38, "middle", "", "time since the dish landed on the set")
}

// draw sets the bar with its label after it or, where the page ends, before it.
func (b bar) draw(c *canvas, y float64) {
	if math.IsInf(b.early, 1) {
		c.text(clockRight, y, "end", "", fit(b.label, clockRight-clockLeft))
		return
	}
	left, right := clockX(b.early), clockX(b.latest)
	tint, ink, half := openBar, openMark, 1.0
	if b.ends {
		tint, ink, half = overBar, overMark, 2.0
	}
	c.rect(left, y-5, max(right-left, 1), 10, tint)
	if !math.IsInf(b.likely, 1) {
		c.rect(clockX(b.likely)-half, y-8, 2*half, 16, ink)
	}
	const gap = 6
	switch w := widthOf(b.label); {
	case right+gap+w <= clockRight:
		c.text(right+gap, y, "start", "", b.label)
	case left-gap-w >= clockLeft:
		c.text(left-gap, y, "end", "", b.label)
	default: // the bar leaves room on neither side: on it, edged in white
		halo := ` stroke="#ffffff" stroke-width="4" paint-order="stroke" stroke-linejoin="round"`
		c.text(clockLeft+gap, y, "start", halo, fit(b.label, clockRight-clockLeft-2*gap))
	}
}
