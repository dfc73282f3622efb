package plate

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestSlicesMakeUpTheDish(t *testing.T) {
	r := rand.New(rand.NewPCG(21, 22))
	for range 1000 {
		_, on, _ := randomLayout(r)
		p, err := on.plate()
		if err != nil {
			t.Fatal(err)
		}
		area, moment := 0.0, Point{}
		for k, s := range p.slices {
			area += s.Area
			moment = moment.plus(s.Centre.times(s.Area))
			if s.Number != k+1 || (len(p.slices) > 1 && p.sliceAt(s.Centre) != k) {
				t.Fatalf("%+v: slice %d holds its centre in %d", on, k, p.sliceAt(s.Centre))
			}
		}
		want := 4 * p.a * p.b
		if p.round {
			want = math.Pi * p.a * p.b
		}
		if math.Abs(area-want) > 1e-12*want || moment.norm() > 1e-12*want {
			t.Fatalf("%+v: slices of %v m2, dish of %v; moment %v", on, area, want, moment)
		}
	}
}
