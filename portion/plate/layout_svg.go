package plate

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/honestplate/portion/internal/decimal"
)

// SVG draws the layout for the bench: the dish from above with its cuts and strips,
// the strips numbered in the order of placing, the camera's side, a scale bar, and a
// table of the grams of every strip on every slice with both sums. It reads at 700
// pixels and on A4, without colour too, and its bytes depend on the layout alone.
// A Layout that Lay has not made draws as an empty page.
func (l Layout) SVG() []byte {
	var d drawing
	if len(l.Slices) == 0 || len(l.plate.slices) == 0 {
		return page(120, "Layout", "nothing laid out", "")
	}
	y := d.header(l.Declaration.Item, append([]string{l.headline()}, l.manner()...)...)
	size := min(430/(2*l.plate.b), 470/(2*l.plate.a))
	// Room for the strips' numbers, and for the slices' grams around a round dish.
	around := 40.0
	if l.labelsAround() {
		around = 74
	}
	v := view{pageWidth / 2, y + around + l.plate.b*size, size}
	d.dish(l.plate, v)
	if len(l.Strips) == 0 {
		l.drawSpread(&d, v)
	}
	l.drawStrips(&d, v)
	d.cuts(l.plate, v)
	l.drawLabels(&d, v)
	y = v.y + l.plate.b*size + around + 46
	d.camera(pageWidth/2, y)
	d.bar(pageMargin, y-12, size)
	y = l.drawTable(&d, y+40)
	title := "Layout of " + decimal.Plain(l.Declaration.Grams) + " g"
	if l.Declaration.Item != "" {
		title += " of " + l.Declaration.Item
	}
	return page(y+16, title, l.headline()+" "+strings.Join(l.manner(), " "), d.String())
}

func (l Layout) headline() string {
	s := decimal.Plain(l.Declaration.Grams) + " g declared, in steps of " + decimal.Plain(l.grams(1)) + " g. "
	if l.Declaration.Advertised {
		return s + "Advertised: the real product, no more and no less."
	}
	return s + "Not the advertised item."
}

func (l Layout) manner() []string {
	n := strconv.Itoa(len(l.Strips))
	s := n + " strips " + l.how.Pattern.String()
	if len(l.Strips) == 0 {
		s = "Spread inside the edge"
	}
	lines := []string{s + ", " + sliced(len(l.Slices)) + "."}
	favour := ""
	if l.how.Favour > 0 {
		percent := num(l.how.Favour * 100)
		favour = "Camera side favoured: near edge +" + percent + " %, far edge -" + percent + " %. "
	}
	if len(l.how.Weights) > 0 {
		favour += "Slices weighted."
	}
	if favour != "" {
		lines = append(lines, favour)
	}
	return lines
}

// sliced says into how many slices a dish is cut.
func sliced(n int) string {
	if n == 1 {
		return "uncut"
	}
	return strconv.Itoa(n) + " slices"
}

// drawStrips draws every strip at its width.
func (l Layout) drawStrips(d *drawing, v view) {
	width := l.how.Width
	if width == 0 {
		width = min(defaultBar, l.how.room(l.plate))
	}
	px := max(3, width*v.scale)
	for _, pass := range []string{
		fmt.Sprintf(`stroke="%s" stroke-width="%s"`, amberEdge, num(px+2)),
		fmt.Sprintf(`stroke="%s" stroke-width="%s"`, amber, num(px)),
	} {
		for _, s := range l.Strips {
			if s.path != (path{}) { // of Lay's making
				fmt.Fprintf(d, `<path d="M%sL%s" fill="none" stroke-linecap="butt" stroke-linejoin="miter" %s/>`+"\n", v.pair(s.path.p), v.pair(s.path.q), pass)
			}
		}
	}
}

// drawSpread fills the inside of the free edge.
func (l Layout) drawSpread(d *drawing, v view) {
	a, b := l.plate.inner()
	style := `fill="` + amber + `" fill-opacity="0.45" stroke="` + amberEdge + `" stroke-width="1"`
	d.outline(l.plate, v, a, b, style)
}

// drawLabels sets the strips' numbers just outside the rim, where nothing lies, and
// the slices' grams beyond them; on a rectangle the grams stand on the slices.
func (l Layout) drawLabels(d *drawing, v view) {
	for _, s := range l.Strips {
		if s.path == (path{}) {
			continue
		}
		end, before := s.path.p, s.path.q
		if l.how.Pattern == AlongCuts {
			end, before = before, end
		}
		out := end.minus(before)
		out = out.times(1 / out.norm())
		rim := end.plus(out.times(l.plate.beyond(end, out)))
		// 16 pixels clear of the rim, also where the strip leaves it at a slant.
		x, y := v.at(rim.plus(out.times(16 / v.scale / max(0.4, out.dot(l.plate.normal(rim))))))
		d.disc(x, y, s.Number)
	}
	if len(l.Slices) > 24 {
		return // the table has them
	}
	for _, s := range l.Slices {
		name, grams := "slice "+strconv.Itoa(s.Number), decimal.Plain(s.Grams)+" g"
		at := s.Centre
		if l.labelsAround() {
			out := at.times(1 / at.norm())
			at = out.times(l.plate.beyond(Point{}, out) + 54/v.scale)
		}
		x, y := v.at(at)
		d.halo(x, y-3, 12, "middle", `fill="`+quiet+`"`, name)
		d.halo(x, y+12, 15, "middle", `fill="`+ink+`" font-weight="bold"`, grams)
	}
}

