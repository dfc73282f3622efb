package study

import (
	"math"
	"testing"

	"example.org/honestplate"
)

// linear is a model whose event comes at the sum of two inputs, and one that never comes.
func linear() ([]Input, func([]float64) error) {
	var x [2]float64
	in := []Input{
		{Key: "a", Name: "a", Band: honestplate.Estimate{Low: 90, Likely: 100, High: 110}, To: &x[0]},
		{Key: "b", Name: "b", Band: honestplate.Estimate{Low: 49, Likely: 50, High: 51}, To: &x[1]},
	}
	return in, func(at []float64) error {
		at[0], at[1] = x[0]+x[1], math.Inf(1)
		return nil
	}
}

// The band of a sum is the root of the squares, the greater input decides, and what
// never comes has no width.
func TestBandOfASum(t *testing.T) {
	out, err := Study{Events: 2, Samples: 2048, Model: linear}.Run()
	if err != nil {
		t.Fatal(err)
	}
	half := math.Hypot(10, 1)
	if o := out[0]; o.Likely != 150 || math.Abs(o.Latest-150-half) > 0.5 || math.Abs(150-o.Earliest-half) > 0.5 ||
		o.Decides[0].Input != 0 || o.Decides[0].Share < 0.9 || math.Abs(o.Decides[0].Low-140) > 1e-9 {
		t.Errorf("%+v", o)
	}
	if o := out[1]; !math.IsInf(o.Earliest, 1) || o.Decides != nil {
		t.Errorf("%+v", o)
	}
}

func TestStudyRefusesNonsense(t *testing.T) {
	bad := func() ([]Input, func([]float64) error) {
		in, run := linear()
		in[0].Band.Low = math.NaN()
		return in, run
	}
	for name, s := range map[string]Study{
		"no events": {Model: linear}, "too many samples": {Events: 2, Samples: 5000, Model: linear}, "NaN": {Events: 2, Model: bad},
	} {
		if _, err := s.Run(); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
