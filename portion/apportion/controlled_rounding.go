package apportion

import (
	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
	"example.org/honestplate/portion/internal/controlled"
)

// ControlledRounding rounds every entry of a table down or up to a whole number so
// that every row total, every column total and the grand total is rounded down or
// up too, with the least sum of squared changes. Whole numbers stay, so zeros stay
// zeros. Entries are read as the decimals they print as, to 15 digits, and summed as
// such; what is within 1e-9 of a whole number counts as whole. Divide first to round to
// another base.
//
// Such a rounding always exists for a two-way table (Bacharach, Matrix Rounding
// Problems, Management Science 12 (1966) 732-742; Cox, A Constructive Procedure for
// Unbiased Controlled Rounding, Journal of the American Statistical Association 82
// (1987) 520-524; from memory). It is found as a flow of least cost. Where several
// are equally near, the order of rows and columns decides.
//
// Errors: [honestplate.InputError] for a bad shape or entry, [honestplate.RangeError]
// for more than 10 000 entries or a grand total above 1e9.
func ControlledRounding(values [][]float64) ([][]int64, error) {
	if len(values) == 0 {
		return nil, checkShape(values, 0, 0)
	}
	n := len(values[0])
	if err := checkShape(values, len(values), n); err != nil {
		return nil, err
	}
	entries := make([][]controlled.Amount, len(values))
	rows, columns, total := make([]controlled.Amount, len(values)), make([]controlled.Amount, n), controlled.Amount{}
	for i, row := range values {
		entries[i] = make([]controlled.Amount, n)
		for j, v := range row {
			if v > mostTableUnits {
				return nil, honestplate.InRange("Values", v, 0, mostTableUnits, "in all", tableUnitsReason)
			}
			a := controlled.Decimal(v)
			entries[i][j] = a
			rows[i] = rows[i].Plus(a)
			columns[j] = columns[j].Plus(a)
		}
		total = total.Plus(rows[i])
	}
	if err := honestplate.InRange("Values", total.Float(), 0, mostTableUnits, "in all", tableUnitsReason); err != nil {
		return nil, err
	}
	out, ok := controlled.Round(entries, rows, columns, total)
	if !ok {
		return nil, check.Input("Values", total.Float(), "in all", "totals that agree with the entries")
	}
	return out, nil
}
