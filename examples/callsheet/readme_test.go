package main

import (
	"bytes"
	"os"
	"testing"

	"example.org/honestplate/examples/internal/notebook"
)

// The README's first result is what the program prints today.
func TestReadmeShowsTodaysSheet(t *testing.T) {
	text, _ := sheetOf(t, "")
	old, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	renewed, err := notebook.Between(old, "callsheet", notebook.FirstResult(text))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(old, renewed) {
		t.Error("the first result in the README is stale: run go generate ./examples")
	}
}
