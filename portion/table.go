package portion

import "errors"

// A Table shares a declared amount over two things at once, such as slices and
// zones: every slice gets its share and every zone gets its share, exactly.
type Table struct {
	Declaration Declaration // what is shared: its mass in steps if declared, else its pieces
	Rows        []Zone      // such as slices; their weights and bounds give the row totals
	Columns     []Zone      // such as zones from the camera; they give the column totals
	// Weights says how much each cell should get relative to the others:
	// Weights[i][j] for row i and column j, 0 or more; 0 means nothing there. Nil
	// means Rows[i].Weight x Columns[j].Weight.
	Weights [][]float64
}

// A Grid is a declared amount spread over rows and columns. Cells sum to the
// rows' and the columns' totals, and these to the declared amount, exactly.
type Grid struct {
	Declaration   Declaration // what was shared
	Rows, Columns []Portion   // the totals
	Steps         [][]int64   // Steps[i][j]: whole steps, or pieces, of row i in column j
}

// Grams returns the mass of a cell in grams, 0 where pieces are shared. row and
// column are places in Steps; outside the table nothing lies.
func (g Grid) Grams(row, column int) float64 {
	if g.Declaration.Grams == 0 || row < 0 || row >= len(g.Steps) || column < 0 || column >= len(g.Steps[row]) {
		return 0
	}
	return g.Declaration.step().times(g.Steps[row][column])
}

// Share finds the totals of rows and columns as Declaration.Share does and fills
// the cells by Biproportional: as near the weights as whole steps and both totals
// allow, so a favoured cell gains what its row and its column can spare, and the
// total never changes.
//
// Errors: those of Declaration.Share and Biproportional; a MarginError carries the
// names of rows and columns.
func (t Table) Share() (Grid, error) {
	g, weights, rows, columns, err := t.margins()
	if err != nil {
		return Grid{}, err
	}
	if g.Steps, err = Biproportional(weights, rows, columns); err != nil {
		return Grid{}, t.named(err)
	}
	return g, nil
}

// Round is Share by another rule: the ideal amounts of Fit, each rounded to the
// step below or above with the least squared change (ControlledRounding). Errors
// are those of Declaration.Share and Fit.
func (t Table) Round() (Grid, error) {
	g, weights, rows, columns, err := t.margins()
	if err != nil {
		return Grid{}, err
	}
	// Biproportional knows whether a table exists at all, and says why not.
	if _, err := Biproportional(weights, rows, columns); err != nil {
		return Grid{}, t.named(err)
	}
	r, c, total := floats(rows), floats(columns), 0.0
	for _, v := range r {
		total += v
	}
	ideal, err := Fit(weights, r, c)
	if err != nil {
		return Grid{}, err
	}
	if g.Steps, err = controlled(ideal, r, c, total); err != nil {
		return Grid{}, err
	}
	return g, nil
}

// margins shares rows and columns and fills in the weights.
func (t Table) margins() (g Grid, weights [][]float64, rows, columns []int64, err error) {
	byRow, err := t.Declaration.Share(t.Rows)
	if err != nil {
		return Grid{}, nil, nil, nil, err
	}
	byColumn, err := t.Declaration.Share(t.Columns)
	if err != nil {
		return Grid{}, nil, nil, nil, err
	}
	if weights = t.Weights; weights == nil {
		weights = make([][]float64, len(t.Rows))
		for i, r := range t.Rows {
			weights[i] = make([]float64, len(t.Columns))
			for j, c := range t.Columns {
				weights[i][j] = r.Weight * c.Weight
			}
		}
	}
	g = Grid{Declaration: t.Declaration, Rows: byRow.Portions, Columns: byColumn.Portions}
	return g, weights, stepsOf(byRow), stepsOf(byColumn), nil
}

// named gives a MarginError the names of the table.
func (t Table) named(err error) error {
	var e *MarginError
	if errors.As(err, &e) {
		if t.Declaration.Grams > 0 {
			e.StepGrams = t.Declaration.step().times(1)
		}
		for _, i := range e.Rows {
			e.RowNames = append(e.RowNames, t.Rows[i].Name)
		}
		for _, j := range e.Columns {
			e.ColumnNames = append(e.ColumnNames, t.Columns[j].Name)
		}
	}
	return err
}

func stepsOf(s Shares) []int64 {
	out := make([]int64, len(s.Portions))
	for i, p := range s.Portions {
		out[i] = p.Steps
	}
	return out
}

func floats(whole []int64) []float64 {
	out := make([]float64, len(whole))
	for i, n := range whole {
		out[i] = float64(n)
	}
	return out
}
