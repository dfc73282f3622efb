package rheology

import "testing"

// Fresh concentrate is as thin as the formula for it says, a can may be far thicker.
func TestEvaporatedMilkHoldsTheFormulaForConcentrates(t *testing.T) {
	for c := 5.0; c <= 50; c += 5 {
		fresh, err := FernandezMartin(26, c)
		if err != nil {
			t.Fatal(err)
		}
		e, err := Evaporated.Viscosity(c)
		if err != nil {
			t.Fatal(err)
		}
		if !e.Contains(fresh) {
			t.Errorf("%g degC: %v without %g", c, e, fresh)
		}
	}
}
