package portion

import (
	"errors"

	"example.org/honestplate"
	"example.org/honestplate/portion/apportion"
	"example.org/honestplate/portion/internal/check"
)

// A Table shares a declared amount over two things at once, such as slices and
// zones: every slice gets its share and every zone gets its share, exactly.
type Table struct {
	Declaration Declaration `json:"declaration,omitzero"` // what is shared: its mass in steps if declared, else its pieces
	Rows        []Zone      `json:"rows,omitzero"`        // such as slices; their weights and bounds give the row totals
	Columns     []Zone      `json:"columns,omitzero"`     // such as zones from the camera; they give the column totals
	// Weights says how much each cell should get relative to the others:
	// Weights[i][j] for row i and column j, 0 or more; 0 means nothing there. Nil
	// means Rows[i].Weight x Columns[j].Weight.
	Weights [][]float64 `json:"weights,omitzero"`
}

// A Grid is a declared amount spread over rows and columns. Cells sum to the
// rows' and the columns' totals, and these to the declared amount, exactly.
type Grid struct {
	Declaration Declaration `json:"declaration"`    // what was shared
	Rows        []Portion   `json:"rows"`           // the totals of rows
	Columns     []Portion   `json:"columns"`        // and of columns
	Steps       [][]int64   `json:"steps"`          // Steps[i][j]: whole steps, or pieces, of row i in column j
	Grams       [][]float64 `json:"grams,omitzero"` // their masses, g; nil where pieces are shared
}

// Share finds the totals of rows and columns as [Declaration.Share] does and fills
// the cells by [apportion.Biproportional]: as near the weights as whole steps and both totals
// allow, so a favoured cell gains what its row and its column can spare, and the
// total never changes.
//
// Errors: those of [Declaration.Share] and [apportion.Biproportional]; an
// [apportion.MarginError] carries the names of rows and columns.
func (t Table) Share() (Grid, error) {
	g, weights, rows, columns, err := t.margins()
	if err != nil {
		return Grid{}, err
	}
	if g.Steps, err = apportion.Biproportional(weights, rows, columns); err != nil {
		return Grid{}, t.named(err)
	}
	if t.Declaration.Grams > 0 {
		for _, row := range g.Steps {
			grams := make([]float64, len(row))
			for j, n := range row {
				grams[j] = t.Declaration.step().Times(n)
			}
			g.Grams = append(g.Grams, grams)
		}
	}
	return g, nil
}

// margins shares rows and columns and fills in the weights.
func (t Table) margins() (g Grid, weights [][]float64, rows, columns []int64, err error) {
	if err = t.Declaration.Validate(); err != nil {
		return Grid{}, nil, nil, nil, honestplate.In("Declaration", err)
	}
	var sides [2][]Portion
	for k, zones := range [2][]Zone{t.Rows, t.Columns} {
		if sides[k], err = t.Declaration.Share(zones); err != nil {
			return Grid{}, nil, nil, nil, renamed(err, [2]string{"Rows", "Columns"}[k])
		}
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
	g = Grid{Declaration: t.Declaration, Rows: sides[0], Columns: sides[1]}
	return g, weights, stepsOf(sides[0]), stepsOf(sides[1]), nil
}

// renamed says of which side zones are.
func renamed(err error, side string) error {
	var bounds *apportion.BoundsError
	if errors.As(err, &bounds) {
		bounds.Field = side
	}
	return check.Rename(err, "Zones", side)
}

// named gives a MarginError the names of the table.
func (t Table) named(err error) error {
	var e *apportion.MarginError
	if errors.As(err, &e) {
		if t.Declaration.Grams > 0 {
			e.StepGrams = t.Declaration.step().Times(1)
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

func stepsOf(s []Portion) []int64 {
	out := make([]int64, len(s))
	for i, p := range s {
		out[i] = p.Steps
	}
	return out
}
