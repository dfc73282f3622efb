package controlled

import (
	"math/rand/v2"
	"testing"
)

// mirrorTable draws a table that is its own image, in tenths, with a whole total.
func mirrorTable(r *rand.Rand) (values [][]Amount, tenths [][]int64, m Mirror) {
	lines := func() (image []int) {
		pairs, own := r.IntN(3), r.IntN(2)
		if pairs == 0 {
			own = 1 + r.IntN(2)
		}
		for k := range pairs {
			image = append(image, 2*k+1, 2*k)
		}
		for range own {
			image = append(image, len(image))
		}
		return image
	}
	for {
		m = Mirror{lines(), lines()}
		tenths = make([][]int64, len(m.Rows))
		total := int64(0)
		for i := range tenths {
			tenths[i] = make([]int64, len(m.Columns))
		}
		for i, ri := range m.Rows {
			for j, cj := range m.Columns {
				if ri > i || ri == i && cj >= j {
					tenths[i][j] = int64(r.IntN(25))
					tenths[ri][cj] = tenths[i][j]
				}
			}
		}
		for _, row := range tenths {
			for _, v := range row {
				total += v
			}
		}
		if total%10 == 0 {
			break
		}
	}
	values = make([][]Amount, len(tenths))
	for i, row := range tenths {
		for _, v := range row {
			values[i] = append(values[i], Quotient(v, 10))
		}
	}
	return values, tenths, m
}

// permitted reports whether a rounding keeps every entry and margin, and its gain.
func permitted(tenths [][]int64, out [][]int64) (gain int64, ok bool) {
	near := func(x, v int64) bool { return 10*x <= v+9 && 10*x >= v-9 }
	columns, wholeColumns := make([]int64, len(out[0])), make([]int64, len(out[0]))
	total, wholeTotal := int64(0), int64(0)
	for i, row := range out {
		sum, whole := int64(0), int64(0)
		for j, x := range row {
			v := tenths[i][j]
			if !near(x, v) {
				return 0, false
			}
			d := 10*x - v
			gain -= d * d
			sum, whole = sum+v, whole+x
			columns[j] += v
			wholeColumns[j] += x
		}
		if !near(whole, sum) {
			return 0, false
		}
		total, wholeTotal = total+sum, wholeTotal+whole
	}
	for j := range columns {
		if !near(wholeColumns[j], columns[j]) {
			return 0, false
		}
	}
	return gain, total == 10*wholeTotal
}

// Of all roundings, tried one by one, the mirrored one is as near as the nearest, and it
// is its own image wherever one of these is.
func TestMirroredAgreesWithTryingAll(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 14))
	images, kept := 0, 0
	for range 600 {
		values, tenths, m := mirrorTable(r)
		n := len(m.Rows) * len(m.Columns)
		if n > 12 {
			continue
		}
		rows, columns, total := make([]Amount, len(m.Rows)), make([]Amount, len(m.Columns)), Amount{}
		sums := func(side []Amount, at func(int) []int64) {
			for k := range side {
				s := int64(0)
				for _, v := range at(k) {
					s += v
				}
				side[k] = Quotient(s, 10)
			}
		}
		sums(rows, func(i int) []int64 { return tenths[i] })
		sums(columns, func(j int) (c []int64) {
			for _, row := range tenths {
				c = append(c, row[j])
			}
			return c
		})
		all := int64(0)
		for _, row := range tenths {
			for _, v := range row {
				all += v
			}
		}
		total = Whole(all / 10)
		given, ok := Round(values, rows, columns, total)
		if !ok {
			t.Fatal("no rounding")
		}
		out := Mirrored(values, rows, columns, total, m, given)
		best, bestImage, any := int64(0), int64(0), [2]bool{}
		for bits := range 1 << n {
			try := make([][]int64, len(m.Rows))
			for i := range try {
				try[i] = make([]int64, len(m.Columns))
				for j := range try[i] {
					try[i][j] = tenths[i][j]/10 + int64(bits>>(i*len(m.Columns)+j)&1)
				}
			}
			gain, ok := permitted(tenths, try)
			if !ok {
				continue
			}
			image := ownImage(try, m)
			if !any[0] || gain > best {
				best, any[0] = gain, true
			}
			if image && (!any[1] || gain > bestImage) {
				bestImage, any[1] = gain, true
			}
		}
		gain, ok := permitted(tenths, out)
		if !ok || gain != best {
			t.Fatalf("%v: %v is not a nearest rounding: %d, want %d", tenths, out, gain, best)
		}
		if any[1] && bestImage == best {
			images++
			if !ownImage(out, m) {
				t.Fatalf("%v, %v: %v is not its own image, and one as near is", tenths, m, out)
			}
		} else {
			kept++
		}
	}
	if images < 50 || kept < 20 {
		t.Errorf("%d tables with an image, %d without: the test shows little", images, kept)
	}
}

func ownImage(out [][]int64, m Mirror) bool {
	for i, row := range out {
		for j, x := range row {
			if out[m.Rows[i]][m.Columns[j]] != x {
				return false
			}
		}
	}
	return true
}
