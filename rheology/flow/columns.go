package flow

import (
	"strconv"
	"strings"

	"example.org/honestplate"
)

// What a column of a rheometer's file is.
const (
	rateColumn = iota
	stressColumn
	viscosityColumn
	weightColumn
	temperatureColumn
	passedOver
	kinds
)

// A column is what it is, and how its numbers become SI: times factor plus offset.
type column struct {
	is             int
	factor, offset float64
	unit           bool // it was named
}

// columnNames are the words by which a heading is known, the one word that must be in it.
var columnNames = []struct {
	word string
	is   int
}{
	{"rate", rateColumn}, {"stress", stressColumn}, {"viscosity", viscosityColumn}, {"weight", weightColumn},
	{"temperature", temperatureColumn}, {"temp", temperatureColumn}, {"time", passedOver}, {"point", passedOver}, {"number", passedOver},
	{"no.", passedOver}, {"meas", passedOver}, {"torque", passedOver}, {"speed", passedOver}, {"strain", passedOver}, {"gap", passedOver},
	{"force", passedOver}, {"status", passedOver},
}

// columnUnits are the units that a column may have, as they are written without blanks, dots
// and carets, and what they are in SI (degC).
var columnUnits = [kinds]map[string]column{
	rateColumn:      {"1/s": {factor: 1}, "s-1": {factor: 1}, "/s": {factor: 1}, "1/min": {factor: 1.0 / 60}, "min-1": {factor: 1.0 / 60}},
	stressColumn:    {"pa": {factor: 1}, "mpa": {factor: 1e-3}, "kpa": {factor: 1e3}, "n/m2": {factor: 1}, "dyn/cm2": {factor: 0.1}},
	viscosityColumn: {"pas": {factor: 1}, "mpas": {factor: 1e-3}, "cp": {factor: 1e-3}, "p": {factor: 0.1}, "kpas": {factor: 1e3}},
	weightColumn:    {"1": {factor: 1}, "-": {factor: 1}},
	temperatureColumn: {
		"c": {factor: 1}, "degc": {factor: 1}, "k": {factor: 1, offset: -273.15},
		"f": {factor: 5.0 / 9, offset: -160.0 / 9}, "degf": {factor: 5.0 / 9, offset: -160.0 / 9},
	},
}

// heading reads the line that names the columns.
func (t *table) heading(line int, record []string) error {
	var seen [kinds]bool
	for i, field := range record {
		if field == "" {
			if i == len(record)-1 && i > 1 {
				continue // a separator at the end of every line
			}
			return wrong(line, i+1, "no name", "a heading for each column")
		}
		c, ok := columnOf(field)
		if !ok {
			return wrong(line, i+1, strconv.Quote(honestplate.OneLine(field)), "rate, stress, viscosity, weight, time or temperature, with a unit that goes with it; or numbers")
		}
		if seen[c.is] && c.is != passedOver {
			return wrong(line, i+1, strconv.Quote(honestplate.OneLine(field)), "one column of each kind")
		}
		seen[c.is] = true
		t.columns = append(t.columns, c)
	}
	if !seen[rateColumn] || !seen[stressColumn] && !seen[viscosityColumn] {
		return wrong(line, 0, strconv.Quote(honestplate.OneLine(strings.Join(record, " "))), "headings of a shear rate and of a stress or a viscosity")
	}
	return nil
}

// columnOf reads a heading: one known word, and what may be left of it is a unit.
func columnOf(field string) (column, bool) {
	text := strings.ToLower(field)
	name, unit, bracket := strings.Cut(strings.NewReplacer("(", "[", ")", "]").Replace(text), "[")
	unit = strings.TrimSuffix(strings.TrimSpace(unit), "]")
	for _, n := range columnNames {
		before, after, ok := strings.Cut(name, n.word)
		if !ok {
			continue
		}
		c := column{is: n.is, factor: 1}
		if n.is == passedOver {
			return c, true
		}
		for _, other := range columnNames {
			if other.is != n.is && other.is != passedOver && strings.Contains(before+" "+after, other.word) {
				return column{}, false // it names two
			}
		}
		if !bracket {
			unit = strings.TrimPrefix(strings.TrimSpace(after), "in ")
		}
		return c.in(unit)
	}
	return column{}, false
}

// in returns the column with its unit; none leaves it in SI.
func (c column) in(unit string) (column, bool) {
	unit = strings.NewReplacer(" ", "", "\u00b7", "", "\u22c5", "", "*", "", ".", "", "^", "", "\u207b\u00b9", "-1", "\u00b2", "2", "\u00b0", "").Replace(strings.ToLower(unit))
	if unit == "" {
		return c, true
	}
	u, ok := columnUnits[c.is][unit]
	u.is, u.unit = c.is, true
	return u, ok
}

// unitLine reads a line of units below the heading.
func (t *table) unitLine(line int, record []string) error {
	for i, field := range record {
		if field == "" || i < len(t.columns) && t.columns[i].is == passedOver {
			continue
		}
		if i < len(t.columns) && !t.columns[i].unit {
			c, ok := t.columns[i].in(strings.Trim(field, "[]()"))
			if ok {
				t.columns[i] = c
				continue
			}
		}
		return wrong(line, i+1, strconv.Quote(honestplate.OneLine(field)), "a number, or a unit of the column above, named once")
	}
	return nil
}
