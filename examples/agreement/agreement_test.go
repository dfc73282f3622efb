package main

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"

	"example.org/honestplate/examples/published"
)

func TestPageAndReadmeAreFresh(t *testing.T) {
	rows, err := results()
	if err != nil {
		t.Fatal(err)
	}
	files, err := page(rows)
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
	old, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	renewed, err := intoReadme(old, rows)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(old, renewed) {
		t.Error("the table in the project's README is stale: run go generate ./examples")
	}
}

func TestSummariseCountsAndFindsTheWorst(t *testing.T) {
	r := summarise(published.Result{Points: []published.Point{
		published.NearRel("good", 100, 101, 0.02),
		published.NearRel("high", 100, 120, 0.02),
		published.NearRel("low", 100, 75, 0.02),
		published.Skip("left out", "no value"),
	}})
	if r.points != 3 || r.inside != 1 || r.skipped != 1 {
		t.Errorf("counts %d points, %d inside, %d skipped; want 3, 1, 1", r.points, r.inside, r.skipped)
	}
	if r.worst.Label != "low" || r.worstRatio != 0.75 {
		t.Errorf("worst is %q at %g, want low at 0.75", r.worst.Label, r.worstRatio)
	}
	if want := math.Cbrt(1.01 * 1.20 * 0.75); math.Abs(r.meanRatio-want) > 1e-12 {
		t.Errorf("mean ratio %g, want %g", r.meanRatio, want)
	}
}

func TestReadmeWithoutMarksIsRefused(t *testing.T) {
	if _, err := intoReadme([]byte("no marks here"), nil); err == nil || !strings.Contains(err.Error(), "agreement") {
		t.Errorf("error %v, want one that names the marks", err)
	}
}
