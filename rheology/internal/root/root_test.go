package root

import (
	"errors"
	"math"
	"testing"
)

func TestRootsAreFound(t *testing.T) {
	calls := 0
	cube := func(x float64) (float64, error) { calls++; return x*x*x - 2, nil }
	want := math.Cbrt(2)
	for _, s := range []Search{
		{Low: 0, High: 10, Start: 1, Slope: 3},
		{Low: math.Inf(-1), High: math.Inf(1), Start: -40, Slope: 0.01},
		{Low: math.Inf(-1), High: math.Inf(1), Start: 300, Slope: 1e9},
		{Low: 0, High: 1e6, Start: 1e5, Slope: 1},
	} {
		s.Tol, calls = 1e-12, 0
		x, err := s.Rise(cube)
		if err != nil || math.Abs(x-want) > 1e-12 || calls > 90 {
			t.Errorf("%+v: %v after %d calls, %v", s, x, calls, err)
		}
	}
	x, err := Bisect(cube, 0, 10, 0)
	if err != nil || math.Abs(x-want) > 1e-15 {
		t.Errorf("bisection: %v, %v", x, err)
	}
	falling := func(x float64) (float64, error) { return 2 - x, nil }
	if x, err := Bisect(falling, 2, 5, 1e-3); x != 2 || err != nil {
		t.Errorf("a root at the end: %v, %v", x, err)
	}
	if x, err := Bisect(falling, 0, 5, 1e-3); math.Abs(x-2) > 1e-3 || err != nil {
		t.Errorf("falling: %v, %v", x, err)
	}
	// x = 4/x settles at 2.
	if x, err := Settle(100, func(x float64) (float64, error) { return 4 / x, nil }); math.Abs(x-2) > 1e-5 || err != nil {
		t.Errorf("settled at %v, %v", x, err)
	}
}

func TestAnErrorEndsTheSearch(t *testing.T) {
	no := errors.New("no")
	f := func(x float64) (float64, error) {
		if x > 2 {
			return 0, no
		}
		return x - 3, nil
	}
	_, e1 := Bisect(f, 0, 5, 0)
	_, e2 := Search{Low: 0, High: 5, Start: 1, Slope: 1}.Rise(f)
	_, e3 := Settle(3, f)
	for i, err := range []error{e1, e2, e3} {
		if !errors.Is(err, no) {
			t.Errorf("%d: %v", i, err)
		}
	}
}

func TestNothingAllocates(t *testing.T) {
	k := 2.0
	if n := testing.AllocsPerRun(10, func() {
		f := func(x float64) (float64, error) { return x*x - k, nil }
		x, _ := Search{Low: 0, High: 9, Start: 1, Slope: 1, Tol: 1e-9}.Rise(f)
		k = 1 + x - math.Floor(x)
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}
