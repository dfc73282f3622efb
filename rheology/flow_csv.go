package rheology

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

// ReadFlowPoints reads a flow curve from CSV: a line a point, shear rate in 1/s,
// stress in Pa, and if there is a third column the weight (1/variance; empty for 1).
// A first line that is not numbers is taken as the heading; lines starting with #
// are comments; blanks around numbers are ignored. A semicolon is not a separator
// and a comma not a decimal sign. An error names the line; the points must satisfy
// FitFlow.
func ReadFlowPoints(r io.Reader) ([]FlowPoint, error) {
	if r == nil {
		return nil, check.Input("reader of the flow curve", 0, "", "a reader")
	}
	c := csv.NewReader(r)
	c.Comment = '#'
	c.FieldsPerRecord = -1
	c.TrimLeadingSpace = true
	c.ReuseRecord = true
	var points []FlowPoint
	for first := true; ; first = false {
		record, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("rheology: flow curve: %w", err)
		}
		line, _ := c.FieldPos(0)
		if len(record) < 2 || len(record) > 3 {
			return nil, fmt.Errorf("rheology: flow curve, line %d: %w", line,
				check.Input("number of columns", float64(len(record)), "", "2 or 3: shear rate, stress, weight"))
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
				return nil, fmt.Errorf("rheology: flow curve, line %d: %q is not a number: %w", line, field, honestplate.ErrInput)
			}
		}
		if heading {
			continue
		}
		p := FlowPoint{v[0], v[1], v[2]}
		if _, err := checkFlowPoints([]FlowPoint{p}); err != nil {
			return nil, fmt.Errorf("rheology: flow curve, line %d: %w", line, err)
		}
		points = append(points, p)
	}
	if len(points) == 0 {
		return nil, check.Input("number of points", 0, "", "1 or more")
	}
	return points, nil
}
