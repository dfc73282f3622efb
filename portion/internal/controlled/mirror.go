package controlled

import "example.org/honestplate/portion/internal/flow"

// A Mirror says which line of a table is the mirror image of each: rows and columns.
type Mirror struct{ Rows, Columns []int }

// mostChoices bounds what is tried for lines that are their own image.
const mostChoices = 12

// Mirrored returns a rounding that is its own mirror image and no further from the
// entries than the given one, which Round returned, and otherwise the given one. The
// table must be its own image; its total must be whole. Of several such roundings of a
// small table the one with the most even columns is taken.
//
// Where both images of a cell go up together, a cell and its image are one unit of half
// a table: the lines with an image are rounded as in Round, and a line that is its own
// image carries an even number besides the cells that are their own image too. For these
// few every choice is tried.
func Mirrored(values [][]Amount, rows, columns []Amount, total Amount, m Mirror, given [][]int64) [][]int64 {
	h := half{values: values, mirror: m, margins: [2][]Amount{rows, columns}, total: total.whole, lines: [2][]int{m.Rows, m.Columns}}
	for i, r := range m.Rows {
		for j, c := range m.Columns {
			if r == i && c == j {
				if _, up := values[i][j].floorUp(); up > 0 {
					h.own = append(h.own, [2]int{i, j})
				}
			}
		}
	}
	var paired [][2]int
	for side, lines := range h.lines {
		for k, image := range lines {
			if _, up := h.margins[side][k].floorUp(); up == 0 || image < k {
				continue
			}
			if image == k {
				h.free = append(h.free, [2]int{side, k})
			} else {
				paired = append(paired, [2]int{side, k})
			}
		}
	}
	// Of small tables every way to round the margins is tried, so that of equal
	// roundings the one stands whose columns are most even.
	if len(h.own)+len(h.free)+len(paired) <= mostChoices {
		h.free, h.all = append(h.free, paired...), true
	}
	choices := len(h.own) + len(h.free)
	if choices > mostChoices {
		return given
	}
	limit, best, second := h.gain(given), 0.0, 0.0
	for choice := range 1 << choices {
		h.choose(choice)
		out, ok := h.round()
		if !ok {
			continue
		}
		gain, uneven := h.gain(out), unevenness(out)
		if gain >= limit && (h.best == nil || gain > best || gain == best && uneven < second) {
			h.best, best, second = out, gain, uneven
		}
	}
	if h.best == nil {
		return given
	}
	return h.best
}

// A half is a table that is its own mirror image, to be rounded as such.
type half struct {
	values  [][]Amount
	mirror  Mirror
	margins [2][]Amount
	total   int64
	lines   [2][]int
	own     [][2]int // cells that are their own image and may go up
	free    [][2]int // side and place of lines whose rounding is chosen
	all     bool     // lines with an image too
	up      map[[2]int]bool
	lineUp  map[[2]int]bool
	best    [][]int64
}

// choose takes the cells and lines up whose bits are set.
func (h *half) choose(bits int) {
	h.up, h.lineUp = map[[2]int]bool{}, map[[2]int]bool{}
	for k, c := range h.own {
		h.up[c] = bits>>k&1 == 1
	}
	for k, l := range h.free {
		h.lineUp[l] = bits>>(len(h.own)+k)&1 == 1
	}
}

// gain is what a rounding saves against rounding all down, exact: a sum of multiples of
// 2^-29.
func (h *half) gain(out [][]int64) float64 {
	sum := 0.0
	for i, row := range out {
		for j, x := range row {
			if floor, up := h.values[i][j].floorUp(); x > floor {
				sum += float64(2*up) - 1
			}
		}
	}
	return sum
}

// unevenness is the sum of the squares of the column totals.
func unevenness(out [][]int64) (sum float64) {
	for j := range out[0] {
		total := 0.0
		for _, row := range out {
			total += float64(row[j])
		}
		sum += total * total
	}
	return sum
}

// round returns the best rounding with the choice made, and false if there is none.
func (h *half) round() ([][]int64, bool) {
	nr, nc := len(h.lines[0]), len(h.lines[1])
	left, right := nr+nc, nr+nc+1
	net := flow.New(nr+nc+2, nr*nc+nr+nc)
	surplus := make([]int64, nr+nc+2)
	out := make([][]int64, nr)
	rest := [2][]int64{make([]int64, nr), make([]int64, nc)} // what is above the floors
	over := h.total
	for i := range out {
		out[i] = make([]int64, nc)
		for j := range out[i] {
			floor, _ := h.values[i][j].floorUp()
			if out[i][j] = floor; h.up[[2]int{i, j}] {
				out[i][j]++
			}
			rest[0][i] -= out[i][j]
			rest[1][j] -= out[i][j]
			over -= out[i][j]
		}
	}
	if over < 0 || over%2 != 0 {
		return nil, false
	}
	link := func(from, to int, cost float64) int {
		e := net.Edge(from, to, 1, cost)
		if cost < 0 {
			net.Capacity[e], net.Capacity[e+1] = 0, 1
			surplus[from]--
			surplus[to]++
		}
		return e
	}
	open := [2]int64{over / 2, over / 2} // units that the hubs pass on to lines that may go up
	for side, lines := range h.lines {
		for k, image := range lines {
			floor, up := h.margins[side][k].floorUp()
			n := rest[side][k] + floor
			switch {
			case image < k:
				continue
			case h.lineUp[[2]int{side, k}]:
				n++
			}
			if h.all {
				up = 0
			}
			if image == k {
				if n%2 != 0 {
					return nil, false
				}
				n /= 2
			}
			if n < 0 {
				if n++; n < 0 || up == 0 || image == k {
					return nil, false
				}
				n, up = 0, 0
			}
			open[side] -= n
			node, sign := k, int64(1)
			if side == 1 {
				node, sign = nr+k, -1
			}
			surplus[node] += sign * n
			if up > 0 && image > k {
				if side == 0 {
					link(left, node, 0)
				} else {
					link(node, right, 0)
				}
			}
		}
	}
	if open[0] < 0 || open[1] < 0 {
		return nil, false
	}
	surplus[left] += open[0]
	surplus[right] -= open[1]
	type cell struct{ i, j, edge int }
	var cells []cell
	for i, ri := range h.lines[0] {
		for j, cj := range h.lines[1] {
			if ri < i || ri == i && cj <= j {
				continue // its image stands for it, or it was chosen
			}
			if _, up := h.values[i][j].floorUp(); up > 0 {
				cells = append(cells, cell{i, j, link(i, nr+min(j, cj), 1-float64(2*up))})
			}
		}
	}
	if net.Send(surplus, 1, func(int) {}) != nil {
		return nil, false
	}
	for _, c := range cells {
		n := net.Capacity[c.edge+1]
		out[c.i][c.j] += n
		out[h.lines[0][c.i]][h.lines[1][c.j]] += n
	}
	return out, true
}
