package pour

import "testing"

// Each criterion says all that a reader needs, and each is asked of some landing.
func TestCriteriaAreReadWhole(t *testing.T) {
	if len(criteria) != 9 {
		t.Errorf("%d criteria", len(criteria))
	}
	for name, v := range criteria {
		if v.Criterion == "" || v.Measure == "" || v.Outcome == "" || v.Range == "" || v.Known != "read" && v.Known != "memory" {
			t.Errorf("%s: %+v", name, v)
		}
	}
}
