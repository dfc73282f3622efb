package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A canvas collects SVG text. Numbers are printed to a tenth of a pixel, so that the
// bytes are the same on every processor.
type canvas struct{ strings.Builder }

func px(v float64) string {
	s := strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

func (c *canvas) line(x1, y1, x2, y2 float64, style string) {
	fmt.Fprintf(c, "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" %s/>\n", px(x1), px(y1), px(x2), px(y2), style)
}

func (c *canvas) rect(x, y, w, h float64, style string) {
	fmt.Fprintf(c, "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" %s/>\n", px(x), px(y), px(w), px(h), style)
}

// text sets a line whose middle height is y; anchor is start, middle or end.
func (c *canvas) text(x, y float64, anchor, style, s string) {
	fmt.Fprintf(c, "<text x=\"%s\" y=\"%s\" text-anchor=\"%s\"%s>%s</text>\n", px(x), px(y+0.35*fontSize), anchor, style, xmlText(s))
}

// fontSize is that of every text of a drawing, in pixels; glyph is the width to
// reserve for a character, a little more than the mean of common sans serifs.
const (
	fontSize = 13.0
	glyph    = 0.6 * fontSize
)

func widthOf(s string) float64 { return glyph * float64(utf8.RuneCountInString(s)) }

// fit cuts a text that would be wider than w.
func fit(s string, w float64) string {
	if widthOf(s) <= w {
		return s
	}
	return string([]rune(s)[:max(0, int(w/glyph)-3)]) + "..."
}

// svg wraps what was drawn; it is set for the width of A4 between its margins.
func (c *canvas) svg(w, h float64, title, description string) []byte {
	var page strings.Builder
	fmt.Fprintf(&page, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"180mm\" height=\"%smm\" viewBox=\"0 0 %s %s\" role=\"img\" font-family=\"sans-serif\" font-size=\"%s\" fill=\"#1b1b1b\">\n",
		px(h*180/w), px(w), px(h), px(fontSize))
	fmt.Fprintf(&page, "<title>%s</title>\n<desc>%s</desc>\n", xmlText(title), xmlText(description))
	fmt.Fprintf(&page, "<rect width=\"%s\" height=\"%s\" fill=\"#ffffff\"/>\n", px(w), px(h))
	page.WriteString(c.String())
	page.WriteString("</svg>\n")
	return []byte(page.String())
}

// xmlText makes any string safe as XML text: valid UTF-8, no character that XML
// forbids, no markup.
func xmlText(s string) string {
	return xmlEscapes.Replace(strings.Map(func(r rune) rune {
		if r < ' ' || r == 0xFFFE || r == 0xFFFF {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD")))
}

var xmlEscapes = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;")
