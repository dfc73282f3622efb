package shoot

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"
)

// The schemas beside the package are those that the readers go by.
func TestSchemasAreFresh(t *testing.T) {
	for name, make := range map[string]func() ([]byte, error){"schema.json": Schema, "facts.schema.json": FactsSchema} {
		want, err := make()
		if err != nil {
			t.Fatal(err)
		}
		got, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("%s is stale: run go generate ./examples", name)
		}
		if !json.Valid(want) {
			t.Errorf("%s is not JSON", name)
		}
	}
}
