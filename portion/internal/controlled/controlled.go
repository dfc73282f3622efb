// Package controlled rounds two-way tables with all margins rounded too, by a flow of
// least cost.
package controlled

import (
	"math"

	"example.org/honestplate/portion/internal/flow"
)

// Round rounds the entries of a table down or up, so that every margin is rounded down
// or up too, with the least sum of squared changes. The margins are given: they are exact
// sums. ok is false if they do not agree with the entries.
func Round(values [][]Amount, rows, columns []Amount, total Amount) (out [][]int64, ok bool) {
	m, n := len(rows), len(columns)
	left, right := m+n, m+n+1 // hubs before the rows and after the columns
	net := flow.New(m+n+2, m*n+m+n+1)
	surplus := make([]int64, m+n+2)
	out = make([][]int64, m)
	gain := make([][]float64, m)
	floors := [2][]int64{make([]int64, m), make([]int64, n)}
	for i, row := range values {
		out[i], gain[i] = make([]int64, n), make([]float64, n)
		for j, v := range row {
			floor, up := v.floorUp()
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
	for side, margin := range [2][]Amount{rows, columns} {
		for k, v := range margin {
			floor, up := v.floorUp()
			least[side][k] = max(0, int(floor-floors[side][k]))
			most[side][k] = least[side][k]
			if up > 0 {
				most[side][k]++
			}
		}
	}
	row, column := prices(gain, least, most)
	copy(net.Price, row)
	copy(net.Price[m:], column)
	// An edge carries what the floors leave: 0 or 1. It starts at 1 where its
	// price says that this is cheaper.
	link := func(from, to int, cost float64) int {
		e := net.Edge(from, to, 1, cost)
		if cost+net.Price[from]-net.Price[to] < 0 {
			net.Capacity[e], net.Capacity[e+1] = 0, 1
			surplus[from]--
			surplus[to]++
		}
		return e
	}
	given := func(from, to int, v Amount) {
		floor, up := v.floorUp()
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
	if net.Send(surplus, 1, func(int) {}) != nil {
		// Only margins that are not the sums of the entries can come here.
		return nil, false
	}
	for i := range out {
		for j, e := range edges[i] {
			if e >= 0 {
				out[i][j] += net.Capacity[e+1]
			}
		}
	}
	return out, true
}
