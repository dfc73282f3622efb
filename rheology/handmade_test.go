package rheology

import (
	"errors"
	"testing"

	"example.org/honestplate"
)

// What nobody would write, but a program might pass on.
func TestHandMadeAndExtremeValuesGiveErrorsNotInfinities(t *testing.T) {
	cases := map[string]func() (float64, error){
		"no liquid": func() (float64, error) {
			e, err := ViscosityAtRate(nil, 20, 1)
			return e.Likely, err
		},
		"a blend thinner than nothing": func() (float64, error) {
			r, err := Recipe{Thin: Water{}, Thick: Dairy{FatPercent: 30}, TempC: 36}.FitRule(MixPoint{0.5, 5e-324})
			return r.D, err
		},
	}
	for name, f := range cases {
		v, err := f()
		if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
			t.Errorf("%s: %v, error %v", name, v, err)
		}
	}
}
