// Package testdata holds the published values the library is checked against:
// one CSV a table. Lines starting with # say what the table is:
//
//	# title: what the table holds
//	# source: author, year, title, table or example (repeat for more than one)
//	# known: read | memory | computed
//	# note: anything a reader must know before trusting a row
//
// The first other line names the columns, with units in the names. A column
// "source" or "known", where present, speaks for its row. read means seen in the
// source or a copy of it; memory means recalled, not seen; computed
// means generated with the general-purpose library and version that the source
// names. Only tests and the programs under examples read this package.
package testdata

import (
	"bufio"
	"bytes"
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"strconv"
	"strings"
)

//go:embed *.csv
var files embed.FS

// A Table is one CSV file.
type Table struct {
	Name    string // file name without .csv
	Title   string
	Sources []string
	Known   string
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

// Load reads a table and checks its form: the header keys, known's values, and
// every row as long as the column line.
func Load(name string) (*Table, error) {
	raw, err := files.ReadFile(name + ".csv")
	if err != nil {
		return nil, err
	}
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
			case "kind": // measured, formula or same: for the agreement table
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
		known := row.fields["known"]
		if known == "" {
			known = t.Known
		}
		if known != "read" && known != "memory" && known != "computed" {
			return nil, fmt.Errorf("%s.csv:%d: known is %q, want read, memory or computed", name, row.Line, known)
		}
		row.fields["known"] = known
		t.Rows = append(t.Rows, row)
	}
	return t, nil
}

// Text returns the field of a column, or "" if the table has no such column.
func (r Row) Text(column string) string { return r.fields[column] }

// Known returns read, memory or computed: the row's own flag, else the table's.
func (r Row) Known() string { return r.fields["known"] }

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
