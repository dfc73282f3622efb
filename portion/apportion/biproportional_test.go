package apportion

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/honestplate"
)

// randomTable makes weights, a share of them zero, and margins that some table
// has: those of random cells of up to most units.
func randomTable(rng *rand.Rand, m, n int, zeros float64, most int64) ([][]float64, []int64, []int64) {
	weights := make([][]float64, m)
	rows, columns := make([]int64, m), make([]int64, n)
	for i := range weights {
		weights[i] = make([]float64, n)
		for j := range weights[i] {
			if rng.Float64() < zeros {
				continue
			}
			weights[i][j] = math.Exp(rng.NormFloat64())
			x := rng.Int64N(most + 1)
			rows[i] += x
			columns[j] += x
		}
	}
	return weights, rows, columns
}

// keepsMargins checks what every two-way sharing must keep.
func keepsMargins(t *testing.T, weights [][]float64, rows, columns []int64, got [][]int64) {
	t.Helper()
	byColumn := make([]int64, len(columns))
	for i, row := range got {
		var sum int64
		for j, x := range row {
			if x < 0 || weights[i][j] == 0 && x != 0 {
				t.Fatalf("cell %d, %d of weight %v holds %d", i, j, weights[i][j], x)
			}
			sum += x
			byColumn[j] += x
		}
		if sum != rows[i] {
			t.Fatalf("row %d holds %d of %d", i, sum, rows[i])
		}
	}
	if diff := cmp.Diff(columns, byColumn); diff != "" {
		t.Fatal(diff)
	}
}

// cost is what the biproportional table has least of all with its margins:
// the sum over every unit of log((k - 1/2)/weight), k = 1, 2...
func cost(weights [][]float64, cells [][]int64) (sum float64) {
	for i, row := range cells {
		for j, x := range row {
			for k := range x {
				sum += math.Log((float64(k) + 0.5) / weights[i][j])
			}
		}
	}
	return sum
}

func TestTwoWaySharesAreExact(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 1000 {
		weights, rows, columns := randomTable(rng, 1+rng.IntN(5), 1+rng.IntN(5), 0.4*rng.Float64(), 1+rng.Int64N(30))
		got, err := Biproportional(weights, rows, columns)
		if err != nil {
			t.Fatalf("%v, %v, %v: %v", weights, rows, columns, err)
		}
		keepsMargins(t, weights, rows, columns, got)
	}
}

// enumerate calls visit for every table of the margins with zeros where the
// weights have them.
func enumerate(weights [][]float64, rows, columns []int64, visit func([][]int64)) {
	cells := make([][]int64, len(rows))
	for i := range cells {
		cells[i] = make([]int64, len(columns))
	}
	left := append([]int64(nil), columns...)
	var fill func(i, j int, row int64)
	fill = func(i, j int, row int64) {
		if j == len(columns) {
			if row != 0 {
				return
			}
			if i++; i == len(rows) {
				visit(cells)
				return
			}
			j, row = 0, rows[i]
		}
		most := min(row, left[j])
		if weights[i][j] == 0 {
			most = 0
		}
		for x := range most + 1 {
			cells[i][j] = x
			left[j] -= x
			fill(i, j+1, row-x)
			left[j] += x
		}
	}
	fill(0, 0, rows[0])
}

func TestTwoWaySharesAreOptimal(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	for range 1000 {
		weights, rows, columns := randomTable(rng, 1+rng.IntN(3), 1+rng.IntN(3), 0.5*rng.Float64(), 3)
		got, err := Biproportional(weights, rows, columns)
		if err != nil {
			t.Fatal(err)
		}
		best := math.Inf(1)
		enumerate(weights, rows, columns, func(cells [][]int64) { best = min(best, cost(weights, cells)) })
		if c := cost(weights, got); c > best+1e-9 {
			t.Fatalf("%v, %v, %v: %v costs %v, the best %v", weights, rows, columns, got, c, best)
		}
	}
}

// From scratch and from alternating scaling, the same table comes out.
func TestPathsAloneGiveTheSameTable(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 2))
	for range 1_000 {
		weights, rows, columns := randomTable(rng, 1+rng.IntN(12), 1+rng.IntN(12), 0.6*rng.Float64(), 1+rng.Int64N(1000))
		want, err := Biproportional(weights, rows, columns)
		if err != nil {
			t.Fatal(err)
		}
		alone, err := newTwoWay(weights, rows, columns)
		if err != nil {
			t.Fatal(err)
		}
		if err := alone.finishByPaths(true); err != nil {
			t.Fatal(err)
		}
		for i, row := range want {
			if diff := cmp.Diff(row, alone.cells[i*len(columns):(i+1)*len(columns)]); diff != "" {
				t.Fatalf("row %d: %s", i, diff)
			}
		}
	}
}

