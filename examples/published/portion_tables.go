package published

import (
	"fmt"

	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/testdata"
)

// A matrix is one two-way example of a table that lists it cell by cell.
type matrix struct {
	cells         [][]float64
	rows, columns []float64 // totals, where the table has them
	row, column   int       // of the cell asked for
}

// matrixOf collects the example that a row belongs to. Rows and columns are named
// in the columns row and column; totals may be "".
func matrixOf(table string, r testdata.Row, value, rowTotal, columnTotal string) (matrix, error) {
	var m matrix
	t, err := testdata.Load(table)
	if err != nil {
		return m, err
	}
	rowAt, columnAt := map[string]int{}, map[string]int{}
	for _, row := range t.Rows {
		if row.Text("example") != r.Text("example") {
			continue
		}
		i, known := rowAt[row.Text("row")]
		if !known {
			i = len(m.cells)
			rowAt[row.Text("row")] = i
			m.cells = append(m.cells, nil)
		}
		j, known := columnAt[row.Text("column")]
		if !known {
			j = len(columnAt)
			columnAt[row.Text("column")] = j
		}
		v, err := row.Float(value)
		if err != nil {
			return m, err
		}
		if j != len(m.cells[i]) {
			return m, fmt.Errorf("line %d is out of order", row.Line)
		}
		m.cells[i] = append(m.cells[i], v)
		if rowTotal != "" {
			total, err := row.Float(rowTotal)
			if err != nil {
				return m, err
			}
			if j == 0 {
				m.rows = append(m.rows, total)
			}
			if total, err = row.Float(columnTotal); err != nil {
				return m, err
			}
			if i == 0 {
				m.columns = append(m.columns, total)
			}
		}
		if row.Line == r.Line {
			m.row, m.column = i, j
		}
	}
	return m, nil
}

func cellLabel(r testdata.Row) string {
	return fmt.Sprintf("%s, %s/%s", r.Text("example"), r.Text("row"), r.Text("column"))
}

func biproportional(r testdata.Row) ([]Point, error) {
	m, err := matrixOf("biproportional", r, "votes", "row_seats", "column_seats")
	if err != nil {
		return nil, err
	}
	got, err := apportion.Biproportional(m.cells, whole(m.rows), whole(m.columns))
	if err != nil {
		return nil, err
	}
	want, err := r.Float("seats")
	return []Point{Same(cellLabel(r), want, float64(got[m.row][m.column]))}, err
}

func controlledRounding(r testdata.Row) ([]Point, error) {
	m, err := matrixOf("controlled_rounding", r, "value", "", "")
	if err != nil {
		return nil, err
	}
	base, err := r.Float("base")
	if err != nil {
		return nil, err
	}
	for _, row := range m.cells {
		for j := range row {
			row[j] /= base
		}
	}
	got, err := apportion.ControlledRounding(m.cells)
	if err != nil {
		return nil, err
	}
	want, err := r.Float("rounded")
	return []Point{Near(cellLabel(r), want/base, float64(got[m.row][m.column]), 1)}, err
}

func whole(values []float64) []int64 {
	out := make([]int64, len(values))
	for i, v := range values {
		out[i] = int64(v)
	}
	return out
}
