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

// sample runs a study over its usual points.
func sample(t *testing.T, s Study, runs int) (Study, *Sample) {
	t.Helper()
	in, err := s.Inputs()
	if err != nil {
		t.Fatal(err)
	}
	z := Rows(Points{Runs: runs}.Columns(in))
	out, err := s.At(z, len(in))
	if err != nil {
		t.Fatal(err)
	}
	return s, &Sample{Inputs: in, Z: z, Out: out, Outputs: s.Outputs}
}

// The band of a sum is the root of the squares, the greater input decides, and what
// never comes has no width.
func TestBandOfASum(t *testing.T) {
	s, m := sample(t, Study{Outputs: 2, Model: linear}, 2048)
	out, err := s.Outcomes(m, 2)
	if err != nil {
		t.Fatal(err)
	}
	why, err := s.Reasons(m, out)
	if err != nil {
		t.Fatal(err)
	}
	half := math.Hypot(10, 1)
	if o := out[0]; o.Likely != 150 || math.Abs(o.Latest-150-half) > 0.5 || math.Abs(150-o.Earliest-half) > 0.5 {
		t.Errorf("%+v", o)
	}
	if r := why[0]; r.Decides[0].Input != 0 || math.Abs(r.Decides[0].Share-100.0/101) > 0.01 || r.Rest > 0.01 || math.Abs(r.Decides[0].Low-140) > 1e-9 {
		t.Errorf("%+v", r)
	}
	if o := out[1]; !math.IsInf(o.Earliest, 1) || why[1].Decides != nil {
		t.Errorf("%+v", o)
	}
}

// What only two inputs together explain is the rest: the sign of a product.
func TestRestIsWhatNoInputExplains(t *testing.T) {
	s, m := sample(t, Study{Outputs: 1, Model: func() ([]Input, func([]float64) error) {
		in, _ := linear()
		return in, func(at []float64) error {
			at[0] = (*in[0].To - 100) * (*in[1].To - 50)
			return nil
		}
	}}, TaughtRuns)
	out, err := s.Outcomes(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	if why, err := s.Reasons(m, out); err != nil || why[0].Rest < 0.95 {
		t.Errorf("%+v, %v", why, err)
	}
}

// Weights count as repetitions do, in quantiles, ranks and the effective number.
func TestWeightsCountAsRepetitions(t *testing.T) {
	values, weights := []float64{3, 1, 2}, []float64{1, 2, 5}
	repeated := []float64{3, 1, 1, 2, 2, 2, 2, 2}
	for p := 0.05; p < 1; p += 0.1 {
		if a, b := Quantiles(values, weights, p)[0], Quantiles(repeated, nil, p)[0]; a != b {
			t.Errorf("quantile %g: %g, repeated %g", p, a, b)
		}
	}
	if a, b := ranks(values, weights), ranks(repeated, nil); a[0] != b[0]+0.0 || a[1] != b[1] || a[2] != b[3] {
		t.Errorf("ranks %v, repeated %v", a, b)
	}
	if e := Effective([]float64{2, 2, 0, 0}); e != 2 {
		t.Errorf("effective number %g", e)
	}
}

func TestStudyRefusesNonsense(t *testing.T) {
	bad := func() ([]Input, func([]float64) error) {
		in, run := linear()
		in[0].Band.Low = math.NaN()
		return in, run
	}
	for name, s := range map[string]Study{"no outputs": {Model: linear}, "NaN": {Outputs: 2, Model: bad}} {
		if _, err := s.Inputs(); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
