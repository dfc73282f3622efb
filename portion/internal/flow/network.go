// Package flow finds flows of least cost in networks.
package flow

import "math"

// A Network is a flow network for minimum-cost problems: edge e runs forward, e^1
// is its reverse. Costs are what one more unit costs; where a cost grows with the
// flow, the owner renews it after each push.
type Network struct {
	Out      [][]int32 // edges leaving each node
	to       []int32
	Capacity []int64
	Cost     []float64
	Price    []float64 // of nodes: no open edge's cost + price[from] - price[to] is below 0
}

// New returns a network with so many nodes and room for edges.
func New(nodes, edges int) *Network {
	return &Network{
		Out: make([][]int32, nodes), Price: make([]float64, nodes),
		to: make([]int32, 0, 2*edges), Capacity: make([]int64, 0, 2*edges), Cost: make([]float64, 0, 2*edges),
	}
}

// Edge adds an edge and its reverse and returns its number.
func (n *Network) Edge(from, to int, capacity int64, cost float64) int {
	e := len(n.to)
	n.to = append(n.to, int32(to), int32(from))
	n.Capacity = append(n.Capacity, capacity, 0)
	n.Cost = append(n.Cost, cost, -cost)
	n.Out[from] = append(n.Out[from], int32(e))
	n.Out[to] = append(n.Out[to], int32(e+1))
	return e
}

// Send sends flow from nodes with surplus to nodes that lack it (surplus below
// 0), unit by unit of the given size along the cheapest paths, until no node has a
// unit's surplus or none that lacks a unit can be reached. pushed is called for
// every edge that carried a unit. It returns nil if the surpluses are settled,
// otherwise which nodes the remaining surplus can reach: the minimum cut.
//
// This is the successive shortest path method with node prices (Ahuja, Magnanti
// and Orlin, Network Flows, 1993, section 9.7; from memory): flow stays optimal.
func (n *Network) Send(surplus []int64, unit int64, pushed func(edge int)) (reached []bool) {
	nodes := len(n.Out)
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
			n.Price[v] += min(distance[v], distance[goal])
		}
		for v := range nodes {
			dead[v], next[v] = false, 0
		}
		surplus[goal] += unit
		v := goal
		for arrived[v] >= 0 {
			e := int(arrived[v])
			n.Capacity[e] -= unit
			n.Capacity[e^1] += unit
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
func (n *Network) walk(v int, surplus []int64, unit int64, dead []bool, next []int, pushed func(int)) bool {
	if surplus[v] <= -unit {
		surplus[v] += unit
		return true
	}
	dead[v] = true // also while the walk is beyond it
	for ; next[v] < len(n.Out[v]); next[v]++ {
		e := int(n.Out[v][next[v]])
		to := int(n.to[e])
		if dead[to] || n.Capacity[e] <= 0 || n.Cost[e]+n.Price[v]-n.Price[to] > 1e-12 {
			continue
		}
		if n.walk(to, surplus, unit, dead, next, pushed) {
			n.Capacity[e] -= unit
			n.Capacity[e^1] += unit
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
func (n *Network) search(distance []float64, arrived []int32, done []bool, goal func(int) bool) int {
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
		for _, e := range n.Out[near] {
			to := n.to[e]
			if n.Capacity[e] <= 0 || done[to] {
				continue
			}
			// Rounding may leave a cost a hair below 0.
			d := distance[near] + max(0, n.Cost[e]+n.Price[near]-n.Price[to])
			if d < distance[to] {
				distance[to], arrived[to] = d, e
			}
		}
	}
}
