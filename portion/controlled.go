package portion

import "math"

// ControlledRounding rounds every entry of a table down or up to a whole number so
// that every row total, every column total and the grand total is rounded down or
// up too, with the least sum of squared changes. Whole numbers stay, so zeros stay
// zeros. A number within 1e-9 of a whole one counts as whole. Divide first to round
// to another base.
//
// Such a rounding always exists for a two-way table (Bacharach, Matrix Rounding
// Problems, Management Science 12 (1966) 732-742; Cox, A Constructive Procedure for
// Unbiased Controlled Rounding, Journal of the American Statistical Association 82
// (1987) 520-524; from memory). It is found as a flow of least cost. Where several
// are equally near, the order of rows and columns decides.
//
// Errors: InputError for a bad shape or entry, RangeError for more than 1e6 entries
// or a grand total above 1e9.
func ControlledRounding(values [][]float64) ([][]int64, error) {
	if len(values) == 0 {
		return nil, checkShape(values, 0, 0)
	}
	n := len(values[0])
	if err := checkShape(values, len(values), n); err != nil {
		return nil, err
	}
	rows, columns, total := make([]float64, len(values)), make([]float64, n), 0.0
	for i, row := range values {
		for j, v := range row {
			rows[i] += v
			columns[j] += v
			total += v
		}
	}
	if err := within("sum of the table", total, 0, mostTableSteps, "", "limit of this package"); err != nil {
		return nil, err
	}
	return controlled(values, rows, columns, total)
}

// controlled is ControlledRounding with the margins known, free of the rounding of
// sums.
func controlled(values [][]float64, rows, columns []float64, total float64) ([][]int64, error) {
	m, n := len(rows), len(columns)
	left, right := m+n, m+n+1 // hubs before the rows and after the columns
	net := newNetwork(m+n+2, m*n+m+n+1)
	surplus := make([]int64, m+n+2)
	// Flow of the floors is given; an edge of capacity 1 may add the rest.
	link := func(from, to int, v, cost float64) (floor int64, edge int) {
		floor, up := floorUp(v)
		surplus[from] -= floor
		surplus[to] += floor
		if up > 0 {
			return floor, net.edge(from, to, 1, cost)
		}
		return floor, -1
	}
	out := make([][]int64, m)
	edges := make([][]int, m)
	for i, row := range values {
		link(left, i, rows[i], 0)
		out[i], edges[i] = make([]int64, n), make([]int, n)
		for j, v := range row {
			floor, up := floorUp(v)
			// Rounding f up instead of down changes its square by 1 - 2f.
			_, e := link(i, m+j, v, 1-2*up)
			out[i][j], edges[i][j] = floor, e
			if e >= 0 && up > 0.5 { // up is cheaper: start there
				net.capacity[e], net.capacity[e+1] = 0, 1
				surplus[i]--
				surplus[m+j]++
			}
		}
	}
	for j, c := range columns {
		link(m+j, right, c, 0)
	}
	link(right, left, total, 0)
	if net.settle(surplus, 1, func(int) {}) != nil {
		// Only the rounding of huge sums can come here.
		return nil, &InputError{"sum of the table", total, "", "totals that agree with the entries"}
	}
	for i := range out {
		for j, e := range edges[i] {
			if e >= 0 {
				out[i][j] += net.capacity[e+1]
			}
		}
	}
	return out, nil
}

// floorUp splits v into a whole number and what is above it, 0 if within 1e-9 of a
// whole number.
func floorUp(v float64) (floor int64, up float64) {
	if r := math.Round(v); math.Abs(v-r) <= 1e-9 {
		return int64(r), 0
	}
	f := math.Floor(v)
	return int64(f), v - f
}
