package apportion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"
)

func TestControlledRoundingKeepsEveryTotal(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 3))
	for range 1000 {
		m, n := 1+rng.IntN(5), 1+rng.IntN(5)
		values := make([][]float64, m)
		columns := make([]float64, n)
		total := 0.0
		for i := range values {
			values[i] = make([]float64, n)
			for j := range values[i] {
				if rng.IntN(4) > 0 {
					values[i][j] = float64(rng.IntN(500)) / 100
				}
				columns[j] += values[i][j]
				total += values[i][j]
			}
		}
		got, err := ControlledRounding(values)
		if err != nil {
			t.Fatal(err)
		}
		near := func(what string, v float64, x int64) {
			if math.Abs(v-float64(x)) > 1-1e-9 {
				t.Fatalf("%s %v of %v is rounded to %d: %v", what, v, values, x, got)
			}
		}
		roundedColumns, roundedTotal := make([]int64, n), int64(0)
		for i, row := range got {
			sum, rounded := 0.0, int64(0)
			for j, x := range row {
				near("entry", values[i][j], x)
				sum += values[i][j]
				rounded += x
				roundedColumns[j] += x
				roundedTotal += x
			}
			near("row total", sum, rounded)
		}
		for j, c := range columns {
			near("column total", c, roundedColumns[j])
		}
		near("grand total", total, roundedTotal)
	}
}

// The table of a question on Mathematics Stack Exchange (testdata,
// controlled_rounding) has five roundings that keep its whole totals; the nearest
// was found by enumeration.
func TestControlledRoundingIsTheNearest(t *testing.T) {
	got, err := ControlledRounding([][]float64{{11.998, 9.083, 2.919}, {12.983, 10.872, 3.145}, {1.019, 2.045, 0.936}})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([][]int64{{12, 9, 3}, {13, 11, 3}, {1, 2, 1}}, got); diff != "" {
		t.Error(diff)
	}
}

func TestControlledRoundingIsOptimal(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 3))
	for range 1000 {
		m, n := 1+rng.IntN(3), 1+rng.IntN(3)
		values := make([][]float64, m)
		for i := range values {
			values[i] = make([]float64, n)
			for j := range values[i] {
				values[i][j] = float64(rng.IntN(200)) / 100
			}
		}
		got, err := ControlledRounding(values)
		if err != nil {
			t.Fatal(err)
		}
		if c, best := squaredChange(values, got), nearest(values); c > best+1e-9 {
			t.Fatalf("%v: %v changes %v, the best %v", values, got, c, best)
		}
	}
}

func squaredChange(values [][]float64, cells [][]int64) (sum float64) {
	for i, row := range values {
		for j, v := range row {
			sum += (v - float64(cells[i][j])) * (v - float64(cells[i][j]))
		}
	}
	return sum
}

// nearest tries every rounding of every entry.
func nearest(values [][]float64) float64 {
	m, n := len(values), len(values[0])
	best := math.Inf(1)
	ok := func(v float64, x int64) bool { return math.Abs(v-float64(x)) < 1-1e-9 }
	cells := make([][]int64, m)
	for i := range cells {
		cells[i] = make([]int64, n)
	}
	for set := range 1 << (m * n) {
		valid := true
		total, rounded := 0.0, int64(0)
		columns, roundedColumns := make([]float64, n), make([]int64, n)
		for i, row := range values {
			rowSum, rowRounded := 0.0, int64(0)
			for j, v := range row {
				cells[i][j] = int64(math.Floor(v)) + int64(set>>(i*n+j)&1)
				valid = valid && ok(v, cells[i][j])
				rowSum += v
				rowRounded += cells[i][j]
				columns[j] += v
				roundedColumns[j] += cells[i][j]
			}
			valid = valid && ok(rowSum, rowRounded)
			total += rowSum
			rounded += rowRounded
		}
		for j := range columns {
			valid = valid && ok(columns[j], roundedColumns[j])
		}
		if valid && ok(total, rounded) {
			best = min(best, squaredChange(values, cells))
		}
	}
	return best
}

func TestBadControlledRoundings(t *testing.T) {
	for name, values := range map[string][][]float64{
		"empty": nil, "ragged": {{1}, {1, 2}}, "NaN": {{math.NaN()}}, "negative": {{-1}},
	} {
		if _, err := ControlledRounding(values); !errors.Is(err, honestplate.ErrInput) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := ControlledRounding([][]float64{{1e12}}); !errors.Is(err, honestplate.ErrRange) {
		t.Errorf("huge: %v", err)
	}
}

// Totals are sums of decimals, not of their float64: a row of large amounts that adds up
// to a whole number keeps it.
func TestControlledRoundingSumsDecimals(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 14))
	cases := [][]float64{{5792433.2, 6676325.7, 8850877.5, 9181243.4, 0.2}}
	for range 2000 {
		row, rest := make([]float64, 20), int64(0)
		for j := range row[1:] {
			tenths := rng.Int64N(10_000_000)
			rest += tenths
			row[1+j] = float64(tenths) / 10
		}
		row[0] = float64(10-rest%10) / 10
		cases = append(cases, row)
	}
	for _, row := range cases {
		tenths, sum := int64(0), int64(0)
		for _, v := range row {
			tenths += int64(math.Round(10 * v))
		}
		got, err := ControlledRounding([][]float64{row})
		if err != nil {
			t.Fatal(err)
		}
		for _, n := range got[0] {
			sum += n
		}
		if 10*sum != tenths {
			t.Fatalf("%v: rounded to %d in all, the entries sum to %d tenths", row, sum, tenths)
		}
	}
}
