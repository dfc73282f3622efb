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
	out, gain := make([][]int64, m), make([][]float64, m)
	floors := [2][]int64{make([]int64, m), make([]int64, n)}
	for i, row := range values {
		out[i], gain[i] = make([]int64, n), make([]float64, n)
		for j, v := range row {
			floor, up := floorUp(v)
			out[i][j], gain[i][j] = floor, math.Inf(-1)
			floors[0][i] += floor
			floors[1][j] += floor
			if up > 0 {
				// Up instead of down changes the square by 1 - 2 up.
				gain[i][j] = 2*up - 1
			}
		}
	}
	least, most := [2][]int{make([]int, m), make([]int, n)}, [2][]int{make([]int, m), make([]int, n)}
	for side, margin := range [2][]float64{rows, columns} {
		for k, v := range margin {
			floor, up := floorUp(v)
			least[side][k] = max(0, int(floor-floors[side][k]))
			most[side][k] = least[side][k]
			if up > 0 {
				most[side][k]++
			}
		}
	}
	row, column := prices(gain, least, most)
	copy(net.price, row)
	copy(net.price[m:], column)
	// An edge carries what the floors leave: 0 or 1. It starts at 1 where its
	// price says that this is cheaper.
	link := func(from, to int, cost float64) int {
		e := net.edge(from, to, 1, cost)
		if cost+net.price[from]-net.price[to] < 0 {
			net.capacity[e], net.capacity[e+1] = 0, 1
			surplus[from]--
			surplus[to]++
		}
		return e
	}
	given := func(from, to int, v float64) {
		floor, up := floorUp(v)
		surplus[from] -= floor
		surplus[to] += floor
		if up > 0 {
			link(from, to, 0)
		}
	}
	edges := make([][]int, m)
	for i := range out {
		given(left, i, rows[i])
		edges[i] = make([]int, n)
		for j, floor := range out[i] {
			surplus[i] -= floor
			surplus[m+j] += floor
			edges[i][j] = -1
			if g := gain[i][j]; !math.IsInf(g, -1) {
				edges[i][j] = link(i, m+j, -g)
			}
		}
	}
	for j, c := range columns {
		given(m+j, right, c)
	}
	given(right, left, total)
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
