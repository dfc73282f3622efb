package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/honestplate"
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

// fit writes a text that has so much width, cut with an ellipsis where it is longer.
func (c *canvas) fit(x, y, width, size float64, class, s string) {
	if width > size {
		c.text(x, y, "start", class, cutTo(s, width, size))
	}
}

// middle is fit around x.
func (c *canvas) middle(x, y, width, size float64, class, s string) {
	c.text(x, y, "middle", class, cutTo(s, width, size))
}

// widthOf is about how wide a text is. A letter of the generic font is taken as 0.58 of
// its size wide, a wide script's as 1, a mark that stands on another letter as 0.
func widthOf(s string, size float64) float64 {
	w := 0.0
	for _, r := range s {
		w += letter(r) * size
	}
	return w
}

func letter(r rune) float64 {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf):
		return 0
	case r >= 0x2e80:
		return 1
	}
	return 0.58
}

// cutTo cuts a text with an ellipsis where it is wider, never between a letter and the
// marks that stand on it.
func cutTo(s string, width, size float64) string {
	if widthOf(s, size) <= width {
		return s
	}
	used, cut := size*0.9, 0
	for i, r := range s {
		w := letter(r) * size
		if used+w > width {
			break
		}
		used += w
		cut = i + utf8.RuneLen(r)
		if r == utf8.RuneError {
			cut = i + 1
		}
	}
	return strings.TrimRight(s[:cut], " ") + "…"
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

// escaped makes any text fit for XML: markup is escaped, what turns a line becomes a space,
// and what XML has no place for becomes the replacement character.
func escaped(s string) string {
	var b bytes.Buffer
	if err := xml.EscapeText(&b, []byte(honestplate.OneLine(s))); err != nil {
		return ""
	}
	return b.String()
}
