package apportion

import (
	"fmt"

	"example.org/honestplate"
)

// A MarginError says which margins of a table contradict each other: the named
// rows may use only the named columns, and their totals exceed those columns'. It
// is the proof that no table exists. errors.Is(err,
// [honestplate.ErrInfeasible]) holds, and it wraps an [honestplate.RefusedError].
type MarginError struct {
	Rows, Columns         []int    // places in the table, from 0
	RowNames, ColumnNames []string // names, where the table has them
	RowUnits, ColumnUnits int64    // sums of their totals, in whole steps or pieces
	StepGrams             float64  // mass of a step, g; 0 where the units are none
}

// Error names the rows and the columns that contradict each other.
func (e *MarginError) Error() string { return e.Unwrap().Error() }

// Unwrap returns the error in the module's vocabulary.
func (e *MarginError) Unwrap() error {
	use := "may use no column"
	if len(e.Columns) > 0 {
		use = fmt.Sprintf("may use only %s with %s", list("column", e.Columns, e.ColumnNames), amount(e.ColumnUnits, e.StepGrams))
	}
	return &honestplate.RefusedError{
		Field: "Rows", Kind: honestplate.ErrInfeasible,
		Reason: fmt.Sprintf("%s must hold %s, but %s", list("row", e.Rows, e.RowNames), amount(e.RowUnits, e.StepGrams), use),
		Advice: fmt.Sprintf("move %s to other rows, or let these use more columns", amount(e.RowUnits-e.ColumnUnits, e.StepGrams)),
	}
}

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
			text += sep + honestplate.OneLine(names[k])
		} else {
			text += fmt.Sprintf("%s%d", sep, p+1)
		}
	}
	return text
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
