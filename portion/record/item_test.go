package record

import (
	"bytes"
	"strings"
	"testing"

	"example.org/honestplate/portion"
)

// A page on a phone fills in the weight and knows no rule: the verdict follows.
func TestAVerdictThatIsLeftOutFollows(t *testing.T) {
	r := Record{Revision: 1, Picture: "p", Items: []Item{{Item: "cheese", Advertised: true,
		Declared: portion.Amount{Grams: 62, StepGrams: 0.5}, Weighed: &Weighed{Grams: 95, ErrorGrams: 0.5}}}}
	var full bytes.Buffer
	if err := r.Write(&full); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(full.String(), `"verdict": "differs"`) {
		t.Fatalf("no verdict in\n%s", full.String())
	}
	bare := strings.Replace(full.String(), "\"verdict\": \"differs\",", "", 1)
	if bare == full.String() {
		bare = strings.Replace(full.String(), ",\n      \"verdict\": \"differs\"", "", 1)
	}
	read, err := Read(strings.NewReader(bare))
	if err != nil {
		t.Fatal(err)
	}
	var again bytes.Buffer
	if err := read.Write(&again); err != nil || again.String() != full.String() {
		t.Errorf("%v\n%s", err, again.String())
	}
}
