package law_test

import (
	"testing"

	"example.org/honestplate/examples/published"
)

// Every published value that this package is checked against, row by row; the
// tables and their sources are in testdata, the comparison in examples/published.
func TestPublished(t *testing.T) {
	failures, err := published.Failures("rheology")
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range failures {
		t.Error(f)
	}
}
