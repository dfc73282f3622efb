package main

import (
	"bytes"
	"os"
	"testing"

	"example.org/honestplate/examples/internal/notebook"
)

// The README's first result and its picture are what the program makes today.
func TestReadmeShowsTodaysSheet(t *testing.T) {
	p := demoPlans(t)["autumn"]
	old, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	renewed, err := notebook.Between(old, "callsheet", notebook.FirstResult(textOf(t, p)))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(old, renewed) {
		t.Error("the first result in the README is stale: run go generate ./examples")
	}
	if chart, err := os.ReadFile("day.svg"); err != nil || !bytes.Equal(chart, dayChart(p, 0)) {
		t.Errorf("the chart in the README is stale (%v): run go generate ./examples", err)
	}
}
