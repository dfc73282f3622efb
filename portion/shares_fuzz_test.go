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
		total, err := d.inSteps()
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
		if s, err := d.Share(zones); err == nil {
			if sumOfSteps(s) != total {
				t.Fatalf("%d of %d steps", sumOfSteps(s), total)
			}
			for _, p := range s {
				allFinite(t, "portion", p.Grams)
			}
		}
		d.Grams = 0
		if s, err := d.Share(zones); err == nil && sumOfSteps(s) != int64(count) {
			t.Fatalf("%d of %d pieces", sumOfSteps(s), count)
		}
	})
}

func FuzzContents(f *testing.F) {
	f.Add(130.0, 0.5, bytesOf(80, 15, 35))
	f.Add(100.0, 1.0, bytesOf(12.5, 37.5, 50))
	f.Add(math.NaN(), -1.0, bytesOf(math.Inf(1), -1))
	f.Fuzz(func(t *testing.T, grams, step float64, masses []byte) {
		var parts []Ingredient
		for _, v := range numbersOf(masses) {
			parts = append(parts, Ingredient{"x", v})
		}
		if lines, err := Quid(parts, grams); err == nil {
			for _, l := range lines {
				allFinite(t, l.Text, l.Percent)
			}
		}
		d := Declaration{Grams: grams, StepGrams: step}
		formula := Formula{Parts: parts, StepGrams: step}
		if s, err := formula.For(grams); err == nil {
			if total, err := d.inSteps(); err != nil || sumOfSteps(s) != total {
				t.Fatalf("%d of %d steps, %v", sumOfSteps(s), total, err)
			}
		}
	})
}

func FuzzTable(f *testing.F) {
	f.Add(124.0, bytesOf(1, 1, 0, 1), bytesOf(5, 5), bytesOf(5, 5))
	f.Add(3.0, bytesOf(0, 0, 0), bytesOf(1), bytesOf(1, 2, 3))
	f.Fuzz(func(t *testing.T, grams float64, weights, rows, columns []byte) {
		table := Table{Declaration: Declaration{Grams: grams, StepGrams: 0.5}}
		for _, w := range numbersOf(rows) {
			table.Rows = append(table.Rows, Zone{Weight: w})
		}
		for _, w := range numbersOf(columns) {
			table.Columns = append(table.Columns, Zone{Weight: w})
		}
		if n := len(table.Columns); n > 0 && len(weights) > 0 {
			for v := numbersOf(weights); len(v) >= n; v = v[n:] {
				table.Weights = append(table.Weights, v[:n])
			}
		}
		if len(table.Rows) > 6 || len(table.Columns) > 6 {
			t.Skip("slow")
		}
		g, err := table.Share()
		if err != nil {
			return
		}
		total := int64(0)
		for i := range g.Steps {
			for j := range g.Steps[i] {
				total += g.Steps[i][j]
				allFinite(t, "cell", g.Grams[i][j])
			}
		}
		if want, err := table.Declaration.inSteps(); err != nil || total != want {
			t.Fatalf("%v of %v steps, %v", total, want, err)
		}
	})
}
