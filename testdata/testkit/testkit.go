// Package testkit holds what tests share: demands on numbers and errors. Only tests read
// it, like testdata/serial.
package testkit

import (
	"errors"
	"math"
	"reflect"
	"testing"

	"example.org/honestplate"
)

// Finite fails if any number reachable in v is NaN or infinite.
func Finite(t *testing.T, v any) {
	t.Helper()
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Float64:
			if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
				t.Errorf("%s is %g", path, f)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(path+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(path, v.Index(i))
			}
		}
	}
	walk(reflect.TypeOf(v).Name(), reflect.ValueOf(v))
}

// Typed fails unless err is one of the package's kinds.
func Typed(t *testing.T, err error) {
	t.Helper()
	if !errors.Is(err, honestplate.ErrInput) && !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("error of no kind: %v", err)
	}
}

// CloseRel demands that got is want to a relative tolerance.
func CloseRel(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.7g, want %.7g +- %.3g %%", what, got, want, 100*rel)
	}
}

// Answers demands of every call an answer without a number that is none, or an error of
// the package's kinds: what a fuzz target asks of whole packages.
func Answers(t *testing.T, calls ...func() (any, error)) {
	t.Helper()
	for i, call := range calls {
		v, err := call()
		if err != nil {
			Typed(t, err)
		} else if v != nil {
			Finite(t, v)
		}
		if t.Failed() {
			t.Fatalf("call %d: %+v, %v", i, v, err)
		}
	}
}
