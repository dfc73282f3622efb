package published

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/honestplate/testdata"
)

// Every table is compared by some check: a file that nothing reads is not
// evidence.
func TestEveryTableIsChecked(t *testing.T) {
	checked := map[string]bool{}
	for _, c := range All() {
		checked[c.Table] = true
	}
	for _, name := range testdata.Names() {
		if checked[name] {
			continue
		}
		// Code that nothing outside its package can call compares its vectors itself.
		test, err := os.ReadFile(inside[name])
		if err != nil || !strings.Contains(string(test), `"`+name+`"`) {
			t.Errorf("testdata/%s.csv: no check reads it", name)
		}
	}
}

var inside = map[string]string{
	"jcs_numbers": jcsTest, "jcs_number_generator": jcsTest, "jcs_number_file_sums": jcsTest, "jcs_documents": jcsTest, "jcs_refusals": jcsTest,
	"sha256_monte_carlo": sealTest, "ed25519_vectors": sealTest, "ed25519_refusals": sealTest, "ed25519_edge_cases": sealTest, "record_chain_samples": sealTest,
}

const (
	jcsTest  = "../../portion/internal/jcs/canonical_test.go"
	sealTest = "../../portion/internal/seal/seal_test.go"
)

func TestClaims(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range All() {
		if key := c.Table + ", " + c.Quantity; seen[key] {
			t.Errorf("two checks of %s", key)
		} else {
			seen[key] = true
		}
		if c.Quantity == "" || c.Claim == "" {
			t.Errorf("check of %s: quantity and claim must be said", c.Table)
		}
	}
	for _, pkg := range []string{"rheology", "thermal", "portion"} {
		failures, err := Failures(pkg)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range failures {
			t.Error(f)
		}
	}
}

// The classes of a table with limits are ordered by them.
func TestClassesHaveARank(t *testing.T) {
	for _, c := range All() {
		r, err := Run(c)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range r.Sets() {
			if _, ok := ranks[s.Class]; !ok && s.Class != "" && s.Table != "ice_on_surfaces" {
				t.Errorf("%s, %s: class %q has no rank", s.Table, s.Quantity, s.Class)
			}
		}
	}
}

// Each entry of the list is about a set that exists: Failures says whether it misses.
func TestKnownMissesAreOfSets(t *testing.T) {
	known, err := KnownMisses()
	if err != nil {
		t.Fatal(err)
	}
	found := make([]int, len(known))
	for _, c := range All() {
		r, err := Run(c)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range r.Sets() {
			for i, m := range known {
				if m.Of(s) {
					found[i]++
				}
			}
		}
	}
	for i, n := range found {
		if n != 1 {
			t.Errorf("misses.csv, %s, %s, %s, %s: %d sets, want 1", known[i].Table, known[i].Quantity, known[i].Kind, known[i].Class, n)
		}
	}
}

// A check must be able to fail: a value moved by a factor of ten is outside
// every band.
func TestMovedValuesFail(t *testing.T) {
	known, err := KnownMisses()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range All() {
		if c.Left != "" {
			continue
		}
		r, err := Run(c)
		if err != nil {
			t.Error(err)
			continue
		}
		if !slices.ContainsFunc(r.Compared(), Point.Inside) {
			continue // nothing is left that could leave its band
		}
		for i, p := range r.Points {
			if p.Skip == "" && p.Published != 0 {
				r.Points[i].Published *= 10
			}
		}
		if len(r.Failures(known)) == 0 {
			t.Errorf("%s, %s: passes with every value tenfold", c.Table, c.Quantity)
		}
	}
}
