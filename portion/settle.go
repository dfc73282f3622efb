package portion

import (
	"fmt"
	"math"
)

// finish moves the units that are out of place along cheapest paths. One more unit
// in a cell of x units costs log((x + 1/2)/weight), one less gains the same at
// x-1: the table of least cost is the one whose cells are rounded scaled weights,
// with the factors' logarithms as prices.
//
// From scratch, it starts from empty cells with units so coarse that this is
// right, and halves them: after each halving a cell is at most one unit out, so
// the work grows with the logarithm of the total (the scaling of Rote and
// Zachariasen, Matrix scaling by network flow, 2007; from memory).
func (t *twoWay) finish(scratch bool) error {
	m, n := len(t.rows), len(t.columns)
	net := newNetwork(m+n, m*n)
	for v := range net.out {
		net.out[v] = make([]int32, 0, max(m, n))
	}
	cellOf := make([]int, 0, m*n) // of the forward edge 2k
	logWeight := make([]float64, 0, m*n)
	for i := range m {
		for j := range n {
			if w := t.weight[i*n+j]; w > 0 {
				net.edge(i, m+j, math.MaxInt64/2, 0)
				cellOf = append(cellOf, i*n+j)
				logWeight = append(logWeight, math.Log(w))
			}
		}
	}
	unit := int64(1)
	if scratch {
		unit = 1 << 30 // above mostTableSteps; weights are at most 1
	} else {
		for i, f := range t.rowFactor {
			net.price[i] = -math.Log(f)
		}
		for j, f := range t.columnFactor {
			net.price[m+j] = math.Log(f)
		}
	}
	renew := func(k int) {
		x, half := float64(t.cells[cellOf[k]]), float64(unit)/2
		net.cost[2*k] = math.Log(x+half) - logWeight[k]
		net.cost[2*k+1] = logWeight[k] - math.Log(max(x-half, half))
		net.capacity[2*k+1] = t.cells[cellOf[k]]
	}
	for {
		for k, c := range cellOf {
			if scratch {
				z := math.Exp(logWeight[k] - net.price[c/n] + net.price[m+c%n])
				t.cells[c] = unit * int64(math.Round(z/float64(unit)))
			}
			renew(k)
		}
		cut := net.settle(t.surplus(), unit, func(e int) {
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

// contradiction names the margins of a cut: what the surplus can reach are rows
// and all columns they may use, filled beyond their totals.
func (t *twoWay) contradiction(cut []bool) error {
	e := &MarginError{}
	for v, in := range cut {
		switch i := v - len(t.rows); {
		case !in:
		case i < 0:
			e.Rows = append(e.Rows, v)
			e.RowUnits += t.rows[v]
		default:
			e.Columns = append(e.Columns, i)
			e.ColumnUnits += t.columns[i]
		}
	}
	return e
}

// A MarginError says which margins of a table contradict each other: the named
// rows may use only the named columns, and their totals exceed those columns'. It
// is the proof that no table exists. errors.Is(err, ErrInput) holds.
type MarginError struct {
	Rows, Columns         []int    // places in the table, from 0
	RowNames, ColumnNames []string // names, where the table has them
	RowUnits, ColumnUnits int64    // sums of their totals, in whole steps or pieces
	StepGrams             float64  // mass of a step, g; 0 where the units are none
}

// Error names the rows and the columns that contradict each other.
func (e *MarginError) Error() string {
	amount := func(units int64) string {
		if e.StepGrams > 0 {
			return fmt.Sprintf("%.6g g", float64(units)*e.StepGrams)
		}
		return fmt.Sprint(units)
	}
	use := "may use no column"
	if len(e.Columns) > 0 {
		use = fmt.Sprintf("may use only %s with %s", list("column", e.Columns, e.ColumnNames), amount(e.ColumnUnits))
	}
	return fmt.Sprintf("portion: %s must hold %s, but %s", list("row", e.Rows, e.RowNames), amount(e.RowUnits), use)
}

// Is reports that a MarginError is an ErrInput.
func (e *MarginError) Is(target error) bool { return target == ErrInput }

// list names rows or columns for a message: by name, else by place from 1.
func list(kind string, places []int, names []string) string {
	text := kind
	if len(places) > 1 {
		text += "s"
	}
	for k, p := range places {
		sep := " "
		if k > 0 {
			sep = ", "
		}
		if k < len(names) && names[k] != "" {
			text += sep + oneLine(names[k])
		} else {
			text += fmt.Sprintf("%s%d", sep, p+1)
		}
	}
	return text
}
