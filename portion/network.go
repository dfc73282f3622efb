package portion

import "math"

// A network is a flow network for minimum-cost problems: edge e runs forward, e^1
// is its reverse. Costs are what one more unit costs; where a cost grows with the
// flow, the owner renews it after each push.
type network struct {
	out      [][]int32 // edges leaving each node
	to       []int32
	capacity []int64
	cost     []float64
	price    []float64 // of nodes: no open edge's cost + price[from] - price[to] is below 0
}

func newNetwork(nodes, edges int) *network {
	return &network{
		out: make([][]int32, nodes), price: make([]float64, nodes),
		to: make([]int32, 0, 2*edges), capacity: make([]int64, 0, 2*edges), cost: make([]float64, 0, 2*edges),
	}
}

// edge adds an edge and its reverse and returns its number.
func (n *network) edge(from, to int, capacity int64, cost float64) int {
	e := len(n.to)
	n.to = append(n.to, int32(to), int32(from))
	n.capacity = append(n.capacity, capacity, 0)
	n.cost = append(n.cost, cost, -cost)
	n.out[from] = append(n.out[from], int32(e))
	n.out[to] = append(n.out[to], int32(e+1))
	return e
}

// settle sends flow from nodes with surplus to nodes that lack it (surplus below
// 0), unit by unit of the given size along the cheapest paths, until no node has a
// unit's surplus or none that lacks a unit can be reached. pushed is called for
// every edge that carried a unit. It returns nil if the surpluses are settled,
// otherwise which nodes the remaining surplus can reach: the minimum cut.
//
// This is the successive shortest path method with node prices (Ahuja, Magnanti
// and Orlin, Network Flows, 1993, section 9.7; from memory): flow stays optimal.
func (n *network) settle(surplus []int64, unit int64, pushed func(edge int)) (reached []bool) {
	nodes := len(n.out)
	distance, arrived := make([]float64, nodes), make([]int32, nodes)
	dead, next := make([]bool, nodes), make([]int, nodes)
	for {
		done := make([]bool, nodes)
		open := false
		for v := range nodes {
			distance[v], arrived[v] = math.Inf(1), -1
			if surplus[v] >= unit {
				distance[v] = 0
				open = true
			}
		}
		if !open {
			return nil
		}
		goal := n.search(distance, arrived, done, func(v int) bool { return surplus[v] <= -unit })
		if goal < 0 {
			return done
		}
		for v := range nodes {
			n.price[v] += min(distance[v], distance[goal])
		}
		for v := range nodes {
			dead[v], next[v] = false, 0
		}
		surplus[goal] += unit
		v := goal
		for arrived[v] >= 0 {
			e := int(arrived[v])
			n.capacity[e] -= unit
			n.capacity[e^1] += unit
			pushed(e)
			v = int(n.to[e^1])
		}
		surplus[v] -= unit
		// What costs nothing more at these prices goes now: with ties, nearly all.
		for v := range nodes {
			for surplus[v] >= unit && n.walk(v, surplus, unit, dead, next, pushed) {
				surplus[v] -= unit
			}
		}
	}
}

// walk carries one unit from v along edges that cost nothing to a node that lacks
// it, and reports whether it found one. Nodes from which it did not are dead.
func (n *network) walk(v int, surplus []int64, unit int64, dead []bool, next []int, pushed func(int)) bool {
	if surplus[v] <= -unit {
		surplus[v] += unit
		return true
	}
	dead[v] = true // also while the walk is beyond it
	for ; next[v] < len(n.out[v]); next[v]++ {
		e := int(n.out[v][next[v]])
		to := int(n.to[e])
		if dead[to] || n.capacity[e] <= 0 || n.cost[e]+n.price[v]-n.price[to] > 1e-12 {
			continue
		}
		if n.walk(to, surplus, unit, dead, next, pushed) {
			n.capacity[e] -= unit
			n.capacity[e^1] += unit
			pushed(e)
			dead[v] = false
			return true
		}
	}
	return false
}

// search is Dijkstra's from all nodes at distance 0, over edges with room for a
// unit, to the first node that goal accepts; -1 if none can be reached. The
// networks here are dense, so the nearest node is found by looking at all.
func (n *network) search(distance []float64, arrived []int32, done []bool, goal func(int) bool) int {
	for {
		near := -1
		for v, d := range distance {
			if !done[v] && !math.IsInf(d, 1) && (near < 0 || d < distance[near]) {
				near = v
			}
		}
		if near < 0 {
			return -1
		}
		done[near] = true
		if goal(near) {
			return near
		}
		for _, e := range n.out[near] {
			to := n.to[e]
			if n.capacity[e] <= 0 || done[to] {
				continue
			}
			// Rounding may leave a cost a hair below 0.
			d := distance[near] + max(0, n.cost[e]+n.price[near]-n.price[to])
			if d < distance[to] {
				distance[to], arrived[to] = d, e
			}
		}
	}
}
