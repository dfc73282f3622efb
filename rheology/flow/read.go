package flow

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"example.org/honestplate"
	"example.org/honestplate/rheology/internal/check"
)

const (
	mostFile = 16 << 20 // bytes: a flow curve has some thousand lines
	// stressAgrees is how far a stress may lie from viscosity times rate in a file that has
	// all three: rounding, not a wrong unit.
	stressAgrees = 0.05
	// oneTemperature is the span in degC over which a curve still counts as of one
	// temperature: sauces change by up to 4 % a degC.
	oneTemperature = 5.0
)

// ReadPoints reads a flow curve as rheometers export it: text in columns with commas,
// semicolons or tabs between, a heading that names them, and a line a point.
//
// A heading has the name rate, stress, viscosity, weight, time or temperature in it, such as
// "Shear rate [1/s]"; its unit stands in brackets or after the name, or in a line of units
// below; none means 1/s, Pa, Pa s, degC. Wanted are a rate and a stress, or a viscosity from
// which the stress follows; where both are given they must agree to 5 %. A weight is
// 1/variance up to a common factor, empty for the default (see [Point]). A temperature may
// change by 5 degC along the curve, for it is of one. Columns named time, point, number,
// measurement, torque, speed, strain, gap, force or status are passed over. Without a heading there are two
// columns, rate and stress.
//
// Between semicolons or tabs a comma may be the decimal sign. A byte order mark, blank lines
// and lines that begin with # are passed over. Any field that is not what its column says is
// an InputError with Line[n].Column[m], counted from 1; so is a heading that is not known, a
// column without one and a first line that is neither a heading nor numbers. The points
// satisfy [Fit].
func ReadPoints(r io.Reader) ([]Point, error) {
	if check.IsNil(r) {
		return nil, check.Missing("Reader", "where to read the flow curve from")
	}
	text, err := io.ReadAll(io.LimitReader(r, mostFile+1))
	if err != nil {
		return nil, fmt.Errorf("flow curve: %w", err)
	}
	if len(text) > mostFile {
		return nil, check.Outside("Reader", float64(len(text)), 0, mostFile, "bytes", "a flow curve, not a recording")
	}
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	t := table{decimal: true, low: math.Inf(1), top: math.Inf(-1)}
	c := csv.NewReader(bytes.NewReader(text))
	c.Comma = separator(text)
	t.decimal = c.Comma != ','
	c.Comment = '#'
	c.FieldsPerRecord = -1
	c.TrimLeadingSpace = c.Comma != '\t'
	c.ReuseRecord = true
	for {
		record, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var p *csv.ParseError
			if errors.As(err, &p) {
				return nil, wrong(p.Line, 0, p.Err.Error(), "columns of text, with quotes in pairs")
			}
			return nil, fmt.Errorf("flow curve: %w", err)
		}
		line, _ := c.FieldPos(0)
		if err := t.read(line, record); err != nil {
			return nil, err
		}
	}
	if len(t.points) == 0 {
		return nil, check.Missing("Points", "lines with a shear rate and a stress")
	}
	return t.points, nil
}

// separator is what stands between the columns of the first line that is not a comment:
// a semicolon, a tab, or else a comma.
func separator(text []byte) rune {
	for line := range bytes.Lines(text) {
		line = bytes.TrimSpace(line)
		if len(line) == 0 || line[0] == '#' {
			continue
		}
		switch {
		case bytes.ContainsRune(line, ';'):
			return ';'
		case bytes.ContainsRune(line, '\t'):
			return '\t'
		}
		break
	}
	return ','
}

// wrong is the error of a field at a line and column, counted from 1; column 0 for the line
// alone.
func wrong(line, column int, got, want string) error {
	field := fmt.Sprintf("Line[%d]", line)
	if column > 0 {
		field += fmt.Sprintf(".Column[%d]", column)
	}
	return &honestplate.InputError{Field: field, Got: got, Want: want}
}

