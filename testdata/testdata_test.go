package testdata

import (
	"strings"
	"testing"
)

func TestEveryTableReads(t *testing.T) {
	names := Names()
	if len(names) == 0 {
		t.Fatal("no tables")
	}
	for _, name := range names {
		if _, err := Load(name); err != nil {
			t.Error(err)
		}
	}
}

// What every table must say, so that nothing hides in a count: its kind in the
// header, and who measured what was measured.
func TestEveryTableSaysItsKind(t *testing.T) {
	kinds := map[string]int{}
	for _, name := range Names() {
		table, err := Load(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if table.Kind == "" {
			t.Errorf("%s.csv: the header says no kind", name)
		}
		for _, r := range table.Rows {
			kinds[r.Kind()]++
			if r.Kind() == Measured && (r.Origin() == "" || len(r.Origin()) > 100) {
				t.Errorf("%s.csv:%d: who measured it? origin is %q", name, r.Line, r.Origin())
			}
		}
		if table.Mark != "" && table.Licence == "" {
			t.Errorf("%s.csv: a copied log says under which licence", name)
		}
	}
	for _, k := range []string{Measured, Formula, Same} {
		if kinds[k] == 0 {
			t.Errorf("no row is %s", k)
		}
	}
}

func TestRowsSpeakForThemselves(t *testing.T) {
	table, err := parse("x", []byte(strings.Join([]string{
		"# title: t", "# source: the book, 1900", "# known: read", "# kind: measured", "# assumed: the room",
		"a,known,kind,origin,assumed", "1,,,,", "2,memory,formula,her,the mug", "",
	}, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range [][4]string{{"read", Measured, "the book, 1900", "the room"}, {"memory", Formula, "her", "the mug"}} {
		r := table.Rows[i]
		if got := [4]string{r.Known(), r.Kind(), r.Origin(), r.Assumed()}; got != want {
			t.Errorf("row %d is %q, want %q", i+1, got, want)
		}
	}
}

func TestTablesWithoutKindAreRefused(t *testing.T) {
	for want, text := range map[string]string{
		"kind":            "# title: t\n# source: s\n# known: read\na\n1\n",
		"nature":          "# title: t\n# source: s\n# known: read\n# kind: nature\na\n1\n",
		"mark":            "# title: t\n# source: s\n# known: read\n# kind: same\n# mark: D\na\n1\n",
		"unknown header":  "# title: t\n# origins: s\n",
		"title and a sou": "# title: t\na\n1\n",
	} {
		if _, err := parse("x", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want one about %q", err, want)
		}
	}
}