func TestOrderOfRowsAndColumnsDoesNotMatter(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 2))
	for range 1000 {
		m, n := 1+rng.IntN(4), 1+rng.IntN(4)
		weights, rows, columns := randomTable(rng, m, n, 0.3*rng.Float64(), 20)
		want, err := Biproportional(weights, rows, columns)
		if err != nil {
			t.Fatal(err)
		}
		p, q := rng.Perm(m), rng.Perm(n)
		w, r, c := make([][]float64, m), make([]int64, m), make([]int64, n)
		for i := range w {
			r[i] = rows[p[i]]
			w[i] = make([]float64, n)
			for j := range n {
				w[i][j] = weights[p[i]][q[j]]
				c[j] = columns[q[j]]
			}
		}
		got, err := Biproportional(w, r, c)
		if err != nil {
			t.Fatal(err)
		}
		for i := range m {
			for j := range n {
				if got[i][j] != want[p[i]][q[j]] {
					t.Fatalf("%v, %v, %v: %v, permuted by %v, %v: %v", weights, rows, columns, want, p, q, got)
				}
			}
		}
	}
}

// A table exists exactly if no set of rows needs more than its columns hold; if
// none exists, the error names such a set.
func TestContradictingMarginsAreNamed(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 2))
	refused := 0
	for range 1000 {
		m, n := 1+rng.IntN(4), 1+rng.IntN(4)
		weights, _, columns := randomTable(rng, m, n, 0.6, 20)
		rows := make([]int64, m) // the column totals dealt out at random
		for _, c := range columns {
			for range c {
				rows[rng.IntN(m)]++
			}
		}
		possible := true
		for set := range 1 << m {
			var need, hold int64
			for j, c := range columns {
				for i := range m {
					if set>>i&1 == 1 && weights[i][j] > 0 {
						hold += c
						break
					}
				}
			}
			for i, r := range rows {
				if set>>i&1 == 1 {
					need += r
				}
			}
			possible = possible && need <= hold
		}
		got, err := Biproportional(weights, rows, columns)
		if possible {
			if err != nil {
				t.Fatal(err)
			}
			keepsMargins(t, weights, rows, columns, got)
			continue
		}
		refused++
		var e *MarginError
		if !errors.As(err, &e) || !errors.Is(err, honestplate.ErrInfeasible) {
			t.Fatalf("got %v, want a MarginError", err)
		}
		var need, hold int64
		in := map[int]bool{}
		for _, j := range e.Columns {
			hold += columns[j]
			in[j] = true
		}
		for _, i := range e.Rows {
			need += rows[i]
			for j, w := range weights[i] {
				if w > 0 && !in[j] {
					t.Fatalf("%v: row %d may also use column %d", err, i, j)
				}
			}
		}
		if need <= hold || need != e.RowUnits || hold != e.ColumnUnits {
			t.Fatalf("%v is no contradiction: %d against %d", err, need, hold)
		}
	}
	if refused < 100 {
		t.Errorf("only %d cases were contradictory", refused)
	}
}

// Margins that leave only one table, against the weights: alternating scaling
// crawls there, the paths do not.
func TestForcedTables(t *testing.T) {
	got, err := Biproportional([][]float64{{1, 1}, {0, 1}}, []int64{500_000_000, 500_000_000}, []int64{500_000_000, 500_000_000})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([][]int64{{500_000_000, 0}, {0, 500_000_000}}, got); diff != "" {
		t.Error(diff)
	}
	// A staircase: every cell above the diagonal must stay empty.
	const n = 60
	weights, rows := make([][]float64, n), make([]int64, n)
	for i := range weights {
		weights[i], rows[i] = make([]float64, n), 1000
		for j := i; j < n; j++ {
			weights[i][j] = 1
		}
	}
	if got, err = Biproportional(weights, rows, rows); err != nil {
		t.Fatal(err)
	}
	for i := range got {
		if got[i][i] != 1000 {
			t.Errorf("cell %d, %d is %d, want 1000", i, i, got[i][i])
		}
	}
}

func TestBadTables(t *testing.T) {
	one := [][]float64{{1}}
	for name, c := range map[string]struct {
		weights       [][]float64
		rows, columns []int64
		kind          error
	}{
		"empty":                  {nil, nil, nil, honestplate.ErrInput},
		"no columns":             {[][]float64{{}}, []int64{1}, nil, honestplate.ErrInput},
		"ragged":                 {[][]float64{{1, 1}, {1}}, []int64{1, 1}, []int64{1, 1}, honestplate.ErrInput},
		"missing row":            {one, []int64{1, 1}, []int64{2}, honestplate.ErrInput},
		"NaN":                    {[][]float64{{math.NaN()}}, []int64{1}, []int64{1}, honestplate.ErrInput},
		"negative":               {[][]float64{{-1}}, []int64{1}, []int64{1}, honestplate.ErrInput},
		"endless":                {[][]float64{{math.Inf(1)}}, []int64{1}, []int64{1}, honestplate.ErrInput},
		"negative margin":        {one, []int64{-1}, []int64{-1}, honestplate.ErrInput},
		"unequal margins":        {one, []int64{1}, []int64{2}, honestplate.ErrInput},
		"huge margins":           {one, []int64{1e18}, []int64{1e18}, honestplate.ErrRange},
		"weights far apart":      {[][]float64{{1, 1e-200}}, []int64{2}, []int64{1, 1}, honestplate.ErrRange},
		"nowhere to go":          {[][]float64{{0}}, []int64{1}, []int64{1}, honestplate.ErrInfeasible},
		"more than 10 000 cells": {make([][]float64, 101), make([]int64, 101), make([]int64, 100), honestplate.ErrRange},
	} {
		if _, err := Biproportional(c.weights, c.rows, c.columns); !errors.Is(err, c.kind) {
			t.Errorf("%s: got %v, want %v", name, err, c.kind)
		}
	}
}

