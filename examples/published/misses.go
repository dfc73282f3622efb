package published

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
)

//go:embed misses.csv
var missesCSV string

// A KnownMiss is a set that is known to miss, with the sentence that says why.
type KnownMiss struct {
	Table, Quantity, Kind, Class string
	Misses                       string // what it misses on, separated by spaces
	Outside                      int    // how many points may be outside
	Why                          string
}

// KnownMisses reads the list of what is known to miss: misses.csv. A set that begins
// to miss, one that misses on more, and one that stops missing all fail the tests, so
// that the list is exact.
func KnownMisses() ([]KnownMiss, error) {
	records, err := csv.NewReader(strings.NewReader(missesCSV)).ReadAll()
	if err != nil {
		return nil, fmt.Errorf("misses.csv: %w", err)
	}
	var out []KnownMiss
	for i, r := range records[1:] {
		outside, err := strconv.Atoi(r[5])
		if err != nil {
			return nil, fmt.Errorf("misses.csv, row %d: %w", i+1, err)
		}
		m := KnownMiss{r[0], r[1], r[2], r[3], r[4], outside, r[6]}
		if len(m.Why) < 20 || !strings.HasSuffix(m.Why, ".") {
			return nil, fmt.Errorf("misses.csv, %s %s: why is a sentence, not %q", m.Table, m.Class, m.Why)
		}
		out = append(out, m)
	}
	return out, nil
}

// Of reports whether the entry is about the set.
func (m KnownMiss) Of(s Set) bool {
	return m.Table == s.Table && m.Quantity == s.Quantity && m.Kind == s.Kind && m.Class == s.Class
}

// Failures lists, in words, where the result departs from what is known: a set that
// misses and is not listed, that misses on something else than its entry says or with
// more points outside, that is listed and does not miss.
func (r Result) Failures(known []KnownMiss) []string {
	sets := r.Sets()
	if len(sets) == 0 && r.Left == "" {
		return []string{r.Table + ": no row is compared, and no reason is given"}
	}
	var out []string
	for _, s := range sets {
		misses := strings.Join(s.Misses(), " ")
		var entry *KnownMiss
		for i := range known {
			if known[i].Of(s) {
				entry = &known[i]
			}
		}
		switch {
		case entry == nil && misses != "":
			out = append(out, fmt.Sprintf("%v\n\tmisses on %s and is not in misses.csv%s", s, misses, s.outsiders()))
		case entry != nil && misses == "":
			out = append(out, fmt.Sprintf("%v\n\tno longer misses: take it out of misses.csv", s))
		case entry != nil && misses != entry.Misses:
			out = append(out, fmt.Sprintf("%v\n\tmisses on %s, misses.csv says %s%s", s, misses, entry.Misses, s.outsiders()))
		case entry != nil && s.Outside > entry.Outside:
			out = append(out, fmt.Sprintf("%v\n\tmisses.csv allows %d outside%s", s, entry.Outside, s.outsiders()))
		}
	}
	return out
}

// outsiders lists the points outside their bands, a line each.
func (s Set) outsiders() string {
	var b strings.Builder
	for _, p := range s.Points {
		if !p.Inside() {
			fmt.Fprintf(&b, "\n\t%s: published %.6g %s, predicted %.6g, band %.6g..%.6g",
				p.Label, p.Published, s.Unit, p.Predicted, p.Low, p.High)
		}
	}
	return b.String()
}

// Failures carries out every check of a package and lists what departs from what is
// known.
func Failures(pkg string) ([]string, error) {
	known, err := KnownMisses()
	if err != nil {
		return nil, err
	}
	var out []string
	found := false
	for _, c := range All() {
		if c.Package != pkg {
			continue
		}
		found = true
		r, err := Run(c)
		if err != nil {
			return nil, err
		}
		out = append(out, r.Failures(known)...)
	}
	if !found {
		return nil, fmt.Errorf("no check for package %q", pkg)
	}
	return out, nil
}
