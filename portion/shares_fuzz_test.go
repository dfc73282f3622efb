package portion

import (
	"encoding/binary"
	"math"
	"testing"
)

// numbersOf reads fuzzed bytes as float64s, so that every value can occur.
func numbersOf(data []byte) []float64 {
	out := make([]float64, 0, len(data)/8)
	for ; len(data) >= 8; data = data[8:] {
		out = append(out, math.Float64frombits(binary.LittleEndian.Uint64(data)))
	}
	return out
}

// bytesOf is the inverse, for seeds.
func bytesOf(values ...float64) (out []byte) {
	for _, v := range values {
		out = binary.LittleEndian.AppendUint64(out, math.Float64bits(v))
	}
	return out
}

// allFinite fails the test for a number that is not finite.
func allFinite(t *testing.T, what string, values ...float64) {
	t.Helper()
	for _, v := range values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("%s is %v", what, v)
		}
	}
}

func FuzzDeclaration(f *testing.F) {
	f.Add(62.0, 0.5, 9, true, bytesOf(3, 0, 0, 2, 1, 15, 1, 8.2, 0))
	f.Add(0.1+0.2, 0.1, 0, false, bytesOf(1e300, 0, 0, 5e-324, 0, 0))
	f.Add(math.Inf(1), math.NaN(), -1, false, bytesOf(-1, math.NaN(), 3))
	f.Fuzz(func(t *testing.T, grams, step float64, count int, advertised bool, zoned []byte) {
		d := Declaration{Item: "x", Grams: grams, StepGrams: step, Count: count, Advertised: advertised}
		total, err := d.Steps()
		if (err == nil) != (d.Validate() == nil) {
			t.Fatalf("Steps says %v, Validate %v", err, d.Validate())
		}
		if (d.Allows(Thin) == nil) == advertised {
			t.Fatal("an advertised item may be thinned")
		}
		_ = d.JudgeCount(count + len(zoned))
		var zones []Zone
		v := numbersOf(zoned)
		for ; len(v) >= 3 && len(zones) < 50; v = v[3:] {
			zones = append(zones, Zone{Weight: v[0], MinGrams: v[1], MaxGrams: v[2], MinCount: int(count) % 3})
		}
		for m := LargestRemainder; m <= Dean; m++ {
			s, err := d.ShareBy(m, zones)
			if err != nil {
				continue
			}
			if s.TotalSteps() != total {
				t.Fatalf("%v: %d of %d steps", m, s.TotalSteps(), total)
			}
			for _, p := range s.Portions {
				allFinite(t, "portion", p.Grams)
			}
		}
		if s, err := d.ShareCount(Webster, zones); err == nil && s.TotalSteps() != int64(count) {
			t.Fatalf("%d of %d pieces", s.TotalSteps(), count)
		}
	})
}

func FuzzApportion(f *testing.F) {
	f.Add(int64(100), 0, bytesOf(80, 15, 35), int64(0), int64(0))
	f.Add(int64(1_000_000_000_000), 4, bytesOf(1e15, 1, 0.1), int64(1), int64(0))
	f.Add(int64(-1), 99, bytesOf(math.NaN()), int64(-1), int64(3))
	f.Fuzz(func(t *testing.T, total int64, method int, weights []byte, least, most int64) {
		var claims []Claim
		for i, w := range numbersOf(weights) {
			c := Claim{Weight: w}
			if i%2 == 0 {
				c.Min = least
			} else {
				c.Max = most
			}
			claims = append(claims, c)
		}
		m := Method(method)
		if m == QuotaMethod {
			total %= 1000
		}
		if m.String() == "" {
			t.Fatal("a method without a name")
		}
		got, err := m.Apportion(total, claims)
		if err == nil {
			sumsAndBounds(t, m.String(), total, claims, got)
		}
		ideal, err := Ideal(total, claims)
		if err == nil {
			allFinite(t, "ideal share", ideal...)
		}
	})
}

