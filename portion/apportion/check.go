package apportion

import (
	"fmt"
	"math"

	"example.org/honestplate"
	"example.org/honestplate/portion/internal/check"
)

// Limits of tables: sizes that stay quick, and units whose rounding points float64
// still tells apart.
const (
	mostCells        = 10_000
	mostTableUnits   = 1_000_000_000
	tableUnitsReason = "beyond, a float64 does not tell rounding points apart"
)

// checkShape refuses a table that is empty, ragged, too large, or has a bad entry.
func checkShape(values [][]float64, rows, columns int) error {
	if rows == 0 || columns == 0 {
		return check.Input("Weights", "an empty table", "", "at least one row and one column")
	}
	if cells := float64(rows) * float64(columns); cells > mostCells {
		return &honestplate.RangeError{Field: "Weights", Value: cells, Low: 1, High: mostCells, Unit: "cells",
			Source: "larger tables take minutes"}
	}
	if len(values) != rows {
		return check.Input("Weights", len(values), "rows", fmt.Sprintf("%d, one for every total", rows))
	}
	for i, row := range values {
		if len(row) != columns {
			return check.Input(fmt.Sprintf("Weights[%d]", i), len(row), "entries", fmt.Sprintf("%d, one for every column", columns))
		}
		for j, v := range row {
			if !(v >= 0) || math.IsInf(v, 1) {
				return honestplate.NotNegative(fmt.Sprintf("Weights[%d][%d]", i, j), v, "")
			}
		}
	}
	return nil
}
