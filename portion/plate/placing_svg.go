package plate

import (
	"fmt"
	"math"
	"strconv"

	"example.org/honestplate/portion/internal/decimal"
)

// SVG draws the spots for the bench, in the manner of Layout.SVG: the pieces at
// their size, numbered in the order of placing, each with its name and grams in the
// table below if Assign has given it one. A Placing that Place has not made draws
// as an empty page.
func (p Placing) SVG() []byte {
	var d drawing
	if len(p.Spots) == 0 || len(p.plate.slices) == 0 {
		return page(120, "Pieces", "nothing placed", "")
	}
	var total float64
	for _, g := range p.grams() {
		total += g
	}
	total = math.Round(total*1e6) / 1e6
	head, second := p.words(total)
	item := p.Scatter.Item
	if item == "" {
		item = "Pieces"
	}
	y := d.header(item, head, second)
	size := min(430/(2*p.plate.b), 470/(2*p.plate.a))
	v := view{pageWidth / 2, y + 26 + p.plate.b*size, size}
	d.dish(p.plate, v)
	d.cuts(p.plate, v)
	r := max(3, p.Scatter.Diameter/2*size)
	for _, s := range p.Spots {
		x, y := v.at(s.At)
		d.ellipse(x, y, r, r, `fill="`+amber+`" stroke="`+amberEdge+`" stroke-width="1.2"`)
	}
	for _, s := range p.Spots {
		x, y := v.at(s.At)
		if r < 9 {
			d.halo(x, y-r-2, 11, "middle", `fill="`+ink+`" font-weight="bold"`, strconv.Itoa(s.Number))
			continue
		}
		d.text(x, y+4.6, 13, "middle", `fill="`+ink+`" font-weight="bold"`, strconv.Itoa(s.Number))
	}
	y = v.y + p.plate.b*size + 72
	d.camera(pageWidth/2, y)
	d.bar(pageMargin, y-12, size)
	return page(p.table(&d, y+40)+16, "Placing of "+item, head+" "+second, d.String())
}

// words are the drawing's two lines under its name.
func (p Placing) words(total float64) (head, second string) {
	size, cuts := decimal.Plain(math.Round(p.Scatter.Diameter*1e4)/10), sliced(len(p.plate.slices))
	clear := "clear of edges and cuts"
	if p.Scatter.OverCuts {
		clear = "clear of edges"
	}
	if len(p.Spots) == 1 {
		head, second = fmt.Sprintf("One piece, %s mm across; %s.", size, cuts), "Set it "+clear+"."
	} else {
		head = fmt.Sprintf("%d pieces, each %s mm across, %s; %s.", len(p.Spots), size, p.Scatter.Arrangement, cuts)
		second = fmt.Sprintf("Centres at least %s mm apart; %s.", num(math.Floor(p.nearest()*1e4)/10), clear)
	}
	switch len(p.Pieces) {
	case 0:
	case 1:
		head += " " + decimal.Plain(total) + " g."
	default:
		head += " Together " + decimal.Plain(total) + " g."
	}
	return head, second
}

// table lists the pieces in the order of placing and the slices' sums.
func (p Placing) table(d *drawing, y float64) float64 {
	y = d.pairs(y, "Pieces, in order of placing", 3, len(p.Spots), func(i int) (string, string) {
		s := p.Spots[i]
		if s.Piece < 0 || s.Piece >= len(p.Pieces) {
			if len(p.plate.slices) == 1 {
				return strconv.Itoa(s.Number), ""
			}
			return strconv.Itoa(s.Number), "slice " + strconv.Itoa(s.Slice)
		}
		x := p.Pieces[s.Piece]
		name := x.Name
		if name == "" {
			name = "piece " + strconv.Itoa(s.Piece+1)
		}
		return strconv.Itoa(s.Number) + "  " + short(name, 18), decimal.Plain(x.Grams) + " g"
	})
	if len(p.plate.slices) < 2 {
		return y
	}
	counts, grams := p.counts(), p.grams()
	return d.pairs(y+20, "Slices", 3, len(counts), func(i int) (string, string) {
		pieces := strconv.Itoa(counts[i]) + " pieces"
		if counts[i] == 1 {
			pieces = "1 piece"
		}
		if len(p.Pieces) > 0 {
			return strconv.Itoa(i+1) + "  (" + pieces + ")", decimal.Plain(grams[i]) + " g"
		}
		return strconv.Itoa(i + 1), pieces
	})
}
