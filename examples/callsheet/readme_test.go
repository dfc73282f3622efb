package main

import (
	"bytes"
	"os"
	"testing"

	"example.org/honestplate/examples/internal/notebook"
)

// The README's first result is what the program prints today.
func TestReadmeShowsTodaysSheet(t *testing.T) {
	var stdout, stderr bytes.Buffer
	if status := run(nil, &stdout, &stderr); status != 0 {
		t.Fatal(stderr.String())
	}
	old, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	renewed, err := notebook.Between(old, "callsheet", notebook.FirstResult(stdout.String()))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(old, renewed) {
		t.Error("the first result in the README is stale: run go generate ./examples")
	}
}
