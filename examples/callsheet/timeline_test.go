package main

import (
	"bytes"
	"encoding/xml"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"
	"time"

	"example.org/honestplate"
)

// An element of a drawing, with what it says.
type element struct {
	name, text string
	attr       map[string]string
}

// at returns an attribute as a number; a missing one fails the test.
func (e element) at(t *testing.T, name string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(e.attr[name], 64)
	if err != nil {
		t.Fatalf("%s %v: %s: %v", e.name, e.attr, name, err)
	}
	return v
}

// elements reads a drawing and fails the test unless it is well-formed.
func elements(t *testing.T, svg []byte) []element {
	t.Helper()
	var out []element
	dec := xml.NewDecoder(bytes.NewReader(svg))
	for {
		token, err := dec.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatalf("%v in %s", err, svg)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attr: map[string]string{}}
			for _, a := range token.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			out = append(out, e)
		case xml.CharData:
			if n := len(out); n > 0 && out[n-1].name == "text" {
				out[n-1].text += strings.TrimSpace(string(token))
			}
		}
	}
}

const never = time.Duration(-1)

func window(early, likely, latest time.Duration) honestplate.Window {
	at := func(d time.Duration) honestplate.Moment {
		if d == never {
			return honestplate.Never()
		}
		return honestplate.After(d)
	}
	return honestplate.Window{Earliest: at(early), Likely: at(likely), Latest: at(latest)}
}

func TestTimelinePlacesEventsByTheClock(t *testing.T) {
	const s = time.Second
	shots := []Shot{
		{Dish: &Dish{Name: "glass"}, Events: []Event{
			{"haze", window(4*s, 16*s, 42*s), false},
			{"over", window(42*s, 160*s, 600*s), true},
			{"runs", window(3000*s, never, never), false},
			{"never", fresh, false},
			{"at once", window(0, 0, 0), false},
			{"wide", window(0, 60*s, never), false},
		}},
		{Dish: &Dish{Name: "plums"}},
	}
	all := elements(t, timelineSVG(shots))
	var bars, marks []element
	texts := map[string]element{}
	for _, e := range all {
		switch {
		case e.name == "text":
			texts[e.text] = e
			// However it is anchored, a text begins and ends on the page.
			x, w := e.at(t, "x"), widthOf(e.text)
			x -= map[string]float64{"start": 0, "middle": w / 2, "end": w}[e.attr["text-anchor"]]
			if x < 0 || x+w > timelineWidth {
				t.Errorf("%q runs from %.0f to %.0f, off the page", e.text, x, x+w)
			}
		case e.name == "rect" && e.attr["height"] == "10" && e.at(t, "y") > laneTop:
			bars = append(bars, e)
		case e.name == "rect" && e.attr["height"] == "16" && e.at(t, "y") > laneTop:
			marks = append(marks, e)
		}
	}
	if len(bars) != 5 || len(marks) != 4 {
		t.Fatalf("%d bars and %d marks, want 5 and 4: what never happens has none", len(bars), len(marks))
	}
	if left, right := bars[0].at(t, "x"), bars[1].at(t, "x"); math.Abs(left+bars[0].at(t, "width")-right) > 0.15 {
		t.Errorf("haze ends at %.1f, the next begins at %.1f: both are 42 s", left+bars[0].at(t, "width"), right)
	}
	// On a logarithmic clock 160 s lies as far after 16 s as 16 s after 1.6 s.
	if a, b := clockX(160)-clockX(16), clockX(16)-clockX(1.6); math.Abs(a-b) > 1e-9 || a <= 0 {
		t.Errorf("a factor of ten is %g and %g wide", a, b)
	}
	if clockX(0) != clockLeft || clockX(math.Inf(1)) != clockRight {
		t.Error("what is off the clock is not at its ends")
	}
	if bars[0].attr["fill"] == bars[1].attr["fill"] || marks[0].attr["width"] == marks[1].attr["width"] {
		t.Error("what ends the picture looks like what does not")
	}
	for _, want := range []string{"haze 0:16", "runs, most likely never", "wide 1:00", "00:00  glass", "00:00  plums: holds as long as it is fresh"} {
		if _, ok := texts[want]; !ok {
			t.Errorf("no text %q", want)
		}
	}
	// A label stands clear of its own bar.
	if e := texts["haze 0:16"]; e.at(t, "x") < bars[0].at(t, "x")+bars[0].at(t, "width") {
		t.Errorf("the label begins at %s, on its bar", e.attr["x"])
	}
}

// Whatever a brief calls its dishes, the drawing stays XML, names only generic
// fonts and runs nothing.
func TestTimelineOfHostileNames(t *testing.T) {
	for _, name := range []string{
		`<script>alert(1)</script>`, `"/><g onload="x"`, "]]>", "&", "a\uFFFEb\uFFFFc", "\x00\x1b", "\xff\xfe", strings.Repeat("W", 500), "",
	} {
		e := Event{Name: name, Window: window(time.Second, time.Minute, time.Hour)}
		for _, e := range elements(t, timelineSVG([]Shot{{Dish: &Dish{Name: name}, Events: []Event{e}}})) {
			switch e.name {
			case "svg", "title", "desc", "rect", "line", "text":
			default:
				t.Errorf("%q: element %s", name, e.name)
			}
			if font := e.attr["font-family"]; font != "" && font != "sans-serif" {
				t.Errorf("font %q", font)
			}
		}
	}
}
