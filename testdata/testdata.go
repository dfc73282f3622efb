// Package testdata holds the published values the library is checked against:
// one CSV a table. Lines starting with # say what the table is:
//
//	# title: what the table holds
//	# source: author, year, title, table or example (repeat for more than one)
//	# known: read | memory | computed
//	# kind: measured | formula | same
//	# origin: who measured it, in a few words
//	# assumed: an input of the comparison that nobody published
//	# mark: A | B | C, of a timed measurement
//	# licence: of what was copied
//	# note: anything a reader must know before trusting a row
//
// The first other line names the columns, with units in the names. A column
// "source", "known", "kind", "origin" or "assumed", where not empty, speaks for its
// row.
//
// Known: read means seen in the source or a copy of it; memory means recalled, not
// seen; computed means worked out, by the library and version that the source names
// or from readings that it names.
//
// Kind: measured means nature, read off an instrument or smoothed from such readings
// by the source. formula means that somebody worked out an example or tabulated a law;
// a straight line that somebody tabulated is one, whoever drew it through what. same
// means that the library's own constants, or a formula fitted to this very table, are
// held against their source. Only what was measured says how far the library agrees
// with the world.
//
// Rows of one origin hang together: twenty cells of one table are one source.
//
// Mark: A, the conditions are given; B, one thing has to be assumed that one number
// can carry; C, several have: such a set is good for order only.
//
// Only tests and the programs under examples read this package.
package testdata

import (
	"bufio"
	"bytes"
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strconv"
	"strings"
)

//go:embed *.csv
var files embed.FS

// The kinds of rows.
const (
	Measured = "measured"
	Formula  = "formula"
	Same     = "same"
)

// A Table is one CSV file.
type Table struct {
	Name    string // file name without .csv
	Title   string
	Sources []string
	Known   string
	Kind    string
	Origin  string // empty: the column of the rows, or the first source
	Assumed string
	Mark    string // A, B or C of a timed measurement, else empty
	Licence string // of what was copied, where it was said
	Notes   []string
	Columns []string
	Rows    []Row
}

// A Row is one line of a table.
type Row struct {
	Line   int // in the file
	fields map[string]string
}

// Names lists the tables in alphabetical order.
func Names() []string {
	entries, err := fs.Glob(files, "*.csv")
	if err != nil {
		panic(err) // the pattern is a constant
	}
	for i, e := range entries {
		entries[i] = strings.TrimSuffix(e, ".csv")
	}
	return entries
}

// Load reads a table and checks its form: the header keys, the values of known, kind
// and mark, and every row as long as the column line.
func Load(name string) (*Table, error) {
	raw, err := files.ReadFile(name + ".csv")
	if err != nil {
		return nil, err
	}
	return parse(name, raw)
}

func parse(name string, raw []byte) (*Table, error) {
	t := &Table{Name: name}
	var body bytes.Buffer
	var lines []int
	sc := bufio.NewScanner(bytes.NewReader(raw))
	sc.Buffer(nil, 1<<20)
	for n := 1; sc.Scan(); n++ {
		line := sc.Text()
		if key, value, ok := strings.Cut(strings.TrimPrefix(line, "#"), ":"); ok && strings.HasPrefix(line, "#") {
			value = strings.TrimSpace(value)
			switch strings.TrimSpace(key) {
			case "title":
				t.Title = value
			case "source":
				t.Sources = append(t.Sources, value)
			case "known":
				t.Known = value
			case "kind":
				t.Kind = value
			case "origin":
				t.Origin = value
			case "assumed":
				t.Assumed = value
			case "mark":
				t.Mark = value
			case "licence":
				t.Licence = value
			case "note":
				t.Notes = append(t.Notes, value)
			default:
				return nil, fmt.Errorf("%s.csv:%d: unknown header key %q", name, n, key)
			}
			continue
		}
		if strings.TrimSpace(line) == "" {
			continue
		}
		lines = append(lines, n)
		body.WriteString(line + "\n")
	}
	if err := sc.Err(); err != nil {
		return nil, err
	}
	if t.Title == "" || len(t.Sources) == 0 {
		return nil, fmt.Errorf("%s.csv: the header needs a title and a source", name)
	}
	if !slices.Contains([]string{"", "A", "B", "C"}, t.Mark) {
		return nil, fmt.Errorf("%s.csv: mark is %q, want A, B or C", name, t.Mark)
	}
	records, err := csv.NewReader(&body).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s.csv: %w", name, err)
	}
	if len(records) < 2 {
		return nil, fmt.Errorf("%s.csv: no rows", name)
	}
	t.Columns = records[0]
	for i, rec := range records[1:] {
		row := Row{Line: lines[i+1], fields: make(map[string]string, len(rec))}
		for j, c := range t.Columns {
			row.fields[c] = strings.TrimSpace(rec[j])
		}
		for key, of := range map[string]struct {
			header string
			values []string
		}{
			"known": {t.Known, []string{"read", "memory", "computed"}},
			"kind":  {t.Kind, []string{Measured, Formula, Same}},
		} {
			if row.fields[key] == "" {
				row.fields[key] = of.header
			}
			if !slices.Contains(of.values, row.fields[key]) {
				return nil, fmt.Errorf("%s.csv:%d: %s is %q, want one of %s",
					name, row.Line, key, row.fields[key], strings.Join(of.values, ", "))
			}
		}
		if row.fields["assumed"] == "" {
			row.fields["assumed"] = t.Assumed
		}
		for _, origin := range []string{t.Origin, row.fields["source"], t.Sources[0]} {
			if row.fields["origin"] == "" {
				row.fields["origin"] = origin
			}
		}
		t.Rows = append(t.Rows, row)
	}
	return t, nil
}

// Text returns the field of a column, or "" if the table has no such column.
func (r Row) Text(column string) string { return r.fields[column] }

// Known returns read, memory or computed: the row's own flag, else the table's.
func (r Row) Known() string { return r.fields["known"] }

// Kind returns measured, formula or same: the row's own, else the table's.
func (r Row) Kind() string { return r.fields["kind"] }

// Origin names the source that the row counts for: its own column, else the table's
// origin, else the row's source, else the table's first.
func (r Row) Origin() string { return r.fields["origin"] }

// Assumed says which input of the comparison was assumed or fitted, or is empty.
func (r Row) Assumed() string { return r.fields["assumed"] }

// With returns the row with another value in a column.
func (r Row) With(column, value string) Row {
	fields := maps.Clone(r.fields)
	fields[column] = value
	return Row{Line: r.Line, fields: fields}
}

// Float returns the field of a column as a number.
func (r Row) Float(column string) (float64, error) {
	v, err := strconv.ParseFloat(r.fields[column], 64)
	if err != nil {
		return 0, fmt.Errorf("line %d, column %s: %w", r.Line, column, err)
	}
	return v, nil
}

// Floats returns a field that holds numbers separated by spaces.
func (r Row) Floats(column string) ([]float64, error) {
	parts := strings.Fields(r.fields[column])
	out := make([]float64, len(parts))
	for i, p := range parts {
		v, err := strconv.ParseFloat(p, 64)
		if err != nil {
			return nil, fmt.Errorf("line %d, column %s: %w", r.Line, column, err)
		}
		out[i] = v
	}
	return out, nil
}
