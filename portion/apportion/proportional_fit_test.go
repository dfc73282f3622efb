package apportion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/honestplate"
)

func TestFittingKeepsMarginsAndCrossRatios(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	for range 1000 {
		m, n := 1+rng.IntN(4), 1+rng.IntN(4)
		weights, r, c := randomTable(rng, m, n, 0, 20)
		rows, columns, total := floats(r), floats(c), 0.0
		for _, v := range rows {
			total += v
		}
		got, err := Fit(weights, rows, columns)
		if err != nil {
			t.Fatal(err)
		}
		for i := range rows {
			sum := 0.0
			for _, v := range got[i] {
				sum += v
			}
			if math.Abs(sum-rows[i]) > 1e-9*(total+1) {
				t.Fatalf("row %d of %v sums to %v", i, rows, sum)
			}
		}
		for i := 1; i < m; i++ {
			for j := 1; j < n; j++ {
				was := weights[0][0] * weights[i][j] / weights[0][j] / weights[i][0]
				if is := got[0][0] * got[i][j] / got[0][j] / got[i][0]; got[0][j]*got[i][0] > 0 && math.Abs(is/was-1) > 1e-6 {
					t.Fatalf("cross ratio %v became %v", was, is)
				}
			}
		}
	}
}

func TestBadFits(t *testing.T) {
	one := [][]float64{{1}}
	for name, c := range map[string]struct {
		weights       [][]float64
		rows, columns []float64
	}{
		"empty":           {nil, nil, nil},
		"NaN row":         {one, []float64{math.NaN()}, []float64{1}},
		"negative column": {one, []float64{1}, []float64{-1}},
		"unequal":         {one, []float64{1}, []float64{2}},
		"overflow":        {[][]float64{{1}, {1}}, []float64{math.MaxFloat64, math.MaxFloat64}, []float64{1}},
	} {
		if _, err := Fit(c.weights, c.rows, c.columns); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: got %v", name, err)
		}
	}
	for name, c := range map[string]struct {
		weights       [][]float64
		rows, columns []float64
	}{
		"contradictory": {[][]float64{{1, 0}, {0, 1}}, []float64{1, 2}, []float64{2, 1}},
		"boundary":      {[][]float64{{1, 1}, {0, 1}}, []float64{1, 1}, []float64{1, 1}},
		"nothing":       {[][]float64{{0}}, []float64{1}, []float64{1}},
	} {
		if _, err := Fit(c.weights, c.rows, c.columns); !errors.Is(err, honestplate.ErrInfeasible) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func floats(whole []int64) []float64 {
	out := make([]float64, len(whole))
	for i, n := range whole {
		out[i] = float64(n)
	}
	return out
}
