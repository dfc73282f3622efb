package apportion

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
	})
}
