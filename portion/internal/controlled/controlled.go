// Package controlled rounds two-way tables with all margins rounded too, by a flow of
// least cost.
package controlled

import "example.org/honestplate/portion/internal/flow"

// Round rounds the entries of a table down or up, so that every margin is rounded down
// or up too, with the least sum of squared changes. The margins are given: they are exact
// sums. ok is false if they do not agree with the entries.
func Round(values [][]Amount, rows, columns []Amount, total Amount) (out [][]int64, ok bool) {
	m, n := len(rows), len(columns)
	left, right := m+n, m+n+1 // hubs before the rows and after the columns
	net := flow.New(m+n+2, m*n+m+n+1)
	surplus := make([]int64, m+n+2)
	// The floor is carried; an edge carries what is above it, 0 or 1, and starts at 1 where
	// that is cheaper.
	link := func(from, to int, v Amount, cost func(up float64) float64) (floor int64, edge int) {
		floor, up := v.floorUp()
		surplus[from] -= floor
		surplus[to] += floor
		if up == 0 {
			return floor, -1
		}
		edge = net.Edge(from, to, 1, cost(up))
		if net.Cost[edge] < 0 {
			net.Capacity[edge], net.Capacity[edge+1] = 0, 1
			surplus[from]--
			surplus[to]++
		}
		return floor, edge
	}
	free := func(float64) float64 { return 0 }
	// Up instead of down changes the square by 1 - 2 up.
	square := func(up float64) float64 { return 1 - float64(2*up) }
	out = make([][]int64, m)
	edges := make([][]int, m)
	for i := range out {
		link(left, i, rows[i], free)
		out[i], edges[i] = make([]int64, n), make([]int, n)
		for j, v := range values[i] {
			out[i][j], edges[i][j] = link(i, m+j, v, square)
		}
	}
	for j, c := range columns {
		link(m+j, right, c, free)
	}
	link(right, left, total, free)
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