func BenchmarkBiproportional100(b *testing.B) {
	weights, rows, columns := randomTable(rand.New(rand.NewPCG(1, 1)), 100, 100, 0, 20)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Biproportional(weights, rows, columns); err != nil {
			b.Fatal(err)
		}
	}
}

// Margins that contradict each other drive the factors of alternating scaling
// apart without end; the error must still come, quickly.
func TestContradictionsOfAnySizeAreRefused(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 2))
	for range 60 {
		m := 2 + rng.IntN(40)
		weights, rows, columns := make([][]float64, m), make([]int64, m), make([]int64, m)
		for i := range weights {
			weights[i] = make([]float64, m)
			for j := i; j < m; j++ { // nothing below the diagonal
				weights[i][j] = math.Exp(3 * rng.NormFloat64())
			}
			rows[i] = int64(i) * 1_000_000 / int64(m)
			columns[m-1-i] = rows[i]
		}
		var e *MarginError
		if _, err := Biproportional(weights, rows, columns); !errors.As(err, &e) {
			t.Fatalf("%d rows: %v", m, err)
		}
	}
	const want = "honestplate: Rows: row 1 must hold 1, but may use no column; move 1 to other rows, or let these use more columns"
	if _, err := Biproportional([][]float64{{0}}, []int64{1}, []int64{1}); err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

// Favouring one cell for the camera never takes from it, whatever it does to the
// others: both totals still hold.
func TestFavouringACellNeverTakesFromIt(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 2))
	for range 1000 {
		weights, rows, columns := randomTable(rng, 1+rng.IntN(4), 1+rng.IntN(4), 0.3*rng.Float64(), 20)
		before, err := Biproportional(weights, rows, columns)
		if err != nil {
			t.Fatal(err)
		}
		i, j := rng.IntN(len(rows)), rng.IntN(len(columns))
		weights[i][j] *= 1 + 3*rng.Float64()
		after, err := Biproportional(weights, rows, columns)
		if err != nil {
			t.Fatal(err)
		}
		keepsMargins(t, weights, rows, columns, after)
		if after[i][j] < before[i][j] {
			t.Fatalf("cell %d, %d falls from %d to %d", i, j, before[i][j], after[i][j])
		}
	}
}

func BenchmarkControlledRounding100(b *testing.B) {
	rng := rand.New(rand.NewPCG(1, 1))
	values := make([][]float64, 100)
	for i := range values {
		values[i] = make([]float64, 100)
		for j := range values[i] {
			values[i][j] = 10 * rng.Float64()
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ControlledRounding(values); err != nil {
			b.Fatal(err)
		}
	}
}

// Equal weights make every cell a tie: rows must not all favour the same columns,
// or thousands of units are left to move.
func TestEqualWeightsShareEvenly(t *testing.T) {
	const n = 100
	weights, rows := make([][]float64, n), make([]int64, n)
	for i := range weights {
		weights[i], rows[i] = make([]float64, n), 3*n+n/2
		for j := range weights[i] {
			weights[i][j] = 0.1
		}
	}
	got, err := Biproportional(weights, rows, rows)
	if err != nil {
		t.Fatal(err)
	}
	keepsMargins(t, weights, rows, rows, got)
	for i, row := range got {
		for j, x := range row {
			if x != 3 && x != 4 {
				t.Fatalf("cell %d, %d holds %d, want 3 or 4", i, j, x)
			}
		}
	}
}

func BenchmarkBiproportionalTies100(b *testing.B) {
	weights, rows := make([][]float64, 100), make([]int64, 100)
	for i := range weights {
		weights[i], rows[i] = make([]float64, 100), 350
		for j := range weights[i] {
			weights[i][j] = 1
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Biproportional(weights, rows, rows); err != nil {
			b.Fatal(err)
		}
	}
}

// Equal weights with unequal totals make ties everywhere: the largest table still comes.
func TestTiesEverywhereAreSettled(t *testing.T) {
	const n = 100
	rng := rand.New(rand.NewPCG(1, 2))
	weights, rows, columns := make([][]float64, n), make([]int64, n), make([]int64, n)
	for i := range weights {
		weights[i] = make([]float64, n)
		for j := range weights[i] {
			weights[i][j] = 1
		}
	}
	for range 50 * n * n {
		rows[rng.IntN(n)]++
		columns[rng.IntN(n)]++
	}
	got, err := Biproportional(weights, rows, columns)
	if err != nil {
		t.Fatal(err)
	}
	keepsMargins(t, weights, rows, columns, got)
}
