package thermal

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestDecayIsTheExponential(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 12))
	for range 200000 {
		v := negligible * r.Float64() * r.Float64()
		if got, want := decay(v), math.Exp(-v); math.Abs(got/want-1) > 1e-15 {
			t.Fatalf("exp(-%v): %v, want %v, %.2g off", v, got, want, got/want-1)
		}
	}
	if decay(0) != 1 {
		t.Errorf("exp(0) is %v", decay(0))
	}
	if got := decay(negligible); math.Abs(got/math.Exp(-negligible)-1) > 1e-15 {
		t.Errorf("at the end: %v", got)
	}
}
