package published

import (
	"os"
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
	for _, c := range All() {
		if c.Quantity == "" || c.Claim == "" {
			t.Errorf("check of %s: quantity and claim must be said", c.Table)
		}
		r, err := Run(c)
		if err != nil {
			t.Error(err)
			continue
		}
		for _, f := range r.Failures() {
			t.Error(f)
		}
	}
}

// A check must be able to fail: a value moved by a factor of ten is outside
// every band.
func TestMovedValuesFail(t *testing.T) {
	for _, c := range All() {
		r, err := Run(c)
		if err != nil {
			t.Error(err)
			continue
		}
		for i, p := range r.Points {
			if p.Skip == "" && p.Published != 0 {
				r.Points[i].Published *= 10
			}
		}
		if len(r.Failures()) == 0 {
			t.Errorf("%s, %s: passes with every value tenfold", c.Table, c.Quantity)
		}
	}
}
