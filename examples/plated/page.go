package plated

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"
)

// The drawings share one look: black ink on white paper, food in amber, cuts
// dashed, numbers in discs. Nothing depends on telling colours apart; amber and
// blue are the pair of the Okabe-Ito palette (2008, from memory) that stays apart
// in every common kind of colour blindness and in grey print.
const (
	ink       = "#1b1b1b"
	quiet     = "#5a5a5a"
	hairline  = "#b9b3a8"
	bread     = "#f6f0e4"
	amber     = "#e69f00"
	amberEdge = "#8a5f00"
	blue      = "#0072b2"

	pageWidth  = 700.0
	pageMargin = 28.0
	rowHeight  = 22.0
)

// A drawing collects SVG text. Numbers are printed to a hundredth of a pixel, so
// that the bytes are the same everywhere.
type drawing struct{ strings.Builder }

// num prints a hundredth of a pixel. A half, where the last bit would decide, goes up.
func num(v float64) string {
	const half = 0.5 + 1e-6
	s := strconv.FormatFloat(math.Floor(float64(v*100)+half)/100, 'f', -1, 64)
	if s == "-0" {
		return "0"
	}
	return s
}

func (d *drawing) line(x1, y1, x2, y2 float64, style string) {
	fmt.Fprintf(d, `<line x1="%s" y1="%s" x2="%s" y2="%s" %s/>`+"\n", num(x1), num(y1), num(x2), num(y2), style)
}

func (d *drawing) rect(x, y, w, h float64, style string) {
	fmt.Fprintf(d, `<rect x="%s" y="%s" width="%s" height="%s" %s/>`+"\n", num(x), num(y), num(w), num(h), style)
}

func (d *drawing) ellipse(x, y, rx, ry float64, style string) {
	fmt.Fprintf(d, `<ellipse cx="%s" cy="%s" rx="%s" ry="%s" %s/>`+"\n", num(x), num(y), num(rx), num(ry), style)
}

// text sets a line; anchor is start, middle or end.
func (d *drawing) text(x, y, size float64, anchor, style, s string) {
	fmt.Fprintf(d, `<text x="%s" y="%s" font-size="%s" text-anchor="%s" %s>%s</text>`+"\n", num(x), num(y), num(size), anchor, style, escape(s))
}

// halo sets a line that stays readable on anything beneath it.
func (d *drawing) halo(x, y, size float64, anchor, style, s string) {
	d.text(x, y, size, anchor, `fill="none" stroke="#ffffff" stroke-width="4" stroke-linejoin="round"`, s)
	d.text(x, y, size, anchor, style, s)
}

// disc draws a number in a disc.
func (d *drawing) disc(x, y float64, n int) {
	s := strconv.Itoa(n)
	r := 10.0
	if len(s) > 2 {
		r = 12
	}
	d.ellipse(x, y, r, r, `fill="`+blue+`"`)
	d.text(x, y+4.2, 12, "middle", `fill="#ffffff" font-weight="bold"`, s)
}

