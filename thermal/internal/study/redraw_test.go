package study

import (
	"errors"
	"math"
	"testing"

	"example.org/honestplate"
	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// plain are inputs that have the value of z, the last never below -1.
func plain(x []float64) []Input {
	in := make([]Input, len(x))
	for j := range in {
		in[j] = Input{Key: "unit." + string(rune('a'+j)), Band: honestplate.Estimate{Low: -z95, High: z95}, To: &x[j]}
	}
	in[len(x)-1].Min, in[len(x)-1].Max = -1, 100
	return in
}

// reads is a study of readings.
func reads(d, outputs int, f func(x, out []float64)) Study {
	return Study{Outputs: outputs, Model: func() ([]Input, func([]float64) error) {
		x := make([]float64, d)
		return plain(x), func(out []float64) error {
			f(x, out)
			return nil
		}
	}}
}

// normal is the sight of readings with an error sd, of which one may be of an event's time.
func normal(events int, sds []float64, values ...float64) Sight {
	s := Sight{Events: events, Count: len(values)}
	for e := range values {
		s.Which = append(s.Which, e)
	}
	s.Logs = func(out []float64, rough *Rough) []float64 {
		n := len(values)
		logs := make([]float64, len(out)/n)
		for i, v := range out {
			e := i % n
			sd := sds[e]
			if rough != nil {
				scatter := rough.Scatter[e]
				if e < events {
					scatter *= 1 + v
				}
				sd = math.Hypot(sd, scatter)
				logs[i/n] += math.Log1p(-rough.Never[i])
			}
			off := min((v-values[e])/sd, 1e100)
			logs[i/n] += -0.5*off*off - math.Log(sd)
		}
		return logs
	}
	return s
}

// redrawn draws runs anew for a sight and returns the columns of the inputs with weights.
func redrawn(t *testing.T, s Study, b Belief, seen Sight) (columns [][]float64, weights []float64) {
	t.Helper()
	_, m := sample(t, s, TaughtRuns)
	r, err := s.Redraw(Points{Runs: TaughtRuns}, b, m.Z, m.Out, seen)
	if err != nil {
		t.Fatal(err)
	}
	d, w := len(m.Inputs), powered(make([]float64, TaughtRuns), seen.Logs(r.Out, nil), 1)
	for i := range w {
		w[i] *= r.Prior[i]
	}
	t.Logf("%.0f effective runs", Effective(w))
	if Effective(w) < FewestEffective {
		t.Errorf("%.0f effective runs", Effective(w))
	}
	for j := range d {
		columns = append(columns, Column(r.Z, j, d))
	}
	return columns, w
}

func unknown(d int) Belief { return NewBelief(make([][]float64, d), nil) }

// Readings of sums of many inputs, the exact posterior of which is normal: Sigma^-1 =
// I + A'A/sd^2, its mean Sigma A'y/sd^2; also where the inputs hang together before.
func TestRedrawOfSumsIsExact(t *testing.T) {
	const d, sd = 12, 0.02
	a := mat.NewDense(2, d, nil)
	for j := range d - 1 { // the last is bounded
		a.Set(0, j, 1/float64(1+j))
		a.Set(1, j, math.Cos(float64(j)))
	}
	s := reads(d, 2, func(x, out []float64) {
		mat.NewVecDense(2, out).MulVec(a, mat.NewVecDense(d, x))
	})
	tied := unknown(d)
	tied.Mean[1] = 0.5
	tied.Cov.SetSym(1, 1, 0.3)
	tied.Cov.SetSym(0, 2, 0.7)
	for _, b := range []Belief{unknown(d), tied} {
		seen := normal(0, []float64{sd, sd}, 2.5, -2)
		columns, weights := redrawn(t, s, b, seen)
		// Gain K = P A'(A P A' + sd^2 I)^-1.
		var pa, apa, inverse, gain, reduced mat.Dense
		pa.Mul(b.Cov, a.T())
		apa.Mul(a, &pa)
		for i := range 2 {
			apa.Set(i, i, apa.At(i, i)+sd*sd)
		}
		if err := inverse.Inverse(&apa); err != nil {
			t.Fatal(err)
		}
		gain.Mul(&pa, &inverse)
		reduced.Mul(&gain, pa.T())
		var off, shift mat.VecDense
		off.MulVec(a, mat.NewVecDense(d, b.Mean))
		off.SubVec(mat.NewVecDense(2, []float64{2.5, -2}), &off)
		shift.MulVec(&gain, &off)
		for j := range d - 1 {
			mean, spread := stat.MeanStdDev(columns[j], weights)
			want, width := b.Mean[j]+shift.AtVec(j), math.Sqrt(b.Cov.At(j, j)-reduced.At(j, j))
			if math.Abs(mean-want) > 0.06 || math.Abs(spread/width-1) > 0.06 {
				t.Errorf("input %d: %.3f +- %.3f, exactly %.3f +- %.3f", j, mean, spread, want, width)
			}
		}
	}
}

// A time that is no sum, an input with an end and an event that never comes for some, seen
// once or twice, against sums over a fine grid.
func TestRedrawOfWhatBendsIsExact(t *testing.T) {
	bent := func(x, out []float64) {
		out[0] = 100 * math.Exp(0.8*x[0]+0.2*x[0]*x[1]+0.1*x[1]*x[1]-0.5*x[2])
		if x[1] > 1.2 {
			out[0] = math.Inf(1)
		}
		if len(out) > 1 {
			out[1] = x[0] - 0.6*x[2] + 0.2*x[0]*x[1]
		}
	}
	for name, values := range map[string][]float64{"once": {300}, "twice": {300, 1}} {
		sds := []float64{9, 0.05}
		seen := normal(1, sds, values...)
		columns, weights := redrawn(t, reads(3, len(values), bent), unknown(3), seen)
		const n, step = 200, 0.05 // to 5 standard deviations
		below := [3][]float64{make([]float64, n+1), make([]float64, n+1), make([]float64, n+1)}
		out := make([]float64, len(values))
		for i := range n + 1 {
			for j := range n + 1 {
				for k := range n + 1 {
					z := [3]float64{step * float64(i-n/2), step * float64(j-n/2), step * float64(k-n/2)}
					bent([]float64{z[0], z[1], max(-1, z[2])}, out)
					off := z[0]*z[0] + z[1]*z[1] + z[2]*z[2]
					for e, v := range out {
						off += (v - values[e]) * (v - values[e]) / (sds[e] * sds[e])
					}
					w := math.Exp(-0.5 * off)
					below[0][i], below[1][j], below[2][k] = below[0][i]+w, below[1][j]+w, below[2][k]+w
				}
			}
		}
		whole := floats.Sum(weights)
		for q, x := range columns {
			far, sum, all := 0.0, 0.0, floats.Sum(below[q])
			for i := range n {
				at, runs := step*(float64(i-n/2)+0.5), 0.0
				sum += below[q][i] / all
				for r, v := range x {
					if v < at {
						runs += weights[r] / whole
					}
				}
				far = max(far, math.Abs(runs-sum))
			}
			if far > 0.08 {
				t.Errorf("seen %s, input %d: %.2f of the runs lie elsewhere than the grid has them", name, q, far)
			}
		}
	}
}

// What lies a dozen standard deviations away is refused, and what fails is an error.
func TestRedrawRefuses(t *testing.T) {
	s := reads(3, 1, func(x, out []float64) { out[0] = x[0] + x[1] })
	_, m := sample(t, s, TaughtRuns)
	if _, err := s.Redraw(Points{Runs: TaughtRuns}, unknown(3), m.Z, m.Out, normal(0, []float64{0.01}, 17)); !errors.Is(err, ErrFar) {
		t.Errorf("12 standard deviations away: %v", err)
	}
	broken := errors.New("broken")
	s.Model = func() ([]Input, func([]float64) error) {
		return plain(make([]float64, 3)), func([]float64) error { return broken }
	}
	if _, err := s.Redraw(Points{Runs: TaughtRuns}, unknown(3), m.Z, m.Out, normal(0, []float64{0.01}, 2)); !errors.Is(err, broken) {
		t.Errorf("a model that fails: %v", err)
	}
}

// Choosing is fair: each draw is chosen as often as its weight says, over many.
func TestChoosing(t *testing.T) {
	weights := []float64{0.1, 3, 0.4, 0, 2, 0.5}
	chosen, chance := choose(weights, 3)
	if len(chosen) != 3 || chance[1] != 1 || chance[3] > 1e-6 {
		t.Errorf("chosen %v with chances %v", chosen, chance)
	}
	if all, chance := choose(weights, len(weights)); len(all) != len(weights) || chance[3] != 1 {
		t.Errorf("of all, %v with chances %v", all, chance)
	}
	even := make([]float64, 1000)
	for i := range even {
		even[i] = 1 + float64(i%2)
	}
	chosen, _ = choose(even, 300)
	odd := 0
	for _, i := range chosen {
		odd += i % 2
	}
	if math.Abs(float64(odd)/300-2.0/3) > 0.01 {
		t.Errorf("%d of 300 of those with two thirds of the weight", odd)
	}
}
