package sets

import (
	"encoding/csv"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"
	"fmt"
)

func ints(t *testing.T, s string) []int64 {
	var out []int64
	for _, f := range strings.Fields(s) {
		v, err := strconv.ParseInt(f, 10, 64)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, v)
	}
	return out
}

func TestDraft(t *testing.T) {
	f, _ := os.Open("/work/shared/reference/build/disjoint_sets.csv")
	rows, _ := csv.NewReader(f).ReadAll()
	for _, r := range rows[1:] {
		p := Problem{Mass: ints(t, r[3]), Score: ints(t, r[4]), Effort: 10_000_000}
		lo, hi := ints(t, r[8])[0], ints(t, r[9])[0]
		k := ints(t, r[6])[0]
		var counts []int
		if strings.Contains(r[7], ":") {
			na := strings.Count(r[5], "a")
			p.Groups = []Span{{0, na}, {na, len(p.Mass)}}
			counts = []int{1, 2}
		} else {
			p.Groups = []Span{{0, len(p.Mass)}}
			counts = []int{int(ints(t, r[7])[0])}
		}
		for range k {
			p.Wants = append(p.Wants, Want{lo, hi, lo, counts})
		}
		st := time.Now()
		a, err := p.Solve()
		d := time.Since(st)
		if err != nil {
			t.Fatal(err)
		}
		p.Goal = Least
		st = time.Now()
		b, _ := p.Solve()
		fmt.Println(r[0], len(p.Mass), k, a.Number, r[11], a.Score, r[12], a.Proven, a.First, a.Work, d, "|", b.Least, r[13], b.Proven, b.First, b.Work, time.Since(st))
	}
}