// escape makes any string safe as SVG text: valid UTF-8, no characters that XML
// forbids, no markup.
func escape(s string) string {
	var b strings.Builder
	for _, r := range strings.ToValidUTF8(s, "\uFFFD") {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case r == '"':
			b.WriteString("&quot;")
		case r < ' ' || r == 0xFFFE || r == 0xFFFF:
			b.WriteByte(' ')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// short cuts a name that would run off the page.
func short(s string, most int) string {
	if utf8.RuneCountInString(s) <= most {
		return s
	}
	return string([]rune(s)[:most-3]) + "..."
}

// page wraps a body of the given height. The size in millimetres is for print: the
// page fits the width of A4 between its margins.
func page(height float64, title, description, body string) []byte {
	var d drawing
	fmt.Fprintf(&d, `<svg xmlns="http://www.w3.org/2000/svg" width="180mm" height="%smm" viewBox="0 0 %s %s" role="img" font-family="sans-serif">`+"\n",
		num(height*180/pageWidth), num(pageWidth), num(height))
	fmt.Fprintf(&d, "<title>%s</title>\n<desc>%s</desc>\n", escape(title), escape(description))
	d.rect(0, 0, pageWidth, height, `fill="#ffffff"`)
	d.WriteString(body)
	d.WriteString("</svg>\n")
	return []byte(d.String())
}

// header draws the head of a page and returns where the next line may start.
func (d *drawing) header(item string, lines ...string) float64 {
	if item == "" {
		item = "Layout"
	}
	d.rect(pageMargin, 26, 6, float64(24+19*len(lines)), `fill="`+amber+`"`)
	d.text(pageMargin+16, 46, 24, "start", `fill="`+ink+`" font-weight="bold"`, short(item, 40))
	y := 46.0
	for _, l := range lines {
		y += 19
		d.text(pageMargin+16, y, 14, "start", `fill="`+quiet+`"`, short(l, 84))
	}
	return y + 14
}

// A view maps the dish to the page.
type view struct {
	x, y, scale float64 // page position of the dish's centre; pixels a metre
}

func (v view) at(p point) (x, y float64) { return v.x + p.X*v.scale, v.y - p.Y*v.scale }

func (v view) pair(p point) string {
	x, y := v.at(p)
	return num(x) + " " + num(y)
}

// dish draws the dish and its free edge.
func (d *drawing) dish(o outline, v view) {
	d.shape(o, v, 0, `fill="`+bread+`" stroke="`+ink+`" stroke-width="2"`)
	if o.edge > 0 {
		d.shape(o, v, o.edge, `fill="none" stroke="`+hairline+`" stroke-width="1"`)
	}
}

// shape draws the dish's shape, so far inside its rim, m.
func (d *drawing) shape(o outline, v view, inside float64, style string) {
	a, b := (o.a-inside)*v.scale, (o.b-inside)*v.scale
	if o.round {
		d.ellipse(v.x, v.y, a, a, style)
	} else {
		d.rect(v.x-a, v.y-b, 2*a, 2*b, style)
	}
}

func (d *drawing) cuts(o outline, v view) {
	for _, c := range o.cuts {
		x1, y1 := v.at(c.p)
		x2, y2 := v.at(c.q)
		d.line(x1, y1, x2, y2, `stroke="`+ink+`" stroke-width="1.3" stroke-dasharray="6 4"`)
	}
}

// camera marks the camera's side below the dish.
func (d *drawing) camera(x, y float64) {
	d.line(x-150, y-20, x+150, y-20, `stroke="`+hairline+`" stroke-width="1"`)
	fmt.Fprintf(d, `<path d="M%s %sl10 -16l10 16z" fill="%s"/>`+"\n", num(x-10), num(y-24), ink)
	d.rect(x-17, y-16, 34, 20, `rx="4" fill="`+ink+`"`)
	d.ellipse(x, y-6, 6.5, 6.5, `fill="#ffffff"`)
	d.ellipse(x, y-6, 3.2, 3.2, `fill="`+ink+`"`)
	d.text(x+26, y-1, 14, "start", `fill="`+ink+`" font-weight="bold"`, "camera side")
}

// bar draws a scale bar of a round length.
func (d *drawing) bar(x, y, scale float64) {
	mm := 1.0
	for _, step := range []float64{2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000} {
		if step/1000*scale <= 130 {
			mm = step
		}
	}
	w := mm / 1000 * scale
	d.line(x, y, x+w, y, `stroke="`+ink+`" stroke-width="2"`)
	for _, k := range []float64{0, 0.5, 1} {
		d.line(x+k*w, y-5, x+k*w, y, `stroke="`+ink+`" stroke-width="2"`)
	}
	d.text(x, y+16, 12, "start", `fill="`+ink+`"`, num(mm)+" mm")
}

// pairs prints names and values in columns, down each column first.
func (d *drawing) pairs(y float64, title string, columns, n int, entry func(int) (string, string)) float64 {
	d.text(pageMargin, y, 13, "start", `fill="`+ink+`" font-weight="bold"`, title)
	rows := (n + columns - 1) / columns
	width := (pageWidth - 2*pageMargin) / float64(columns)
	for i := range n {
		x, line := pageMargin+width*float64(i/rows), y+rowHeight*float64(i%rows+1)
		name, value := entry(i)
		d.text(x, line, 13, "start", `fill="`+quiet+`"`, name)
		d.text(x+width-22, line, 13, "end", `fill="`+ink+`" font-weight="bold"`, value)
	}
	return y + rowHeight*float64(rows) + 10
}
