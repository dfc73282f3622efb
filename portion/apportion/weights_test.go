package apportion

import "testing"

// Weights that differ in their fifteenth digit are told apart.
func TestTheLastDigitOfAWeightCounts(t *testing.T) {
	claims := []Claim{{Weight: 123456789012345}, {Weight: 123456789012346}}
	for _, m := range allMethods {
		got, err := m.Apportion(5, claims)
		if err != nil {
			t.Fatal(err)
		}
		if got[0] != 2 || got[1] != 3 {
			t.Errorf("%v: %v, want the odd unit with the heavier", m, got)
		}
	}
}
