package main

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"example.org/honestplate/examples/published"
	"example.org/honestplate/testdata"
)

func TestPageAndReadmeAreFresh(t *testing.T) {
	if testing.Short() {
		t.Skip("carries out every comparison")
	}
	e, err := gather()
	if err != nil {
		t.Fatal(err)
	}
	if share, n := e.courseShare(); share < published.CourseShare {
		t.Errorf("%.0f %% of the readings lie inside on the average of %d timed measurements", 100*share, n)
	}
	files, err := page(e)
	if err != nil {
		t.Fatal(err)
	}
	for name, want := range files {
		got, err := os.ReadFile(name)
		if err != nil {
			t.Error(err)
		} else if !bytes.Equal(got, want) {
			t.Errorf("%s is stale: run go generate ./examples", name)
		}
	}
	entries, err := os.ReadDir(".")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range entries {
		if _, made := files[f.Name()]; !made && strings.HasSuffix(f.Name(), ".svg") {
			t.Errorf("%s is a figure of no page: delete it", f.Name())
		}
	}
	old, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	renewed, err := intoReadme(old, e)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(old, renewed) {
		t.Error("the headline in the project's README is stale: run go generate ./examples")
	}
}

// made is a set of points of which the second is outside.
func made(kind string, known ...string) published.Set {
	r := published.Result{Check: published.Check{Table: "made up", Quantity: "q", Banded: true}}
	for i, k := range known {
		p := published.NearRel("point", 100, 100, 0.02)
		if i == 1 {
			p.Published = 110
		}
		p.Kind, p.Known, p.Origin = kind, k, "of "+k
		r.Points = append(r.Points, p)
	}
	return r.Sets()[0]
}

func TestTheHeadlineCountsKindsApart(t *testing.T) {
	e := evidence{sets: []published.Set{
		made(testdata.Measured, "read", "memory", "read", "computed"),
		made(testdata.Formula, "read", "read"),
		made(testdata.Same, "computed"),
	}}
	order := made(testdata.Measured, "read")
	order.Order = true
	e.sets = append(e.sets, order)
	got := headline(e)
	for _, want := range []string{
		"**4 measured points** from 3 independent sources: 2 read, 1 from memory, 1 worked out",
		"| measured: values | 4 | 2 | 1 | 1 | 3 | 3 |",
		"| measured: good for order only | 1 |",
		"| formula: worked examples, tables of a law | 2 | 2 | 0 | 0 | 1 | 1 |",
		"| same: our constants against their source | 1 | 0 | 0 | 1 | 1 | 1 |",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("headline lacks %q:\n%s", want, got)
		}
	}
}

func TestWhatIsOutsideIsNamed(t *testing.T) {
	s := made(testdata.Measured, "read", "read", "read")
	if got := outside(s); !strings.Contains(got, "published 110") || strings.Count(got, "\n") != 2 {
		t.Errorf("outside lists %q", got)
	}
	if got := furthest(s); got != "point" {
		t.Errorf("the furthest is %q", got)
	}
	if low, high := meanBand(s); low > 0.981 || low < 0.979 || high > 1.021 || high < 1.019 {
		t.Errorf("mean band %g..%g, want 0.98..1.02", low, high)
	}
}

// Every set that misses has its sentence on the page, and no measured set is without a
// line.
func TestEveryMissHasItsSentence(t *testing.T) {
	if testing.Short() {
		t.Skip("carries out every comparison")
	}
	e, err := gather()
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range e.sets {
		if len(s.Misses()) > 0 && e.why(s) == "" {
			t.Errorf("%v misses, and no sentence says why", s)
		}
	}
}

func TestReadmeWithoutMarksIsRefused(t *testing.T) {
	if _, err := intoReadme([]byte("no marks here"), evidence{}); err == nil || !strings.Contains(err.Error(), "agreement") {
		t.Errorf("error %v, want one that names the marks", err)
	}
}
