package testdata_test

import (
	"testing"

	"example.org/honestplate/testdata"
)

func TestEveryTableReads(t *testing.T) {
	names := testdata.Names()
	if len(names) == 0 {
		t.Fatal("no tables")
	}
	for _, name := range names {
		if _, err := testdata.Load(name); err != nil {
			t.Error(err)
		}
	}
}
