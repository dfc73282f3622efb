package shoot

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

func demo(t *testing.T, name string) *Brief {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "callsheet", "days", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	b, err := Read(f)
	if err != nil {
		t.Fatalf("%s:\n%v", name, err)
	}
	return b
}

func TestTheDemonstrationDaysPlan(t *testing.T) {
	for _, name := range []string{"autumn", "coast", "motion"} {
		b := demo(t, name)
		p, err := b.Plan(nil)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		text, err := json.MarshalIndent(p, "", " ")
		if err != nil {
			t.Fatal(err)
		}
		var back Plan
		if err := json.Unmarshal(text, &back); err != nil {
			t.Fatal(err)
		}
		again, _ := json.MarshalIndent(&back, "", " ")
		if string(again) != string(text) {
			t.Errorf("%s does not read back", name)
		}
	}
}
