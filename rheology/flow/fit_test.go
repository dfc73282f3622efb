package flow

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
)

func curvePoints(m Model, n int, noise float64, seed uint64) []Point {
	rng := rand.New(rand.NewPCG(seed, 1))
	pts := make([]Point, n)
	for i := range pts {
		r := math.Pow(10, -1+3*float64(i)/float64(n-1))
		pts[i] = Point{ShearRate: r, Stress: m.Stress(r) * (1 + noise*rng.NormFloat64())}
	}
	return pts
}

func TestFitFindsTheConstantsOfItsOwnCurve(t *testing.T) {
	models := []struct {
		kind Model
		m    Model
		want []float64
	}{
		{Newtonian{}, Newtonian{0.7}, []float64{0.7}},
		{PowerLaw{}, PowerLaw{19.1, 0.39}, []float64{19.1, 0.39}},
		{Bingham{}, Bingham{36.1, 8.7}, []float64{36.1, 8.7}},
		{Casson{}, Casson{9.3, 1.42}, []float64{9.3, 1.42}},
		{HerschelBulkley{}, HerschelBulkley{32, 18.7, 0.27}, []float64{32, 18.7, 0.27}},
		{Carreau{}, Carreau{50, 0.2, 3, 0.4}, []float64{50, 0.2, 3, 0.4}},
	}
	for _, c := range models {
		f, err := Fit(c.kind, curvePoints(c.m, 20, 0, 1))
		if err != nil {
			t.Error(err)
			continue
		}
		for i, v := range f.Values {
			if math.Abs(v/c.want[i]-1) > 1e-4 {
				t.Errorf("%s: %s is %.8g, want %.8g", c.kind, f.Names[i], v, c.want[i])
			}
		}
	}
}

func BenchmarkFitFlow(b *testing.B) {
	pts := curvePoints(HerschelBulkley{32, 18.7, 0.27}, 20, 0.02, 7)
	for _, kind := range fitted {
		b.Run(kind.String(), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Fit(kind, pts); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// The covariance against what it stands for: the scatter of the constants over many
// noisy copies of one curve.
func TestFitCovarianceIsTheScatterOfRepeats(t *testing.T) {
	m := HerschelBulkley{32, 18.7, 0.27}
	const repeats = 300
	var sum, sq, said [3]float64
	for seed := range uint64(repeats) {
		rng := rand.New(rand.NewPCG(seed, 9))
		var pts []Point
		for i := range 20 {
			r := math.Pow(10, -1+3*float64(i)/19)
			pts = append(pts, Point{ShearRate: r, Stress: m.Stress(r) + 0.8*rng.NormFloat64()})
		}
		f, err := Fit(HerschelBulkley{}, pts)
		if err != nil {
			t.Fatal(err)
		}
		for i, v := range f.Values {
			sum[i] += v / repeats
			sq[i] += v * v / repeats
			said[i] += f.Errors[i] / repeats
		}
	}
	for i := range 3 {
		scatter := math.Sqrt(sq[i] - sum[i]*sum[i])
		if r := said[i] / scatter; r < 0.8 || r > 1.25 {
			t.Errorf("constant %d: standard error %g, scatter %g", i, said[i], scatter)
		}
	}
}

func TestAICcChoosesTheModelThatMadeThePoints(t *testing.T) {
	for _, m := range []Model{Newtonian{0.7}, PowerLaw{19.1, 0.39}, Bingham{36.1, 8.7}, HerschelBulkley{32, 18.7, 0.27}, Casson{9.3, 1.42}} {
		right := 0
		for seed := range uint64(20) {
			pts := curvePoints(m, 20, 0.01, seed)
			for i := range pts {
				pts[i].Weight = 1 / (pts[i].Stress * pts[i].Stress) // equal shares
			}
			fits, err := FitAll(pts)
			if err != nil {
				t.Fatal(err)
			}
			for i := range fits[1:] {
				if fits[i].AICc > fits[i+1].AICc {
					t.Errorf("%s: not in order", m.String())
				}
			}
			if fits[0].Model.String() == m.String() {
				right++
			}
		}
		if right < 14 {
			t.Errorf("%s: chosen %d times of 20", m.String(), right)
		}
	}
}

func TestWeightsDecideWhichPointsCount(t *testing.T) {
	pts := []Point{{1, 2, 1}, {10, 20, 1}, {100, 500, 1e-12}}
	f, err := Fit(Newtonian{}, pts)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(f.Values[0]-2) > 1e-6 {
		t.Errorf("got %g, want 2: the last point weighs nothing", f.Values[0])
	}
	pts[2].Weight = 1 // as much as the others
	if f, err = Fit(Newtonian{}, pts); err != nil || f.Values[0] < 4 {
		t.Errorf("got %v, %v", f.Values, err)
	}
	pts[0].Weight = 0 // one has none: of what is it the default?
	if _, err = Fit(Newtonian{}, pts); !errors.Is(err, honestplate.ErrInput) {
		t.Errorf("weights for some: %v", err)
	}
}

func TestFitRefusesTooLittle(t *testing.T) {
	three := []Point{{1, 2, 0}, {10, 12, 0}, {100, 90, 0}}
	nan := math.NaN()
	for name, c := range map[string]struct {
		kind   Model
		points []Point
	}{
		"no points":       {Newtonian{}, nil},
		"no such model":   {nil, three},
		"negative model":  {disguised{Bingham{}}, three},
		"three for four":  {Carreau{}, three},
		"one place":       {Bingham{}, []Point{{1, 2, 0}, {1, 2, 0}, {1.1, 2.2, 0}}},
		"NaN stress":      {Newtonian{}, []Point{{1, nan, 0}}},
		"negative rate":   {Newtonian{}, []Point{{-1, 2, 0}}},
		"negative weight": {Newtonian{}, []Point{{1, 2, -1}}},
	} {
		if _, err := Fit(c.kind, c.points); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if _, err := FitAll(nil); err == nil {
		t.Error("no points: no error")
	}
	f, err := Fit(HerschelBulkley{}, three)
	if err != nil {
		t.Fatal(err)
	}
	// As many constants as points: the curve passes through, and nothing is known of
	// the constants' errors.
	if f.Errors != nil || !math.IsInf(f.AICc, 1) {
		t.Errorf("got %+v", f)
	}
	for _, p := range three {
		if math.Abs(f.Model.Stress(p.ShearRate)/p.Stress-1) > 1e-4 {
			t.Errorf("misses %v by %g", p, f.Model.Stress(p.ShearRate)-p.Stress)
		}
	}
	if one, err := FitAll(three[:1]); err != nil || len(one) != 1 {
		t.Errorf("one point: %v, %v", one, err)
	}
}

// A yield stress that would come out negative is held at zero.
func TestFitHoldsConstantsAtZero(t *testing.T) {
	pts := curvePoints(PowerLaw{1, 1.4}, 12, 0, 1)
	f, err := Fit(Bingham{}, pts)
	if err != nil {
		t.Fatal(err)
	}
	if f.Values[0] != 0 {
		t.Errorf("yield stress %g", f.Values[0])
	}
}
