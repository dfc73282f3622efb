package rheology

import (
	"errors"
	"testing"

	"example.org/honestplate"
)

// A nil pointer behind an interface is nothing, as nil is: an error, no panic.
func TestANilPointerIsNoLiquid(t *testing.T) {
	var none *Dairy
	_, e1 := Blend(Part{none, 1})
	_, e2 := Recipe{Thin: none, Thick: Dairy{FatPercent: 36}, BatchGrams: 10, StepGrams: 1, TempC: 6}.For(0.01)
	_, e3 := ServeAt(none, 0.01, 2, 8)
	_, e4 := Batch{Recipe: Recipe{Thin: Water{}, Thick: none}}.Mix()
	for i, err := range []error{e1, e2, e3, e4} {
		if !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%d: %v", i+1, err)
		}
	}
}
