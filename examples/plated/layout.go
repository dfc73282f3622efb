package plated

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/honestplate/portion/plate"
)

// A sheet is a layout to be drawn.
type sheet struct {
	plate.Layout
	how    plate.Strips
	dish   outline
	strips []line             // the middle line of every strip
	grams  map[[2]int]float64 // what a strip carries on a slice, by their numbers
}

func newSheet(l plate.Layout, how plate.Strips) sheet {
	s := sheet{l, how, outlineOf(l.Dish), make([]line, len(l.Strips)), map[[2]int]float64{}}
	for i, g := range l.Segments {
		strip := &s.strips[g.Strip-1]
		if i == 0 || l.Segments[i-1].Strip != g.Strip {
			strip.p = point(g.From)
		}
		strip.q = point(g.To)
		at := [2]int{g.Strip, g.Slice}
		s.grams[at] = math.Round((s.grams[at]+g.Grams)*1e9) / 1e9 // the dust of adding decimals
	}
	return s
}

func (l sheet) draw() []byte {
	var d drawing
	y := d.header(l.Declaration.Item, append([]string{l.headline()}, l.manner()...)...)
	size := l.dish.scale()
	// Room for the strips' numbers, and for the slices' grams around a round dish.
	around := 40.0
	if l.labelsAround() {
		around = 74
	}
	v := view{pageWidth / 2, y + around + l.dish.b*size, size}
	d.dish(l.dish, v)
	if len(l.Strips) == 0 {
		style := `fill="` + amber + `" fill-opacity="0.45" stroke="` + amberEdge + `" stroke-width="1"`
		d.shape(l.dish, v, l.dish.edge, style)
	}
	l.drawStrips(&d, v)
	d.cuts(l.dish, v)
	l.drawLabels(&d, v)
	y = v.y + l.dish.b*size + around + 46
	d.camera(pageWidth/2, y)
	d.bar(pageMargin, y-12, size)
	y = l.drawTable(&d, y+40)
	title := "Layout of " + plain(l.Declaration.Grams) + " g"
	if l.Declaration.Item != "" {
		title += " of " + l.Declaration.Item
	}
	return page(y+16, title, l.headline()+" "+strings.Join(l.manner(), " "), d.String())
}

func (l sheet) headline() string {
	s := plain(l.Declaration.Grams) + " g declared, in steps of " + plain(cmp.Or(l.Declaration.StepGrams, 1)) + " g. "
	if l.Declaration.Advertised {
		return s + "Advertised: the real product, no more and no less."
	}
	return s + "Not the advertised item."
}

func (l sheet) manner() []string {
	n := strconv.Itoa(len(l.Strips))
	s := n + " strips along the cuts"
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

// drawStrips draws every strip at its width, or at 8 mm where none is given.
func (l sheet) drawStrips(d *drawing, v view) {
	px := max(3, cmp.Or(l.how.Width, 0.008)*v.scale)
	for _, pass := range []string{
		fmt.Sprintf(`stroke="%s" stroke-width="%s"`, amberEdge, num(px+2)),
		fmt.Sprintf(`stroke="%s" stroke-width="%s"`, amber, num(px)),
	} {
		for _, s := range l.strips {
			fmt.Fprintf(d, `<path d="M%sL%s" fill="none" stroke-linecap="butt" stroke-linejoin="miter" %s/>`+"\n", v.pair(s.p), v.pair(s.q), pass)
		}
	}
}

// drawLabels sets the strips' numbers just outside the rim, where nothing lies, and
// the slices' grams beyond them; on a rectangle the grams stand on the slices.
func (l sheet) drawLabels(d *drawing, v view) {
	for i, s := range l.strips {
		out := s.q.minus(s.p).unit()
		rim := s.q.plus(out.times(l.dish.beyond(s.q, out)))
		// 16 pixels clear of the rim, also where the strip leaves it at a slant.
		x, y := v.at(rim.plus(out.times(16 / v.scale / max(0.4, out.dot(l.dish.normal(rim))))))
		d.disc(x, y, l.Strips[i].Number)
	}
	if len(l.Slices) > 24 {
		return // the table has them
	}
	for _, s := range l.Slices {
		name, grams := "slice "+strconv.Itoa(s.Number), plain(s.Grams)+" g"
		at := point(s.Centre)
		if l.labelsAround() {
			at = at.unit().times(l.dish.a + 54/v.scale)
		}
		x, y := v.at(at)
		d.halo(x, y-3, 12, "middle", `fill="`+quiet+`"`, name)
		d.halo(x, y+12, 15, "middle", `fill="`+ink+`" font-weight="bold"`, grams)
	}
}

// labelsAround reports that the slices' grams stand around the dish.
func (l sheet) labelsAround() bool {
	return l.dish.round && len(l.Slices) > 1 && len(l.Slices) <= 24
}

// drawTable prints the grams: strips down, slices across where they fit, with both
// sums; otherwise the sums alone in columns.
func (l sheet) drawTable(d *drawing, y float64) float64 {
	if len(l.Strips) == 0 {
		y = d.pairs(y, "Weigh out, slice by slice", 4, len(l.Slices), func(i int) (string, string) {
			return "slice " + strconv.Itoa(l.Slices[i].Number), plain(l.Slices[i].Grams) + " g"
		})
		d.text(pageMargin, y+16, 14, "start", `fill="`+ink+`" font-weight="bold"`, "Together "+plain(l.Declaration.Grams)+" g")
		return y + 24
	}
	if len(l.Slices) > 10 {
		y = d.pairs(y, "Strips, in order of placing", 4, len(l.Strips), func(i int) (string, string) {
			s := l.Strips[i]
			return fmt.Sprintf("%d  (%s mm)", s.Number, num(math.Round(s.Length*1000))), plain(s.Grams) + " g"
		})
		y = d.pairs(y+20, "Slices", 4, len(l.Slices), func(i int) (string, string) {
			return strconv.Itoa(l.Slices[i].Number), plain(l.Slices[i].Grams) + " g"
		})
		d.text(pageMargin, y+16, 14, "start", `fill="`+ink+`" font-weight="bold"`, "Each sums to "+plain(l.Declaration.Grams)+" g")
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
	for _, s := range l.Strips {
		y += rowHeight
		d.disc(pageMargin+12, y-4, s.Number)
		cell(pageMargin+108, 13, `fill="`+ink+`"`, num(math.Round(s.Length*1000))+" mm")
		cell(pageMargin+172, 14, bold, plain(s.Grams)+" g")
		for k := range l.Slices {
			if g, ok := l.grams[[2]int{s.Number, k + 1}]; ok {
				cell(pageMargin+first+column*float64(k+1)-4, 13, `fill="`+ink+`"`, plain(g))
			}
		}
		d.line(pageMargin, y+6, right, y+6, `stroke="`+hairline+`" stroke-width="0.6"`)
	}
	y += rowHeight + 2
	d.text(pageMargin, y, 13, "start", bold, "all strips")
	cell(pageMargin+172, 14, bold, plain(l.Declaration.Grams)+" g")
	for k, s := range l.Slices {
		cell(pageMargin+first+column*float64(k+1)-4, 14, bold, plain(s.Grams))
	}
	d.line(pageMargin, y+7, right, y+7, `stroke="`+ink+`" stroke-width="1.2"`)
	return y + 10
}
