package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"unicode/utf8"
)

// A canvas collects the elements of a drawing; lengths are in its own units.
type canvas struct {
	b    bytes.Buffer
	w, h float64
}

// f writes a length to a tenth, so that the bytes are the same on every processor.
func f(v float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", v), ".0") }

func (c *canvas) rect(x, y, w, h float64, class string) {
	fmt.Fprintf(&c.b, `<rect x="%s" y="%s" width="%s" height="%s" class="%s"/>`+"\n", f(x), f(y), f(max(w, 0)), f(h), class)
}

func (c *canvas) line(x1, y1, x2, y2 float64, class string) {
	fmt.Fprintf(&c.b, `<line x1="%s" y1="%s" x2="%s" y2="%s" class="%s"/>`+"\n", f(x1), f(y1), f(x2), f(y2), class)
}

func (c *canvas) circle(x, y, r float64, class string) {
	fmt.Fprintf(&c.b, `<circle cx="%s" cy="%s" r="%s" class="%s"/>`+"\n", f(x), f(y), f(r), class)
}

func (c *canvas) path(d, class string) { fmt.Fprintf(&c.b, `<path d="%s" class="%s"/>`+"\n", d, class) }

// text writes at the left of x; anchor is start, middle or end.
func (c *canvas) text(x, y float64, anchor, class, s string) {
	fmt.Fprintf(&c.b, `<text x="%s" y="%s" text-anchor="%s" class="%s">%s</text>`+"\n", f(x), f(y), anchor, class, escaped(s))
}

// fit writes a text that has so much width, cut with an ellipsis where it is longer. A
// letter of the generic font is taken as 0.56 of its size wide, a wide script's as 1.
func (c *canvas) fit(x, y, width, size float64, class, s string) {
	used, cut := 0.0, len(s)
	for i, r := range s {
		w := 0.56 * size
		if r >= 0x2e80 {
			w = size
		}
		if used+w > width {
			cut = i
			break
		}
		used += w
	}
	if cut < len(s) {
		_, last := utf8.DecodeLastRuneInString(s[:cut])
		s = strings.TrimRight(s[:max(cut-last, 0)], " ") + "…"
	}
	if width > size {
		c.text(x, y, "start", class, s)
	}
}

// svg returns the drawing, with a title for who cannot see it.
func (c *canvas) svg(title, style string) []byte {
	var b bytes.Buffer
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %s %s" role="img">`+"\n", f(c.w), f(c.h))
	fmt.Fprintf(&b, "<title>%s</title>\n<style>%s</style>\n", escaped(title), style)
	b.Write(c.b.Bytes())
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// escaped makes any text fit for XML: markup is escaped, and what XML has no place for
// becomes the replacement character.
func escaped(s string) string {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(s)); err != nil {
		return ""
	}
	return b.String()
}
