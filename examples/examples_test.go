package examples_test

import (
	"bytes"
	"os"
	"testing"

	"example.org/honestplate/examples/internal/notebook"
)

// Each chapter checks its own page; this is the index over them.
func TestIndexIsFresh(t *testing.T) {
	want, err := notebook.Index(".")
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error("README.md is stale: run go generate ./examples")
	}
}
