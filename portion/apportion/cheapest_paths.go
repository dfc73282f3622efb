package apportion

import (
	"math"

	"example.org/honestplate/portion/internal/flow"
)

// finishByPaths moves the units that are out of place along cheapest paths. One more unit
// in a cell of x units costs log((x + 1/2)/weight), one less gains the same at
// x-1: the table of least cost is the one whose cells are rounded scaled weights,
// with the factors' logarithms as prices.
//
// From scratch, it starts from empty cells with units so coarse that this is
// right, and halves them: after each halving a cell is at most one unit out, so
// the work grows with the logarithm of the total (the scaling of Rote and
// Zachariasen, Matrix scaling by network flow, 2007; from memory).
func (t *twoWay) finishByPaths(scratch bool) error {
	m, n := len(t.rows), len(t.columns)
	net := flow.New(m+n, m*n)
	for v := range net.Out {
		net.Out[v] = make([]int32, 0, max(m, n))
	}
	cellOf := make([]int, 0, m*n) // of the forward edge 2k
	logWeight := make([]float64, 0, m*n)
	for i := range m {
		for j := range n {
			if w := t.weight[i*n+j]; w > 0 {
				net.Edge(i, m+j, math.MaxInt64/2, 0)
				cellOf = append(cellOf, i*n+j)
				logWeight = append(logWeight, math.Log(w))
			}
		}
	}
	unit := int64(1)
	if scratch {
		unit = 1 << 30 // above mostTableUnits; weights are at most 1
	} else {
		for i, f := range t.rowFactor {
			net.Price[i] = -math.Log(f)
		}
		for j, f := range t.columnFactor {
			net.Price[m+j] = math.Log(f)
		}
	}
	renew := func(k int) {
		x, half := float64(t.cells[cellOf[k]]), float64(unit)/2
		net.Cost[2*k] = math.Log(x+half) - logWeight[k]
		net.Cost[2*k+1] = logWeight[k] - math.Log(max(x-half, half))
		net.Capacity[2*k+1] = t.cells[cellOf[k]]
	}
	for {
		for k, c := range cellOf {
			if scratch {
				z := math.Exp(logWeight[k] - net.Price[c/n] + net.Price[m+c%n])
				t.cells[c] = unit * int64(math.Round(z/float64(unit)))
			}
			renew(k)
		}
		cut := net.Send(t.surplus(), unit, func(e int) {
			if k := e / 2; e%2 == 0 {
				t.cells[cellOf[k]] += unit
			} else {
				t.cells[cellOf[k]] -= unit
			}
			renew(e / 2)
		})
		if unit > 1 {
			unit /= 2
			continue
		}
		if cut != nil {
			return t.contradiction(cut)
		}
		return nil
	}
}

// surplus returns by how much every row lacks units and every column has too
// many: what flow from rows to columns has to settle.
func (t *twoWay) surplus() []int64 {
	m, n := len(t.rows), len(t.columns)
	out := make([]int64, m+n)
	for i := range m {
		out[i] = t.rows[i]
		for j := range n {
			out[i] -= t.cells[i*n+j]
			out[m+j] += t.cells[i*n+j]
		}
	}
	for j := range n {
		out[m+j] -= t.columns[j]
	}
	return out
}
