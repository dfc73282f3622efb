package portion

import (
	"errors"
	"math"
	"strings"
	"testing"
)

// Whatever an error is made of, its message is one line that begins with the
// package's name, and it is what it says it is.
func FuzzErrors(f *testing.F) {
	f.Add("cheese", "g", 1.5, 0.5, 2.0, 3, true)
	f.Add("two\nlines\x1b\u2028", "", math.NaN(), math.Inf(1), -1.0, -7, false)
	f.Fuzz(func(t *testing.T, name, unit string, a, b, c float64, n int, flag bool) {
		infeasible := &InfeasibleError{Count: n, Grams: a, Tolerance: b, NeverBelow: flag, NeverAbove: !flag, Below: b, Above: c, Known: flag}
		if grams, ok := infeasible.Closest(); ok && grams != b && grams != c {
			t.Fatalf("closest is %v, neither %v nor %v", grams, b, c)
		}
		beneath := &AdvertisedError{name, Thin}
		for _, e := range []struct {
			err interface {
				error
				Is(error) bool
			}
			target error
		}{
			{beneath, ErrAdvertised},
			{&CrowdedError{n, n - 1}, ErrCrowded},
			{&EffortError{n}, ErrEffort},
			{infeasible, ErrInfeasible},
			{&InputError{name, a, "g", "above 0"}, ErrInput},
			{&MarginError{Rows: []int{n, 0}, Columns: []int{1}, RowNames: []string{name}, ColumnNames: []string{unit}, RowUnits: int64(n), StepGrams: a}, ErrInput},
			{&RangeError{name, a, b, c, "g", "a scale"}, ErrRange},
			{&StepError{"Grams", a, b, c, a}, ErrInput},
		} {
			text := e.err.Error()
			if !strings.HasPrefix(text, "portion: ") || strings.ContainsAny(text, "\n\r\x1b\u2028") {
				t.Fatalf("%T says %q", e.err, text)
			}
			if !e.err.Is(e.target) || e.err.Is(errors.New(name)) {
				t.Fatalf("%T is not what it says", e.err)
			}
		}
	})
}