// A table is what has been read of a file.
type table struct {
	decimal  bool // a comma may be the decimal sign
	columns  []column
	units    bool // the line of units may still come
	points   []Point
	low, top float64 // temperatures, degC; the other way round while none was given
}

// read takes one line.
func (t *table) read(line int, record []string) error {
	numbers, texts := 0, 0
	for i := range record {
		record[i] = strings.TrimSpace(record[i])
		if record[i] == "" {
			continue
		}
		if _, ok := t.number(record[i]); ok {
			numbers++
		} else {
			texts++
		}
	}
	switch {
	case numbers+texts == 0:
		return nil
	case t.columns == nil && texts > 0 && numbers == 0:
		t.units = true
		return t.heading(line, record)
	case t.columns == nil:
		if texts == 0 && numbers != 2 {
			return wrong(line, min(numbers, 3), fmt.Sprintf("%d columns without names", numbers), "a rate and a stress, or a heading above that names each column")
		}
		t.columns = []column{{is: rateColumn, factor: 1}, {is: stressColumn, factor: 1}}
	case t.units && numbers == 0:
		t.units = false
		return t.unitLine(line, record)
	}
	t.units = false
	return t.point(line, record)
}

// number reads a number with a point, or where it may be with a comma as its decimal sign.
func (t *table) number(field string) (float64, bool) {
	if t.decimal && strings.Count(field, ",") == 1 && !strings.Contains(field, ".") {
		field = strings.Replace(field, ",", ".", 1)
	}
	v, err := strconv.ParseFloat(field, 64)
	return v, err == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

// point reads one line of numbers.
func (t *table) point(line int, record []string) error {
	var v [kinds]float64
	var given [kinds]bool
	var at [kinds]int
	for i, c := range t.columns {
		at[c.is] = i + 1
	}
	for i, field := range record {
		if field == "" {
			continue
		}
		if i >= len(t.columns) {
			return wrong(line, i+1, strconv.Quote(field), "no more columns than the heading has")
		}
		c := t.columns[i]
		if c.is == passedOver {
			continue
		}
		x, ok := t.number(field)
		if !ok {
			return wrong(line, i+1, strconv.Quote(field), "a number")
		}
		v[c.is], given[c.is] = x*c.factor+c.offset, true
	}
	if !given[rateColumn] {
		return wrong(line, at[rateColumn], "nothing", "a shear rate")
	}
	byViscosity := v[viscosityColumn] * v[rateColumn]
	switch {
	case !given[stressColumn] && !given[viscosityColumn]:
		return wrong(line, max(at[stressColumn], at[viscosityColumn]), "nothing", "a stress")
	case !given[stressColumn]:
		v[stressColumn] = byViscosity
	case given[viscosityColumn] && !(math.Abs(byViscosity-v[stressColumn]) <= stressAgrees*math.Abs(v[stressColumn])):
		return wrong(line, at[viscosityColumn], fmt.Sprintf("%.4g Pa s at %.4g 1/s, a stress of %.4g Pa beside %.4g", v[viscosityColumn], v[rateColumn], byViscosity, v[stressColumn]), "a stress, a rate and a viscosity that agree: see their units")
	}
	p := Point{v[rateColumn], v[stressColumn], v[weightColumn]}
	if err := p.check(); err != nil {
		return honestplate.In(fmt.Sprintf("Line[%d]", line), err)
	}
	if given[temperatureColumn] {
		if err := t.warm(line, at[temperatureColumn], v[temperatureColumn]); err != nil {
			return err
		}
	}
	t.points = append(t.points, p)
	return nil
}

// warm keeps the span of temperatures.
func (t *table) warm(line, column int, tempC float64) error {
	t.low, t.top = min(t.low, tempC), max(t.top, tempC)
	if t.top-t.low > oneTemperature {
		return wrong(line, column, fmt.Sprintf("%.4g degC in a curve from %.4g to %.4g degC", tempC, t.low, t.top), fmt.Sprintf("one temperature, to %g degC: a file for each", oneTemperature))
	}
	return nil
}