// labelsAround reports that the slices' grams stand around the dish.
func (l Layout) labelsAround() bool {
	return l.plate.round && len(l.Slices) > 1 && len(l.Slices) <= 24
}

// beyond is how far from x, inside the dish, the rim lies along the unit vector.
func (p plate) beyond(x, along Point) float64 {
	p.edge = 0
	c, ok := p.clip(x, along)
	if !ok {
		return 0
	}
	return max(0, c.q.minus(x).dot(along))
}

// normal is the unit vector out of the dish at a point of its rim.
func (p plate) normal(x Point) Point {
	switch {
	case p.round:
		return x.times(1 / x.norm())
	case p.b-math.Abs(x.Y) < p.a-math.Abs(x.X):
		return Point{0, math.Copysign(1, x.Y)}
	}
	return Point{math.Copysign(1, x.X), 0}
}

// drawTable prints the grams: strips down, slices across where they fit, with both
// sums; otherwise the sums alone in columns.
func (l Layout) drawTable(d *drawing, y float64) float64 {
	if len(l.Strips) == 0 {
		y = d.pairs(y, "Weigh out, slice by slice", 4, len(l.Slices), func(i int) (string, string) {
			return "slice " + strconv.Itoa(l.Slices[i].Number), decimal.Plain(l.Slices[i].Grams) + " g"
		})
		d.text(pageMargin, y+16, 14, "start", `fill="`+ink+`" font-weight="bold"`, "Together "+decimal.Plain(l.Declaration.Grams)+" g")
		return y + 24
	}
	if len(l.Slices) > 10 {
		y = d.pairs(y, "Strips, in order of placing", 4, len(l.Strips), func(i int) (string, string) {
			s := l.Strips[i]
			return fmt.Sprintf("%d  (%s mm)", s.Number, num(math.Round(s.Length*1000))), decimal.Plain(s.Grams) + " g"
		})
		y = d.pairs(y+20, "Slices", 4, len(l.Slices), func(i int) (string, string) {
			return strconv.Itoa(l.Slices[i].Number), decimal.Plain(l.Slices[i].Grams) + " g"
		})
		d.text(pageMargin, y+16, 14, "start", `fill="`+ink+`" font-weight="bold"`, "Each sums to "+decimal.Plain(l.Declaration.Grams)+" g")
		return y + 24
	}
	const first = 188.0 // width of the columns before the slices
	column := min(64, (pageWidth-2*pageMargin-first)/float64(len(l.Slices)))
	right := pageMargin + first + column*float64(len(l.Slices))
	cell := func(x float64, size float64, style, s string) { d.text(x, y, size, "end", style, s) }
	head := `fill="` + quiet + `"`
	bold := `fill="` + ink + `" font-weight="bold"`
	d.text(pageMargin, y, 12, "start", head, "place")
	cell(pageMargin+108, 12, head, "length")
	cell(pageMargin+172, 12, head, "weigh out")
	for k, s := range l.Slices {
		cell(pageMargin+first+column*float64(k+1)-4, 12, head, "slice "+strconv.Itoa(s.Number))
	}
	d.line(pageMargin, y+7, right, y+7, `stroke="`+ink+`" stroke-width="1.2"`)
	grid := make(map[[2]int]int64)
	for _, s := range l.Segments {
		grid[[2]int{s.Strip, s.Slice}] += s.steps
	}
	for _, s := range l.Strips {
		y += rowHeight
		d.disc(pageMargin+12, y-4, s.Number)
		cell(pageMargin+108, 13, `fill="`+ink+`"`, num(math.Round(s.Length*1000))+" mm")
		cell(pageMargin+172, 14, bold, decimal.Plain(s.Grams)+" g")
		for k := range l.Slices {
			if g, ok := grid[[2]int{s.Number, k + 1}]; ok {
				cell(pageMargin+first+column*float64(k+1)-4, 13, `fill="`+ink+`"`, decimal.Plain(l.grams(g)))
			}
		}
		d.line(pageMargin, y+6, right, y+6, `stroke="`+hairline+`" stroke-width="0.6"`)
	}
	y += rowHeight + 2
	d.text(pageMargin, y, 13, "start", bold, "all strips")
	cell(pageMargin+172, 14, bold, decimal.Plain(l.Declaration.Grams)+" g")
	for k, s := range l.Slices {
		cell(pageMargin+first+column*float64(k+1)-4, 14, bold, decimal.Plain(s.Grams))
	}
	d.line(pageMargin, y+7, right, y+7, `stroke="`+ink+`" stroke-width="1.2"`)
	return y + 10
}
