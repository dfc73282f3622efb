package plated

import (
	"cmp"
	"fmt"
	"math"
	"strconv"

	"example.org/honestplate/portion/plate"
)

// A placing is placed pieces to be drawn.
type placing struct {
	plate.Placing
	item string // their common name
	dish outline
}

func (p placing) draw() []byte {
	var d drawing
	head, second := p.words()
	item := cmp.Or(p.item, "Pieces")
	y := d.header(item, head, second)
	size := p.dish.scale()
	v := view{pageWidth / 2, y + 26 + p.dish.b*size, size}
	d.dish(p.dish, v)
	d.cuts(p.dish, v)
	r := max(3, p.Scatter.Diameter/2*size)
	for _, s := range p.Spots {
		x, y := v.at(point(s.At))
		d.ellipse(x, y, r, r, `fill="`+amber+`" stroke="`+amberEdge+`" stroke-width="1.2"`)
	}
	for _, s := range p.Spots {
		x, y := v.at(point(s.At))
		if r < 9 {
			d.halo(x, y-r-2, 11, "middle", `fill="`+ink+`" font-weight="bold"`, strconv.Itoa(s.Number))
			continue
		}
		d.text(x, y+4.6, 13, "middle", `fill="`+ink+`" font-weight="bold"`, strconv.Itoa(s.Number))
	}
	y = v.y + p.dish.b*size + 72
	d.camera(pageWidth/2, y)
	d.bar(pageMargin, y-12, size)
	return page(p.table(&d, y+40)+16, "Placing of "+item, head+" "+second, d.String())
}

// words are the drawing's two lines under its name.
func (p placing) words() (head, second string) {
	size, cuts := plain(math.Round(p.Scatter.Diameter*1e4)/10), sliced(len(p.Slices))
	clear := "clear of edges and cuts"
	if p.Scatter.OverCuts {
		clear = "clear of edges"
	}
	if len(p.Spots) == 1 {
		head, second = fmt.Sprintf("One piece, %s mm across; %s.", size, cuts), "Set it "+clear+"."
	} else {
		head = fmt.Sprintf("%d pieces, each %s mm across, scattered; %s.", len(p.Spots), size, cuts)
		second = fmt.Sprintf("Centres at least %s mm apart; %s.", num(math.Floor(p.nearest()*1e4)/10), clear)
	}
	total := 0.0
	for _, x := range p.Pieces {
		total += x.Grams
	}
	total = math.Round(total*1e6) / 1e6 // the dust of adding decimals
	switch len(p.Pieces) {
	case 0:
	case 1:
		head += " " + plain(total) + " g."
	default:
		head += " Together " + plain(total) + " g."
	}
	return head, second
}

// table lists the pieces in the order of placing and the slices' sums.
func (p placing) table(d *drawing, y float64) float64 {
	y = d.pairs(y, "Pieces, in order of placing", 3, len(p.Spots), func(i int) (string, string) {
		s := p.Spots[i]
		if s.Piece < 0 {
			if len(p.Slices) == 1 {
				return strconv.Itoa(s.Number), ""
			}
			return strconv.Itoa(s.Number), "slice " + strconv.Itoa(s.Slice)
		}
		x := p.Pieces[s.Piece]
		name := cmp.Or(x.Name, "piece "+strconv.Itoa(s.Piece+1))
		return strconv.Itoa(s.Number) + "  " + short(name, 18), plain(x.Grams) + " g"
	})
	if len(p.Slices) < 2 {
		return y
	}
	counts := p.counts()
	return d.pairs(y+20, "Slices", 3, len(counts), func(i int) (string, string) {
		pieces := strconv.Itoa(counts[i]) + " pieces"
		if counts[i] == 1 {
			pieces = "1 piece"
		}
		if len(p.Pieces) > 0 {
			return strconv.Itoa(i+1) + "  (" + pieces + ")", plain(p.Slices[i].Grams) + " g"
		}
		return strconv.Itoa(i + 1), pieces
	})
}

// counts returns the number of pieces on every slice: index 0 is slice 1.
func (p placing) counts() []int {
	out := make([]int, len(p.Slices))
	for _, s := range p.Spots {
		out[s.Slice-1]++
	}
	return out
}

// nearest returns the least distance between the centres of two pieces, m.
func (p placing) nearest() float64 {
	least := math.Inf(1)
	for i, s := range p.Spots {
		for _, t := range p.Spots[:i] {
			least = min(least, point(s.At).minus(point(t.At)).norm())
		}
	}
	return least
}
