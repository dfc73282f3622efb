package flow

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

// ReadPoints reads a flow curve from CSV: a line a point, shear rate in 1/s,
// stress in Pa, and if there is a third column the weight (1/variance; empty for 1).
// A first line that is not numbers is taken as the heading; lines starting with #
// are comments; blanks around numbers are ignored. A semicolon is not a separator
// and a comma not a decimal sign. An error names the line; the points must satisfy
// Fit.
func ReadPoints(r io.Reader) ([]Point, error) {
	if r == nil {
		return nil, check.Missing("Reader", "where to read the flow curve from")
	}
	c := csv.NewReader(r)
	c.Comment = '#'
	c.FieldsPerRecord = -1
	c.TrimLeadingSpace = true
	c.ReuseRecord = true
	var points []Point
	for first := true; ; first = false {
		record, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("flow curve: %w", err)
		}
		line, _ := c.FieldPos(0)
		if len(record) < 2 || len(record) > 3 {
			return nil, honestplate.In(fmt.Sprintf("Line[%d]", line),
				check.Input("Columns", float64(len(record)), "", "2 or 3, with commas between: shear rate, stress, weight (a semicolon is no separator)"))
		}
		var v [3]float64
		heading := false
		for i, field := range record {
			field = strings.TrimSpace(field)
			if i == 2 && field == "" {
				continue
			}
			v[i], err = strconv.ParseFloat(field, 64)
			if err != nil {
				if heading = first; heading {
					break
				}
				return nil, &honestplate.InputError{Field: fmt.Sprintf("Line[%d]", line), Got: strconv.Quote(field), Want: "a number"}
			}
		}
		if heading {
			continue
		}
		p := Point{v[0], v[1], v[2]}
		if _, err := checkPoints([]Point{p}); err != nil {
			return nil, honestplate.In(fmt.Sprintf("Line[%d]", line), err)
		}
		points = append(points, p)
	}
	if len(points) == 0 {
		return nil, check.Missing("Points", "lines with a shear rate and a stress")
	}
	return points, nil
}