func FuzzTables(f *testing.F) {
	f.Add(2, 2, bytesOf(1, 1, 0, 1), int64(5), int64(5), int64(5), int64(5))
	f.Add(1, 3, bytesOf(0, 0, 0), int64(5), int64(5), int64(0), int64(0))
	f.Add(2, 2, bytesOf(1e-15, 1, 1, 1e-15), int64(1000000000), int64(0), int64(1), int64(999999999))
	f.Fuzz(func(t *testing.T, m, n int, entries []byte, a, b, c, d int64) {
		if m < 0 || n < 0 || m > 6 || n > 6 {
			return
		}
		v := numbersOf(entries)
		weights := make([][]float64, m)
		rows, columns := make([]int64, m), make([]int64, n)
		for i := range weights {
			rows[i] = []int64{a, b}[i%2]
			weights[i] = make([]float64, min(n, len(v)))
			copy(weights[i], v)
			v = v[len(weights[i]):]
		}
		for j := range columns {
			columns[j] = []int64{c, d}[j%2]
		}
		got, err := Biproportional(weights, rows, columns)
		if err == nil {
			keepsMargins(t, weights, rows, columns, got)
		}
		fitted, err := Fit(weights, floats(rows), floats(columns))
		if err == nil {
			for _, row := range fitted {
				allFinite(t, "fitted entry", row...)
			}
		}
		rounded, err := ControlledRounding(weights)
		if err == nil {
			for i, row := range rounded {
				for j, x := range row {
					if math.Abs(float64(x)-weights[i][j]) >= 1 {
						t.Fatalf("%v became %d", weights[i][j], x)
					}
				}
			}
		}
		table := Table{Declaration: Declaration{Grams: float64(a % 1000), StepGrams: 0.5}, Weights: weights}
		for i := range rows {
			table.Rows = append(table.Rows, Zone{Weight: float64(rows[i])})
		}
		for j := range columns {
			table.Columns = append(table.Columns, Zone{Weight: float64(columns[j])})
		}
		for _, share := range []func() (Grid, error){table.Share, table.Round} {
			if g, err := share(); err == nil {
				total := 0.0
				for i := range g.Steps {
					for j := range g.Steps[i] {
						total += g.Grams(i, j)
					}
				}
				if total != table.Declaration.Grams {
					t.Fatalf("%v of %v g", total, table.Declaration.Grams)
				}
			}
		}
	})
}

func FuzzContents(f *testing.F) {
	f.Add(130.0, 0.5, bytesOf(80, 15, 35))
	f.Add(100.0, 1.0, bytesOf(12.5, 37.5, 50))
	f.Add(math.NaN(), -1.0, bytesOf(math.Inf(1), -1))
	f.Fuzz(func(t *testing.T, grams, step float64, masses []byte) {
		var parts []Ingredient
		var contents []Content
		for _, v := range numbersOf(masses) {
			parts = append(parts, Ingredient{"x", v})
			contents = append(contents, Content{"x", v})
		}
		if lines, err := Quid(parts, grams); err == nil {
			for _, l := range lines {
				allFinite(t, l.Text, l.Percent)
			}
		}
		if whole, err := WholePercents(parts); err == nil {
			var sum int64
			for _, p := range whole {
				sum += p
			}
			if sum != 100 {
				t.Fatalf("%v sum to %d %%", whole, sum)
			}
		}
		if n, err := AboutServings(grams); err == nil {
			allFinite(t, "servings", n)
		}
		d := Declaration{Grams: grams, StepGrams: step}
		if s, err := d.ShareContents(contents); err == nil {
			if total, err := d.Steps(); err != nil || s.TotalSteps() != total {
				t.Fatalf("%d of %d steps, %v", s.TotalSteps(), total, err)
			}
		}
		formula := Formula{Parts: parts, StepGrams: step, Locked: len(parts)%2 == 0}
		if least, err := formula.LeastExact(); err == nil {
			allFinite(t, "least exact batch", least)
		}
		if s, err := formula.For(grams); err == nil {
			if total, err := d.Steps(); err != nil || s.TotalSteps() != total {
				t.Fatalf("%d of %d steps, %v", s.TotalSteps(), total, err)
			}
		}
	})
}

func FuzzWishes(f *testing.F) {
	f.Add(62.0, 0.5, bytesOf(30, 1, 0, 0, 20, 2, 5, 25))
	f.Add(1e6, 1e-2, bytesOf(1e7, 1e3, 0, 0, 0, 1e-3, 0, 0))
	f.Add(1.0, math.NaN(), bytesOf(-1, math.Inf(1), 3, 2))
	f.Fuzz(func(t *testing.T, grams, step float64, wished []byte) {
		var wishes []Wish
		for v := numbersOf(wished); len(v) >= 4 && len(wishes) < 50; v = v[4:] {
			wishes = append(wishes, Wish{"x", v[0], v[1], v[2], v[3]})
		}
		d := Declaration{Grams: grams, StepGrams: step}
		if s, err := d.ShareNear(wishes); err == nil {
			if total, err := d.Steps(); err != nil || s.TotalSteps() != total {
				t.Fatalf("%d of %d steps, %v", s.TotalSteps(), total, err)
			}
		}
	})
}
